/**
 * Machines whose memory lies in a database: readings in, alarms and findings out, and what the machines know as text, all of
 * a batch in one transaction. Plain JDBC; the page docs/embedding.md explains it.
 */
@NullMarked
package dev.runnel.examples.store;

import org.jspecify.annotations.NullMarked;
