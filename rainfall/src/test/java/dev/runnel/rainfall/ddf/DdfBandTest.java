package dev.runnel.rainfall.ddf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.rainfall.event.PeakDepth;
import dev.runnel.rainfall.event.RainfallEvent;
import dev.runnel.timeseries.Interval;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

class DdfBandTest {
    private static final Duration HOUR = Duration.ofHours(1);
    private static final Duration THREE = Duration.ofHours(3);
    private static final Instant START = Instant.parse("2026-07-01T12:00:00Z");

    private static DdfTable table(double factor) {
        double[][] depths = {
            {10 * factor, 15 * factor, 20 * factor, 30 * factor}, {16 * factor, 24 * factor, 32 * factor, 48 * factor}
        };
        return DdfTable.of(
                ReturnPeriodBasis.ANNUAL_MAXIMUM, List.of(HOUR, THREE), new double[] {2, 5, 10, 100}, depths);
    }

    private final DdfBand band = DdfBand.of(table(1), table(0.75), table(4.0 / 3), 0.9);

    /** 20 mm are 10 years; the upper table has 20 mm at 5 years, the lower one 22.5 mm at 100 and 15 at 10. */
    @Test
    void theUpperDepthsMakeTheLowerReturnPeriod() {
        DdfBand.Rarity rarity = band.returnPeriod(HOUR, 20);
        assertThat(rarity.estimate().years()).isCloseTo(10, within(1e-9));
        assertThat(rarity.lower().years()).isCloseTo(5, within(1e-9));
        assertThat(rarity.upper().years()).isBetween(20.0, 100.0);
        assertThat(rarity.toText()).matches("1 in 10 years, 90 % between 5 and [0-9.]+");
        assertThat(band.depthMm(HOUR, 10).lower()).isEqualTo(15);
        assertThat(band.depthMm(HOUR, 10).upper()).isCloseTo(80.0 / 3, within(1e-12));
        assertThat(band.returnPeriod(THREE, 46).toText()).endsWith("and more than 100");
    }

    /** Over an hour 10 years, over three hours about 2: the hour governs all three. */
    @Test
    void anEventIsAsRareAsOverItsRarestDuration() {
        RainfallEvent event = RainfallEvent.of(
                Interval.of(START, Duration.ofHours(4)),
                30,
                List.of(new PeakDepth(HOUR, 20, START), new PeakDepth(THREE, 17, START)));
        assertThat(band.rarity(event)).isEqualTo(band.returnPeriod(HOUR, 20));
        assertThat(band.rarity(event).estimate())
                .isEqualTo(
                        band.relation().rarity(event).governing().orElseThrow().returnPeriod());
    }

    @Test
    void refusesWhatDoesNotBelongTogether() {
        DdfTable peaks = DdfTable.of(
                ReturnPeriodBasis.PEAKS_OVER_THRESHOLD, List.of(HOUR), new double[] {1, 5}, new double[][] {{5, 10}});
        assertThatIllegalArgumentException()
                .isThrownBy(() -> DdfBand.of(table(1), table(0.5), peaks, 0.9))
                .withMessageStartingWith("lower and upper must be of the basis of the relation, annual maximum, were ");
        assertThatIllegalArgumentException()
                .isThrownBy(
                        () -> DdfBand.of(table(1), table(1.1), table(1.2), 0.9).depthMm(HOUR, 10))
                .withMessageStartingWith("lower and upper must hold the depth of 1 h and 10 years, were ");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> DdfBand.of(table(1), table(0.5), table(2), 90))
                .withMessage("confidence must be inside (0, 1), was 90");
    }
}
