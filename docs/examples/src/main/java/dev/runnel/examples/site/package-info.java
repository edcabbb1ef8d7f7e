/**
 * The documentation as pages to look at: guides, methods, cookbook, Javadoc and reports in one folder, with a search that works
 * from disk. {@link dev.runnel.examples.site.DocsSite} builds it.
 */
@NullMarked
package dev.runnel.examples.site;

import org.jspecify.annotations.NullMarked;
