package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.evidence.Direction;
import dev.runnel.internal.StateText;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What is too small for the sums of hours and stands for weeks: hours straight into the machine, twenty quiet days and what follows. */
class SlowChangeTest {
    private static final int QUIET_DAYS = 20;
    private static final WatchRule RULE = learn();

    /** Above the limit of the weeks, and too little for the sums. */
    private static final double SMALL = 0.075;

    private static final long FIRST_HOUR = Math.floorDiv(InventedSite.START.getEpochSecond(), 3600L) / 24 * 24;

    private Findings findings = new Findings();
    private ChangeWatch watch = new ChangeWatch(RULE, findings, new TideWatch(false, findings));
    private final List<WatchNotice> told = new ArrayList<>();
    private final NoisyHours hours = new NoisyHours(8, FIRST_HOUR);

    private static InventedSite site(int days) {
        return new InventedSite(days, 15, 5, 0.01, true);
    }

    private static WatchRule learn() {
        SiteRecord record = site(30).record(InventedSite.Fault.NONE);
        return WatchRule.of(
                BaselineRule.of(InventedSite.MONITOR).learn(record).baseline().orElseThrow());
    }

    private static Instant day(double day) {
        return Instant.ofEpochSecond(Math.round((FIRST_HOUR + 24 * day) * 3600));
    }

    private void days(int days, double r) {
        days(days, r, 0, r);
    }

    private void days(int days, double r, double d, double u) {
        hours.days(watch, days, r, d, u);
        told.addAll(findings.take());
    }

    private Finding last() {
        return told.get(told.size() - 1).finding();
    }

    private Finding last(int number) {
        return told.stream()
                .map(WatchNotice::finding)
                .filter(finding -> finding.number() == number)
                .reduce((before, after) -> after)
                .orElseThrow();
    }

    private List<WatchNotice.Kind> kinds() {
        return told.stream().map(WatchNotice::kind).toList();
    }

    @Test
    void limitIsThreeTimesTheScatterOfDaysAndSixPercentAtLeast() {
        assertThat(RULE.baseline().dayScatter).isBetween(0.005, 0.02);
        assertThat(SlowChange.limit(RULE.baseline())).isEqualTo(0.06);

        SiteBaseline noisy = BaselineRule.of(InventedSite.MONITOR)
                .learn(new InventedSite(30, 15, 5, 0.06, true).record(InventedSite.Fault.NONE))
                .baseline()
                .orElseThrow();
        assertThat(noisy.dayScatter).isBetween(0.04, 0.09);
        assertThat(SlowChange.limit(noisy)).isCloseTo(3 * noisy.dayScatter, within(1e-15));
    }

    @Test
    void withoutAVelocityThereIsNone() {
        SiteBaseline level = BaselineRule.of(InventedSite.MONITOR)
                .learn(site(30).record(InventedSite.Fault.NONE, false, true))
                .baseline()
                .orElseThrow();
        assertThat(SlowChange.limit(level)).isNaN();
    }

    @Test
    void smallStepIsToldOfWeeksWithItsBeginning() {
        days(QUIET_DAYS, 0);
        days(10, -SMALL);
        assertThat(told).isEmpty();
        days(6, -SMALL);
        assertThat(kinds()).containsExactly(WatchNotice.Kind.FOUND);
        // The eleventh day is the first of which most of 21 stand away; it is known in the first block of the next.
        assertThat(told.get(0).time()).isEqualTo(day(QUIET_DAYS + 11).plus(Duration.ofHours(3)));
        Finding finding = last();
        assertThat(finding.names()).containsExactly(FindingName.VELOCITY_LOW_FOR_DEPTH);
        assertThat(finding.direction()).isEqualTo(Direction.DOWN);
        assertThat(finding.shape()).isEqualTo(ChangeShape.STEP);
        assertThat(finding.since()).isEqualTo(day(QUIET_DAYS));
        assertThat(finding.sinceRange().start()).isBetween(day(QUIET_DAYS - 2), day(QUIET_DAYS));
        assertThat(finding.sinceRange().end()).isBetween(day(QUIET_DAYS), day(QUIET_DAYS + 2));
        assertThat(finding.moved()).singleElement().satisfies(moved -> {
            assertThat(moved.quantity()).isEqualTo(Quantity.VELOCITY_AT_DEPTH);
            assertThat(moved.change()).isCloseTo(Math.expm1(-SMALL), within(0.01));
            assertThat(moved.hours()).isEqualTo(21 * 24);
        });
        assertThat(finding.detail())
                .startsWith("velocity at the same depth down by about 6 % in the median of 21 days");
        assertThat(finding.isOpen()).isTrue();
    }

    @Test
    void whatStaysBelowTheLimitIsNotTold() {
        days(QUIET_DAYS, 0);
        days(60, 0.05);
        assertThat(told).isEmpty();
    }

    @Test
    void tenDaysAreNoWeeks() {
        days(QUIET_DAYS, 0);
        days(10, SMALL);
        days(30, 0);
        assertThat(told).isEmpty();
    }

    @Test
    void slowRampBeginsWhereItBegan() {
        days(QUIET_DAYS, 0);
        for (int i = 0; i < 40; i++) {
            days(1, -0.1 * i / 40);
        }
        assertThat(told.get(0).kind()).isEqualTo(WatchNotice.Kind.FOUND);
        Finding finding = told.get(0).finding();
        assertThat(finding.shape()).isEqualTo(ChangeShape.RAMP);
        assertThat(finding.since()).isBetween(day(QUIET_DAYS - 4), day(QUIET_DAYS + 6));
        assertThat(finding.sinceRange().start()).isBeforeOrEqualTo(day(QUIET_DAYS));
        assertThat(finding.sinceRange().end()).isAfter(day(QUIET_DAYS));
    }

    @Test
    void closesWhenTheWeeksReturnAsOfTheLastDayThatStoodAway() {
        days(QUIET_DAYS, 0);
        days(20, SMALL);
        days(20, 0);
        assertThat(kinds()).containsExactly(WatchNotice.Kind.FOUND, WatchNotice.Kind.CLOSED);
        assertThat(last().direction()).isEqualTo(Direction.UP);
        assertThat(last().name()).isEqualTo(FindingName.VELOCITY_HIGH_FOR_DEPTH);
        assertThat(last().closed()).contains(day(QUIET_DAYS + 20));
        assertThat(told.get(1).time()).isEqualTo(day(QUIET_DAYS + 20 + 11).plus(Duration.ofHours(3)));
    }

    @Test
    void comesBackAsTheSameFinding() {
        days(QUIET_DAYS, 0);
        days(20, SMALL);
        days(14, 0);
        days(14, SMALL);
        assertThat(kinds()).containsExactly(WatchNotice.Kind.FOUND, WatchNotice.Kind.CLOSED, WatchNotice.Kind.RETURNED);
        assertThat(last().number()).isEqualTo(1);
        assertThat(last().returns()).isEqualTo(1);
        assertThat(last().since()).isEqualTo(day(QUIET_DAYS));
    }

    @Test
    void anotherWayIsAnotherFinding() {
        days(QUIET_DAYS, 0);
        days(20, SMALL);
        days(14, 0);
        days(14, -SMALL);
        assertThat(kinds()).containsExactly(WatchNotice.Kind.FOUND, WatchNotice.Kind.CLOSED, WatchNotice.Kind.FOUND);
        assertThat(last().number()).isEqualTo(2);
    }

    @Test
    void whatGrowsIsThatFindingWithItsBeginningAndGetsAName() {
        days(QUIET_DAYS, 0);
        days(16, -SMALL);
        days(10, -0.16);
        assertThat(told).extracting(notice -> notice.finding().number()).containsOnly(1);
        assertThat(kinds()).startsWith(WatchNotice.Kind.FOUND, WatchNotice.Kind.CHANGED);
        assertThat(last().name()).isEqualTo(FindingName.VELOCITY_LOSS);
        // Told anew while the days went on to -0.16, from which least squares make a ramp.
        assertThat(last().since()).isBetween(day(QUIET_DAYS - 7), day(QUIET_DAYS + 1));
        assertThat(last().found()).isEqualTo(day(QUIET_DAYS + 11).plus(Duration.ofHours(3)));
        assertThat(watch.isOpen()).isTrue();
        days(8, 0);
        assertThat(kinds()).endsWith(WatchNotice.Kind.CLOSED);
        days(40, 0);
        assertThat(kinds()).endsWith(WatchNotice.Kind.CLOSED);
    }

    @Test
    void whatStandsFarAwayAtOnceIsAnother() {
        days(QUIET_DAYS, 0);
        days(16, -SMALL);
        days(5, -0.75, 0.4, -0.6);
        Finding first = last(1);
        assertThat(first.name()).isEqualTo(FindingName.VELOCITY_LOW_FOR_DEPTH);
        assertThat(first.isOpen()).isFalse();
        assertThat(last(2).name()).isEqualTo(FindingName.HELD_UP);
        assertThat(last(2).isOpen()).isTrue();
        assertThat(last(2).since()).isBetween(day(QUIET_DAYS + 15), day(QUIET_DAYS + 17));
    }

    @Test
    void daysOfAQuickChangeAreItsOwn() {
        days(QUIET_DAYS, 0);
        days(16, -0.75, 0.4, -0.6);
        days(30, 0);
        assertThat(told).extracting(notice -> notice.finding().number()).containsOnly(1);
        assertThat(kinds()).endsWith(WatchNotice.Kind.CLOSED);
    }

    @Test
    void moreWaterHidesNone() {
        days(QUIET_DAYS, 0);
        days(20, 0, 0.5, 0.28);
        assertThat(watch.isWater()).isTrue();
        days(16, -SMALL, 0.5, 0.28 - SMALL);
        assertThat(watch.isWater()).isTrue();
        assertThat(last().number()).isEqualTo(2);
        assertThat(last().names()).containsExactly(FindingName.VELOCITY_LOW_FOR_DEPTH);
    }

    @Test
    void goesOnAfterARestartAtAnyDay() {
        for (int i = 0; i < 70; i++) {
            days(1, i < 20 || i > 40 ? 0 : -SMALL);
            String state = watch.write().toString();
            String numbers = "findings";
            StateText kept = StateText.of(numbers, 1);
            findings.write(kept);
            findings = new Findings();
            findings.read(StateText.parse(numbers, 1, kept.toString()));
            watch = new ChangeWatch(RULE, findings, new TideWatch(false, findings));
            watch.read(state);
            assertThat(watch.write().toString()).isEqualTo(state);
        }
        List<WatchNotice> restarted = List.copyOf(told);
        SlowChangeTest through = new SlowChangeTest();
        for (int i = 0; i < 70; i++) {
            through.days(1, i < 20 || i > 40 ? 0 : -SMALL);
        }
        assertThat(restarted).hasSize(2).isEqualTo(through.told);
    }

    @Test
    void itsFlowIsInDoubtFromItsBeginningOn() {
        SiteRecord record = site(80).record(
                        (day, depth, velocity, random) -> new double[] {depth, velocity * (day > 40 ? 0.92 : 1)});
        WatchReport report = RULE.watch(record);
        assertThat(report.findings()).hasSize(1);
        Finding finding = report.findings().get(0);
        assertThat(finding.names()).containsExactly(FindingName.VELOCITY_LOW_FOR_DEPTH);
        assertThat(finding.since()).isBetween(day(38), day(43));
        DoubtfulReadings doubt = DoubtfulReadings.of(report, day(80));
        assertThat(doubt.isDoubtful(ReadingUse.FLOW, day(36))).isFalse();
        assertThat(doubt.isDoubtful(ReadingUse.FLOW, day(44))).isTrue();
        assertThat(doubt.isDoubtful(ReadingUse.FLOW, day(79))).isTrue();
    }
}
