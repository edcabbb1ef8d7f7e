/** The approved listing of the public API: one file per module, one member a line, compared in every build. */
@NullMarked
package dev.runnel.verification.listing;

import org.jspecify.annotations.NullMarked;
