/**
 * The proof inside the build of somebody else: the tables of Runnel, and their own, run against the jars they ship.
 *
 * <p>One test of JUnit 5 and this artifact on the test path are enough; the package itself needs no JUnit:
 *
 * <pre>{@code
 * class RunnelProofTest {
 *     @ParameterizedTest
 *     @MethodSource("dev.runnel.verification.junit.Proof#tables")
 *     void everyExpectedValueHolds(TableProof table) {
 *         table.verify();
 *     }
 * }
 * }</pre>
 *
 * <p>Own tables: a method of one's own that returns {@code Proof.tables(Path.of("our-handbook"))}.
 */
@NullMarked
package dev.runnel.verification.junit;

import org.jspecify.annotations.NullMarked;
