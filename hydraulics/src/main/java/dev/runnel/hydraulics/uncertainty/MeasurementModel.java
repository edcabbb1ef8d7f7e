package dev.runnel.hydraulics.uncertainty;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.function.ToDoubleFunction;
import org.apiguardian.api.API;

/**
 * A function and its uncertain inputs. Immutable, and thread-safe if the function is.
 *
 * <p>Sensitivities are central differences of fourth order over 1/50 of the standard uncertainty, relative error below 1e-7 for a
 * smooth function.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class MeasurementModel {
    private static final int MOST_INPUTS = 200;
    private static final int MOST_TRIALS = 10_000_000;

    /** Step of the differences in standard uncertainties: their error is its fourth power over 30; chosen here. */
    private static final double STEP = 0.02;

    private final ToDoubleFunction<double[]> function;
    private final List<UncertainInput> inputs;
    private final double[][] correlation;

    private MeasurementModel(ToDoubleFunction<double[]> function, List<UncertainInput> inputs, double[][] correlation) {
        this.function = function;
        this.inputs = inputs;
        this.correlation = correlation;
    }

    /**
     * Returns a model with independent inputs.
     *
     * @param function the result from the values of the inputs, in their order
     * @param inputs the inputs, 1 to 200, names different
     * @return the model
     * @throws IllegalArgumentException if there are no inputs, too many, or two of one name
     */
    public static MeasurementModel of(ToDoubleFunction<double[]> function, UncertainInput... inputs) {
        Objects.requireNonNull(function, "function");
        Require.inRange("count of inputs", inputs.length, 1, MOST_INPUTS, "");
        long names = Arrays.stream(inputs).map(UncertainInput::name).distinct().count();
        if (names < inputs.length) {
            throw new IllegalArgumentException("inputs must have different names, were " + Arrays.toString(inputs));
        }
        double[][] identity = new double[inputs.length][inputs.length];
        for (int i = 0; i < inputs.length; i++) {
            identity[i][i] = 1;
        }
        return new MeasurementModel(function, List.of(inputs), identity);
    }

    /**
     * Returns a copy in which two inputs are correlated.
     *
     * @param first name of the one
     * @param second name of the other
     * @param coefficient correlation coefficient r; in [-1, 1]
     * @return the copy
     * @throws IllegalArgumentException if there is no such input or {@code coefficient} is outside its range
     */
    public MeasurementModel withCorrelation(String first, String second, double coefficient) {
        Require.inRange("coefficient", coefficient, -1, 1, "");
        int i = place(first);
        int k = place(second);
        if (i == k) {
            throw new IllegalArgumentException("second must be another input than " + Text.quoted(first));
        }
        double[][] copy = Arrays.stream(correlation).map(double[]::clone).toArray(double[][]::new);
        copy[i][k] = coefficient;
        copy[k][i] = coefficient;
        return new MeasurementModel(function, inputs, copy);
    }

    private int place(String name) {
        for (int i = 0; i < inputs.size(); i++) {
            if (inputs.get(i).name().equals(name)) {
                return i;
            }
        }
        throw new IllegalArgumentException("input must be one of "
                + inputs.stream().map(UncertainInput::name).toList() + ", was " + Text.quoted(name));
    }

    private double[] estimates() {
        return inputs.stream().mapToDouble(UncertainInput::estimate).toArray();
    }

    private double at(double[] values) {
        double result = function.applyAsDouble(values.clone());
        if (!Double.isFinite(result)) {
            throw new IllegalArgumentException("function must give a finite result, was " + Text.number(result) + " at "
                    + Arrays.toString(values));
        }
        return result;
    }

    private double moved(int i, double shares) {
        double[] values = estimates();
        values[i] += shares * STEP * inputs.get(i).standardUncertainty();
        return at(values);
    }

    /** Returns c u of each input. */
    private double[] steps() {
        double[] steps = new double[inputs.size()];
        for (int i = 0; i < steps.length; i++) {
            if (inputs.get(i).standardUncertainty() > 0) {
                steps[i] = (8 * (moved(i, 1) - moved(i, -1)) - (moved(i, 2) - moved(i, -2))) / (12 * STEP);
            }
        }
        return steps;
    }

    /**
     * Returns the result by the law of propagation to first order (JCGM 100, equations 10 and 16).
     *
     * @return value, uncertainty, effective degrees of freedom and contributions
     * @throws IllegalArgumentException if the function gives no finite result near the estimates
     */
    public Propagation propagated() {
        double[] steps = steps();
        int n = steps.length;
        double[] shares = new double[n];
        double variance = 0;
        double fourth = 0;
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < n; k++) {
                shares[i] += steps[i] * steps[k] * correlation[i][k];
            }
            variance += shares[i];
            fourth += Math.pow(steps[i], 4) / inputs.get(i).degreesOfFreedom();
        }
        variance = Math.max(0, variance);
        List<Contribution> contributions = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            double u = inputs.get(i).standardUncertainty();
            contributions.add(new Contribution(
                    inputs.get(i), u == 0 ? 0 : steps[i] / u, variance == 0 ? 0 : shares[i] / variance));
        }
        double freedom = fourth == 0 ? Double.POSITIVE_INFINITY : variance * variance / fourth;
        return new Propagation(at(estimates()), Math.sqrt(variance), freedom, contributions);
    }

    /**
     * Returns the standard uncertainty with the terms of the next order, for independent inputs of symmetric distribution (JCGM
     * 100, 5.1.2, note): Σ Σ (½ f_ij² + f_i f_ijj) u_i² u_j² are added to u².
     *
     * @return u(y)
     * @throws IllegalArgumentException if inputs are correlated, or the function gives no finite result near the estimates
     */
    public double secondOrderUncertainty() {
        int n = inputs.size();
        double[] steps = steps();
        double variance = 0;
        double middle = at(estimates());
        // steps of half an uncertainty: derivatives of third order drown in rounding on smaller ones
        double h = 0.5;
        for (int i = 0; i < n; i++) {
            variance += steps[i] * steps[i];
            for (int k = 0; k < n; k++) {
                if (i != k && correlation[i][k] != 0) {
                    throw new IllegalArgumentException("inputs must be independent for the second order");
                }
                double mixed = i == k
                        ? (shifted(i, h, k, 0) - 2 * middle + shifted(i, -h, k, 0)) / (h * h)
                        : (shifted(i, h, k, h) - shifted(i, h, k, -h) - shifted(i, -h, k, h) + shifted(i, -h, k, -h))
                                / (4 * h * h);
                double third = i == k
                        ? (shifted(i, 2 * h, k, 0)
                                        - 2 * shifted(i, h, k, 0)
                                        + 2 * shifted(i, -h, k, 0)
                                        - shifted(i, -2 * h, k, 0))
                                / (2 * h * h * h)
                        : (bent(i, h, k, h) - bent(i, -h, k, h)) / (2 * h);
                variance += mixed * mixed / 2 + steps[i] * third;
            }
        }
        return Math.sqrt(Math.max(0, variance));
    }

    /** Second difference by input k where input i is shifted. */
    private double bent(int i, double by, int k, double h) {
        return (shifted(i, by, k, h) - 2 * shifted(i, by, k, 0) + shifted(i, by, k, -h)) / (h * h);
    }

    private double shifted(int i, double first, int k, double second) {
        double[] values = estimates();
        values[i] += first * inputs.get(i).standardUncertainty();
        values[k] += second * inputs.get(k).standardUncertainty();
        return at(values);
    }

    /**
     * Returns the result by drawing the inputs from their distributions (JCGM 101, clause 7). Correlated inputs must be normal.
     *
     * @param trials count of trials; 1,000 to 10,000,000
     * @param seed seed: the same gives the same result
     * @return the simulated result
     * @throws IllegalArgumentException if a parameter is outside its range, a correlated input is not normal, the correlations
     *     contradict each other, or the function gives no finite result
     */
    public Simulation simulated(int trials, long seed) {
        Require.inRange("trials", trials, 1_000, MOST_TRIALS, "");
        return Simulation.of(results(new Draws(inputs, correlation, seed), trials));
    }

    private double[] results(Draws draws, int trials) {
        double[] results = new double[trials];
        for (int i = 0; i < trials; i++) {
            results[i] = at(draws.next());
        }
        return results;
    }

    /**
     * Returns the result by drawing the inputs in blocks of trials until mean, standard uncertainty and both ends of the coverage
     * interval are known to half a unit of the last digit of u(y) that counts (the adaptive procedure of JCGM 101, 7.9), or until
     * another block would pass 10,000,000 trials; the result tells which. A block has max(100/(1 − p), 10,000) trials.
     *
     * @param significantDigits digits of u(y) that count; 1 to 3
     * @param probability coverage probability p, such as 0.95; in [0.5, 0.9999]
     * @param seed seed: the same gives the same result
     * @return the simulated result with the errors that were reached
     * @throws IllegalArgumentException if a parameter is outside its range, a correlated input is not normal, the correlations
     *     contradict each other, or the function gives no finite result
     */
    public StabilisedSimulation simulatedUntilStable(int significantDigits, double probability, long seed) {
        Require.inRange("significantDigits", significantDigits, 1, 3, "");
        Require.inRange("probability", probability, 0.5, 0.9999, "");
        Stabilisation stabilisation = new Stabilisation(probability, significantDigits);
        Draws draws = new Draws(inputs, correlation, seed);
        int size = stabilisation.blockSize();
        for (int trials = size; trials <= MOST_TRIALS && !stabilisation.isStable(); trials += size) {
            stabilisation.add(results(draws, size));
        }
        return stabilisation.result();
    }

    /**
     * Holds the law of propagation against a simulation by the test of JCGM 101, clause 8: both ends of the 95 % interval must agree
     * within half a unit of the last significant digit of u(y).
     *
     * @param significantDigits digits of u(y) that count; 1 or 2
     * @param trials count of trials; 1,000 to 10,000,000, and 1,000,000 for a sharp test
     * @param seed seed of the simulation
     * @return the comparison
     * @throws IllegalArgumentException if a parameter is outside its range or one way gives no result
     */
    public Validation validated(int significantDigits, int trials, long seed) {
        Require.inRange("significantDigits", significantDigits, 1, 2, "");
        return Validation.of(propagated(), simulated(trials, seed), significantDigits);
    }

    @Override
    public String toString() {
        return "MeasurementModel[" + inputs.stream().map(UncertainInput::name).toList() + "]";
    }
}
