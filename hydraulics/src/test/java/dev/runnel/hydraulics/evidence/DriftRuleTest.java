package dev.runnel.hydraulics.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.monitoring.FlowRecord;
import dev.runnel.hydraulics.monitoring.PipeMonitor;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.timeseries.Series;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;

class DriftRuleTest {
    private static final LocalDate DAY = LocalDate.of(2026, 5, 1);
    private static final LocalDate LAST = DAY.plusDays(13);
    private static final PipeMonitor MONITOR =
            PipeMonitor.of(Conduit.of(CircularSection.ofDiameter(0.6), Gradient.of(0.01), Manning.of(0.013)));
    private static final DriftRule RULE = DriftRule.of(MONITOR);

    /** Scatter of a few per cent without a trend; by hand, so that nothing is random. */
    private static final double[] SCATTER = {1, -2, 2, -1, 0, 2, -2, 1, -1, 2, 0, -2, 1, -1};

    @Test
    void levelUpVelocityDownFlowSteadyIsConsistentWithBackwater() {
        DriftEvidence evidence = evidence(i -> 0.2 + 0.01 * i, i -> 1 - 0.05 * i, i -> 0.05);
        assertThat(evidence.pattern()).isEqualTo(DriftPattern.BACKWATER);
        assertThat(evidence.pattern().description()).contains("consistent with an obstruction downstream");
        Drifts drifts = evidence.drifts().orElseThrow();
        assertThat(drifts.level().pValue()).isLessThan(0.001);
        assertThat(drifts.level().relativeChange()).isCloseTo(0.65, within(0.05));
        assertThat(drifts.velocity().slope()).isCloseTo(-0.05, within(0.005));
        assertThat(evidence.days()).isEqualTo(14);
    }

    @Test
    void velocityAndFlowDownWithASteadyLevelIsConsistentWithAFoulingSensor() {
        DriftEvidence evidence = evidence(i -> 0.2, i -> 1 - 0.05 * i, i -> 0.05 - 0.0025 * i);
        assertThat(evidence.pattern()).isEqualTo(DriftPattern.VELOCITY_LOSS);
        assertThat(evidence.projection()).isEmpty();
        assertThat(evidence.onset()).isPresent();
    }

    @Test
    void allUpIsConsistentWithMoreWaterAndAllDownWithLess() {
        assertThat(evidence(i -> 0.2 + 0.005 * i, i -> 1 + 0.02 * i, i -> 0.05 + 0.002 * i)
                        .pattern())
                .isEqualTo(DriftPattern.MORE_WATER);
        assertThat(evidence(i -> 0.2 - 0.005 * i, i -> 1 - 0.02 * i, i -> 0.05 - 0.002 * i)
                        .pattern())
                .isEqualTo(DriftPattern.LESS_WATER);
    }

    @Test
    void otherCombinationsAreNotForcedIntoAReading() {
        assertThat(evidence(i -> 0.2 + 0.01 * i, i -> 1 - 0.05 * i, i -> 0.05 - 0.0025 * i)
                        .pattern())
                .isEqualTo(DriftPattern.OTHER);
        assertThat(evidence(i -> 0.2 + 0.01 * i, i -> 1, i -> 0.05).pattern()).isEqualTo(DriftPattern.OTHER);
    }

    @Test
    void scatterAloneIsNoDrift() {
        DriftEvidence evidence = evidence(i -> 0.2, i -> 1, i -> 0.05);
        assertThat(evidence.pattern()).isEqualTo(DriftPattern.NONE);
        assertThat(evidence.onset()).isEmpty();
        assertThat(evidence.projection()).isEmpty();
        assertThat(evidence.drifts()).isPresent();
    }

    @Test
    void sureButSmallChangeIsNoDriftUnlessAskedFor() {
        IntToDoubleFunction creeping = i -> 0.2 + 0.001 * i;
        List<DailyEvidence> days = days(14, 0, creeping, i -> 1, i -> 0.05);
        assertThat(RULE.evidence(days, DAY, LAST).pattern()).isEqualTo(DriftPattern.NONE);
        assertThat(RULE.withMinimumChange(0.05).evidence(days, DAY, LAST).pattern())
                .isEqualTo(DriftPattern.OTHER);
    }

    @Test
    void frozenDaysAreListedAndLeftOutOfTheTrends() {
        List<DailyEvidence> days = new ArrayList<>(days(14, 0.01, i -> 0.2, i -> 1, i -> 0.05));
        days.set(12, day(12, 0.2, 9, 0.45, 1, 1));
        days.set(13, day(13, 0.2, 9, 0.45, 1, 0.95));
        DriftEvidence evidence = RULE.evidence(days, DAY, LAST);
        assertThat(evidence.pattern()).isEqualTo(DriftPattern.VELOCITY_FROZEN);
        assertThat(evidence.frozenDays()).containsExactly(DAY.plusDays(12), DAY.plusDays(13));
        assertThat(evidence.days()).isEqualTo(12);
        assertThat(evidence.drifts().orElseThrow().velocity().last()).isLessThan(1.1);
    }

    @Test
    void fewDaysSayNothing() {
        DriftEvidence evidence = RULE.evidence(days(6, 0, i -> 0.2 + i, i -> 1, i -> 1), DAY, LAST);
        assertThat(evidence.pattern()).isEqualTo(DriftPattern.TOO_FEW_DAYS);
        assertThat(evidence.days()).isEqualTo(6);
        assertThat(evidence.drifts()).isEmpty();
        assertThat(RULE.evidence(List.of(), DAY, LAST).days()).isZero();
        assertThat(RULE.withMinimumDays(5)
                        .evidence(days(6, 0, i -> 0.2 + i, i -> 1, i -> 1), DAY, LAST)
                        .drifts())
                .isPresent();
    }

    @Test
    void thinDaysAndDaysOutsideTheWindowAreLeftOut() {
        List<DailyEvidence> days = new ArrayList<>(days(14, 0.01, i -> 0.2, i -> 1, i -> 0.05));
        days.set(5, day(5, 5, 5, 5, 0.74, 0));
        DriftEvidence evidence = RULE.evidence(days, DAY.plusDays(2), DAY.plusDays(11));
        assertThat(evidence.days()).isEqualTo(9);
        assertThat(evidence.daysLeftOut()).isEqualTo(1);
        assertThat(RULE.withMinimumCoverage(0.5)
                        .evidence(days, DAY.plusDays(2), DAY.plusDays(11))
                        .days())
                .isEqualTo(10);
    }

    @Test
    void projectionFollowsTheRiseSinceItsOnset() {
        // Flat for four days, then 0.0123 m a day: 0.2 + 9 × 0.0123 on the last, 23.5 days short of 0.6 m.
        DriftEvidence evidence = RULE.evidence(
                days(14, 0, i -> 0.2 + 0.0123 * Math.max(0, i - 4), i -> 1 - 0.03 * i, i -> 0.05), DAY, LAST);
        assertThat(evidence.onset().orElseThrow().date()).isEqualTo(DAY.plusDays(4));
        assertThat(evidence.projection())
                .contains(new SoffitProjection(LAST.plusDays(24), LAST.plusDays(24), LAST.plusDays(24)));
    }

    @Test
    void projectionHasAnIntervalWhereThereIsScatter() {
        SoffitProjection projection = evidence(i -> 0.2 + 0.01 * i, i -> 1 - 0.05 * i, i -> 0.05)
                .projection()
                .orElseThrow();
        assertThat(projection.earliest()).isBefore(projection.date());
        assertThat(projection.latest()).isAfter(projection.date());
        // The true line, 0.33 m on the last day and 0.01 m a day, needs 27 days.
        assertThat(LAST.plusDays(27)).isBetween(projection.earliest(), projection.latest());
    }

    @Test
    void noProjectionBeyondAYearOrAboveTheSoffit() {
        List<DailyEvidence> slow = days(14, 0, i -> 0.2 + 0.001 * i, i -> 1 - 0.03 * i, i -> 0.05);
        assertThat(RULE.withMinimumChange(0.01).evidence(slow, DAY, LAST).projection())
                .isEmpty();
        List<DailyEvidence> over = days(14, 0, i -> 0.5 + 0.02 * i, i -> 1 - 0.03 * i, i -> 0.05);
        assertThat(RULE.evidence(over, DAY, LAST).pattern()).isEqualTo(DriftPattern.BACKWATER);
        assertThat(RULE.evidence(over, DAY, LAST).projection()).isEmpty();
    }

    @Test
    void recordOfAGrowingObstructionIsSeenFromReadingsToEvidence() {
        var depth = Series.builder();
        var velocity = Series.builder();
        Instant start = DAY.atStartOfDay(ZoneOffset.UTC).toInstant();
        Set<LocalDate> dry = new HashSet<>();
        for (int hour = 0; hour < 14 * 24; hour++) {
            int day = hour / 24;
            dry.add(DAY.plusDays(day));
            double level = 0.15 + 0.02 * Math.max(0, day - 3) + 0.03 * Math.sin(hour * Math.PI / 12);
            depth.add(start.plusSeconds(3600L * hour), level);
            double flow = 0.03 * (1 + 0.2 * Math.sin(hour * Math.PI / 12));
            velocity.add(
                    start.plusSeconds(3600L * hour),
                    flow / MONITOR.flow(level, 1).area());
        }
        FlowRecord record = MONITOR.flow(depth.build(), velocity.build());
        DriftEvidence evidence = RULE.evidence(DailyEvidence.of(record, dry, ZoneOffset.UTC), DAY, LAST);
        assertThat(evidence.pattern()).isEqualTo(DriftPattern.BACKWATER);
        assertThat(evidence.onset().orElseThrow().date()).isEqualTo(DAY.plusDays(3));
        assertThat(evidence.drifts().orElseThrow().ratio().slope()).isNegative();
        assertThat(evidence.describe())
                .startsWith(
                        "2026-05-01 to 2026-05-14, 14 dry days used, 0 left out for missing hours, 0 with a frozen velocity\n"
                                + "seen: level up, velocity down, no drift of the flow found: consistent with")
                .contains("\nsince about 2026-05-04 (")
                .endsWith("; rain fills the pipe before that\nevidence to weigh, not a diagnosis");
        assertThat(evidence.toString())
                .startsWith(
                        "DriftEvidence[BACKWATER, 2026-05-01 to 2026-05-14, 14 days, since 2026-05-04, soffit about");
    }

    @Test
    void badInputIsRefused() {
        assertThatThrownBy(() -> RULE.evidence(List.of(), LAST, DAY))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("to must not be before from 2026-05-14, was 2026-05-01");
        List<DailyEvidence> twice = List.of(day(1, 1, 1, 1, 1, 0), day(1, 1, 1, 1, 1, 0));
        assertThatThrownBy(() -> RULE.evidence(twice, DAY, LAST))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("days must have increasing dates, was 2026-05-02 after 2026-05-02");
        assertThatThrownBy(() -> RULE.withSignificance(0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("significance must be in [1.0E-6, 0.5], was 0");
        assertThatThrownBy(() -> RULE.withMinimumChange(Double.NaN))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("minimumChange must be in [0, 10], was NaN");
        assertThatThrownBy(() -> RULE.withMinimumCoverage(75))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("minimumCoverage must be in [0, 1], was 75");
        assertThatThrownBy(() -> RULE.withMinimumDays(4))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("minimumDays must be at least 5, was 4");
        assertThat(RULE)
                .hasToString("DriftRule[p up to 0.05, change of 10 % or more, days with 75 % of their hours, at least"
                        + " 7 of them]");
    }

    private static DriftEvidence evidence(
            IntToDoubleFunction level, IntToDoubleFunction velocity, IntToDoubleFunction flow) {
        return RULE.evidence(days(14, 0.01, level, velocity, flow), DAY, LAST);
    }

    private static List<DailyEvidence> days(
            int count,
            double scatter,
            IntToDoubleFunction level,
            IntToDoubleFunction velocity,
            IntToDoubleFunction flow) {
        List<DailyEvidence> days = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            days.add(day(
                    i,
                    level.applyAsDouble(i) * (1 + scatter * SCATTER[i]),
                    velocity.applyAsDouble(i) * (1 + scatter * SCATTER[(i + 5) % 14]),
                    flow.applyAsDouble(i) * (1 + scatter * SCATTER[(i + 9) % 14]),
                    1,
                    0.1));
        }
        return days;
    }

    private static DailyEvidence day(
            int number, double level, double velocity, double flow, double coverage, double unchanged) {
        return new DailyEvidence(DAY.plusDays(number), 720, coverage, level, velocity, velocity / 1.7, flow, unchanged);
    }

    @Test
    void justEnoughDaysWithJustEnoughHours() {
        List<DailyEvidence> days = new ArrayList<>();
        for (int i = 0; i < 7; i++) {
            days.add(day(i, 0.2, 1, 0.05, 0.75, 0.94));
        }
        DriftEvidence enough = RULE.evidence(days, DAY, DAY.plusDays(6));
        assertThat(enough.pattern()).isEqualTo(DriftPattern.NONE);
        assertThat(enough.days()).isEqualTo(7);
        assertThat(RULE.evidence(days.subList(0, 6), DAY, LAST).pattern()).isEqualTo(DriftPattern.TOO_FEW_DAYS);
    }

    /** Five days are enough for a line of their own: 0.02 m a day, 0.32 m short of the soffit, whatever was before. */
    @Test
    void aRiseOfFiveDaysIsProjectedByItself() {
        DriftEvidence evidence = RULE.withMinimumChange(0.01)
                .evidence(days(14, 0, i -> 0.2 + 1e-6 * i + 0.02 * Math.max(0, i - 9), i -> 1, i -> 0.05), DAY, LAST);
        assertThat(evidence.onset().orElseThrow().date()).isEqualTo(DAY.plusDays(9));
        assertThat(evidence.projection().orElseThrow().date()).isBetween(LAST.plusDays(15), LAST.plusDays(17));
    }

    @Test
    void whatIsKnownIsWrittenOut() {
        DriftEvidence evidence = evidence(i -> 0.2 + 0.01 * i, i -> 1 - 0.05 * i, i -> 0.05);
        Onset onset = evidence.onset().orElseThrow();
        SoffitProjection soffit = evidence.projection().orElseThrow();
        assertThat(evidence.describe())
                .contains("\nmeasured over uniform-flow velocity: line from ")
                .contains("\nlevel: line from 0.2")
                .contains(" m, 0.0099 m a day (95 % ")
                .contains("\nsince about " + onset.date() + " (" + onset.earliest() + " to " + onset.latest() + ")\n")
                .contains("would reach the soffit about " + soffit.date() + " (" + soffit.earliest() + " to "
                        + soffit.latest() + "); rain");
        assertThat(soffit.toString())
                .startsWith("SoffitProjection[")
                .contains(soffit.date().toString());
        String ratio = evidence.describe()
                .lines()
                .filter(line -> line.startsWith("measured over"))
                .findFirst()
                .orElseThrow();
        assertThat(ratio).doesNotContain("  ", " m", "s a day").contains(", -0.0");
    }
}
