/**
 * Pages to look at, made without any other file: figures as SVG, a record over time that can be zoomed, and the words
 * around them. A page reaches no network and needs no server.
 *
 * <p>The package knows series, sections and tables; it computes nothing but where to draw. What a page says comes from
 * the library, handed over as a {@link dev.runnel.examples.pages.SitePage}.
 */
@NullMarked
package dev.runnel.examples.pages;

import org.jspecify.annotations.NullMarked;
