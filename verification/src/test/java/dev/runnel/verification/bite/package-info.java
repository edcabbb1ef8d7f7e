/**
 * Does the proof bite? One constant or operator of the library is changed at a time, and the proof must notice.
 *
 * <p>The library is loaded in a class loader of its own ({@code Copy}) with all changes ({@code Mutation}) behind switches
 * ({@code Switch}, {@code WarmCopy}), and asked for the tables that run the changed code. What none of them notices is asked
 * again in a copy with that one instruction patched ({@code OwnCopies}), for the tables known to reach it ({@code Reach}).
 */
@NullMarked
package dev.runnel.verification.bite;

import org.jspecify.annotations.NullMarked;
