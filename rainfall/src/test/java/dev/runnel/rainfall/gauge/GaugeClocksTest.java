package dev.runnel.rainfall.gauge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** Twelve storms of 5 h, one each third day from noon, in steps of 5 min; all invented. */
class GaugeClocksTest {
    private static final Instant START = Instant.parse("2026-03-01T00:00:00Z");
    private static final Duration STEP = Duration.ofMinutes(5);
    private static final int STORMS = 12;
    private static final int STEPS_A_DAY = 288;
    private static final int STEPS = 3 * STORMS * STEPS_A_DAY;
    private static final Duration TOLERANCE = Duration.ofMinutes(25);

    private static List<Interval> storms() {
        List<Interval> storms = new ArrayList<>();
        for (int i = 0; i < STORMS; i++) {
            storms.add(
                    Interval.of(START.plus(Duration.ofDays(3L * i)).plus(Duration.ofHours(12)), Duration.ofHours(5)));
        }
        return storms;
    }

    /** The rain that falls: bursts of a shower, other ones in each storm. */
    private static double[] truth(long seed) {
        Random random = new Random(seed);
        double[] rain = new double[STEPS];
        for (int storm = 0; storm < STORMS; storm++) {
            int first = storm * 3 * STEPS_A_DAY + 144;
            for (int burst = 0; burst < 6; burst++) {
                int at = first + random.nextInt(54);
                for (int i = 0; i < 6; i++) {
                    rain[at + i] += 0.5 * random.nextDouble();
                }
            }
        }
        return rain;
    }

    /** What a gauge reads: a factor of its own, a tenth of scatter, and its clock minutes ahead from a storm on. */
    private static RegularSeries gauge(double[] truth, long seed, double factor, int minutes, int fromStorm) {
        Random random = new Random(seed);
        double[] read = new double[STEPS];
        for (int i = 0; i < STEPS; i++) {
            int to = i / (3 * STEPS_A_DAY) >= fromStorm ? i + minutes / 5 : i;
            if (to >= 0 && to < STEPS) {
                read[to] += truth[i] * factor * (0.9 + 0.2 * random.nextDouble());
            }
        }
        return RegularSeries.of(START, STEP, read);
    }

    private static GaugeClocks three(int minutes, int fromStorm) {
        double[] truth = truth(1);
        return GaugeClocks.of(
                Map.of(
                        "east", gauge(truth, 2, 1.3, 0, 0),
                        "north", gauge(truth, 3, 1, 0, 0),
                        "south", gauge(truth, 4, 0.5, minutes, fromStorm)),
                storms());
    }

    @Test
    void equalClocksShowNoShift() {
        GaugeClocks clocks = three(0, 0);
        for (String gauge : List.of("east", "north", "south")) {
            assertThat(clocks.shifts(gauge))
                    .hasSize(STORMS)
                    .allSatisfy(storm -> assertThat(storm.shift()).isZero());
            assertThat(clocks.shiftedStorms(gauge, TOLERANCE)).isEmpty();
        }
        assertThat(clocks).hasToString("GaugeClocks[east, north, south] in 12 storms, cells of 10 min");
        assertThat(clocks.cell()).isEqualTo(Duration.ofMinutes(10));
    }

    @Test
    void aClockThatWasSetWrongIsFoundFromThatStormOn() {
        for (int minutes : new int[] {60, 180, -60, -300, 30, 360}) {
            GaugeClocks clocks = three(minutes, 5);
            ShiftedStorms found = clocks.shiftedStorms("south", TOLERANCE).orElseThrow();
            assertThat(found.shift()).isEqualTo(Duration.ofMinutes(minutes));
            assertThat(found.shifted()).isEqualTo(7);
            assertThat(found.others()).isZero();
            assertThat(found.before()).isEqualTo(5);
            assertThat(found.after()).isZero();
            assertThat(found.interval().start()).isEqualTo(storms().get(5).start());
            assertThat(found.interval().end()).isEqualTo(storms().get(11).end());
            // Of three gauges the two good ones agree with each other.
            assertThat(clocks.shiftedStorms("east", TOLERANCE)).isEmpty();
            assertThat(clocks.shiftedStorms("north", TOLERANCE)).isEmpty();
        }
        assertThat(three(-60, 5).shiftedStorms("south", TOLERANCE).orElseThrow())
                .hasToString(
                        "1 h earlier in 7 of 7 storms, 2026-03-16T12:00:00Z/2026-04-03T17:00:00Z; 5 before, 0 after");
        assertThat(three(60, 5).shifts("south").get(6).toString())
                .startsWith("2026-03-19T12:00:00Z/2026-03-19T17:00:00Z: 1 h later, likeness ");
        assertThat(three(60, 5).shifts("south").get(4).toString()).contains(": no shift, likeness ");
    }

    /** Of two gauges each is off beside the other. */
    @Test
    void ofTwoBothAreShifted() {
        double[] truth = truth(1);
        GaugeClocks clocks =
                GaugeClocks.of(Map.of("a", gauge(truth, 2, 1, 0, 0), "b", gauge(truth, 3, 1, 120, 4)), storms());
        assertThat(clocks.shiftedStorms("b", TOLERANCE).orElseThrow().shift()).isEqualTo(Duration.ofHours(2));
        assertThat(clocks.shiftedStorms("a", TOLERANCE).orElseThrow().shift()).isEqualTo(Duration.ofHours(-2));
    }

    /** A clock mended after five storms: those before and after it are counted. */
    @Test
    void aClockThatWasMendedEndsTheRow() {
        double[] truth = truth(1);
        RegularSeries off = gauge(truth, 4, 1, 60, 3);
        RegularSeries good = gauge(truth, 4, 1, 0, 0);
        int mended = 8 * 3 * STEPS_A_DAY;
        double[] joined = off.toValues();
        System.arraycopy(good.toValues(), mended, joined, mended, STEPS - mended);
        GaugeClocks clocks = GaugeClocks.of(
                Map.of("a", gauge(truth, 2, 1, 0, 0), "b", RegularSeries.of(START, STEP, joined)), storms());
        ShiftedStorms found = clocks.shiftedStorms("b", TOLERANCE).orElseThrow();
        assertThat(found.before()).isEqualTo(3);
        assertThat(found.shifted()).isEqualTo(5);
        assertThat(found.after()).isEqualTo(4);
    }

    /** Three shifted storms are not enough, four are. */
    @Test
    void aRowNeedsFourMoreThanNot() {
        assertThat(three(60, 9).shiftedStorms("south", TOLERANCE)).isEmpty();
        assertThat(three(60, 8).shiftedStorms("south", TOLERANCE)).isPresent();
    }

    /** Showers that come half an hour, two hours and three hours late in turn are no clock. */
    @Test
    void shiftsThatDisagreeAreNoClock() {
        double[] truth = truth(1);
        double[] read = new double[STEPS];
        int[] minutes = {30, 120, 240, 60, 300, 30, 180, 90, 330, 150, 210, 60};
        for (int i = 0; i < STEPS; i++) {
            int to = i + minutes[i / (3 * STEPS_A_DAY)] / 5;
            if (to < STEPS) {
                read[to] += truth[i];
            }
        }
        GaugeClocks clocks = GaugeClocks.of(
                Map.of("a", gauge(truth, 2, 1, 0, 0), "b", RegularSeries.of(START, STEP, read)), storms());
        assertThat(clocks.shifts("b"))
                .allSatisfy(storm -> assertThat(storm.shift()).isGreaterThan(TOLERANCE));
        assertThat(clocks.shiftedStorms("b", TOLERANCE)).isEmpty();
    }

    @Test
    void aGaugeThatTellsNothingIsLeftOut() {
        double[] truth = truth(1);
        RegularSeries dead = RegularSeries.of(START, STEP, new double[STEPS]);
        RegularSeries missing = gauge(truth, 3, 1, 0, 0)
                .withMissing(Interval.of(storms().get(2).start().minus(Duration.ofHours(5)), Duration.ofMinutes(5)));
        Map<String, RegularSeries> gauges =
                new TreeMap<>(Map.of("a", gauge(truth, 2, 1, 0, 0), "dead", dead, "missing", missing));
        GaugeClocks clocks = GaugeClocks.of(gauges, storms());
        assertThat(clocks.shifts("dead")).isEmpty();
        assertThat(clocks.shifts("missing")).hasSize(STORMS - 1);
        // In the third storm nobody is left to compare with.
        assertThat(clocks.shifts("a")).hasSize(STORMS - 1);
    }

    /** Less than 2 mm, or rain unlike that of the others, is not compared. */
    @Test
    void littleRainAndOtherShowersAreNotCompared() {
        double[] truth = truth(1);
        double[] little = Arrays.stream(truth).map(depth -> depth * 0.01).toArray();
        double[] other = new double[STEPS];
        for (Interval storm : storms()) {
            int first = (int) (Duration.between(START, storm.start()).toMinutes() / 5);
            for (int i = -60; i < 120; i++) {
                other[first + i] = 0.1;
            }
        }
        GaugeClocks clocks = GaugeClocks.of(
                Map.of(
                        "a", gauge(truth, 2, 1, 0, 0),
                        "little", RegularSeries.of(START, STEP, little),
                        "other", RegularSeries.of(START, STEP, other)),
                storms());
        assertThat(clocks.shifts("little")).isEmpty();
        assertThat(clocks.shifts("other")).hasSizeLessThan(STORMS);
    }

    /** Steps of their own: cells of the longest. By hand: 6 mm in the first hour of one, in the third of the other. */
    @Test
    void cellsAreAsLongAsTheLongestStep() {
        double[] hours = new double[48];
        hours[20] = 6;
        double[] minutes = new double[48 * 4];
        Arrays.fill(minutes, 72, 76, 1.5);
        GaugeClocks clocks = GaugeClocks.of(
                Map.of(
                        "hours", RegularSeries.of(START, Duration.ofHours(1), hours),
                        "quarters", RegularSeries.of(START, Duration.ofMinutes(15), minutes)),
                List.of(Interval.of(START.plus(Duration.ofHours(18)), Duration.ofHours(3))));
        assertThat(clocks.cell()).isEqualTo(Duration.ofHours(1));
        StormShift shift = clocks.shifts("hours").get(0);
        assertThat(shift.shift()).isEqualTo(Duration.ofHours(2));
        assertThat(shift.likeness()).isCloseTo(1, within(1e-15));
        assertThat(clocks.shifts("quarters").get(0).shift()).isEqualTo(Duration.ofHours(-2));
    }

    /**
     * Storms that rise and fall evenly: the sum of a good gauge and of one that is an hour late is most like the other good one
     * at a shift between. Set aside, the late one accuses nobody.
     */
    @Test
    void theLateGaugeSetAsideAccusesNobody() {
        double[] truth = new double[STEPS];
        for (Interval storm : storms()) {
            int first = (int) (Duration.between(START, storm.start()).toMinutes() / 5);
            for (int i = 0; i < 36; i++) {
                truth[first + i] = 0.2 * Math.sin(Math.PI * i / 36);
            }
        }
        GaugeClocks asked = GaugeClocks.of(
                Map.of(
                        "a", gauge(truth, 2, 1, 0, 0),
                        "b", gauge(truth, 3, 1, 0, 0),
                        "c", gauge(truth, 4, 1, 60, 2)),
                storms());
        assertThat(asked.shiftedStorms("a", TOLERANCE)).isPresent();
        GaugeClocks settled = asked.settingAside(TOLERANCE);
        assertThat(settled.setAside()).containsExactly("c");
        assertThat(settled.shiftedStorms("a", TOLERANCE)).isEmpty();
        assertThat(settled.shiftedStorms("b", TOLERANCE)).isEmpty();
        assertThat(settled.shiftedStorms("c", TOLERANCE).orElseThrow().shift()).isEqualTo(Duration.ofHours(1));
        assertThat(settled).hasToString("GaugeClocks[a, b, c] in 12 storms, cells of 10 min, set aside [c]");
        assertThat(three(0, 0).settingAside(TOLERANCE).setAside()).isEmpty();
    }

    /** Two hours and an hour and a half go in the first round, an hour in the second; two gauges stay however many are off. */
    @Test
    void manyBadClocksAreSetAsideTheFarthestFirst() {
        double[] truth = truth(1);
        Map<String, RegularSeries> gauges = new TreeMap<>();
        int[] minutes = {60, 0, -120, 0, 90, 0, 0};
        for (int i = 0; i < minutes.length; i++) {
            gauges.put("gauge " + i, gauge(truth, 2 + i, 1, minutes[i], 0));
        }
        GaugeClocks settled = GaugeClocks.of(gauges, storms()).settingAside(TOLERANCE);
        assertThat(settled.setAside()).containsExactly("gauge 2", "gauge 4", "gauge 0");
        for (int i = 0; i < minutes.length; i++) {
            assertThat(settled.shiftedStorms("gauge " + i, TOLERANCE).map(ShiftedStorms::shift))
                    .isEqualTo(minutes[i] == 0 ? Optional.empty() : Optional.of(Duration.ofMinutes(minutes[i])));
        }
        Map<String, RegularSeries> none = new TreeMap<>();
        for (int i = 0; i < 5; i++) {
            none.put("gauge " + i, gauge(truth, 2 + i, 1, 70 * i - 140, 0));
        }
        assertThat(GaugeClocks.of(none, storms()).settingAside(TOLERANCE).setAside())
                .hasSizeLessThanOrEqualTo(3);
    }

    @Test
    void noStormIsNoShift() {
        GaugeClocks clocks =
                GaugeClocks.of(Map.of("a", gauge(truth(1), 2, 1, 0, 0), "b", gauge(truth(1), 3, 1, 60, 0)), List.of());
        assertThat(clocks.shifts("a")).isEmpty();
        assertThat(clocks.shiftedStorms("a", TOLERANCE)).isEqualTo(Optional.empty());
    }

    @Test
    void badInputIsNamed() {
        RegularSeries good = gauge(truth(1), 2, 1, 0, 0);
        RegularSeries daily = RegularSeries.of(START, Duration.ofDays(1), 1, 2);
        assertThatThrownBy(() -> GaugeClocks.of(Map.of("a", good), storms()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("gauges must be at least 2, was 1");
        assertThatThrownBy(() -> GaugeClocks.of(Map.of("a", good, "b", daily), storms()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("step of b must be at most 1 h to tell of a clock, was 1 d");
        assertThatThrownBy(() -> GaugeClocks.of(Map.of("a", good, "b", good.map(depth -> depth - 1)), storms()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("rainMm of b");
        Interval empty = Interval.of(START, START);
        assertThatThrownBy(() -> GaugeClocks.of(Map.of("a", good, "b", good), List.of(empty)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("storms must be longer than 0 and at most 100 d, was " + empty);
        Interval ages = Interval.of(START, Duration.ofDays(101));
        assertThatThrownBy(() -> GaugeClocks.of(Map.of("a", good, "b", good), List.of(ages)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("storms must be longer than 0 and at most 100 d, was " + ages);
        GaugeClocks clocks = GaugeClocks.of(Map.of("a", good, "b", good), storms());
        assertThatThrownBy(() -> clocks.shifts("c"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("gauge must be one of [a, b], was \"c\"");
        for (Duration tolerance : List.of(Duration.ZERO, Duration.ofMinutes(-1), Duration.ofMinutes(361))) {
            assertThatThrownBy(() -> clocks.shiftedStorms("a", tolerance))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageStartingWith("tolerance must be greater than 0 and at most 6 h, was ");
        }
    }
}
