package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.baseline.DayCurve;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** When a clock went wrong, from days that are known and days that are not. */
class ClockBeginningTest {
    private static final LocalHours UTC = new LocalHours(ZoneOffset.UTC, Set.of(), Set.of());
    private static final SiteBaseline BASELINE = BaselineRule.of(InventedSite.MONITOR)
            .learn(InventedSite.of(20, 3).record(InventedSite.Fault.NONE))
            .baseline()
            .orElseThrow();
    private static final long BASELINE_END = EpochNanos.of(BASELINE.interval().end());

    /** Some days after the baseline, so that those before them are not. */
    private static final long FIRST = BASELINE_END / Track.DAY + 10;

    private static ClockWatch watch(double scatter, long[] days, double[] shifts) {
        DayCurve curve = DayCurve.fit(new double[24], new boolean[24], new double[24], 1);
        ClockWatch watch = new ClockWatch(
                new ClockDay(curve, true, ClockUsual.of(new double[2], new double[] {scatter, scatter}, new double[4])),
                Optional.empty());
        Ring phases = new Ring(days.length, 7);
        Ring others = new Ring(days.length, 1);
        for (int i = 0; i < days.length; i++) {
            phases.add(FIRST + days[i], shifts[i], 2, 1, 10, 0, scatter, 1);
            others.add(FIRST + days[i], shifts[i]);
        }
        watch.read(ClockStates.of(phases, others, others, others));
        return watch;
    }

    private static ClockBeginning began(long[] days, double... shifts) {
        return ClockBeginning.of(watch(0.1, days, shifts), UTC, BASELINE, 1);
    }

    /** Days from the first one. */
    private static double days(long time) {
        return (double) (time - FIRST * Track.DAY) / Track.DAY;
    }

    @Test
    void betweenTwoDaysThatFollowEachOtherItIsKnownToADay() {
        ClockBeginning began = began(new long[] {0, 1, 2, 3, 4, 5}, 0, 0, 0, 1, 1, 1);
        assertThat(days(began.since())).isBetween(2.9, 3.1);
        assertThat(days(began.earliest())).isBetween(2.0, 2.8);
        assertThat(days(began.latest())).isBetween(3.2, 4.0);
    }

    @Test
    void aDayThatWentByBothClocksSaysWhenInIt() {
        ClockBeginning began = began(new long[] {0, 1, 2, 3, 4, 5}, 0, 0, 0.25, 1, 1, 1);
        assertThat(days(began.since())).isBetween(2.7, 2.8);
        assertThat(days(began.earliest())).isBetween(2.0, 2.7);
        assertThat(days(began.latest())).isBetween(2.9, 3.0);
    }

    /** Two wet weeks between the last day at its time and the first that is late: any of them may be it. */
    @Test
    void betweenDaysThatLieFarApartAnyTimeMayBeIt() {
        ClockBeginning began = began(new long[] {0, 1, 15, 16}, 0, 0, 1, 1);
        assertThat(days(began.since())).isBetween(8.4, 8.6);
        assertThat(days(began.earliest())).isBetween(1.0, 2.0);
        assertThat(days(began.latest())).isBetween(15.0, 16.0);
    }

    @Test
    void whereAllDaysAreLateItMayHaveBegunWithTheEndOfTheBaseline() {
        ClockBeginning began = began(new long[] {0, 1, 2}, 1, 1, 1);
        assertThat(began.earliest()).isEqualTo(BASELINE_END);
        assertThat(days(began.latest())).isBetween(0.0, 1.0);
        assertThat(began.since()).isBetween(began.earliest(), began.latest());
    }

    /** One day at home before the clock went wrong is not its beginning. */
    @Test
    void oneDayAtHomeIsNoBeginning() {
        ClockBeginning began = began(new long[] {0, 1, 2, 3, 4, 5, 6}, 0, 1, 0, 0, 1, 1, 1);
        assertThat(days(began.since())).isBetween(3.5, 4.5);
        assertThat(days(began.earliest())).isGreaterThan(2.5);
    }

    /** Days that scatter as is usual, a third of them wet, a clock that goes wrong at any hour: nineteen of twenty bounds hold it. */
    @Test
    void boundsHoldTheBeginningAsOftenAsTheySay() {
        Random random = new Random(11);
        int held = 0;
        int narrow = 0;
        int all = 400;
        for (int n = 0; n < all; n++) {
            double at = 3 + 7 * random.nextDouble();
            long[] days = new long[14];
            double[] shifts = new double[14];
            int count = 0;
            for (int d = 0; d < 14; d++) {
                if (random.nextDouble() < 0.67 || d > 11) {
                    days[count] = d;
                    shifts[count++] = Math.min(1, Math.max(0, d + 1 - at)) + 0.12 * random.nextGaussian();
                }
            }
            ClockBeginning began = ClockBeginning.of(
                    watch(0.12, Arrays.copyOf(days, count), Arrays.copyOf(shifts, count)), UTC, BASELINE, 1);
            held += days(began.earliest()) <= at && at <= days(began.latest()) ? 1 : 0;
            narrow += began.latest() - began.earliest() < 4 * Track.DAY ? 1 : 0;
        }
        assertThat(held).isBetween((int) (0.93 * all), all);
        assertThat(narrow).isGreaterThan(3 * all / 4);
    }
}
