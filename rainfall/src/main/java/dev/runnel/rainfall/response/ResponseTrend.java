package dev.runnel.rainfall.response;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.change.MannKendall;
import dev.runnel.timeseries.change.TheilSen;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * How a figure of the response moved from storm to storm.
 *
 * @param measure the figure
 * @param line Theil-Sen line, its times in years of 365.25 days from the first storm used
 * @param test Mann-Kendall test for a trend
 * @param leftOut storms not used, for want of the figure or because a doubt speaks against it
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record ResponseTrend(ResponseMeasure measure, TheilSen line, MannKendall test, int leftOut) {
    /**
     * Checks that nothing is missing.
     *
     * @param measure the figure
     * @param line Theil-Sen line, its times in years of 365.25 days from the first storm used
     * @param test Mann-Kendall test for a trend
     * @param leftOut storms not used, for want of the figure or because a doubt speaks against it
     */
    public ResponseTrend {
        Objects.requireNonNull(measure, "measure");
        Objects.requireNonNull(line, "line");
        Objects.requireNonNull(test, "test");
    }

    /**
     * Returns the slope.
     *
     * @return in the unit of the measure, a year
     */
    public double perYear() {
        return line.slope();
    }

    @Override
    public String toString() {
        return "ResponseTrend[" + measure + " " + Text.significant(line.slope(), 3) + " " + measure.unit() + " a year, "
                + Text.significant(100 * line.confidence(), 3) + " % limits " + Text.significant(line.lower(), 3)
                + " to "
                + Text.significant(line.upper(), 3) + ", p " + Text.significant(test.pValue(), 3) + ", " + line.count()
                + " storms, " + leftOut + " left out]";
    }
}
