/**
 * Follows a folder of growing files day and night: reads what was appended, feeds it to the machines of the library, and
 * writes alarms and findings.
 *
 * <p>One file holds the state: how far each file has been read, what each machine knows, and how long each output is. It is
 * replaced atomically after the outputs have reached the disk. Started again, the outputs are cut to the lengths in the
 * state, so nothing is lost and nothing doubled, whenever the process was killed.
 *
 * <p>For the same bytes to come out however often it was killed, what is written must hang on the files alone and not on
 * when they were looked at. So each output is fed by one stream of readings; the order of lines is judged over the whole
 * file and not over the part just read; and where two files belong together the one waits for the other.
 *
 * <p>What is read first is corrected by the books of the site, reading by reading, as the review corrects a whole record.
 */
@NullMarked
package dev.runnel.examples.follow;

import org.jspecify.annotations.NullMarked;
