/**
 * Measuring a discharge by hand, and checking the instruments that measure it all year.
 *
 * <p>A gauging cuts the stream into strips at verticals: the mean velocity v (m/s) of each vertical comes from a few points,
 * its depth d (m) from a rod, its place b (m) from a tape, and the strips add up, Q = Σ v d Δb. {@link
 * dev.runnel.hydraulics.gauging.VelocityAreaGauging} does that by the mid-section and the mean-section method of ISO 748,
 * {@link dev.runnel.hydraulics.gauging.GaugingBudget} states the uncertainty by the budget of the same standard, {@link
 * dev.runnel.hydraulics.gauging.CurrentMeter} turns revolutions into velocities, {@link
 * dev.runnel.hydraulics.gauging.GaugingSheet} reads a field sheet.
 *
 * <p>A sensor measures one point or the fastest thread; what it stands for is the mean. {@link
 * dev.runnel.hydraulics.gauging.PowerLaw} and {@link dev.runnel.hydraulics.gauging.LogLaw} give the ratio from the shape of the
 * profile, {@link dev.runnel.hydraulics.gauging.SectionTraverse} integrates a measured one over a section, {@link
 * dev.runnel.hydraulics.gauging.IndexVelocity} fits it to gaugings, and {@link
 * dev.runnel.hydraulics.gauging.VelocityFactor} carries it with its uncertainty.
 *
 * <p>{@link dev.runnel.hydraulics.gauging.CalibrationData} fits lines and quadratics with uncertainty in both axes (ISO/TS
 * 28037), {@link dev.runnel.hydraulics.gauging.BenchCheck} states bias, linearity and repeatability of a sensor and writes
 * the certificate.
 *
 * <p>Sources: ISO 748 (2007), Measurement of liquid flow in open channels using current-meters or floats; ISO/TS 28037 (2010),
 * Determination and use of straight-line calibration functions; H. Schlichting, Boundary-Layer Theory. What is from memory
 * says so at its place.
 *
 * <p>What this is not: a licence to stand in a stream or a sewer. Gauging falls under the local rules for work near water and
 * in confined spaces.
 */
@NullMarked
package dev.runnel.hydraulics.gauging;

import org.jspecify.annotations.NullMarked;
