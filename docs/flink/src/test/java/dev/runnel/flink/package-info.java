@NullMarked
package dev.runnel.flink;

import org.jspecify.annotations.NullMarked;
