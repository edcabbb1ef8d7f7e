/**
 * Does the proof bite? One constant or operator of the library is changed at a time, and the proof must notice.
 *
 * <p>The library is loaded again and again in class loaders of its own ({@code Copy}), with an instruction patched
 * ({@code Mutation}), and asked for the tables that are known to reach the changed method ({@code Reach}).
 */
@NullMarked
package dev.runnel.verification.bite;

import org.jspecify.annotations.NullMarked;
