/** What the rainfall packages share and nobody else should use. */
@NullMarked
package dev.runnel.rainfall.internal;

import org.jspecify.annotations.NullMarked;
