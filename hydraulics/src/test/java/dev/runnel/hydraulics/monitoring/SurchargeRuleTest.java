package dev.runnel.hydraulics.monitoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Series;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class SurchargeRuleTest {
    private static final Instant START = Instant.parse("2026-03-01T00:00:00Z");
    private static final double SOFFIT = 0.45;
    private static final SurchargeRule RULE = SurchargeRule.above(SOFFIT);

    @Test
    void periodRunsFromFirstReadingAboveToFirstNoLongerAbove() {
        Series levels = everyTwoMinutes(0.3, 0.5, 0.9, 0.7, 0.44, 0.3);
        assertThat(RULE.over(levels)).singleElement().satisfies(period -> {
            assertThat(period.interval()).hasToString("2026-03-01T00:02:00Z/2026-03-01T00:08:00Z");
            assertThat(period.duration()).isEqualTo(Duration.ofMinutes(6));
            assertThat(period.peakAbove()).isCloseTo(0.45, within(1e-15));
            assertThat(period.peakTime()).isEqualTo(START.plusSeconds(240));
            assertThat(period.readings()).isEqualTo(3);
            assertThat(period.isComplete()).isTrue();
            assertThat(period)
                    .hasToString("SurchargePeriod[2026-03-01T00:02:00Z/2026-03-01T00:08:00Z, peak 0.450 m above at"
                            + " 2026-03-01T00:04:00Z, 3 readings]");
        });
    }

    @Test
    void firstOfEqualPeaksCounts() {
        assertThat(RULE.over(everyTwoMinutes(0.3, 0.8, 0.8, 0.3)).get(0).peakTime())
                .isEqualTo(START.plusSeconds(120));
    }

    @Test
    void levelAtTheSoffitIsNotAbove() {
        assertThat(RULE.over(everyTwoMinutes(0.3, SOFFIT, Math.nextUp(SOFFIT), 0.3)))
                .isEmpty();
        assertThat(RULE.over(everyTwoMinutes(0.3, 0.450001, 0.3))).hasSize(1);
    }

    @Test
    void recordThatBeginsAndEndsAboveShowsNeitherEnd() {
        List<SurchargePeriod> periods = RULE.over(everyTwoMinutes(0.5, 0.6));
        assertThat(periods).singleElement().satisfies(period -> {
            assertThat(period.startSeen()).isFalse();
            assertThat(period.endSeen()).isFalse();
            assertThat(period.isComplete()).isFalse();
            assertThat(period.duration()).isEqualTo(Duration.ofMinutes(2));
            assertThat(period.toString()).endsWith("2 readings, start not seen, end not seen]");
        });
    }

    @Test
    void shortHoleIsBridgedAndLongOneIsNot() {
        double gone = Double.NaN;
        Series hole = everyTwoMinutes(0.3, 0.5, gone, gone, 0.6, 0.3);
        assertThat(RULE.over(hole)).hasSize(1);
        List<SurchargePeriod> cut = RULE.withMaximumGap(Duration.ofMinutes(5)).over(hole);
        assertThat(cut).hasSize(2);
        assertThat(cut.get(0).interval()).hasToString("2026-03-01T00:02:00Z/2026-03-01T00:02:00Z");
        assertThat(cut.get(0).startSeen()).isTrue();
        assertThat(cut.get(0).endSeen()).isFalse();
        assertThat(cut.get(1).interval()).hasToString("2026-03-01T00:08:00Z/2026-03-01T00:10:00Z");
        assertThat(cut.get(1).startSeen()).isFalse();
        assertThat(cut.get(1).endSeen()).isTrue();
    }

    @Test
    void gapOfExactlyTheLongestIsBridged() {
        assertThat(RULE.withMaximumGap(Duration.ofMinutes(2)).over(everyTwoMinutes(0.3, 0.5, 0.6, 0.3)))
                .singleElement()
                .matches(SurchargePeriod::isComplete);
    }

    @Test
    void lowReadingBehindALongGapDoesNotShowTheEnd() {
        Series levels = Series.builder()
                .add(START, 0.3)
                .add(START.plusSeconds(120), 0.6)
                .add(START.plusSeconds(7200), 0.3)
                .build();
        assertThat(RULE.over(levels)).singleElement().satisfies(period -> {
            assertThat(period.endSeen()).isFalse();
            assertThat(period.duration()).isZero();
        });
    }

    @Test
    void suspectReadingsAreLeftOut() {
        Series levels = Series.builder()
                .add(START, 0.3)
                .add(new Reading(START.plusSeconds(120), 5, Quality.SUSPECT))
                .add(START.plusSeconds(240), 0.3)
                .build();
        assertThat(RULE.over(levels)).isEmpty();
    }

    @Test
    void watchTellsAPeriodWhenItIsOverAndBeforeThatOnRequest() {
        SurchargeWatch watch = RULE.start();
        assertThat(watch.next(Reading.of(START, 0.3))).isEmpty();
        assertThat(watch.ongoing()).isEmpty();
        assertThat(watch.next(Reading.of(START.plusSeconds(120), 0.5))).isEmpty();
        assertThat(watch.ongoing()).get().matches(period -> !period.endSeen());
        assertThat(watch.next(Reading.of(START.plusSeconds(240), 0.3)))
                .singleElement()
                .matches(SurchargePeriod::isComplete);
        assertThat(watch.ongoing()).isEmpty();
    }

    @Test
    void watchRefusesTimeThatDoesNotIncrease() {
        SurchargeWatch watch = RULE.start();
        watch.next(Reading.of(START, Double.NaN));
        assertThatThrownBy(() -> watch.next(Reading.of(START, 0.3)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("time must be after 2026-03-01T00:00:00Z, was 2026-03-01T00:00:00Z");
    }

    @Test
    void soffitOfAMonitorIsTheLevel() {
        PipeMonitor monitor = PipeMonitor.of(
                Conduit.of(CircularSection.ofDiameter(SOFFIT), Gradient.ofRatio(1, 150), Manning.of(0.013)));
        assertThat(SurchargeRule.of(monitor).level()).isEqualTo(SOFFIT);
        assertThat(SurchargeRule.of(monitor)).isEqualTo(RULE).hasSameHashCodeAs(RULE);
        assertThat(RULE).isNotEqualTo(RULE.withMaximumGap(Duration.ofMinutes(1)));
        assertThat(SurchargeRule.of(monitor)).hasToString("SurchargeRule[above 0.45 m, gaps up to 15 min]");
    }

    @Test
    void settingsOutOfRangeAreRefused() {
        assertThatThrownBy(() -> SurchargeRule.above(-1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("level must be 0 or greater and finite (m), was -1");
        assertThatThrownBy(() -> RULE.withMaximumGap(Duration.ZERO))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("maximumGap must be longer than 0, was 0 s");
    }

    private static Series everyTwoMinutes(double... levels) {
        var builder = Series.builder();
        for (int i = 0; i < levels.length; i++) {
            builder.add(START.plusSeconds(120L * i), levels[i]);
        }
        return builder.build();
    }

    /** A machine may stop between any two readings and go on from the text of its state. */
    @Test
    void surchargeInProgressIsNotLost() {
        Series levels = everyTwoMinutes(0.3, 0.5, 0.9, 0.7, 0.44, Double.NaN, 0.6);
        List<SurchargePeriod> whole = RULE.over(levels);
        assertThat(whole).hasSize(2);
        for (int stop = 0; stop <= levels.size(); stop++) {
            SurchargeWatch machine = RULE.start();
            List<SurchargePeriod> found = new ArrayList<>();
            for (int i = 0; i < stop; i++) {
                found.addAll(machine.next(Reading.of(levels.time(i), levels.value(i))));
            }
            String state = machine.state().toText();
            SurchargeWatch later = RULE.start(RULE.parseState(state));
            assertThat(later.state().toText()).as("after %s", stop).isEqualTo(state);
            assertThat(later.ongoing()).isEqualTo(machine.ongoing());
            for (int i = stop; i < levels.size(); i++) {
                found.addAll(later.next(Reading.of(levels.time(i), levels.value(i))));
            }
            found.addAll(later.finish());
            assertThat(found).as("after %s", stop).isEqualTo(whole);
            assertThatThrownBy(later::finish).isInstanceOf(IllegalStateException.class);
        }
        assertThat(RULE.start().toString()).startsWith("SurchargeWatch[" + RULE + ", ");
        assertThat(RULE.start().state().toText()).doesNotContain("usable", "start", "peak");
    }
}
