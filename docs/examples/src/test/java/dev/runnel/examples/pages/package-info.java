/** Pages: what is in them, and how a browser takes them. */
@NullMarked
package dev.runnel.examples.pages;

import org.jspecify.annotations.NullMarked;
