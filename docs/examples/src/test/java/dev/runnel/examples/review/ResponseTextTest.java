package dev.runnel.examples.review;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.rainfall.response.ResponseMeasure;
import dev.runnel.rainfall.response.ResponseTrend;
import dev.runnel.timeseries.change.MannKendall;
import dev.runnel.timeseries.change.TheilSen;
import java.time.Duration;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The more measures a site is asked for, the less chance each has to tell of a change that is none. */
class ResponseTextTest {
    private static final Duration YEAR = Duration.ofDays(365);

    private static ResponseTrend trend(ResponseMeasure measure, double... values) {
        double[] years = new double[values.length];
        for (int i = 0; i < years.length; i++) {
            years[i] = (double) i / (years.length - 1);
        }
        return new ResponseTrend(measure, TheilSen.of(years, values, 0.95), MannKendall.of(values), 0);
    }

    @Test
    void oneOfTwoMustBeClearerThanOneAlone() {
        ResponseTrend hardly = trend(ResponseMeasure.LAG_TO_CENTRE, 1, 2, 3, 5, 4, 7, 8, 6, 0.5);
        ResponseTrend none = trend(ResponseMeasure.VOLUME, 3, 1, 4, 1.5, 5, 2, 6, 2.5, 3.5);
        ResponseTrend clear = trend(ResponseMeasure.LAG_TO_CENTRE, 1, 2, 3, 4, 5, 6, 7, 8, 9);
        ResponseTrend middling = trend(ResponseMeasure.LAG_TO_CENTRE, 1, 2, 3, 6, 7, 4, 8, 9, 5);
        assertThat(hardly.test().pValue()).isGreaterThan(0.05);
        assertThat(middling.test().pValue()).isBetween(0.0051, 0.049);
        assertThat(ResponseText.trends(List.of(hardly), YEAR)).endsWith("no change told by 9 storms");
        assertThat(ResponseText.trends(List.of(middling), YEAR)).contains(" from the first to the last, p 0.0");
        assertThat(ResponseText.trends(List.of(clear, none), YEAR))
                // Of the 9! orders two are as clear: all rising, all falling.
                .contains(" from the first to the last, p 5.5e-06")
                .contains("no change told");
        assertThat(ResponseText.trends(List.of(), YEAR)).startsWith("too few storms");
        double p = middling.test().pValue();
        int measures = (int) Math.ceil(0.05 / p);
        assertThat(ResponseText.trends(Collections.nCopies(measures - 1, middling), YEAR))
                .doesNotContain("no change told");
        assertThat(ResponseText.trends(Collections.nCopies(measures, middling), YEAR))
                .doesNotContain("first to the last");
    }
}
