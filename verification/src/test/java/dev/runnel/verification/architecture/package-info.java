/**
 * The walls of the house and the habits of its code, held by tests over the compiled classes and the source files.
 *
 * <p>Every rule takes the root package it watches, so that a second test can turn it on planted classes and show that
 * it finds what it is there to find.
 */
@NullMarked
package dev.runnel.verification.architecture;

import org.jspecify.annotations.NullMarked;
