/** Part of the house built wrong on purpose. */
@NullMarked
package dev.runnel.verification.planted.hydraulics.section;

import org.jspecify.annotations.NullMarked;
