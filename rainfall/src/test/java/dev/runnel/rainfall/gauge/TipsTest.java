package dev.runnel.rainfall.gauge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.csv.CsvInstants;
import dev.runnel.timeseries.csv.CsvLayout;
import dev.runnel.timeseries.csv.CsvRecords;
import java.io.StringReader;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

class TipsTest {
    private static final Instant NOON = Instant.parse("2026-03-01T12:00:00Z");

    @Test
    void keepsAndCountsTipsAtOneInstant() {
        Tips tips = Tips.of(NOON, NOON, NOON.plusSeconds(7), NOON.plusSeconds(7), NOON.plusSeconds(7));
        assertThat(tips.size()).isEqualTo(5);
        assertThat(tips.coincident()).isEqualTo(3);
        assertThat(tips).hasToString("Tips[5 tips, 2026-03-01T12:00:00Z to 2026-03-01T12:00:07Z, 3 coincident]");
    }

    @Test
    void refusesTipsOutOfOrderAndSaysWhere() {
        assertThatThrownBy(() -> Tips.of(NOON, NOON.plusSeconds(60), NOON.plusSeconds(59)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("tips must be in order of time, was 2026-03-01T12:00:59Z at index 2 after"
                        + " 2026-03-01T12:01:00Z");
        assertThatThrownBy(() -> Tips.ofEpochNanos(5, 4))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("at index 1");
    }

    @Test
    void slicesByHalfOpenInterval() {
        Tips tips = Tips.of(List.of(NOON, NOON.plusSeconds(1), NOON.plusSeconds(2)));
        assertThat(tips.slice(Interval.of(NOON.plusSeconds(1), NOON.plusSeconds(2))))
                .isEqualTo(Tips.of(NOON.plusSeconds(1)));
        assertThat(tips.slice(Interval.of(NOON.minusSeconds(9), NOON))).isEqualTo(Tips.none());
        assertThat(tips.slice(Interval.of(Instant.MIN, Instant.MAX))).isEqualTo(tips);
    }

    @Test
    void doesNotShareItsArrays() {
        long[] times = {1, 2, 3};
        Tips tips = Tips.ofEpochNanos(times);
        times[0] = 9;
        tips.toEpochNanos()[1] = 9;
        assertThat(tips).isEqualTo(Tips.ofEpochNanos(1, 2, 3)).hasSameHashCodeAs(Tips.ofEpochNanos(1, 2, 3));
        assertThat(tips.epochNanos(0)).isEqualTo(1);
    }

    @Test
    void comesFromAFileInOneCall() {
        CsvInstants lines = CsvRecords.readInstants(
                "tips", new StringReader("time\n2026-03-01T12:00:00Z\n2026-03-01T12:00:07Z\n"), CsvLayout.of("time"));
        assertThat(Tips.from(lines)).isEqualTo(Tips.of(NOON, NOON.plusSeconds(7)));
    }

    @Test
    void aLineMayHoldSeveralTips() {
        Series counts = Series.builder()
                .add(NOON, 2)
                .add(NOON.plusSeconds(60), 0)
                .add(NOON.plusSeconds(120), 1)
                .build();
        Tips expected = Tips.of(NOON, NOON, NOON.plusSeconds(120));
        assertThat(Tips.ofCounts(counts)).isEqualTo(expected);
        Series depths = Series.builder()
                .add(NOON, 0.51)
                .add(NOON.plusSeconds(60), 0)
                .add(NOON.plusSeconds(120), 0.25)
                .build();
        assertThat(Tips.ofDepths(depths, TippingBucket.ofTip(0.254))).isEqualTo(expected);
        Series many = Series.builder().add(NOON, 100).build();
        assertThat(Tips.ofCounts(many).size()).isEqualTo(100);
        assertThat(Tips.ofCounts(Series.builder().build())).isEqualTo(Tips.none());
    }

    @Test
    void refusesReadingsThatAreNoTips() {
        assertThatThrownBy(() -> Tips.ofCounts(Series.builder()
                        .add(NOON, 2)
                        .add(NOON.plusSeconds(60), 1.5)
                        .build()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("counts must be whole numbers from 0 to 1000000, was 1.5 at index 1, 2026-03-01T12:01:00Z");
        assertThatThrownBy(() -> Tips.ofCounts(Series.builder().add(NOON, -1).build()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("was -1 at index 0");
        assertThatThrownBy(() ->
                        Tips.ofCounts(Series.builder().add(NOON, Double.NaN).build()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("was missing or suspect at index 0");
        assertThatThrownBy(() -> Tips.ofDepths(Series.builder().add(NOON, 0.5).build(), TippingBucket.ofTip(0.2)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("depthsMm must be whole numbers from 0 to 1000000 tips of 0.2 mm, was 0.5 at index 0,"
                        + " 2026-03-01T12:00:00Z");
    }

    @Test
    void mayBeEmpty() {
        assertThat(Tips.none().isEmpty()).isTrue();
        assertThat(Tips.none().coincident()).isZero();
        assertThat(Tips.none()).hasToString("Tips[none]");
    }
}
