/** Part of the house built wrong on purpose. */
@NullMarked
package dev.runnel.verification.planted.timeseries.internal;

import org.jspecify.annotations.NullMarked;
