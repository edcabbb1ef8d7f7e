/**
 * What the packages of this module share and nobody else may use: root finding and the loop behind every bulk form.
 * Not part of the stable API.
 */
@NullMarked
package dev.runnel.hydraulics.internal;

import org.jspecify.annotations.NullMarked;
