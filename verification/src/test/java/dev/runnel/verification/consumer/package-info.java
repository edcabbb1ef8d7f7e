/** The jars as a stranger uses them: compiled against and run, from the class path and from the module path. */
@NullMarked
package dev.runnel.verification.consumer;

import org.jspecify.annotations.NullMarked;
