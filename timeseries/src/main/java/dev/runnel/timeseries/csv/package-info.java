/**
 * Reading and writing records as lines of text, with an account of every line.
 *
 * <p>A {@link dev.runnel.timeseries.csv.CsvLayout} says what a file looks like: its columns and units, how it writes
 * time, what separates its fields. {@link dev.runnel.timeseries.csv.CsvRecords} reads a file by it, line by line in
 * bounded memory, into {@linkplain dev.runnel.timeseries.csv.CsvResult series} or
 * {@linkplain dev.runnel.timeseries.csv.CsvInstants bare instants}; {@link dev.runnel.timeseries.csv.CsvWriter} writes
 * series in a form that reads back to the same bits.
 *
 * <p>No line is lost silently: lines = accepted + rejected, and every rejected or altered one is counted by
 * {@linkplain dev.runnel.timeseries.csv.CsvIssue.Kind kind} and listed with line and column in the
 * {@linkplain dev.runnel.timeseries.csv.CsvReport report}. Local times are turned into instants by the rules of a named
 * zone; a time in the hour that a clock change repeats or skips is reported, never guessed. A file that is not what the
 * layout says (no such column, not text, empty) is refused as a whole.
 *
 * <p>Sources: RFC 4180 for fields and quotes, except that a quoted field ends with its line, so that one stray quote
 * cannot swallow the rest of a file; ISO 8601 for instants, offsets and local times.
 */
@NullMarked
package dev.runnel.timeseries.csv;

import org.jspecify.annotations.NullMarked;
