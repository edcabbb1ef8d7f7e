/**
 * Argument checks, number texts and sums that every Runnel module shares. Not part of the stable API: it may change without
 * notice, and the API listing leaves it out.
 */
@NullMarked
package dev.runnel.internal;

import org.jspecify.annotations.NullMarked;
