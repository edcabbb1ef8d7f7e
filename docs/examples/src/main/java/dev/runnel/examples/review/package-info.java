/**
 * The site review: from the files that loggers leave to a page that an analyst can read in a minute.
 *
 * <p>The way of the data through the package is {@link dev.runnel.examples.review.Main} &rarr; {@code SiteFile} (what
 * the site is) &rarr; {@code SiteData} (what was read, rejected and flagged) &rarr; {@code SiteReview} (what follows from
 * it) &rarr; {@code ReviewText} and {@code ReviewFiles} (what is shown and written). All hydraulics, hydrology and
 * statistics come from the library; here they are only put in a row.
 *
 * <p>What this is not: a statutory return, a design, or a judgement. It points a competent person at what to look at.
 */
@NullMarked
package dev.runnel.examples.review;

import org.jspecify.annotations.NullMarked;
