package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class SiteHourTest {
    /** Whoever asks for the mean must not be told what the median may not tell. */
    @Test
    void whatIsWithheldIsWithheldByMedianAndMean() {
        SiteHour hour = new SiteHour(1);
        hour.lnDepth = -1;
        hour.meanLnDepth = -1;
        hour.lnVelocity = 0.1;
        hour.meanLnVelocity = 0.1;
        hour.withholdDepth();
        assertThat(hour.lnDepth).isNaN();
        assertThat(hour.meanLnDepth).isNaN();
        assertThat(hour.meanLnVelocity).isEqualTo(0.1);
        hour.withholdVelocity();
        assertThat(hour.lnVelocity).isNaN();
        assertThat(hour.meanLnVelocity).isNaN();
    }
}
