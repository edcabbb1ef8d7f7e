@NullMarked
package dev.runnel.examples.store;

import org.jspecify.annotations.NullMarked;
