package dev.runnel.hydraulics.gauging;

import dev.runnel.internal.Moments;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.apiguardian.api.API;

/**
 * A check of a sensor on the bench, at several levels or velocities with several readings each. Immutable and thread-safe.
 *
 * <ul>
 *   <li>bias at a level: mean reading less reference
 *   <li>repeatability at a level: standard deviation s of its n readings; pooled over all levels for the sensor
 *   <li>linearity: greatest distance of a mean reading from the straight line through all means, after ordinary least squares
 *   <li>uncertainty of a bias: U = 2 √(u_ref² + s²/n), with the pooled s where a level has one reading; k = 2
 * </ul>
 *
 * <p>The verdict counts the uncertainty: within where |bias| + U ≤ tolerance, outside where |bias| − U &gt; tolerance, undecided
 * between (the guard band of ISO 14253-1, from memory). The tolerance is the caller's: an absolute part plus a share of the
 * reference.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class BenchCheck {
    private static final int MOST = 100_000;

    private final String unit;
    private final List<BenchLevel> levels;
    private final double tolerance;
    private final double relativeTolerance;
    private final double linearity;
    private final double repeatability;

    private BenchCheck(
            String unit,
            List<BenchLevel> levels,
            double tolerance,
            double relativeTolerance,
            double linearity,
            double repeatability) {
        this.unit = unit;
        this.levels = List.copyOf(levels);
        this.tolerance = tolerance;
        this.relativeTolerance = relativeTolerance;
        this.linearity = linearity;
        this.repeatability = repeatability;
    }

    /**
     * What the readings are held against.
     *
     * @param unit unit of reference, reading and tolerance, for the certificate
     * @param referenceUncertainty standard uncertainty of the reference; 0 or greater
     * @param tolerance allowed error, absolute part; 0 or greater
     * @param relativeTolerance allowed error as a share of the reference; in [0, 1]
     * @since 0.1
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public record Terms(String unit, double referenceUncertainty, double tolerance, double relativeTolerance) {
        /**
         * Checks the parts.
         *
         * @param unit unit
         * @param referenceUncertainty standard uncertainty of the reference
         * @param tolerance allowed error, absolute part
         * @param relativeTolerance allowed error as a share of the reference
         * @throws IllegalArgumentException if a part is outside its range, or no error is allowed at all
         */
        public Terms {
            Objects.requireNonNull(unit, "unit");
            Require.nonNegative("referenceUncertainty", referenceUncertainty, unit);
            Require.nonNegative("tolerance", tolerance, unit);
            Require.inRange("relativeTolerance", relativeTolerance, 0, 1, "");
            if (tolerance + relativeTolerance == 0) {
                throw new IllegalArgumentException("tolerance must allow some error, was 0");
            }
        }

        /**
         * Returns terms with a tolerance in the unit of the readings.
         *
         * @param tolerance allowed error; greater than 0, finite
         * @param unit unit, such as {@code m} or {@code m/s}
         * @return the terms, with an exact reference
         * @throws IllegalArgumentException if {@code tolerance} is outside its range
         */
        public static Terms ofTolerance(double tolerance, String unit) {
            Objects.requireNonNull(unit, "unit");
            return new Terms(unit, 0, Require.positive("tolerance", tolerance, unit), 0);
        }

        /**
         * Returns a copy that allows a share of the reference beside the absolute part.
         *
         * @param share share, 0.02 for 2 %; in [0, 1]
         * @return the copy
         * @throws IllegalArgumentException if {@code share} is outside its range
         */
        public Terms plusShare(double share) {
            return new Terms(unit, referenceUncertainty, tolerance, share);
        }

        /**
         * Returns a copy with an uncertain reference.
         *
         * @param standardUncertainty standard uncertainty of the reference; 0 or greater, finite
         * @return the copy
         * @throws IllegalArgumentException if it is outside its range
         */
        public Terms withReferenceUncertainty(double standardUncertainty) {
            return new Terms(unit, standardUncertainty, tolerance, relativeTolerance);
        }

        double allowed(double reference) {
            return tolerance + relativeTolerance * Math.abs(reference);
        }
    }

    /**
     * Returns the check of readings.
     *
     * @param reference reference values; equal ones make a level, at least 3 different; finite
     * @param reading readings; same length, finite
     * @param terms what they are held against
     * @return the check
     * @throws IllegalArgumentException if an array is outside its range or there are fewer than 3 levels
     */
    public static BenchCheck of(double[] reference, double[] reading, Terms terms) {
        Require.inRange("count of readings", reference.length, 3, MOST, "");
        Require.sameLength("reading", reference.length, reading.length);
        TreeMap<Double, List<Double>> byLevel = new TreeMap<>();
        for (int i = 0; i < reference.length; i++) {
            double level = Require.finite("reference[" + i + "]", reference[i], terms.unit()) + 0.0;
            Require.finite("reading[" + i + "]", reading[i], terms.unit());
            byLevel.computeIfAbsent(level, key -> new ArrayList<>()).add(reading[i] - level);
        }
        Require.atLeast("count of levels", byLevel.size(), 3);
        double pooled = pooled(byLevel);
        List<BenchLevel> levels = new ArrayList<>();
        byLevel.forEach((level, errors) -> levels.add(level(level, errors, pooled, terms)));
        return new BenchCheck(
                terms.unit(), levels, terms.tolerance(), terms.relativeTolerance(), linearity(levels), pooled);
    }

    private static double[] array(List<Double> values) {
        return values.stream().mapToDouble(v -> v).toArray();
    }

    private static double pooled(Map<Double, List<Double>> byLevel) {
        double sum = 0;
        int freedom = 0;
        for (List<Double> errors : byLevel.values()) {
            sum += Moments.squares(array(errors));
            freedom += errors.size() - 1;
        }
        return freedom == 0 ? 0 : Math.sqrt(sum / freedom);
    }

    private static BenchLevel level(double reference, List<Double> errors, double pooled, Terms terms) {
        int n = errors.size();
        double bias = Moments.mean(array(errors));
        double deviation = n > 1 ? Moments.deviation(array(errors)) : 0;
        double ofReadings = n > 1 ? deviation : pooled;
        double expanded = 2 * Math.hypot(terms.referenceUncertainty(), ofReadings / Math.sqrt(n));
        return new BenchLevel(
                reference, n, bias, deviation, expanded, ToleranceVerdict.of(bias, expanded, terms.allowed(reference)));
    }

    private static double linearity(List<BenchLevel> levels) {
        double[] x = levels.stream().mapToDouble(BenchLevel::reference).toArray();
        // A line through the biases leaves what one through the mean readings leaves, with fewer digits lost.
        double[] y = levels.stream().mapToDouble(BenchLevel::bias).toArray();
        double greatest = 0;
        for (double residual : CalibrationData.of(x, y).line().residuals()) {
            greatest = Math.max(greatest, Math.abs(residual));
        }
        return greatest;
    }

    /**
     * Returns what was found at each level.
     *
     * @return the levels, references ascending, unmodifiable
     */
    public List<BenchLevel> levels() {
        return levels;
    }

    /**
     * Returns the mean bias of the levels.
     *
     * @return bias, in the unit of the check
     */
    public double bias() {
        return levels.stream().mapToDouble(BenchLevel::bias).average().orElse(0);
    }

    /**
     * Returns the greatest distance of a mean reading from the best straight line.
     *
     * @return linearity error, in the unit of the check
     */
    public double linearity() {
        return linearity;
    }

    /**
     * Returns the pooled standard deviation of the readings of one level.
     *
     * @return repeatability, in the unit of the check; 0 where no level has two readings
     */
    public double repeatability() {
        return repeatability;
    }

    /**
     * Returns the verdict on the sensor: outside if one level is, else undecided if one level is, else within.
     *
     * @return the verdict
     */
    public ToleranceVerdict verdict() {
        boolean undecided = false;
        for (BenchLevel level : levels) {
            if (level.verdict() == ToleranceVerdict.OUTSIDE) {
                return ToleranceVerdict.OUTSIDE;
            }
            undecided |= level.verdict() == ToleranceVerdict.UNDECIDED;
        }
        return undecided ? ToleranceVerdict.UNDECIDED : ToleranceVerdict.WITHIN;
    }

    private String tolerance() {
        return (tolerance > 0 ? Text.number(tolerance) + " " + unit : "")
                + (tolerance > 0 && relativeTolerance > 0 ? " + " : "")
                + (relativeTolerance > 0 ? Text.significant(100 * relativeTolerance, 4) + " % of the reference" : "");
    }

    /**
     * Returns a certificate in plain text.
     *
     * @param instrument what was checked, one line
     * @param day day of the check
     * @return lines ended by a line feed
     */
    public String certificate(String instrument, LocalDate day) {
        Objects.requireNonNull(day, "day");
        StringBuilder text = new StringBuilder("Bench check of " + instrument.replaceAll("\\R", " ") + "\n")
                .append("Day            ")
                .append(day)
                .append('\n')
                .append("Unit           ")
                .append(unit)
                .append('\n')
                .append("Tolerance      ")
                .append(tolerance())
                .append('\n')
                .append("Bias           ")
                .append(Text.significant(bias(), 4))
                .append('\n')
                .append("Linearity      ")
                .append(Text.significant(linearity, 4))
                .append('\n')
                .append("Repeatability  ")
                .append(Text.significant(repeatability, 4))
                .append('\n')
                .append("Verdict        ")
                .append(verdict())
                .append('\n')
                .append('\n');
        for (BenchLevel level : levels) {
            text.append(Text.number(level.reference()))
                    .append(": ")
                    .append(level.readings())
                    .append(level.readings() == 1 ? " reading" : " readings")
                    .append(", bias ")
                    .append(Text.significant(level.bias(), 4))
                    .append(" ± ")
                    .append(Text.significant(level.expandedUncertainty(), 2))
                    .append(" (k = 2), ")
                    .append(level.verdict())
                    .append('\n');
        }
        return text.append(
                        "\nThe uncertainty counts in the verdict: WITHIN and OUTSIDE hold with it added or taken off.\n")
                .toString();
    }

    /**
     * Returns the levels as comma-separated text.
     *
     * @return a line with the names {@code reference,readings,bias,repeatability,expanded_uncertainty,verdict}, then one line a level,
     *     numbers at full precision, lines ended by a line feed
     */
    public String toCsv() {
        StringBuilder text = new StringBuilder("reference,readings,bias,repeatability,expanded_uncertainty,verdict\n");
        for (BenchLevel level : levels) {
            text.append(Text.number(level.reference()))
                    .append(',')
                    .append(level.readings())
                    .append(',')
                    .append(Text.number(level.bias()))
                    .append(',')
                    .append(Text.number(level.repeatability()))
                    .append(',')
                    .append(Text.number(level.expandedUncertainty()))
                    .append(',')
                    .append(level.verdict())
                    .append('\n');
        }
        return text.toString();
    }

    @Override
    public String toString() {
        return "BenchCheck[" + levels.size() + " levels, bias " + Text.significant(bias(), 3) + " " + unit
                + ", linearity " + Text.significant(linearity, 3) + ", repeatability "
                + Text.significant(repeatability, 3) + ", " + verdict() + "]";
    }
}
