package dev.runnel.timeseries;

import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * A resampled record together with what it rests on. Immutable and thread-safe.
 *
 * @param values one value a step; NaN where the step is covered too little or holds no reading
 * @param coverage fraction of each step that the record speaks for, in [0, 1]; same steps
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record Resampled(RegularSeries values, RegularSeries coverage) {
    /**
     * Checks that both parts have the same steps.
     *
     * @param values one value a step
     * @param coverage fraction of each step, in [0, 1]
     * @throws IllegalArgumentException if start, step or size differ
     */
    public Resampled {
        if (!values.interval().equals(coverage.interval()) || !values.step().equals(coverage.step())) {
            throw new IllegalArgumentException(
                    "coverage must have the steps of values, " + values + ", was " + coverage);
        }
    }

    /**
     * Returns how many steps have no value although the record spans them.
     *
     * @return count of NaN
     */
    public int lost() {
        return values.missing();
    }

    @Override
    public String toString() {
        return "Resampled[" + values.size() + " steps of " + Text.duration(values.step()) + ", " + lost()
                + " lost, mean coverage "
                + Text.significant(coverage.statistics().mean(), 3) + "]";
    }
}
