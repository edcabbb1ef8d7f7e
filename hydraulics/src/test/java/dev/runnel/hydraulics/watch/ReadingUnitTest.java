package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A unit that changes from one reading to the next is told as that, with its factor, within two days. */
class ReadingUnitTest {
    private static final int DAYS = 60;

    /** Noon of the day on which the unit changes. */
    private static final double CHANGE = 40.5;

    private static final Instant CHANGED = InventedSite.START.plus(Duration.ofHours(40 * 24 + 12));

    private static InventedSite.Fault of(double depthFactor, double velocityFactor) {
        return (day, depth, velocity, random) -> day < CHANGE
                ? new double[] {depth, velocity}
                : new double[] {depth * depthFactor, velocity * velocityFactor};
    }

    private static WatchReport report(InventedSite.Fault fault, boolean withVelocity, long seed) {
        SiteRecord record = InventedSite.of(DAYS, seed).record(fault, withVelocity, true);
        BaselineSearch search = BaselineRule.of(InventedSite.MONITOR).learn(record);
        return WatchRule.of(search.baseline().orElseThrow(() -> new AssertionError(search.describe())))
                .watch(record);
    }

    private static void assertUnitAlone(WatchReport report, FindingName name, double factor) {
        assertThat(report.findings()).hasSize(1);
        Finding finding = report.findings().get(0);
        assertThat(finding.names()).containsExactly(name);
        assertThat(finding.sinceRange().contains(CHANGED)).isTrue();
        assertThat(finding.found()).isBetween(CHANGED, CHANGED.plus(Duration.ofDays(2)));
        assertThat(finding.isOpen()).isTrue();
        // What it was called first does not count: the name must be there in two days.
        assertThat(report.events())
                .filteredOn(event -> event.finding().names().contains(name))
                .first()
                .satisfies(event -> assertThat(event.time()).isBefore(CHANGED.plus(Duration.ofDays(2))));
        assertThat(finding.detail()).contains("the factor of a unit: " + shown(factor));
    }

    private static String shown(double factor) {
        return dev.runnel.internal.Text.significant(factor, 4) + ", such as ";
    }

    @ParameterizedTest
    @ValueSource(doubles = {1000, 100, 10, 1 / 0.3048, 1 / 0.0254, 0.3048, 0.1})
    void depthInAnotherUnitIsToldByBothKindsOfSite(double factor) {
        assertUnitAlone(report(of(factor, 1), true, 1), FindingName.DEPTH_UNIT, factor);
        assertUnitAlone(report(of(factor, 1), false, 2), FindingName.DEPTH_UNIT, factor);
    }

    @ParameterizedTest
    @ValueSource(doubles = {1000, 100, 10, 1 / 0.3048, 0.3048, 0.1, 0.01})
    void velocityInAnotherUnitIsTold(double factor) {
        assertUnitAlone(report(of(1, factor), true, 3), FindingName.VELOCITY_UNIT, factor);
    }

    /** A storm that lifts the level by 40 % from the hour of the change on, for a day. */
    @Test
    void depthTenTimesAsLargeIsToldWithinHalfADayOfAStorm() {
        WatchReport report = report(
                (day, depth, velocity, random) -> {
                    double lifted = day >= CHANGE && day < CHANGE + 1 ? 1.4 * depth : depth;
                    return new double[] {day < CHANGE ? depth : 10 * lifted, velocity};
                },
                false,
                7);
        Finding finding = report.findings().get(0);
        assertThat(finding.name()).isEqualTo(FindingName.DEPTH_UNIT);
        assertThat(finding.found()).isBetween(CHANGED, CHANGED.plus(Duration.ofHours(12)));
    }

    @Test
    void whatTheReadingsAreUsedForIsInDoubtAndNothingElse() {
        DoubtfulReadings doubt =
                DoubtfulReadings.of(report(of(10, 1), true, 1), InventedSite.START.plus(Duration.ofDays(DAYS)));
        Instant later = CHANGED.plus(Duration.ofDays(10));
        assertThat(doubt.isDoubtful(ReadingUse.DEPTH, later)).isTrue();
        assertThat(doubt.isDoubtful(ReadingUse.FLOW, later)).isTrue();
        assertThat(doubt.isDoubtful(ReadingUse.VELOCITY, later)).isFalse();
        assertThat(doubt.isDoubtful(ReadingUse.DEPTH, CHANGED.minus(Duration.ofDays(1))))
                .isFalse();
        assertThat(doubt.cuts()).isEmpty();
    }

    @Test
    void unitThatIsMendedEndsTheFinding() {
        Finding finding = report(
                        (day, depth, velocity, random) ->
                                new double[] {day > CHANGE && day < 46 ? depth / 0.3048 : depth, velocity},
                        true,
                        4)
                .findings()
                .get(0);
        assertThat(finding.name()).isEqualTo(FindingName.DEPTH_UNIT);
        Instant mended = InventedSite.START.plus(Duration.ofDays(46));
        assertThat(finding.closed().orElseThrow()).isBetween(mended.minusSeconds(3600), mended.plusSeconds(2 * 3600));
    }

    /** Water that stands as high as a depth in feet would, at once, is water all the same: it is slow. */
    @Test
    void waterHeldUpByTheFactorOfAFootIsNoUnit() {
        List<Finding> findings = report(InventedSite.heldUp(day -> day < CHANGE ? 0 : 2.2808), true, 5)
                .findings();
        assertThat(findings).noneMatch(finding -> finding.name() == FindingName.DEPTH_UNIT);
        assertThat(findings.get(0).name()).isEqualTo(FindingName.HELD_UP);
        assertThat(findings.get(0).found()).isBefore(CHANGED.plus(Duration.ofDays(1)));
    }

    /** A sensor that hangs dry reads what it reads, whatever the hour. */
    @Test
    void depthThatNoLongerFollowsTheDayIsNoUnit() {
        Random noise = new Random(6);
        List<Finding> findings = report(
                        (day, depth, velocity, random) -> new double[] {
                            day < CHANGE ? depth : 0.001 + 0.05 * noise.nextDouble() * noise.nextDouble(), velocity
                        },
                        false,
                        6)
                .findings();
        assertThat(findings).isNotEmpty();
        assertThat(findings).noneMatch(finding -> finding.name() == FindingName.DEPTH_UNIT);
    }

    /** A level alone that rises to ten times within two hours, reading by reading, and keeps its day. */
    @Test
    void levelAloneThatRisesThroughSomeReadingsIsNoUnit() {
        InventedSite.Fault rise = (day, depth, velocity, random) ->
                new double[] {depth * Math.pow(10, Math.min(1, Math.max(0, (day - CHANGE) * 12))), velocity};
        assertThat(report(rise, false, 2).findings()).noneMatch(finding -> finding.name() == FindingName.DEPTH_UNIT);
    }

    /** Half as much again as the scatter of the days before, from 0.12 to 0.2. */
    @Test
    void unchangedDayScattersLikeTheDaysBefore() {
        assertThat(ReadingUnit.smallScatter(0.07)).isEqualTo(0.12);
        assertThat(ReadingUnit.smallScatter(0.1)).isCloseTo(0.15, within(1e-12));
        assertThat(ReadingUnit.smallScatter(0.13)).isCloseTo(0.195, within(1e-12));
        assertThat(ReadingUnit.smallScatter(0.14)).isEqualTo(0.2);
    }

    /** What was told of the same readings before the unit came back is over with them, and does not stand open for ever. */
    @Test
    void whatWasToldOfReadingsWhoseUnitComesBackIsClosed() {
        Findings findings = new Findings();
        List<Track> told = new ArrayList<>();
        ReadingUnit unit = new ReadingUnit(
                Quantity.DEPTH,
                findings,
                (quantity, since, end) -> told.isEmpty() ? Optional.empty() : Optional.of(told.remove(0)));
        long hour = 0;
        for (; hour < 100; hour++) {
            unit.learn(hour, 0.01 * (hour % 5), 0);
        }
        hour = hours(unit, hour, 24, Math.log(1000));
        assertThat(findings.take()).extracting(WatchNotice::kind).containsExactly(WatchNotice.Kind.FOUND);
        hour = hours(unit, hour, 24, 0);
        assertThat(findings.take()).extracting(WatchNotice::kind).containsExactly(WatchNotice.Kind.CLOSED);
        Track other = findings.open(FindingName.HELD_UP, hour * SiteHour.NANOS, hour * SiteHour.NANOS);
        told.add(other);
        hours(unit, hour, 24, Math.log(1000));
        assertThat(findings.take())
                .extracting(WatchNotice::kind, each -> each.finding().name())
                .containsExactly(
                        tuple(WatchNotice.Kind.CLOSED, FindingName.HELD_UP),
                        tuple(WatchNotice.Kind.RETURNED, FindingName.DEPTH_UNIT));
        assertThat(other.open).isFalse();
    }

    private static long hours(ReadingUnit unit, long from, int count, double x) {
        for (long hour = from; hour < from + count; hour++) {
            unit.hour(hour, x + 0.01 * (hour % 5), 0, true);
        }
        return from + count;
    }
}
