package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;

/** Hours of a level whose leaps are known. */
class LevelStepTest {
    private static final int DAYS = 40;
    private static final int AT = 24 * 15 + 7;

    /** What is told of hours that leave over so much, with noise; while something else is open if asked, with rain at an hour. */
    private static List<WatchNotice> told(IntToDoubleFunction excess, boolean within, int rainAt, int cutAt) {
        Findings findings = new Findings();
        LevelStep step = new LevelStep(findings);
        Random random = new Random(11);
        for (int hour = 0; hour < 24 * DAYS; hour++) {
            if (hour == cutAt) {
                String state = step.write().toString();
                step = new LevelStep(findings);
                step.read(state);
                assertThat(step.write()).hasToString(state);
            }
            SiteHour of = new SiteHour(hour);
            of.rain = hour == rainAt ? 3 : 0;
            step.hour(of, excess.applyAsDouble(hour) + 0.03 * random.nextGaussian(), within, false);
        }
        step.finish(24 * DAYS * SiteHour.NANOS);
        return findings.take();
    }

    private static double leap(int hour) {
        return 0.2 + (hour < AT ? 0 : 0.25);
    }

    @Test
    void leapInDryWeatherIsToldThreeDaysLater() {
        List<WatchNotice> told = told(LevelStepTest::leap, true, -1, -1);
        assertThat(told).hasSize(2);
        Finding finding = told.get(0).finding();
        assertThat(finding.names()).containsExactly(FindingName.LEVEL_UP);
        assertThat(finding.shape()).isEqualTo(ChangeShape.STEP);
        assertThat(finding.since())
                .isBetween(Instant.EPOCH.plusSeconds(3600L * (AT - 3)), Instant.EPOCH.plusSeconds(3600L * (AT + 3)));
        assertThat(finding.found()).isBefore(Instant.EPOCH.plusSeconds(3600L * (AT + 80)));
        assertThat(finding.detail()).contains("at once and without rain");
        assertThat(told.get(1).kind()).isEqualTo(WatchNotice.Kind.STANDING);
    }

    @Test
    void leapOutsideOfASeasonOrAfterRainIsLeftToOthers() {
        assertThat(told(LevelStepTest::leap, false, -1, -1)).isEmpty();
        assertThat(told(LevelStepTest::leap, true, AT - 4, -1)).isEmpty();
    }

    @Test
    void slowRiseAVisitOfADayAndAnotherUnitAreNone() {
        assertThat(told(hour -> hour < AT ? 0 : Math.min(0.4, 0.004 * (hour - AT)), true, -1, -1))
                .isEmpty();
        assertThat(told(hour -> hour < AT || hour > AT + 40 ? 0 : 0.25, true, -1, -1))
                .isEmpty();
        assertThat(told(hour -> hour < AT ? 0 : 1.1, true, -1, -1)).isEmpty();
    }

    @Test
    void itEndsWhenTheLevelIsBack() {
        List<WatchNotice> told = told(hour -> hour < AT || hour > AT + 200 ? 0.2 : 0.45, true, -1, -1);
        assertThat(told).hasSize(2);
        assertThat(told.get(1).kind()).isEqualTo(WatchNotice.Kind.CLOSED);
        assertThat(told.get(1).finding().closed().orElseThrow())
                .isBetween(
                        Instant.EPOCH.plusSeconds(3600L * (AT + 160)), Instant.EPOCH.plusSeconds(3600L * (AT + 260)));
    }

    @Test
    void leapThatComesBackIsTheSameFinding() {
        List<WatchNotice> told =
                told(hour -> between(hour, AT, AT + 200) || hour >= AT + 400 ? 0.45 : 0.2, true, -1, -1);
        assertThat(told.stream().map(WatchNotice::kind))
                .containsExactly(
                        WatchNotice.Kind.FOUND,
                        WatchNotice.Kind.CLOSED,
                        WatchNotice.Kind.RETURNED,
                        WatchNotice.Kind.STANDING);
        Finding finding = told.get(3).finding();
        assertThat(finding.number()).isEqualTo(1);
        assertThat(finding.stretches()).hasSize(2);
        assertThat(finding.stretches().get(1).from())
                .isBetween(
                        Instant.EPOCH.plusSeconds(3600L * (AT + 397)), Instant.EPOCH.plusSeconds(3600L * (AT + 403)));
    }

    private static boolean between(int hour, int from, int to) {
        return hour >= from && hour < to;
    }

    @Test
    void restartsChangeNothing() {
        List<WatchNotice> whole = told(LevelStepTest::leap, true, -1, -1);
        for (int cut : new int[] {AT - 30, AT + 12, AT + 40, AT + 71, AT + 200}) {
            assertThat(told(LevelStepTest::leap, true, -1, cut)).isEqualTo(whole);
        }
    }
}
