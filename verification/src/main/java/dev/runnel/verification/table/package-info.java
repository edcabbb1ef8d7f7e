/**
 * Published tables: reading them, and turning their rows into checks.
 *
 * <p>A table is two files of one name in one folder. {@code NAME.csv} holds the rows as printed: UTF-8, a header, lines
 * that begin with {@code #} are comments. {@code NAME.table} describes it in {@code key = value} lines:
 *
 * <table>
 * <caption>Keys of a descriptor</caption>
 * <tr><th>key</th><th>meaning</th></tr>
 * <tr><td>author, year, work, edition?, locator</td><td>where the figures are printed; {@code edition} may be left out</td></tr>
 * <tr><td>provenance</td><td>{@code published}, {@code second-hand}, {@code fitted}, {@code from memory}, {@code derived oracle}, {@code common practice}</td></tr>
 * <tr><td>note?</td><td>what a reader should know</td></tr>
 * <tr><td>values</td><td>how many printed values the table holds, so that none is lost unnoticed</td></tr>
 * <tr><td>column.NAME</td><td>{@code unit, meaning} of each column of the CSV file; {@code text} for a text</td></tr>
 * <tr><td>calculation, expected, result?</td><td>what is checked, against which column, and how the result is brought to
 * its unit: a formula of {@code result}, columns and numbers</td></tr>
 * <tr><td>input.NAME</td><td>an input of the calculation: a formula; {@code text COLUMN}; {@code word VALUE};
 * {@code data FILE COLUMN} for a sample from another CSV file; {@code file FILE} for the text of another file, where
 * {@code {COLUMN}} in a file name stands for the cell</td></tr>
 * <tr><td>tolerance, reason</td><td>the largest of the terms joined by {@code or}: {@code 0.5 digit} of the last printed
 * place, {@code 0.2 %} or {@code 1e-9 relative} of the expected value, a plain number in its unit, {@code column NAME};
 * and why that much</td></tr>
 * <tr><td>check.ID.…</td><td>for several expected columns: the last three rows with this prefix, the ones without it
 * being the default of all</td></tr>
 * </table>
 *
 * <p>Five columns have a meaning of their own and need no {@code column.} line: {@code exclude} (a reason in it takes
 * the row out), {@code exclude_ID} (takes one value out), {@code locator} (added to the locator), {@code source}
 * (replaces author, year and title) and {@code note}. A cell of an expected column that is blank was not printed: it is
 * counted, not compared.
 *
 * <p>What cannot be read or mapped is a {@link dev.runnel.verification.table.TableException} with file, line and column.
 */
@NullMarked
package dev.runnel.verification.table;

import org.jspecify.annotations.NullMarked;
