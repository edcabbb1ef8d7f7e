/** Measurements of speed: compiled with every check of the build, run on request. */
@NullMarked
package dev.runnel.verification.benchmark;

import org.jspecify.annotations.NullMarked;
