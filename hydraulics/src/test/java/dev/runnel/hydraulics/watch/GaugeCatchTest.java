package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.evidence.Direction;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;

/** Storms that say that a gauge catches another share of the rain. */
class GaugeCatchTest {
    private static final int FROM = 24 * 45;

    /** Hour of three days in which a storm begins. */
    private static final int BEGIN = 30;

    /** A storm every third day; the gauge writes a share of it from a day on; storms differ by some scatter. */
    private static List<WatchNotice> watched(double share, double scatter, int days, boolean other, boolean restarted) {
        SiteBaseline baseline =
                GaugeClockTest.rule(GaugeClockTest.readings(0, 0)).baseline();
        Findings findings = new Findings();
        GaugeCatch gauge = new GaugeCatch(baseline, findings);
        Random random = new Random(5);
        double of = 1;
        for (long hour = 0; hour < 24L * days; hour++) {
            double since = Math.floorMod(hour, 72L) - 30;
            of = since == 0 ? Math.exp(scatter * random.nextGaussian()) : of;
            double wave = since < 0 ? 0 : since < 2 ? 0.02 * (since + 1) : 0.04 * Math.exp(-(since - 1) / 1.5);
            SiteHour at = new SiteHour(hour);
            at.rain = (since == 0 || since == 1 ? 5 : 0) * (hour >= FROM ? share : 1);
            gauge.hour(at, of * wave, other && hour >= FROM);
            if (restarted && hour % 7 == 0) {
                String state = gauge.write().toString();
                gauge = new GaugeCatch(baseline, findings);
                gauge.read(state);
                assertThat(gauge.write()).hasToString(state);
            }
        }
        gauge.finish(24L * days * SiteHour.NANOS);
        return findings.take();
    }

    @Test
    void slopeIsTheAnswerOfAMillimetreWhateverWasWritten() {
        double[] rain = new double[30];
        rain[10] = 2;
        rain[11] = 3;
        double[] held = new double[30];
        double[] answer = new double[30];
        for (int i = 0; i < 30; i++) {
            held[i] = (i > 0 ? Math.exp(-1 / 1.5) * held[i - 1] : 0) + rain[i];
            answer[i] = 7 + 0.25 * (i >= 2 ? held[i - 2] : 0);
        }
        StormLag.Fit fit = StormLag.of(rain, answer, 0);
        assertThat(fit.slope()).isCloseTo(0.25, within(1e-12));
        assertThat(fit.lag()).isCloseTo(2, within(0.1));
        rain[10] = 1;
        rain[11] = 1.5;
        assertThat(StormLag.of(rain, answer, 0).slope()).isCloseTo(0.5, within(1e-12));
    }

    @Test
    void gaugeThatCatchesLessIsToldByStormsInARow() {
        List<WatchNotice> told = watched(0.45, 0.2, 90, false, false);
        assertThat(told)
                .extracting(WatchNotice::kind)
                .containsExactly(WatchNotice.Kind.FOUND, WatchNotice.Kind.STANDING);
        Finding finding = told.get(0).finding();
        assertThat(finding.name()).isEqualTo(FindingName.GAUGE_CATCHES_LESS);
        assertThat(finding.direction()).isEqualTo(Direction.DOWN);
        assertThat(finding.detail()).contains("rises 2.29 times as far in the last 4 storms as in the 15 before");
        // The first storm of a millimetre that became less, and no earlier than the one before it.
        Instant first = Instant.ofEpochSecond((45L * 24 + 30) * 3600);
        assertThat(finding.since()).isBetween(first, first.plusSeconds(24 * 3600));
        assertThat(finding.sinceRange().start()).isBetween(first.minusSeconds(72 * 3600), first);
    }

    @Test
    void gaugeThatWritesMoreIsTheOtherWay() {
        List<WatchNotice> told = watched(2.5, 0.2, 90, false, false);
        assertThat(told.get(0).finding().name()).isEqualTo(FindingName.GAUGE_WRITES_MORE);
        assertThat(told.get(0).finding().direction()).isEqualTo(Direction.UP);
    }

    @Test
    void whatTheScatterOfStormsExplainsIsNotTold() {
        assertThat(watched(1, 0.3, 300, false, false)).isEmpty();
        assertThat(watched(0.75, 0.3, 90, false, false)).isEmpty();
    }

    @Test
    void manyStormsTellOfLessThanFewDo() {
        assertThat(watched(0.5, 0.3, 57, false, false)).isEmpty();
        assertThat(watched(0.5, 0.3, 110, false, false))
                .extracting(told -> told.finding().detail())
                .allMatch(
                        detail -> detail.contains("in the last 12 storms") || detail.contains("in the last 16 storms"))
                .isNotEmpty();
        // However many: no less than half as much again.
        assertThat(watched(0.7, 0.05, 200, false, false)).isEmpty();
    }

    @Test
    void stormsAreNotAskedWhileSomethingElseIsOpen() {
        assertThat(watched(0.45, 0.2, 90, true, false)).isEmpty();
    }

    @Test
    void restartChangesNothing() {
        assertThat(watched(0.45, 0.2, 90, false, true))
                .usingRecursiveComparison()
                .isEqualTo(watched(0.45, 0.2, 90, false, false));
    }

    /** From day 42 on the stamps of the monitor are nine hours early, so that storms no longer meet their rain. */
    @Test
    void clockOfTheMonitorIsNoOtherShareOfTheRain() {
        List<SiteReading> readings = new ArrayList<>();
        for (int i = 0; i < 96 * 110; i++) {
            SiteReading here = GaugeClockTest.reading(i, 0, 0);
            SiteReading later = GaugeClockTest.reading(i < 96 * 42 ? i : i + 36, 0, 0);
            readings.add(new SiteReading(here.time(), later.depth(), later.velocity(), here.rain()));
        }
        assertThat(WatchReport.of(
                                GaugeClockTest.rule(readings).baseline(),
                                GaugeClockTest.rule(readings).over(readings))
                        .findings())
                .extracting(Finding::name)
                .contains(FindingName.CLOCK_OF_MONITOR)
                .doesNotContain(FindingName.GAUGE_CATCHES_LESS, FindingName.GAUGE_WRITES_MORE);
    }

    /** One storm every third day, each of which answers so many times as far as the first ones, in logarithms. */
    private static List<WatchNotice> answering(double... answers) {
        Findings findings = new Findings();
        GaugeCatch gauge = new GaugeCatch(
                GaugeClockTest.rule(GaugeClockTest.readings(0, 0)).baseline(), findings);
        for (int hour = 0; hour < 72 * answers.length; hour++) {
            int since = hour % 72 - BEGIN;
            double wave = since < 0 ? 0 : since < 2 ? 0.02 * (since + 1) : 0.04 * Math.exp(-(since - 1) / 1.5);
            SiteHour at = new SiteHour(hour);
            at.rain = since == 0 || since == 1 ? 5 : 0;
            gauge.hour(at, Math.exp(answers[hour / 72]) * wave, false);
        }
        return findings.take();
    }

    /** Storms that are like the first ones, and then those given. */
    private static List<WatchNotice> answeringAfter(int alike, double... answers) {
        return answering(DoubleStream.concat(DoubleStream.generate(() -> 0).limit(alike), DoubleStream.of(answers))
                .toArray());
    }

    private static Instant day(int storm) {
        return Instant.EPOCH.plus(Duration.ofHours(72L * storm + BEGIN));
    }

    /**
     * Twelve storms alike leave the scatter that is assumed of six, 0.4 sqrt(6 / 17) = 0.238; the mean of four more must be 4.5
     * times 0.238 sqrt(1/4 + 1/12) = 0.617 away, that of six 4.5 * 0.238 * sqrt(1/6 + 1/12) = 0.535.
     */
    @Test
    void fourStormsTellOfTwiceAndSixOfLess() {
        List<WatchNotice> told = answeringAfter(12, 0.62, 0.62, 0.62, 0.62);
        assertThat(told).hasSize(1);
        assertThat(told.get(0).finding().detail())
                .isEqualTo(
                        "for each mm of rain the flow rises 1.86 times as far in the last 4 storms as in the 12 before"
                                + " (usual scatter of a storm 27 %): as if 54 % of the rain were written");
        assertThat(told.get(0).finding().sinceRange().start()).isBetween(day(11), day(12));
        assertThat(answeringAfter(12, 0.61, 0.61, 0.61, 0.61, 0.61)).isEmpty();
        assertThat(answeringAfter(12, 0.54, 0.54, 0.54, 0.54, 0.54, 0.54))
                .extracting(each -> each.finding().detail())
                .allMatch(detail -> detail.contains("in the last 6 storms as in the 12 before"))
                .hasSize(1);
        assertThat(answeringAfter(12, 0.53, 0.53, 0.53, 0.53, 0.53, 0.53)).isEmpty();
        assertThat(answeringAfter(12, -0.62, -0.62, -0.62, -0.62))
                .extracting(each -> each.finding().detail())
                .allMatch(detail -> detail.contains("rises 0.54 times as far")
                        && detail.endsWith("as if 186 % of the rain were written"))
                .hasSize(1);
    }

    /** Three storms are the least that say what is usual: 0.4 sqrt(6 / 8) = 0.346, 4.5 * 0.346 * sqrt(1/4 + 1/3) = 1.191. */
    @Test
    void beforeThreeStormsNothingIsUsual() {
        assertThat(answeringAfter(3, 1.2, 1.2, 1.2, 1.2))
                .extracting(each -> each.finding().detail())
                .allMatch(detail -> detail.contains("in the last 4 storms as in the 3 before"))
                .hasSize(1);
        assertThat(answeringAfter(3, 1.18, 1.18, 1.18, 1.18)).isEmpty();
        assertThat(answeringAfter(2, 2, 2, 2, 2)).isEmpty();
    }

    /** Of the last six the first is one of before: it began after that one. */
    @Test
    void stormOfBeforeIsNoneOfTheChange() {
        List<WatchNotice> told = answeringAfter(12, 0.01, 0.9, 0.45, 0.45, 0.45, 1.05);
        assertThat(told).hasSize(1);
        Finding finding = told.get(0).finding();
        assertThat(finding.detail()).contains("in the last 6 storms as in the 12 before");
        assertThat(finding.since()).isBetween(day(13), day(14));
        assertThat(finding.sinceRange().start()).isBetween(day(12), day(13));
    }

    @Test
    void gaugeThatIsMendedIsToldByFourStormsNearerToUsual() {
        List<WatchNotice> told = answeringAfter(12, 1, 1, 1, 1, 1, 0.52, 0.48, 0, 0.48, -0.48, 1, 1, 1, 1);
        assertThat(told)
                .extracting(WatchNotice::kind)
                .containsExactly(WatchNotice.Kind.FOUND, WatchNotice.Kind.CLOSED, WatchNotice.Kind.FOUND);
        Finding closed = told.get(1).finding();
        assertThat(closed.since()).isBetween(day(12), day(13));
        assertThat(closed.closed().orElseThrow()).isBetween(day(18), day(19));
        assertThat(told.get(1).time()).isBetween(day(21), day(22));
        // What was caught while it was wrong has become no part of what is usual.
        assertThat(told.get(2).finding().number()).isEqualTo(2);
        assertThat(told.get(2).finding().detail()).contains("in the last 4 storms as in the 16 before");
    }

    @Test
    void threeStormsOrOneTooManyOnTheFarSideDoNotMendIt() {
        assertThat(answeringAfter(12, 1, 1, 1, 1, 0, 0, 0)).hasSize(1);
        assertThat(answeringAfter(12, 1, 1, 1, 1, 0, 0, 0.52, 0)).hasSize(1);
        assertThat(answeringAfter(12, 1, 1, 1, 1, 0, 0, -0.52, 0)).hasSize(1);
        assertThat(answeringAfter(12, 1, 1, 1, 1, 0, 0, 0, 0)).hasSize(2);
    }
}
