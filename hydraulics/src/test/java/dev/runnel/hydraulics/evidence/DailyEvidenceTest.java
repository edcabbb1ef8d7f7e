package dev.runnel.hydraulics.evidence;

import static org.assertj.core.api.Assertions.assertThat;
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
import java.time.ZoneId;
import java.util.List;
import java.util.Set;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;

class DailyEvidenceTest {
    private static final ZoneId ZONE = ZoneId.of("Europe/Paris");
    private static final Conduit CONDUIT =
            Conduit.of(CircularSection.ofDiameter(0.6), Gradient.of(0.01), Manning.of(0.013));
    private static final PipeMonitor MONITOR = PipeMonitor.of(CONDUIT);
    private static final LocalDate DAY = LocalDate.of(2026, 3, 28);
    private static final LocalDate SHORT_DAY = DAY.plusDays(1);

    @Test
    void dayIsALocalDateAndShortWhenTheClocksChange() {
        FlowRecord record = everyHour(DAY, 47, i -> 0.3, i -> 1.5);
        List<DailyEvidence> days = DailyEvidence.of(record, Set.of(SHORT_DAY, DAY), ZONE);
        assertThat(days).extracting(DailyEvidence::date).containsExactly(DAY, SHORT_DAY);
        assertThat(days).extracting(DailyEvidence::readings).containsExactly(24, 23);
        assertThat(days).extracting(DailyEvidence::coverage).containsExactly(1.0, 1.0);
    }

    @Test
    void mediansAndMeanOfTheDay() {
        FlowRecord record = everyHour(DAY, 24, i -> i == 5 ? 0.55 : 0.3, i -> i == 7 ? 3 : 1.5);
        DailyEvidence day = DailyEvidence.of(record, Set.of(DAY), ZONE).get(0);
        assertThat(day.medianLevel()).isEqualTo(0.3);
        assertThat(day.medianVelocity()).isEqualTo(1.5);
        assertThat(day.medianRatio()).isCloseTo(1.5 / CONDUIT.velocity(0.3), within(1e-14));
        double halfArea = Math.PI * 0.6 * 0.6 / 8;
        double deepArea = record.flow().value(5) / 1.5;
        assertThat(day.meanFlow()).isCloseTo(1.5 * (22 * halfArea + 2 * halfArea + deepArea) / 24, within(1e-14));
        // 23 steps from one pair to the next, two of them to and from the odd velocity.
        assertThat(day.unchangedVelocityShare()).isCloseTo(21.0 / 23, within(1e-15));
    }

    @Test
    void onlyTheGivenDatesWithReadingsAppear() {
        FlowRecord record = everyHour(DAY, 47, i -> 0.3, i -> 1.5);
        assertThat(DailyEvidence.of(record, Set.of(SHORT_DAY, DAY.plusDays(40)), ZONE))
                .extracting(DailyEvidence::date)
                .containsExactly(SHORT_DAY);
        assertThat(DailyEvidence.of(record, Set.of(), ZONE)).isEmpty();
    }

    @Test
    void missingHoursLowerTheCoverage() {
        FlowRecord record = everyHour(DAY, 24, i -> 0.3, i -> i < 6 ? Double.NaN : 1.5);
        DailyEvidence day = DailyEvidence.of(record, Set.of(DAY), ZONE).get(0);
        assertThat(day.readings()).isEqualTo(18);
        assertThat(day.coverage()).isEqualTo(0.75);
    }

    @Test
    void surchargedDayIsComparedWithTheFullPipe() {
        FlowRecord record = everyHour(DAY, 24, i -> 0.9, i -> 0.4);
        DailyEvidence day = DailyEvidence.of(record, Set.of(DAY), ZONE).get(0);
        assertThat(day.medianLevel()).isEqualTo(0.9);
        assertThat(day.medianRatio()).isCloseTo(0.4 / CONDUIT.fullBore().velocity(), within(1e-14));
    }

    @Test
    void emptyPipeCountsInTheMeanFlowButNotInTheMedians() {
        FlowRecord record = everyHour(DAY, 24, i -> i < 12 ? 0 : 0.3, i -> i < 12 ? 0 : 1.5);
        DailyEvidence day = DailyEvidence.of(record, Set.of(DAY), ZONE).get(0);
        assertThat(day.readings()).isEqualTo(12);
        assertThat(day.medianLevel()).isEqualTo(0.3);
        assertThat(day.meanFlow()).isCloseTo(1.5 * Math.PI * 0.6 * 0.6 / 16, within(1e-14));
        assertThat(day)
                .hasToString("DailyEvidence[2026-03-28, 12 readings, 50 % of the hours, level 0.300 m, velocity"
                        + " 1.500 m/s, ratio 0.691, mean flow 0.106 m3/s]");
    }

    private static FlowRecord everyHour(
            LocalDate from, int hours, IntToDoubleFunction depth, IntToDoubleFunction velocity) {
        Instant start = from.atStartOfDay(ZONE).toInstant();
        var depths = Series.builder();
        var velocities = Series.builder();
        for (int i = 0; i < hours; i++) {
            depths.add(start.plusSeconds(3600L * i), depth.applyAsDouble(i));
            velocities.add(start.plusSeconds(3600L * i), velocity.applyAsDouble(i));
        }
        return MONITOR.flow(depths.build(), velocities.build());
    }

    /** Two readings an hour fill an hour once, also where a day begins at half past. */
    @Test
    void anHourCountsOnce() {
        ZoneId half = ZoneId.of("Asia/Kolkata");
        Instant start = DAY.atStartOfDay(half).toInstant();
        var depths = Series.builder();
        var velocities = Series.builder();
        for (int i = 0; i < 24; i++) {
            depths.add(start.plusSeconds(1800L * i), 0.3);
            velocities.add(start.plusSeconds(1800L * i), 1.5);
        }
        DailyEvidence day = DailyEvidence.of(MONITOR.flow(depths.build(), velocities.build()), Set.of(DAY), half)
                .get(0);
        assertThat(day.readings()).isEqualTo(24);
        assertThat(day.coverage()).isEqualTo(0.5);
    }
}
