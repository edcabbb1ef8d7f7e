/**
 * A small house built wrong on purpose: each class breaks one rule of the architecture, and the test of the rules
 * demands that each is found. Nothing here is ever run.
 */
@NullMarked
package dev.runnel.verification.planted;

import org.jspecify.annotations.NullMarked;
