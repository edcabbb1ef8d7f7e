package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Random;
import java.util.function.IntPredicate;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;

/** Hours of a level whose leaps are known. */
class LevelStepTest {
    private static final int DAYS = 40;
    private static final int AT = 24 * 15 + 7;

    /** An hour at which leaps are looked for. */
    private static final int ON = 24 * 15 + 6;

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

    /** The same without noise, in a season and with rain by the hour. */
    private static List<WatchNotice> exactly(IntToDoubleFunction excess, IntToDoubleFunction rain) {
        Findings findings = new Findings();
        LevelStep step = new LevelStep(findings);
        for (int hour = 0; hour < 24 * DAYS; hour++) {
            SiteHour of = new SiteHour(hour);
            of.rain = rain.applyAsDouble(hour);
            step.hour(of, excess.applyAsDouble(hour), true, false);
        }
        return findings.take();
    }

    private static List<WatchNotice> exactly(IntToDoubleFunction excess) {
        return exactly(excess, hour -> 0);
    }

    /** A leap at an hour, which stays. */
    private static IntToDoubleFunction leap(int at, double size) {
        return hour -> hour < at ? 0.1 : 0.1 + size;
    }

    /** A leap at {@link #ON}, of which so many of the hours of a day after it show another share. */
    private static IntToDoubleFunction leap(double size, IntPredicate isOdd, double share) {
        return hour -> hour < ON ? 0.1 : 0.1 + size * (isOdd.test(hour - ON) ? share : 1);
    }

    private static Instant at(int hour) {
        return Instant.EPOCH.plusSeconds(3600L * hour);
    }

    @Test
    void leapIsToldWithItsHourAndWhatItIs() {
        List<WatchNotice> told = exactly(leap(ON, 0.25));
        assertThat(told).hasSize(1);
        Finding finding = told.get(0).finding();
        assertThat(finding.since()).isEqualTo(at(ON));
        assertThat(finding.sinceRange().start()).isEqualTo(at(ON - 3));
        assertThat(finding.sinceRange().end()).isEqualTo(at(ON + 3));
        assertThat(finding.found()).isEqualTo(at(ON + 72));
        assertThat(told.get(0).time()).isEqualTo(at(ON + 72));
        assertThat(finding.detail())
                .isEqualTo("the level stands 28 % above the same hours of the days before, at once and without rain");
    }

    /** Days that are alike: 4 * sqrt(8 * 0.04^2 / (8 + days)), and not less than 0.12; three days after the first 0.136. */
    @Test
    void leastLeapIsThatOfAQuietSiteAndMoreWhereLittleIsKnown() {
        assertThat(exactly(leap(ON, 0.122))).hasSize(1);
        assertThat(exactly(leap(ON, 0.118))).isEmpty();
        assertThat(exactly(leap(75, 0.138))).hasSize(1);
        assertThat(exactly(leap(75, 0.134))).isEmpty();
        assertThat(exactly(leap(ON, 0.79))).hasSize(1);
        assertThat(exactly(leap(ON, 0.81))).isEmpty();
    }

    /**
     * Days that stand 0.06 higher and lower in turn differ by 0.06 from the ones before, as half of those do that scatter by
     * 0.06 / 0.6745 = 0.089; fifteen of them: 4 * sqrt((8 * 0.04^2 + 15 * 0.089^2) / 23) = 0.302.
     */
    @Test
    void restlessSiteAsksForMore() {
        assertThat(exactly(hour -> leap(ON, 0.33).applyAsDouble(hour) + restless(hour)))
                .hasSize(1);
        assertThat(exactly(hour -> leap(ON, 0.29).applyAsDouble(hour) + restless(hour)))
                .isEmpty();
    }

    private static double restless(int hour) {
        return hour < ON - 24 && Math.floorDiv(hour - ON, 24) % 2 == 0 ? 0 : 0.06;
    }

    /** Rain from half a day before the leap to a day after it, 0.8 mm of it; rain that nobody knows may be any. */
    @Test
    void rainOfTheseHoursExplainsALeap() {
        for (int hour : new int[] {ON - 12, ON, ON + 23}) {
            assertThat(exactly(leap(ON, 0.25), h -> h == hour ? 0.79 : 0)).hasSize(1);
            assertThat(exactly(leap(ON, 0.25), h -> h == hour ? 0.81 : 0)).isEmpty();
            assertThat(exactly(leap(ON, 0.25), h -> h == hour ? Double.NaN : 0)).isEmpty();
        }
        for (int hour : new int[] {ON - 13, ON + 24}) {
            assertThat(exactly(leap(ON, 0.25), h -> h == hour ? 30 : 0)).hasSize(1);
        }
        assertThat(exactly(leap(ON, 0.25), h -> h == ON - 12 || h == ON + 23 ? 0.41 : 0))
                .isEmpty();
    }

    /** Of a leap a quarter of its first day may be below 0.6 of it. */
    @Test
    void leapStandsInMostHoursOfItsFirstDay() {
        IntPredicate five = since -> since >= 8 && since < 13;
        IntPredicate seven = since -> since >= 8 && since < 15;
        assertThat(exactly(leap(0.25, five, 0.1))).hasSize(1);
        assertThat(exactly(leap(0.25, seven, 0.1))).isEmpty();
        assertThat(exactly(leap(0.25, seven, 0.55))).isEmpty();
        assertThat(exactly(leap(0.25, seven, 0.65))).hasSize(1);
    }

    /** Of the six hours on each side the middle ones must be 0.7 of it apart. */
    @Test
    void leapComesAtOnce() {
        IntPredicate first = since -> since < 6;
        assertThat(exactly(leap(0.25, first, 0.72))).hasSize(1);
        assertThat(exactly(leap(0.25, first, 0.68))).isEmpty();
    }

    @Test
    void eightDryHoursWithADryPartnerAreEnough() {
        assertThat(exactly(known(leap(ON, 0.25), 8, 6, 5))).hasSize(1);
        assertThat(exactly(known(leap(ON, 0.25), 7, 6, 5))).isEmpty();
        assertThat(exactly(known(leap(ON, 0.25), 8, 3, 5))).hasSize(1);
        assertThat(exactly(known(leap(ON, 0.25), 8, 2, 5))).isEmpty();
    }

    /** So many dry hours from the leap on until the next day, and so many just before it. */
    private static IntToDoubleFunction known(IntToDoubleFunction level, int after, int before, int first) {
        return hour -> {
            boolean dry = hour < ON - 12
                    || hour >= ON - before && hour < ON + first
                    || hour >= ON + 9 && hour < ON + 9 + after - first
                    || hour >= ON + 24;
            return dry ? level.applyAsDouble(hour) : Double.NaN;
        };
    }

    /** Each hour finds a dry one at its time among the five days before. */
    @Test
    void partnerLiesAmongFiveDays() {
        assertThat(exactly(hour -> between(hour, ON - 96, ON - 6)
                        ? Double.NaN
                        : leap(ON, 0.25).applyAsDouble(hour)))
                .hasSize(1);
        assertThat(exactly(hour -> between(hour, ON - 126, ON - 6)
                        ? Double.NaN
                        : leap(ON, 0.25).applyAsDouble(hour)))
                .isEmpty();
    }

    @Test
    void whatHasHalfGoneThreeDaysLaterIsNotTold() {
        assertThat(exactly(leap(0.25, since -> since >= 24, 0.65))).hasSize(1);
        assertThat(exactly(leap(0.25, since -> since >= 24, 0.55))).isEmpty();
    }

    @Test
    void dryDayOfTenDaysDecides() {
        List<WatchNotice> told = exactly(wetAfter(ON + 200));
        assertThat(told).hasSize(1);
        assertThat(told.get(0).time()).isBetween(at(ON + 208), at(ON + 211));
        assertThat(told.get(0).finding().since()).isEqualTo(at(ON));
        assertThat(exactly(wetAfter(ON + 236))).isEmpty();
    }

    private static IntToDoubleFunction wetAfter(int dry) {
        return hour -> between(hour, ON + 24, dry) ? Double.NaN : leap(ON, 0.25).applyAsDouble(hour);
    }

    /** It is over when two days stand less than a quarter of it above what was before. */
    @Test
    void itIsOverWhenThreeQuartersAreGone() {
        List<WatchNotice> told = exactly(leap(0.25, since -> since >= 240, 0.23));
        assertThat(told).extracting(WatchNotice::kind).containsExactly(WatchNotice.Kind.FOUND, WatchNotice.Kind.CLOSED);
        assertThat(told.get(1).finding().closed().orElseThrow()).isBetween(at(ON + 240 - 24), at(ON + 240));
        assertThat(told.get(1).time()).isBetween(at(ON + 240 + 24), at(ON + 240 + 30));
        assertThat(exactly(leap(0.25, since -> since >= 240, 0.27))).hasSize(1);
    }

    @Test
    void levelOfATideIsNotHeldAgainstHoursOfTheDay() {
        Findings findings = new Findings();
        LevelStep step = new LevelStep(findings);
        for (int hour = 0; hour < 24 * DAYS; hour++) {
            SiteHour of = new SiteHour(hour);
            of.rain = 0;
            step.hour(of, leap(ON, 0.25).applyAsDouble(hour), true, true);
        }
        assertThat(findings.take()).isEmpty();
    }
}
