package dev.runnel.rainfall.gauge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

class GaugeGroupsTest {
    private static final Instant START = Instant.parse("2026-04-07T00:00:00Z");

    private static final Duration DAY = Duration.ofDays(1);

    private static RegularSeries daily(double... depths) {
        return RegularSeries.of(START, DAY, depths);
    }

    /** Ninety days, two of five wet on the mean, of a rain of their own. */
    private static double[] rain(int seed) {
        Random random = new Random(seed);
        double[] depths = new double[90];
        Arrays.setAll(depths, i -> random.nextInt(5) < 2 ? 1 + random.nextInt(150) / 10.0 : 0);
        return depths;
    }

    private static double[] times(double[] depths, double factor) {
        return Arrays.stream(depths).map(depth -> factor * depth).toArray();
    }

    @Test
    void twoRainsAreTwoGroups() {
        GaugeGroups groups = GaugeGroups.of(Map.of(
                "alder", daily(rain(1)),
                "beck", daily(rain(2)),
                "cliff", daily(times(rain(1), 1.1)),
                "dune", daily(times(rain(2), 2)),
                "elm", daily(rain(3))));
        assertThat(groups.groups()).containsExactly(List.of("alder", "cliff"), List.of("beck", "dune"), List.of("elm"));
        assertThat(groups).hasToString("GaugeGroups[[alder, cliff], [beck, dune], [elm]]");
        assertThat(groups.rankCorrelation("alder", "cliff").orElseThrow()).isCloseTo(1, within(1e-12));
        assertThat(groups.rankCorrelation("cliff", "beck").orElseThrow()).isNegative();
        assertThat(groups.greatestCorrelation("elm").orElseThrow())
                .isEqualTo(Math.max(
                        Math.max(
                                groups.rankCorrelation("elm", "alder").orElseThrow(),
                                groups.rankCorrelation("elm", "beck").orElseThrow()),
                        Math.max(
                                groups.rankCorrelation("elm", "cliff").orElseThrow(),
                                groups.rankCorrelation("elm", "dune").orElseThrow())));
    }

    /** Nineteen days on which one of the two had 1 mm decide nothing, twenty do. */
    @Test
    void fewWetDaysDecideNothing() {
        double[] one = new double[30];
        double[] other = new double[30];
        for (int i = 0; i < 19; i++) {
            one[i] = 1 + i;
            other[i] = 20 - i;
        }
        GaugeGroups few = GaugeGroups.of(Map.of("a", daily(one), "b", daily(other)));
        assertThat(few.groups()).containsExactly(List.of("a", "b"));
        assertThat(few.rankCorrelation("a", "b")).isEmpty();
        assertThat(few.greatestCorrelation("a")).isEmpty();
        one[19] = 0.99;
        other[19] = 0.99;
        assertThat(GaugeGroups.of(Map.of("a", daily(one), "b", daily(other))).rankCorrelation("a", "b"))
                .isEmpty();
        one[19] = 30;
        other[19] = 0;
        GaugeGroups enough = GaugeGroups.of(Map.of("a", daily(one), "b", daily(other)));
        assertThat(enough.groups()).containsExactly(List.of("a"), List.of("b"));
        assertThat(enough.rankCorrelation("a", "b").orElseThrow()).isCloseTo(-1, within(1e-12));
    }

    /** A gauge that dies keeps its neighbours: days of a spell of more than 15 days without rain at one of the two do not count. */
    @Test
    void aDeadSpellTellsNothing() {
        double[] dead = rain(1);
        Arrays.fill(dead, 20, 35, 0);
        double[] one = rain(1);
        one[19] = 3;
        dead[19] = 3;
        one[35] = 2;
        dead[35] = 2;
        assertThat(GaugeGroups.of(Map.of("a", daily(one), "dead", daily(dead)))
                        .rankCorrelation("a", "dead")
                        .orElseThrow())
                .isLessThan(0.9);
        dead[35] = 0;
        one[36] = 2;
        dead[36] = 2;
        assertThat(GaugeGroups.of(Map.of("a", daily(one), "dead", daily(dead)))
                        .rankCorrelation("a", "dead")
                        .orElseThrow())
                .isCloseTo(1, within(1e-12));
        double[] dying = rain(1);
        Arrays.fill(dying, 60, 90, 0);
        assertThat(GaugeGroups.of(Map.of("a", daily(rain(1)), "dying", daily(dying)))
                        .rankCorrelation("a", "dying")
                        .orElseThrow())
                .isCloseTo(1, within(1e-12));
        double[] never = new double[90];
        assertThat(GaugeGroups.of(Map.of("a", daily(rain(1)), "dead", daily(never)))
                        .groups())
                .containsExactly(List.of("a", "dead"));
    }

    /** A short record decides with nobody, and is held to be of the greatest group. */
    @Test
    void aShortRecordJoinsTheGreatestGroup() {
        GaugeGroups groups = GaugeGroups.of(Map.of(
                "a", daily(rain(2)),
                "b", daily(rain(1)),
                "c", daily(rain(1)),
                "short", daily(1, 2, 3)));
        assertThat(groups.groups()).containsExactly(List.of("a"), List.of("b", "c", "short"));
    }

    /** Joined through a third: a with b, b with c, but a and c apart. */
    @Test
    void groupsAreJoinedThroughOthers() {
        double[] a = rain(8);
        double[] c = rain(9);
        double[] b = new double[90];
        Arrays.setAll(b, i -> a[i] + c[i]);
        GaugeGroups groups = GaugeGroups.of(Map.of("a", daily(a), "b", daily(b), "c", daily(c)));
        assertThat(groups.rankCorrelation("a", "c").orElseThrow()).isLessThan(0.25);
        assertThat(groups.rankCorrelation("a", "b").orElseThrow()).isGreaterThan(0.25);
        assertThat(groups.rankCorrelation("b", "c").orElseThrow()).isGreaterThan(0.25);
        assertThat(groups.groups()).containsExactly(List.of("a", "b", "c"));
    }

    /** Hours are summed into days of UTC; a day with a missing hour does not count. */
    @Test
    void stepsAreSummedIntoDays() {
        double[] depths = rain(1);
        double[] hours = new double[90 * 24];
        for (int i = 0; i < 90; i++) {
            hours[24 * i + 5] = depths[i] / 4;
            hours[24 * i + 23] = depths[i] * 3 / 4;
        }
        RegularSeries hourly = RegularSeries.of(START, Duration.ofHours(1), hours);
        GaugeGroups groups = GaugeGroups.of(Map.of("a", daily(depths), "b", hourly));
        assertThat(groups.rankCorrelation("a", "b").orElseThrow()).isCloseTo(1, within(1e-12));
        for (int i = 0; i < 80; i++) {
            hours[24 * i] = Double.NaN;
        }
        RegularSeries holed = RegularSeries.of(START, Duration.ofHours(1), hours);
        assertThat(GaugeGroups.of(Map.of("a", daily(depths), "b", holed)).rankCorrelation("a", "b"))
                .isEmpty();
    }

    @Test
    void depthsThatNeverChangeHaveNoRanks() {
        double[] same = new double[30];
        Arrays.fill(same, 2);
        double[] rising = new double[30];
        Arrays.setAll(rising, i -> i);
        GaugeGroups groups = GaugeGroups.of(Map.of("a", daily(same), "b", daily(rising)));
        assertThat(groups.rankCorrelation("a", "b")).hasValue(0);
        assertThat(groups.groups()).hasSize(2);
    }

    @Test
    void badInputIsNamed() {
        assertThat(GaugeGroups.of(Map.of("a", daily(1))).groups()).containsExactly(List.of("a"));
        GaugeGroups two = GaugeGroups.of(Map.of("a", daily(1), "b", daily(2)));
        assertThatThrownBy(() -> GaugeGroups.of(Map.of())).hasMessage("gauges must be at least 1, was 0");
        assertThatThrownBy(() -> GaugeGroups.of(Map.of("a", daily(-1))))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("rainMm of a");
        assertThatThrownBy(() -> GaugeGroups.of(Map.of("a", RegularSeries.of(START, Duration.ofHours(25), 1))))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("step of a must be in [0, 86400]");
        assertThatThrownBy(() -> two.rankCorrelation("a", "c")).hasMessage("other must be one of [a, b], was \"c\"");
        assertThatThrownBy(() -> two.rankCorrelation("a", "a")).hasMessage("other must be another gauge than \"a\"");
        assertThatThrownBy(() -> two.greatestCorrelation("d")).hasMessage("gauge must be one of [a, b], was \"d\"");
    }
}
