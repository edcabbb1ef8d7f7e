package dev.runnel.hydraulics.uncertainty;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.Arrays;
import java.util.Objects;
import org.apache.commons.math3.distribution.GammaDistribution;
import org.apache.commons.math3.random.RandomGenerator;
import org.apiguardian.api.API;

/**
 * An input of a measurement: its name, estimate, standard uncertainty, degrees of freedom and the distribution of what it may
 * be. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class UncertainInput {
    private static final double MOST = 1e100;

    private final String name;
    private final double estimate;
    private final double standardUncertainty;
    private final double degreesOfFreedom;
    private final Shape shape;

    /** Distributions of unit standard deviation about 0; that of Student is of unit scale. */
    private enum Shape {
        NORMAL {
            @Override
            double draw(RandomGenerator random, double freedom) {
                double normal = random.nextGaussian();
                return freedom == Double.POSITIVE_INFINITY
                        ? normal
                        : normal / Math.sqrt(new GammaDistribution(random, freedom / 2, 2).sample() / freedom);
            }
        },
        RECTANGULAR {
            @Override
            double draw(RandomGenerator random, double freedom) {
                return Math.sqrt(3) * (2 * random.nextDouble() - 1);
            }
        },
        TRIANGULAR {
            @Override
            double draw(RandomGenerator random, double freedom) {
                // The difference of two draws, each uniform: a triangle around 0.
                double first = random.nextDouble();
                double second = random.nextDouble();
                return Math.sqrt(6) * (first - second);
            }
        },
        ARCSINE {
            @Override
            double draw(RandomGenerator random, double freedom) {
                return Math.sqrt(2) * Math.sin(2 * Math.PI * random.nextDouble());
            }
        };

        abstract double draw(RandomGenerator random, double freedom);
    }

    private UncertainInput(
            String name, double estimate, double standardUncertainty, double degreesOfFreedom, Shape shape) {
        this.name = name;
        this.estimate = Require.inRange("estimate of " + name, estimate, -MOST, MOST, "");
        this.standardUncertainty = Require.inRange("uncertainty of " + name, standardUncertainty, 0, MOST, "");
        this.degreesOfFreedom = degreesOfFreedom;
        this.shape = shape;
    }

    /**
     * Returns a normal input, such as one from a certificate.
     *
     * @param name name for the table, such as {@code head}
     * @param estimate the estimate, in any unit
     * @param standardUncertainty its standard uncertainty (68 %), in the same unit; 0 or greater: a certificate's U is divided by
     *     its k
     * @return the input
     * @throws IllegalArgumentException if a number is outside its range
     */
    public static UncertainInput normal(String name, double estimate, double standardUncertainty) {
        Objects.requireNonNull(name, "name");
        return new UncertainInput(name, estimate, standardUncertainty, Double.POSITIVE_INFINITY, Shape.NORMAL);
    }

    /**
     * Returns an input known to lie between two bounds, nothing else: u = a/√3.
     *
     * @param name name for the table
     * @param estimate middle of the bounds
     * @param halfWidth half the distance of the bounds a; 0 or greater
     * @return the input
     * @throws IllegalArgumentException if a number is outside its range
     */
    public static UncertainInput rectangular(String name, double estimate, double halfWidth) {
        Objects.requireNonNull(name, "name");
        return new UncertainInput(
                name, estimate, halfWidth / Math.sqrt(3), Double.POSITIVE_INFINITY, Shape.RECTANGULAR);
    }

    /**
     * Returns an input between two bounds, most likely in the middle: u = a/√6.
     *
     * @param name name for the table
     * @param estimate middle of the bounds
     * @param halfWidth half the distance of the bounds a; 0 or greater
     * @return the input
     * @throws IllegalArgumentException if a number is outside its range
     */
    public static UncertainInput triangular(String name, double estimate, double halfWidth) {
        Objects.requireNonNull(name, "name");
        return new UncertainInput(name, estimate, halfWidth / Math.sqrt(6), Double.POSITIVE_INFINITY, Shape.TRIANGULAR);
    }

    /**
     * Returns an input that swings between two bounds, such as a controlled temperature: u = a/√2.
     *
     * @param name name for the table
     * @param estimate middle of the bounds
     * @param halfWidth half the distance of the bounds a; 0 or greater
     * @return the input
     * @throws IllegalArgumentException if a number is outside its range
     */
    public static UncertainInput arcsine(String name, double estimate, double halfWidth) {
        Objects.requireNonNull(name, "name");
        return new UncertainInput(name, estimate, halfWidth / Math.sqrt(2), Double.POSITIVE_INFINITY, Shape.ARCSINE);
    }

    /**
     * Returns the mean of repeated readings: u = s/√n, n − 1 degrees of freedom, Student's distribution.
     *
     * @param name name for the table
     * @param readings the readings; 2 or more, finite
     * @return the input
     * @throws IllegalArgumentException if there are fewer than 2 readings or one is not finite
     */
    public static UncertainInput ofReadings(String name, double... readings) {
        Objects.requireNonNull(name, "name");
        Require.atLeast("count of readings of " + name, readings.length, 2);
        for (int i = 0; i < readings.length; i++) {
            Require.inRange("readings[" + i + "] of " + name, readings[i], -MOST, MOST, "");
        }
        double mean = Arrays.stream(readings).average().orElseThrow();
        double squares =
                Arrays.stream(readings).map(r -> (r - mean) * (r - mean)).sum();
        int freedom = readings.length - 1;
        return new UncertainInput(name, mean, Math.sqrt(squares / freedom / readings.length), freedom, Shape.NORMAL);
    }

    /**
     * Returns a copy whose uncertainty is itself known from few readings; a normal input then follows Student's distribution.
     *
     * @param newDegreesOfFreedom ν; 1 or greater
     * @return the copy
     * @throws IllegalArgumentException if {@code newDegreesOfFreedom} is smaller or NaN
     */
    public UncertainInput withDegreesOfFreedom(double newDegreesOfFreedom) {
        if (!(newDegreesOfFreedom >= 1)) {
            throw new IllegalArgumentException(
                    "newDegreesOfFreedom must be 1 or greater, was " + Text.number(newDegreesOfFreedom));
        }
        return new UncertainInput(name, estimate, standardUncertainty, newDegreesOfFreedom, shape);
    }

    /**
     * Returns the name.
     *
     * @return name for the table
     */
    public String name() {
        return name;
    }

    /**
     * Returns the estimate.
     *
     * @return estimate, in the caller's unit
     */
    public double estimate() {
        return estimate;
    }

    /**
     * Returns the standard uncertainty.
     *
     * @return u, in the unit of the estimate
     */
    public double standardUncertainty() {
        return standardUncertainty;
    }

    /**
     * Returns the degrees of freedom.
     *
     * @return ν; infinite where the uncertainty is taken as known
     */
    public double degreesOfFreedom() {
        return degreesOfFreedom;
    }

    boolean isNormal() {
        return shape == Shape.NORMAL && degreesOfFreedom == Double.POSITIVE_INFINITY;
    }

    double draw(RandomGenerator random) {
        return estimate + standardUncertainty * shape.draw(random, degreesOfFreedom);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof UncertainInput that
                && name.equals(that.name)
                && Arrays.equals(
                        new double[] {estimate, standardUncertainty, degreesOfFreedom},
                        new double[] {that.estimate, that.standardUncertainty, that.degreesOfFreedom})
                && shape == that.shape;
    }

    @Override
    public int hashCode() {
        return name.hashCode() + 31 * Double.hashCode(estimate);
    }

    @Override
    public String toString() {
        return "UncertainInput[" + name + " = " + Text.significant(estimate, 6) + " ± "
                + Text.significant(standardUncertainty, 2) + " (standard)]";
    }
}
