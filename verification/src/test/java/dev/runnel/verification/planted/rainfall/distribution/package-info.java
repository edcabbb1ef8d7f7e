/** Part of the house built wrong on purpose. */
@NullMarked
package dev.runnel.verification.planted.rainfall.distribution;

import org.jspecify.annotations.NullMarked;
