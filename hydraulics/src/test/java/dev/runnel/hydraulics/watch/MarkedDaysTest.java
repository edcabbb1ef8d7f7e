package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.hydraulics.watch.InventedSite.Fault;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Whatever a finding is called: days after it was told on which the flow is read wrongly are in doubt, and days that are read truly
 * but of another state of the site lie in another stretch than those before.
 */
class MarkedDaysTest {
    private static final int DAYS = 90;
    private static final double FROM = 30;

    /** A day whose flow is wrong by more than this is no longer the day it was. */
    private static final double WRONG = 0.12;

    private enum Kind {
        KNOCKED_UP((day, depth, velocity, random) -> new double[] {depth + 0.05, velocity}),
        KNOCKED_DOWN((day, depth, velocity, random) -> new double[] {Math.max(0.01, depth - 0.04), velocity}),
        DRIFTS_UP((day, depth, velocity, random) -> new double[] {depth + 0.002 * (day - FROM), velocity}),
        DRIFTS_DOWN((day, depth, velocity, random) ->
                new double[] {Math.max(0, depth - 0.002 * (day - FROM)), velocity}),
        VELOCITY_LOST((day, depth, velocity, random) -> new double[] {depth, 0.7 * velocity}),
        VELOCITY_LOST_SLOWLY((day, depth, velocity, random) -> new double[] {
            depth, velocity * (1 - InventedSite.ramp(FROM, 20, 0.4).applyAsDouble(day))
        }),
        VELOCITY_GAINED((day, depth, velocity, random) -> new double[] {depth, 1.35 * velocity}),
        BED(MarkedDaysTest::bed),
        ZEROS((day, depth, velocity, random) -> new double[] {depth, random.nextDouble() < 0.3 ? 0 : velocity}),
        WEAK_ECHO((day, depth, velocity, random) ->
                new double[] {depth, random.nextDouble() < 0.4 ? 0.3 * velocity : velocity}),
        SIGN_REVERSED((day, depth, velocity, random) -> new double[] {depth, -velocity}),
        SIGNS_FLIP((day, depth, velocity, random) ->
                new double[] {depth, random.nextDouble() < 0.25 ? -velocity : velocity}),
        DEPTH_IN_CENTIMETRES((day, depth, velocity, random) -> new double[] {depth * 10, velocity}),
        VELOCITY_IN_FEET((day, depth, velocity, random) -> new double[] {depth, velocity / 0.3048}),
        COLUMNS_EXCHANGED((day, depth, velocity, random) -> new double[] {velocity, depth}),
        DEPTH_DRY((day, depth, velocity, random) -> new double[] {0, velocity}),
        HELD_UP(InventedSite.heldUp(day -> 0.7)),
        HELD_UP_SLOWLY(InventedSite.heldUp(InventedSite.ramp(FROM, 15, 0.8))),
        MORE_WATER((day, depth, velocity, random) -> new double[] {1.3 * depth, 1.16 * velocity}),
        LESS_WATER((day, depth, velocity, random) -> new double[] {0.7 * depth, 0.82 * velocity});

        private final Fault fault;

        Kind(Fault fault) {
            this.fault = (day, depth, velocity, random) ->
                    day < FROM ? new double[] {depth, velocity} : fault.apply(day, depth, velocity, random);
        }
    }

    private static double[] bed(double day, double depth, double velocity, Random random) {
        double bed = InventedSite.ramp(FROM, 20, 0.06).applyAsDouble(day);
        double area = InventedSite.MONITOR.flowArea(depth + bed) - InventedSite.MONITOR.flowArea(bed);
        return new double[] {depth + bed, velocity * InventedSite.MONITOR.flowArea(depth) / area};
    }

    private static Instant day(double day) {
        return InventedSite.START.plus(Duration.ofMinutes(Math.round(day * 1440)));
    }

    private static Series flow(SiteRecord record) {
        SeriesBuilder flow = Series.builder();
        for (SiteReading reading : record) {
            double speed = Math.abs(reading.velocity());
            double value = speed * InventedSite.MONITOR.flowArea(Math.min(0.6, Math.max(0, reading.depth())));
            flow.add(reading.time(), Math.copySign(value, reading.velocity()));
        }
        return flow.build();
    }

    @ParameterizedTest
    @EnumSource(Kind.class)
    void wrongDaysAreInDoubtAndDaysOfAnotherStateLieApart(Kind kind) {
        InventedSite site = InventedSite.of(DAYS, 41);
        SiteRecord record = site.record(kind.fault);
        Series read = flow(record);
        Series sound = flow(site.record(Fault.NONE));
        WatchReport report = WatchRule.of(BaselineRule.of(InventedSite.MONITOR)
                        .learn(record)
                        .baseline()
                        .orElseThrow())
                .watch(record);
        assertThat(report.findings()).isNotEmpty();
        Instant told = report.findings().get(0).found();
        DoubtfulReadings doubt = DoubtfulReadings.of(report, record.interval().end());
        List<Instant> cuts = doubt.cuts();
        int wrong = 0;
        for (int day = (int) FROM; day < DAYS; day++) {
            if (day(day).isBefore(told)) {
                continue;
            }
            Interval hours = Interval.of(day(day), day(day + 1));
            double ratio = read.slice(hours).statistics().mean()
                    / sound.slice(hours).statistics().mean();
            if (Math.abs(ratio - 1) > WRONG) {
                wrong++;
                boolean apart =
                        cuts.stream().anyMatch(cut -> cut.isAfter(day(FROM - 10)) && !cut.isAfter(hours.start()));
                assertThat(doubt.isDoubtful(ReadingUse.FLOW, day(day + 0.5)) || apart)
                        .as("day %s, %s of the flow, %s", day, ratio, report.describe())
                        .isTrue();
                boolean water = kind == Kind.MORE_WATER || kind == Kind.LESS_WATER;
                assertThat(doubt.isDoubtful(ReadingUse.FLOW, day(day + 0.5)))
                        .as("day %s, %s of the flow, %s", day, ratio, report.describe())
                        .isEqualTo(!water);
            }
        }
        boolean heldUp = kind == Kind.HELD_UP || kind == Kind.HELD_UP_SLOWLY;
        assertThat(wrong).as("wrong days of %s", kind).isBetween(heldUp ? 0 : 20, heldUp ? 3 : DAYS);
    }
}
