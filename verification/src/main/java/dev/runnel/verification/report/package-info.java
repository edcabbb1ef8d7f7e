/**
 * What a run leaves behind: a summary for the screen, a CSV file for other programs, JUnit XML for a build server, and a
 * page for people.
 *
 * <p>All four show the same {@link dev.runnel.verification.Results}; none judges anything itself.
 */
@NullMarked
package dev.runnel.verification.report;

import org.jspecify.annotations.NullMarked;
