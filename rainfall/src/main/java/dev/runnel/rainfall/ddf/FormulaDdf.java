package dev.runnel.rainfall.ddf;

import dev.runnel.internal.Text;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.apiguardian.api.API;

/**
 * A depth-duration-frequency relation from one {@link IntensityFormula} for each of several return periods. Immutable and
 * thread-safe. Between return periods the depth is linear in ln T of peaks over threshold, as in {@link DdfTable}; the range of durations is the
 * one that all formulae share.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class FormulaDdf implements DepthDurationFrequency {
    /** Formulae that cross do so where their curves bend; this many durations, evenly in ln D, are looked at. */
    private static final int CHECKED = 200;

    private final ReturnPeriodColumns columns;
    private final List<IntensityFormula> formulas;
    private final Duration shortest;
    private final Duration longest;

    private FormulaDdf(
            ReturnPeriodColumns columns, List<IntensityFormula> formulas, Duration shortest, Duration longest) {
        this.columns = columns;
        this.formulas = formulas;
        this.shortest = shortest;
        this.longest = longest;
    }

    /**
     * Returns the relation.
     *
     * @param basis what the return periods count
     * @param byYears formula for each return period in years; at least one
     * @return the relation
     * @throws IllegalArgumentException if there is none, the formulae share no duration, a return period is out of range,
     *     or depth does not rise with return period at one of 200 durations checked
     */
    public static FormulaDdf of(ReturnPeriodBasis basis, Map<Double, IntensityFormula> byYears) {
        Objects.requireNonNull(basis, "basis");
        if (byYears.isEmpty()) {
            throw new IllegalArgumentException("byYears must hold at least one formula, held none");
        }
        TreeMap<Double, IntensityFormula> sorted = new TreeMap<>(byYears);
        double[] years =
                sorted.keySet().stream().mapToDouble(Double::doubleValue).toArray();
        Arrays.stream(years).forEach(each -> basis.requireYears("return period", each));
        List<IntensityFormula> formulas = List.copyOf(sorted.values());
        Duration shortest = formulas.stream()
                .map(IntensityFormula::shortestDuration)
                .max(Duration::compareTo)
                .orElseThrow();
        Duration longest = formulas.stream()
                .map(IntensityFormula::longestDuration)
                .min(Duration::compareTo)
                .orElseThrow();
        if (longest.compareTo(shortest) < 0) {
            throw new IllegalArgumentException("formulae must share durations, one begins at "
                    + Text.exactDuration(shortest) + " and one ends at " + Text.exactDuration(longest));
        }
        FormulaDdf relation = new FormulaDdf(ReturnPeriodColumns.of(years, basis), formulas, shortest, longest);
        relation.requireRising();
        return relation;
    }

    private void requireRising() {
        double ratio = (double) longest.toNanos() / shortest.toNanos();
        for (int i = 0; i < CHECKED; i++) {
            double share = i / (CHECKED - 1.0);
            long nanos = Math.round(shortest.toNanos() * Math.pow(ratio, share));
            Duration duration = Duration.ofNanos(Math.min(nanos, longest.toNanos()));
            double[][] row = {row(duration)};
            for (int column = 0; column < columns.years().length; column++) {
                DdfTableChecks.checkDepth(List.of(duration), columns.years(), row, 0, column);
            }
        }
    }

    private double[] row(Duration duration) {
        return formulas.stream().mapToDouble(each -> each.depthMm(duration)).toArray();
    }

    private double[] coveredRow(Duration duration) {
        if (!covers(duration)) {
            throw new IllegalArgumentException("duration must be in [" + Text.exactDuration(shortest) + ", "
                    + Text.exactDuration(longest) + "], was " + Text.exactDuration(duration));
        }
        return row(duration);
    }

    @Override
    public double depthMm(Duration duration, double returnPeriodYears) {
        return columns.depthMm(coveredRow(duration), returnPeriodYears);
    }

    @Override
    public ReturnPeriod returnPeriod(Duration duration, double depthMm) {
        return columns.returnPeriod(coveredRow(duration), depthMm);
    }

    @Override
    public ReturnPeriodBasis basis() {
        return columns.basis();
    }

    @Override
    public Duration shortestDuration() {
        return shortest;
    }

    @Override
    public Duration longestDuration() {
        return longest;
    }

    @Override
    public double smallestYears() {
        return columns.smallest();
    }

    @Override
    public double greatestYears() {
        return columns.greatest();
    }

    @Override
    public String toString() {
        return "FormulaDdf[" + formulas.size() + " return periods "
                + Text.significant(smallestYears(), 6) + " to " + Text.significant(greatestYears(), 6)
                + " years, " + Text.duration(shortest) + " to " + Text.duration(longest) + ", " + basis().toText()
                + "]";
    }
}
