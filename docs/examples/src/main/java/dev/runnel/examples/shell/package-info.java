/** JShell with Runnel on the path, everything imported and values shown whole. */
@NullMarked
package dev.runnel.examples.shell;

import org.jspecify.annotations.NullMarked;
