/** The terminal that a command was started from. */
@NullMarked
package dev.runnel.examples.terminal;

import org.jspecify.annotations.NullMarked;
