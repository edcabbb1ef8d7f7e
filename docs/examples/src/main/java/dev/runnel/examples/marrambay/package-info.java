/**
 * The invented town of Marram Bay: makes the readings that {@code docs/examples/marram-bay} holds.
 *
 * <p>Rain falls in cells; each catchment turns it into flow by linear reservoirs on top of a daily pattern of use; the
 * pipe turns flow into depth and velocity by its own resistance law; sensors add noise, steps and faults; the loggers'
 * files get the blemishes that real files have. {@link dev.runnel.examples.marrambay.Scenario} lists what was planted
 * and when: that is the truth the tests of the site review are held against.
 *
 * <p>What this is not: a model of a real place, or a method to copy for design. Every figure in it is invented.
 */
@NullMarked
package dev.runnel.examples.marrambay;

import org.jspecify.annotations.NullMarked;
