/**
 * The pages are run: every {@code java} and {@code jshell} block of the README and of the folder docs, page by page, in
 * a shell with the imports of {@link dev.runnel.examples.shell.Shell}.
 */
@NullMarked
package dev.runnel.examples.docs;

import org.jspecify.annotations.NullMarked;
