/**
 * What several packages of this module share and nobody outside may use.
 */
@NullMarked
package dev.runnel.timeseries.internal;

import org.jspecify.annotations.NullMarked;
