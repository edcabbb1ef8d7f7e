package dev.runnel.hydraulics.watch;

import static dev.runnel.hydraulics.watch.KnownHours.day;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Figures over readings some of which are in doubt, counted by hand: a reading an hour. */
class MarkedFigureTest {
    private static final int DAYS = 10;

    private static FindingStretch stretch(double from, double to) {
        return new FindingStretch(day(from), Double.isNaN(to) ? Optional.empty() : Optional.of(day(to)));
    }

    private static Finding finding(int number, FindingName name, double from, double to) {
        return finding(number, name, stretch(from, to));
    }

    private static Finding finding(int number, FindingName name, FindingStretch... stretches) {
        return KnownFinding.of(number, List.of(name), stretches[0].from(), stretches);
    }

    private static DoubtfulReadings doubt(Finding... findings) {
        return DoubtfulReadings.of(
                new WatchReport(KnownHours.baseline(hour -> {}), List.of(findings), List.of()), day(DAYS));
    }

    /** 1 on the first day, 2 on the second and so on; so many hours of each day missing, marked as such or not there. */
    private static Series flow(int missing, boolean marked) {
        SeriesBuilder flow = Series.builder();
        for (int i = 0; i < 24 * DAYS; i++) {
            Instant time = day(i / 24.0);
            if (i % 24 >= missing) {
                flow.add(time, 1.0 + Math.floorDiv(i, 24));
            } else if (marked) {
                flow.add(time.getEpochSecond() * 1_000_000_000L, Double.NaN, Quality.MISSING);
            }
        }
        return flow.build();
    }

    private static MarkedFigure mean(Series series, double from, double to, DoubtfulReadings doubt) {
        return MarkedFigure.mean(series, ReadingUse.FLOW, Interval.of(day(from), day(to)), doubt);
    }

    @Test
    void meanOfWhatIsNotInDoubt() {
        DoubtfulReadings doubt = doubt(
                finding(3, FindingName.SEDIMENT, 2, 3.5),
                finding(4, FindingName.WEAK_ECHO, 9, Double.NaN),
                finding(5, FindingName.MORE_WATER, 2, 4));
        MarkedFigure figure = mean(flow(0, true), 2, 5, doubt);
        assertThat(figure.asRead()).isCloseTo((0.5 * 4 + 5) / 1.5, within(1e-12));
        assertThat(figure.doubtfulShare()).isEqualTo(0.5);
        assertThat(figure.missingShare()).isZero();
        assertThat(figure.findings()).containsExactly(3);
        assertThat(figure.isWithheld()).isFalse();
        assertThat(figure.value()).hasValue(figure.asRead());
        assertThat(figure).hasToString("MarkedFigure[4.667, 50 % in doubt by finding 3]");
        MarkedFigure more = mean(flow(0, true), 2, 4.9, doubt);
        assertThat(more.isWithheld()).isTrue();
        assertThat(more.value()).isEmpty();
        assertThat(more.toString())
                .startsWith("MarkedFigure[withheld, as read 4.")
                .contains("51 % in doubt");
        // All of it in doubt: what was read is told and withheld.
        MarkedFigure all = mean(flow(0, true), 9, 10, doubt);
        assertThat(all.asRead()).isEqualTo(10);
        assertThat(all.doubtfulShare()).isEqualTo(1);
        assertThat(all.isWithheld()).isTrue();
        assertThat(mean(flow(0, true), 0, 2, doubt)).hasToString("MarkedFigure[1.5]");
        assertThat(mean(flow(0, true), 2, 10, doubt).toString()).contains(" in doubt by findings 3, 4");
    }

    @Test
    void whatIsMissing() {
        MarkedFigure half = mean(flow(12, true), 0, 1, doubt());
        assertThat(half.missingShare()).isEqualTo(0.5);
        assertThat(half.isWithheld()).isFalse();
        assertThat(half).hasToString("MarkedFigure[1, 50 % missing]");
        MarkedFigure more = mean(flow(13, true), 0, 1, doubt());
        assertThat(more.isWithheld()).isTrue();
        assertThat(more).hasToString("MarkedFigure[withheld, as read 1, 54 % missing]");
        MarkedFigure none = mean(flow(24, true), 0, 1, doubt());
        assertThat(none.asRead()).isNaN();
        assertThat(none.missingShare()).isEqualTo(1);
        assertThat(none.doubtfulShare()).isZero();
        assertThat(none).hasToString("MarkedFigure[withheld, 100 % missing]");
        MarkedFigure empty = mean(Series.builder().build(), 0, 1, doubt());
        assertThat(empty.missingShare()).isEqualTo(1);
        assertThat(empty.isWithheld()).isTrue();
        for (double outside : new double[] {-0.1, 1.1, Double.NaN}) {
            assertThatThrownBy(() -> new MarkedFigure(1, outside, 0, 0, List.of()))
                    .hasMessageStartingWith("doubtfulShare must be in [0, 1], was ");
            assertThatThrownBy(() -> new MarkedFigure(1, 0, outside, 0, List.of()))
                    .hasMessageStartingWith("missingShare must be in [0, 1], was ");
            assertThatThrownBy(() -> new MarkedFigure(1, 0, 0, outside, List.of()))
                    .hasMessageStartingWith("suspectShare must be in [0, 1], was ");
        }
        assertThat(new MarkedFigure(Double.NaN, 0, 0, 0, List.of()).isWithheld())
                .isTrue();
    }

    /** Each name doubts what its sensor gives, and no name is forgotten. */
    @Test
    void whatEachNameDoubts() {
        for (FindingName name : FindingName.values()) {
            Set<ReadingUse> uses = DoubtfulReadings.doubted(List.of(name));
            assertThat(uses.contains(ReadingUse.FLOW))
                    .as("%s", name)
                    .isEqualTo(uses.contains(ReadingUse.DEPTH) || uses.contains(ReadingUse.VELOCITY));
            assertThat(uses.isEmpty() || uses.contains(ReadingUse.STORM_RESPONSE))
                    .isTrue();
        }
        assertThat(DoubtfulReadings.doubted(List.of(FindingName.DEPTH_DRIFT, FindingName.WEAK_ECHO)))
                .isEqualTo(EnumSet.allOf(ReadingUse.class));
        assertThat(DoubtfulReadings.doubted(List.of(FindingName.SEDIMENT))).doesNotContain(ReadingUse.VELOCITY);
        assertThat(DoubtfulReadings.doubted(List.of(FindingName.VELOCITY_LOSS))).doesNotContain(ReadingUse.DEPTH);
        assertThat(DoubtfulReadings.doubted(List.of(FindingName.CLOCK_OF_GAUGE)))
                .containsExactly(ReadingUse.STORM_RESPONSE);
        assertThat(DoubtfulReadings.doubted(List.of(FindingName.HELD_UP))).isEmpty();
        assertThat(DoubtfulReadings.doubted(List.of(FindingName.CONTRADICTORY)))
                .isEqualTo(EnumSet.allOf(ReadingUse.class));
    }

    @Test
    void timesInDoubt() {
        DoubtfulReadings doubt =
                doubt(finding(1, FindingName.SEDIMENT, 2, 3), finding(2, FindingName.VELOCITY_LOSS, 8, Double.NaN));
        assertThat(doubt.isDoubtful(ReadingUse.DEPTH, day(2).minusNanos(1))).isFalse();
        assertThat(doubt.isDoubtful(ReadingUse.DEPTH, day(2))).isTrue();
        assertThat(doubt.isDoubtful(ReadingUse.DEPTH, day(3).minusNanos(1))).isTrue();
        assertThat(doubt.isDoubtful(ReadingUse.DEPTH, day(3))).isFalse();
        assertThat(doubt.isDoubtful(ReadingUse.VELOCITY, day(2))).isFalse();
        assertThat(doubt.isDoubtful(ReadingUse.VELOCITY, day(9))).isTrue();
        assertThat(doubt.isDoubtful(ReadingUse.VELOCITY, day(DAYS))).isFalse();
        boolean[] doubtful = doubt.doubtful(ReadingUse.FLOW, flow(0, true));
        List<Integer> at = new ArrayList<>();
        IntStream.range(0, doubtful.length).filter(i -> doubtful[i]).forEach(at::add);
        assertThat(at).hasSize(24 + 48).startsWith(48).contains(71, 192, 239).doesNotContain(72, 191);
        assertThat(doubt.findings(ReadingUse.FLOW, Interval.of(day(3), day(8)))).isEmpty();
        assertThat(doubt.findings(ReadingUse.FLOW, Interval.of(day(2.9), day(8.1))))
                .hasSize(2);
        assertThat(doubt).hasToString("DoubtfulReadings[2 findings, 3 cuts]");
    }

    /** What came back puts its stretches in doubt, not what lies between. */
    @Test
    void readingsBetweenTheStretchesAreGood() {
        Finding habit =
                finding(1, FindingName.FROZEN_LOGGER, stretch(2, 2.5), stretch(4, 4.25), stretch(8, Double.NaN));
        DoubtfulReadings doubt = doubt(habit);
        assertThat(doubt.isDoubtful(ReadingUse.DEPTH, day(2.4))).isTrue();
        assertThat(doubt.isDoubtful(ReadingUse.DEPTH, day(3))).isFalse();
        assertThat(doubt.isDoubtful(ReadingUse.FLOW, day(4.1))).isTrue();
        assertThat(doubt.isDoubtful(ReadingUse.FLOW, day(5))).isFalse();
        assertThat(doubt.isDoubtful(ReadingUse.FLOW, day(9.9))).isTrue();
        boolean[] doubtful = doubt.doubtful(ReadingUse.VELOCITY, flow(0, true));
        assertThat(IntStream.range(0, doubtful.length).filter(i -> doubtful[i]).count())
                .isEqualTo(12 + 6 + 48);
        assertThat(doubt.findings(ReadingUse.FLOW, Interval.of(day(5), day(8)))).isEmpty();
        assertThat(doubt.findings(ReadingUse.FLOW, Interval.of(day(5), day(8.1))))
                .containsExactly(habit);
        MarkedFigure figure = mean(flow(0, true), 2, 4, doubt);
        assertThat(figure.doubtfulShare()).isEqualTo(0.25);
        assertThat(figure.asRead()).isCloseTo((0.5 * 3 + 4) / 1.5, within(1e-12));
        assertThat(doubt(finding(1, FindingName.HELD_UP, stretch(2, 3), stretch(5, 6.5), stretch(9, Double.NaN)))
                        .cuts())
                .containsExactly(day(2), day(3), day(5), day(6.5), day(9));
    }

    /** Where the site changed, and changed back, the record is cut; a sensor that fails cuts nothing. */
    @Test
    void cuts() {
        assertThat(doubt(
                                finding(1, FindingName.HELD_UP, 5, 7),
                                finding(2, FindingName.SEDIMENT, 2, Double.NaN),
                                finding(3, FindingName.WEAK_ECHO, 3, 4),
                                finding(4, FindingName.MORE_WATER, 6, 6),
                                finding(5, FindingName.CLOCK_OF_MONITOR, 1, 2))
                        .cuts())
                .containsExactly(day(2), day(5), day(6), day(7));
    }

    /** The flow of day d is d + 1; days that a cut parts belong to no stretch, days with less than three quarters good do not count. */
    @Test
    void dryWeatherFlowByStretches() {
        Set<LocalDate> dry = Set.of(
                LocalDate.of(2026, 3, 2), LocalDate.of(2026, 3, 3), LocalDate.of(2026, 3, 6), LocalDate.of(2026, 3, 9));
        DoubtfulReadings held =
                doubt(finding(1, FindingName.HELD_UP, 4.5, Double.NaN), finding(2, FindingName.WEAK_ECHO, 7, 7.25));
        List<StretchFlow> two = StretchFlow.of(flow(0, true), dry, ZoneOffset.UTC, held);
        assertThat(two).hasSize(2);
        assertThat(two.get(0).stretch()).isEqualTo(Interval.of(day(0), day(4.5)));
        assertThat(two.get(0).days()).isEqualTo(2);
        assertThat(two.get(0).flow().asRead()).isEqualTo(1.5);
        assertThat(two.get(0).flow().findings()).isEmpty();
        // The day parted by the cut is left out; three quarters of the 9th are good.
        assertThat(two.get(1).days()).isEqualTo(1);
        assertThat(two.get(1).daysLeftOut()).isZero();
        assertThat(two.get(1).flow().asRead()).isEqualTo(8);
        assertThat(two.get(1).flow().doubtfulShare()).isEqualTo(0.25);
        assertThat(two.get(1).flow().findings()).containsExactly(2);
        assertThat(two.get(0).toString()).endsWith(", 2 dry days, 0 left out, MarkedFigure[1.5] = 1500.0 l/s]");
        for (int missing : new int[] {6, 7}) {
            StretchFlow one = StretchFlow.of(
                            flow(missing, true), Set.of(LocalDate.of(2026, 3, 4)), ZoneOffset.UTC, doubt())
                    .get(0);
            assertThat(one.days()).isEqualTo(missing == 6 ? 1 : 0);
            assertThat(one.daysLeftOut()).isEqualTo(missing == 6 ? 0 : 1);
            assertThat(one.flow().asRead()).isEqualTo(3);
            assertThat(one.flow().missingShare()).isCloseTo(missing / 24.0, within(1e-12));
        }
        // Days with less than that are left out beside one that counts.
        StretchFlow beside = StretchFlow.of(
                        flow(0, true), dry, ZoneOffset.UTC, doubt(finding(2, FindingName.WEAK_ECHO, 7, 7.3)))
                .get(0);
        assertThat(beside.days()).isEqualTo(3);
        assertThat(beside.daysLeftOut()).isEqualTo(1);
        assertThat(beside.flow().asRead()).isCloseTo((1 + 2 + 5) / 3.0, within(1e-12));
        StretchFlow none =
                StretchFlow.of(flow(0, true), Set.of(), ZoneOffset.UTC, doubt()).get(0);
        assertThat(none.flow().asRead()).isNaN();
        assertThat(none.flow().missingShare()).isEqualTo(1);
        assertThat(none.toString()).endsWith(", 0 dry days, 0 left out, MarkedFigure[withheld, 100 % missing]]");
        assertThat(StretchFlow.of(Series.builder().build(), dry, ZoneOffset.UTC, doubt()))
                .isEmpty();
        // A cut on the first reading parts nothing.
        assertThat(StretchFlow.of(
                        flow(0, true), dry, ZoneOffset.UTC, doubt(finding(1, FindingName.HELD_UP, 0, Double.NaN))))
                .hasSize(1);
    }

    /** Days of a gauge that was perhaps dead were taken for dry and may have been wet: a finding says so, or a remark that is less sure. */
    @Test
    void dryDaysOfAGaugeThatWasPerhapsDead() {
        Finding told = finding(1, FindingName.SILENT_GAUGE, 1.8, 3.2);
        Finding remarked = finding(0, FindingName.SILENT_GAUGE, 2.5, 4.25);
        Finding wrongClock = finding(0, FindingName.CLOCK_OF_MONITOR, 6, 9);
        DoubtfulReadings doubt = DoubtfulReadings.of(
                new WatchReport(
                        KnownHours.baseline(hour -> {}), List.of(told), List.of(noted(remarked), noted(wrongClock))),
                day(DAYS));
        assertThat(doubt.silences()).containsExactly(Interval.of(day(1.8), day(4.25)));
        assertThat(doubt.isDoubtful(ReadingUse.FLOW, day(2))).isFalse();
        // A fifth of the second day lies in it, all of the third and the fourth, a quarter of the fifth.
        List<LocalDate> dates = IntStream.range(1, 8)
                .mapToObj(each -> LocalDate.of(2026, 3, 1).plusDays(each))
                .toList();
        assertThat(dates.stream().map(each -> doubt.suspectShare(List.of(each), ZoneOffset.UTC)))
                .containsExactly(0.0, 0.0, 1.0, 1.0, 1.0, 0.0, 0.0);
        assertThat(doubt.suspectShare(List.of(), ZoneOffset.UTC)).isZero();
        StretchFlow some = StretchFlow.of(flow(0, true), Set.copyOf(dates), ZoneOffset.UTC, doubt)
                .get(0);
        assertThat(some.flow().suspectShare()).isCloseTo(3 / 7.0, within(1e-12));
        assertThat(some.flow().isWithheld()).isFalse();
        assertThat(some.flow().toString()).contains("43 % on days of a gauge that was perhaps dead");
        StretchFlow most = StretchFlow.of(flow(0, true), Set.copyOf(dates.subList(1, 6)), ZoneOffset.UTC, doubt)
                .get(0);
        assertThat(most.flow().suspectShare()).isCloseTo(0.6, within(1e-12));
        assertThat(most.flow().value()).isEmpty();
        // Half of them is not more than half; a silence after the record is none of it.
        assertThat(new MarkedFigure(1, 0, 0, 0.5, List.of()).value()).hasValue(1);
        assertThat(DoubtfulReadings.of(
                                new WatchReport(
                                        KnownHours.baseline(hour -> {}),
                                        List.of(finding(1, FindingName.SILENT_GAUGE, 1.8, Double.NaN)),
                                        List.of()),
                                day(1.8))
                        .silences())
                .isEmpty();
    }

    private static WatchNotice noted(Finding finding) {
        return new WatchNotice(WatchNotice.Kind.NOTED, finding.found(), finding);
    }
}
