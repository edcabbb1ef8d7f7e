/** The site of the documentation: its links, and its search. */
@NullMarked
package dev.runnel.examples.site;

import org.jspecify.annotations.NullMarked;
