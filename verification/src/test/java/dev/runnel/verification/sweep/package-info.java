/** A seeded sweep of random inputs over every inverse, every machine and every reader: {@code mvn verify -P sweep}. */
@NullMarked
package dev.runnel.verification.sweep;

import org.jspecify.annotations.NullMarked;
