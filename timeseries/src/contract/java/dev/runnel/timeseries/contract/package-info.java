/**
 * What every machine must keep, as a check that the tests of all modules share: this folder is compiled into the tests of
 * each of them and into no jar.
 */
@NullMarked
package dev.runnel.timeseries.contract;

import org.jspecify.annotations.NullMarked;
