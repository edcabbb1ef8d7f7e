/**
 * The command that QA engineers run: {@code java -jar runnel-verification.jar}.
 *
 * <p>It runs every published table, prints the summary, writes the reports and ends with 0 (all values pass), 1 (a value
 * fails) or 2 (something could not be run, or nothing was checked).
 */
@NullMarked
package dev.runnel.verification.command;

import org.jspecify.annotations.NullMarked;
