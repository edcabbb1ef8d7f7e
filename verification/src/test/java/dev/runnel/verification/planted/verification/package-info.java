/** Part of the house built wrong on purpose. */
@NullMarked
package dev.runnel.verification.planted.verification;

import org.jspecify.annotations.NullMarked;
