@NullMarked
package dev.runnel.verification.simulation;

import org.jspecify.annotations.NullMarked;
