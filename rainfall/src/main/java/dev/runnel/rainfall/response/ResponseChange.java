package dev.runnel.rainfall.response;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.change.BeforeAfter;
import java.time.Instant;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * A figure of the response before a day and after it: works done, a pipe repaired, an area built on.
 *
 * @param measure the figure
 * @param date when the change was made; a storm that begins then counts as after
 * @param comparison the two groups of storms
 * @param leftOut storms not used, for want of the figure or because a doubt speaks against it
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record ResponseChange(ResponseMeasure measure, Instant date, BeforeAfter comparison, int leftOut) {
    /**
     * Checks that nothing is missing.
     *
     * @param measure the figure
     * @param date when the change was made; a storm that begins then counts as after
     * @param comparison the two groups of storms
     * @param leftOut storms not used, for want of the figure or because a doubt speaks against it
     */
    public ResponseChange {
        Objects.requireNonNull(measure, "measure");
        Objects.requireNonNull(date, "date");
        Objects.requireNonNull(comparison, "comparison");
    }

    @Override
    public String toString() {
        return "ResponseChange[" + measure + " in " + measure.unit() + ", from "
                + Text.significant(comparison.medianBefore(), 3) + " (" + comparison.countBefore() + " storms) to "
                + Text.significant(comparison.medianAfter(), 3) + " (" + comparison.countAfter() + "), shift "
                + Text.significant(comparison.shift(), 3) + ", "
                + Text.significant(100 * comparison.confidence(), 3) + " % limits "
                + Text.significant(comparison.lower(), 3) + " to " + Text.significant(comparison.upper(), 3) + ", p "
                + Text.significant(comparison.pValue(), 3) + ", " + leftOut + " left out]";
    }
}
