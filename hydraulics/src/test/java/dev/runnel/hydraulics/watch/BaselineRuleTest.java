package dev.runnel.hydraulics.watch;

import static dev.runnel.hydraulics.watch.KnownHours.day;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** Which stretch of a record is taken. Readings of an hour each; the level goes up and down once a day. */
class BaselineRuleTest {
    private static final BaselineRule RULE = BaselineRule.of(InventedSite.MONITOR);

    /** A level whose logarithm is higher by so much on a day, without rain or with so much in an hour. */
    private static SiteRecord record(int days, DoubleUnaryOperator more, DoubleUnaryOperator rain) {
        SeriesBuilder depths = Series.builder();
        double[] fallen = new double[24 * days];
        for (int i = 0; i < 24 * days; i++) {
            double level = 0.12
                    * Math.exp(
                            0.3 * Math.sin(Math.PI * i / 12) + 0.01 * Math.sin(1.7 * i) + more.applyAsDouble(i / 24.0));
            fallen[i] = rain.applyAsDouble(i / 24.0);
            for (int k = 0; k < 4; k++) {
                depths.add(InventedSite.START.plus(Duration.ofMinutes(60L * i + 15L * k)), level * (1 + 0.001 * k));
            }
        }
        return SiteRecord.ofDepth(depths.build())
                .withRain(RegularSeries.of(InventedSite.START, Duration.ofHours(1), fallen));
    }

    private static Interval days(double from, double to) {
        return Interval.of(day(from), day(to));
    }

    @Test
    void theFirstFortnightIfItIsSound() {
        BaselineSearch search = RULE.learn(record(30, day -> 0, day -> 0));
        assertThat(search.refused()).isEmpty();
        assertThat(search.baseline().orElseThrow().interval()).isEqualTo(days(0, 14));
        assertThat(RULE.withDays(21)
                        .learn(record(30, day -> 0, day -> 0))
                        .baseline()
                        .orElseThrow()
                        .interval())
                .isEqualTo(days(0, 21));
        assertThat(RULE.learn(record(14, day -> 0, day -> 0)).baseline()).isPresent();
    }

    /** Behind a step, not a day after the last start. */
    @Test
    void beyondAStepTheSearchGoesOnBehindIt() {
        BaselineSearch search = RULE.learn(record(40, day -> day < 4 ? 0 : 0.5, day -> 0));
        assertThat(search.refused()).singleElement().satisfies(refused -> {
            assertThat(refused.interval()).isEqualTo(days(0, 14));
            assertThat(refused.reasons()).singleElement().asString().startsWith("dry depth changed by +65 %");
        });
        assertThat(search.baseline().orElseThrow().interval()).isEqualTo(days(4, 18));
        // With too little behind it there is none.
        BaselineSearch none = RULE.learn(record(17, day -> day < 4 ? 0 : 0.5, day -> 0));
        assertThat(none.baseline()).isEmpty();
        assertThat(none.refused()).hasSize(1);
        assertThat(RULE.learn(record(18, day -> day < 4 ? 0 : 0.5, day -> 0)).baseline())
                .isPresent();
    }

    /** Eight days that were sound are usual, and not what they became. */
    @Test
    void daysBeforeAStepAreTakenIfTheyAreEight() {
        BaselineSearch search = RULE.learn(record(40, day -> day < 8 ? 0 : 0.5, day -> 0));
        assertThat(search.refused()).hasSize(1);
        assertThat(search.baseline().orElseThrow().interval()).isEqualTo(days(0, 8));
        assertThat(RULE.learn(record(40, day -> day < 7 ? 0 : 0.5, day -> 0))
                        .baseline()
                        .orElseThrow()
                        .interval())
                .isEqualTo(days(7, 21));
        // A level that falls to stay may be an obstruction that went.
        assertThat(RULE.learn(record(40, day -> day < 9 ? 0 : -0.5, day -> 0))
                        .baseline()
                        .orElseThrow()
                        .interval())
                .isEqualTo(days(9, 23));
    }

    /** A drift refuses stretch after stretch, by whole days, until most of it is left behind. */
    @Test
    void beyondADriftTheSearchGoesOnByDays() {
        BaselineSearch search = RULE.learn(record(40, day -> 0.05 * Math.min(day, 8), day -> 0));
        assertThat(search.refused()).isNotEmpty();
        Interval last = days(-1, 13);
        for (BaselineSearch.Refused each : search.refused()) {
            long hours = Duration.between(last.start(), each.interval().start()).toHours();
            assertThat(hours).isGreaterThanOrEqualTo(24);
            assertThat(hours % 24).isZero();
            assertThat(each.interval().hours()).isEqualTo(14 * 24);
            last = each.interval();
        }
        assertThat(search.baseline().orElseThrow().interval().start()).isBetween(day(4), day(8));
    }

    /** Rain until the 15th day makes wet until the 18th; 100 dry hours end with the 22nd. */
    @Test
    void aWetStretchIsMadeLonger() {
        BaselineSearch search = RULE.learn(record(60, day -> 0, day -> day < 15 ? 1 : 0));
        assertThat(search.refused()).isEmpty();
        assertThat(search.baseline().orElseThrow().interval()).isEqualTo(days(0, 23));
        assertThat(search.baseline().orElseThrow().dryHours()).isBetween(100, 123);
        // Up to six weeks.
        BaselineSearch wet = RULE.learn(record(60, day -> 0, day -> day < 50 ? 1 : 0));
        assertThat(wet.refused().get(0).interval()).isEqualTo(days(0, 42));
        assertThat(wet.refused().get(1).interval()).isEqualTo(days(1, 43));
        assertThat(wet.refused().get(0).reasons()).singleElement().asString().matches("[01] dry hours, 100 are needed");
        // And not beyond the record.
        BaselineSearch brief = RULE.learn(record(20, day -> 0, day -> day < 15 ? 1 : 0));
        assertThat(brief.refused().get(0).interval()).isEqualTo(days(0, 20));
        assertThat(brief.refused()).hasSize(7);
    }

    @Test
    void aRecordWithoutReadings() {
        BaselineSearch none = RULE.learn(SiteRecord.ofDepth(Series.builder().build()));
        assertThat(none.baseline()).isEmpty();
        assertThat(none.refused())
                .singleElement()
                .satisfies(refused -> assertThat(refused.reasons()).containsExactly("there are no readings"));
    }

    /** What lies outside of a chosen interval is not learned, but the rain of the week before is known. */
    @Test
    void aChosenInterval() {
        SiteRecord record = record(60, day -> day < 20 || day >= 30 ? 1 : 0, day -> day >= 19 && day < 20 ? 1 : 0);
        Interval chosen = days(20, 30);
        SiteBaseline baseline =
                RULE.withInterval(chosen).learn(record).baseline().orElseThrow();
        assertThat(baseline.interval()).isEqualTo(chosen);
        assertThat(baseline.hours()).isEqualTo(240);
        assertThat(baseline.usualPeak()).isBetween(0.155, 0.17);
        // 24 mm make wet for 66 h after their last hour.
        assertThat(baseline.dryHours()).isBetween(240 - 67, 240 - 65);
        BaselineSearch refused = RULE.withInterval(days(17, 27)).learn(record);
        assertThat(refused.baseline()).isEmpty();
        assertThat(refused.refused())
                .singleElement()
                .satisfies(each -> assertThat(each.interval()).isEqualTo(days(17, 27)));
        assertThat(RULE.withInterval(chosen)
                        .withDays(14)
                        .learn(record(30, day -> 0, day -> 0))
                        .baseline())
                .get()
                .extracting(SiteBaseline::interval)
                .isEqualTo(days(0, 14));
    }

    @Test
    void lengthsOnTheirLimits() {
        for (double inside : new double[] {5, 366}) {
            assertThat(RULE.withInterval(days(0, inside)).toString())
                    .isEqualTo("BaselineRule[" + days(0, inside) + ", zone Z]");
        }
        assertThatThrownBy(() -> RULE.withInterval(days(0, 4.99)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("interval must be 5 to 366 days, was 4.99 days");
        assertThatThrownBy(() -> RULE.withInterval(days(0, 366.01)))
                .hasMessage("interval must be 5 to 366 days, was 366.01 days");
        assertThat(RULE.withDays(5)).hasToString("BaselineRule[first stable stretch of 5 days, zone Z]");
        assertThat(RULE.withDays(42)).hasToString("BaselineRule[first stable stretch of 42 days, zone Z]");
        for (int outside : new int[] {4, 43}) {
            assertThatThrownBy(() -> RULE.withDays(outside))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessage("days must be in [5, 42], was " + outside);
        }
    }

    /** The days of people at the site: their zone, days of rest and holidays are those of the baseline. */
    @Test
    void settingsReachTheBaseline() {
        SiteRecord record = record(20, day -> 0, day -> 0);
        LocalDate holiday = LocalDate.of(2026, 3, 4);
        SiteBaseline baseline = RULE.withZone(ZoneId.of("Europe/Rome"))
                .withRestDays(Set.of(DayOfWeek.FRIDAY))
                .withHolidays(Set.of(holiday))
                .learn(record)
                .baseline()
                .orElseThrow();
        assertThat(baseline.zone).isEqualTo(ZoneId.of("Europe/Rome"));
        assertThat(baseline.restDays).containsExactly(DayOfWeek.FRIDAY);
        assertThat(baseline.holidays).containsExactly(holiday);
        SiteBaseline usual = RULE.learn(record).baseline().orElseThrow();
        assertThat(usual.restDays).containsExactlyInAnyOrder(DayOfWeek.SATURDAY, DayOfWeek.SUNDAY);
        assertThat(usual.holidays).isEmpty();
        assertThat(List.of(baseline, usual)).doesNotHaveDuplicates();
    }
}
