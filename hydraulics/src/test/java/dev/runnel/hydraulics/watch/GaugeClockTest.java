package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.evidence.Direction;
import dev.runnel.hydraulics.watch.InventedSite.Fault;
import dev.runnel.timeseries.Machine;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.IntPredicate;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** The lag of depth behind rain, and the clock of a gauge by it. */
class GaugeClockTest {
    private static final Duration DAY = Duration.ofDays(1);

    /** Hour of three days in which a storm begins. */
    private static final int BEGIN = 30;

    /** A burst of two hours; the depth rises for two and falls for six. */
    private static double[] rain() {
        double[] rain = new double[30];
        rain[10] = 2;
        rain[11] = 3;
        return rain;
    }

    private static double[] excess(int late) {
        double[] excess = new double[30];
        for (int i = 0; i < 30; i++) {
            int since = i - 10 - late;
            excess[i] = since < 0 ? 0 : since < 2 ? 0.2 * (since + 1) : 0.4 * Math.exp(-(since - 1) / 1.5);
        }
        return excess;
    }

    @Test
    void lagMovesWithTheDepth() {
        double usual = StormLag.of(rain(), excess(0), StormLag.LEAST_RISE).lag();
        assertThat(usual).isBetween(-0.5, 1.0);
        assertThat(StormLag.of(rain(), excess(3), StormLag.LEAST_RISE).lag() - usual)
                .isCloseTo(3, within(0.05));
        assertThat(StormLag.of(rain(), excess(-3), StormLag.LEAST_RISE).lag() - usual)
                .isCloseTo(-3, within(0.05));
    }

    /** Hours of storms every third day, straight into the machine; later ones a shift late, and noisy if asked. */
    private static List<WatchNotice> straight(double shift, double noise, boolean tide, boolean season) {
        return straight(shift, noise, tide, season, Integer.MAX_VALUE);
    }

    /** The same, going on from the text of the state every so many hours. */
    private static List<WatchNotice> straight(double shift, double noise, boolean tide, boolean season, int cut) {
        SiteBaseline baseline = rule(readings(0, 0)).baseline();
        Findings findings = new Findings();
        GaugeClock clock = new GaugeClock(baseline, findings);
        Random random = new Random(3);
        for (long hour = 0; hour < 24 * 80; hour++) {
            double since = Math.floorMod(hour, 72L) - 30;
            double late = hour < 24 * 40 ? 0 : shift;
            // As late as the storms that the baseline learned.
            double after = since - 0.8;
            double wave = after < 0 ? 0 : after < 2 ? 0.2 * (after + 1) : 0.4 * Math.exp(-(after - 1) / 1.5);
            SiteHour of = new SiteHour(hour);
            of.rain = since - late >= 0 && since - late < 2 ? 2.5 : 0;
            clock.hour(of, wave + noise * random.nextGaussian() * (hour < 24 * 40 ? 0 : 1), 0, tide, season);
            if (hour % cut == cut - 1) {
                String state = clock.write().toString();
                clock = new GaugeClock(baseline, findings);
                clock.read(state);
            }
        }
        return findings.take();
    }

    @Test
    void threeStormsOfAWetSeasonTellAnHourOnlyIfTheyFitWell() {
        assertThat(straight(1, 0, false, true))
                .hasSize(1)
                .allMatch(told -> told.finding().detail().contains("in the last 3 storms"));
        // Storms that fit worse must be four.
        assertThat(straight(1, 0.15, false, true))
                .noneMatch(told -> told.finding().detail().contains("in the last 2 storms"))
                .noneMatch(told -> told.finding().detail().contains("in the last 3 storms"));
    }

    @Test
    void twoStormsThatFitWellTellTwoHoursAndThreeTellOne() {
        assertThat(straight(2, 0, false, false))
                .hasSize(1)
                .allMatch(told -> told.finding().detail().contains("in the last 2 storms"));
        assertThat(straight(1, 0, false, false))
                .hasSize(1)
                .allMatch(told -> told.finding().detail().contains("in the last 3 storms"));
        assertThat(straight(0, 0, false, false)).isEmpty();
    }

    /** Storms that fit so badly that no few of them tell of a depth that is later; of one that is earlier three do. */
    @Test
    void manyStormsTellByTheirMean() {
        List<WatchNotice> told = straight(-1, 0.1, false, false);
        assertThat(told).hasSize(1);
        assertThat(told.get(0).finding().detail()).containsPattern("in the last (6|8|10|12) storms");
        assertThat(straight(-1, 0.1, false, true)).as("a wet season is late").isEmpty();
        assertThat(straight(-1, 0.1, false, false, 37))
                .as("with restarts while storms pend")
                .isEqualTo(told);
        assertThat(straight(1, 0.1, false, false))
                .hasSize(1)
                .allMatch(each -> each.finding().detail().contains("in the last 3 storms"));
    }

    /** Storms every third day whose lags scatter by half an hour; those of the shifted ones come an hour and a half early. */
    private static List<WatchNotice> scattered(int storms, IntPredicate isShifted) {
        Findings findings = new Findings();
        GaugeClock clock = new GaugeClock(rule(readings(0, 0)).baseline(), findings);
        for (long hour = 0; hour < 72L * storms; hour++) {
            int storm = (int) (hour / 72);
            double since = hour % 72 - 30;
            double after = since - (0.3 + storm % 3 * 0.5) + (isShifted.test(storm) ? 1.5 : 0);
            SiteHour of = new SiteHour(hour);
            of.rain = since >= 0 && since < 2 ? 2.5 : 0;
            double wave = after < 0 ? 0 : after < 2 ? 0.2 * (after + 1) : 0.4 * Math.exp(-(after - 1) / 1.5);
            clock.hour(of, wave, 0, false, false);
        }
        return findings.take();
    }

    /** A storm every third day, each of which the depth follows by so many hours; the dry day late by some, and in a season. */
    private static List<WatchNotice> lagging(double dayLate, boolean season, double... lags) {
        Findings findings = new Findings();
        GaugeClock clock = new GaugeClock(rule(readings(0, 0)).baseline(), findings);
        for (long hour = 0; hour < 72L * lags.length; hour++) {
            double since = hour % 72 - BEGIN;
            double after = since - lags[(int) (hour / 72)];
            SiteHour of = new SiteHour(hour);
            of.rain = since >= 0 && since < 2 ? 2.5 : 0;
            double wave = after < 0 ? 0 : after < 2 ? 0.2 * (after + 1) : 0.4 * Math.exp(-(after - 1) / 1.5);
            clock.hour(of, wave, dayLate, false, season);
        }
        return findings.take();
    }

    /** Sixteen storms that come as the baseline knows them, and then those given. */
    private static double[] after(double... lags) {
        return DoubleStream.concat(DoubleStream.generate(() -> 0.8).limit(16), DoubleStream.of(lags))
                .toArray();
    }

    /** Storms whose lags scatter by 0.6 h, 20 of them and more, and then those given. */
    private static double[] afterScattered(double... lags) {
        return DoubleStream.concat(
                        IntStream.range(0, 21).mapToDouble(storm -> 0.3 + storm % 3 * 0.5), DoubleStream.of(lags))
                .toArray();
    }

    /**
     * Usual lags scatter so that three storms as wide apart must be more than an hour from them; those that fit the rain well need
     * no more than three storms anywhere.
     */
    @Test
    void threeStormsThatFitWellTellWhereUsualOnesScatter() {
        assertThat(lagging(0, false, afterScattered(-0.2, -0.2))).isEmpty();
        assertThat(only(lagging(0, false, afterScattered(-0.2, -0.2, -0.2))))
                .contains("in the last 3 storms")
                .endsWith("stamps of the gauge about 1.0 h late");
        assertThat(lagging(0, false, afterScattered(1.8, 1.8, 1.8)))
                .as("later is told from an hour and a half on")
                .isEmpty();
        assertThat(lagging(0, false, afterScattered(-0.2, -0.2, -1.2)))
                .as("an hour apart")
                .isEmpty();
    }

    /** Three storms that were worth many are over by eight as usual; what is worth no more than three could not end at all. */
    @Test
    void whatThreeStormsThatFitWellToldIsOverByEight() {
        double[] back = {-0.2, -0.2, -0.2, 0.8, 0.8, 0.8, 0.8, 0.8, 0.8, 0.8, 0.8};
        List<WatchNotice> over = lagging(0, false, afterScattered(back));
        assertThat(over).extracting(WatchNotice::kind).containsExactly(WatchNotice.Kind.FOUND, WatchNotice.Kind.CLOSED);
        assertThat(over.get(1).finding().closed().orElseThrow()).isBetween(storm(24), storm(25));
    }

    private static String only(List<WatchNotice> told) {
        assertThat(told).hasSize(1);
        return told.get(0).finding().detail();
    }

    private static Instant storm(int number) {
        return Instant.EPOCH.plus(Duration.ofHours(72L * number + BEGIN));
    }

    @Test
    void stampsOfAGaugeEarlyAreToldByMoreStormsThanStampsLate() {
        // Whole hours on both sides of a storm as usual, so that each shape is the same.
        List<WatchNotice> late = lagging(0, false, after(-1.2, -1.2));
        assertThat(only(late)).contains("in the last 2 storms").endsWith("stamps of the gauge about 2.0 h late");
        Finding finding = late.get(0).finding();
        assertThat(finding.direction()).isEqualTo(Direction.UP);
        assertThat(finding.since()).isBetween(storm(16), storm(17));
        assertThat(finding.sinceRange().start()).isBetween(storm(15), storm(16));
        assertThat(lagging(0, false, after(2.8, 2.8))).isEmpty();
        List<WatchNotice> early = lagging(0, false, after(2.8, 2.8, 2.8));
        assertThat(only(early)).contains("in the last 3 storms").endsWith("stamps of the gauge about 2.0 h early");
        assertThat(early.get(0).finding().direction()).isEqualTo(Direction.DOWN);
    }

    @Test
    void dryDayThatMovesAsFarPointsToTheMonitor() {
        for (double sign : new double[] {1, -1}) {
            assertThat(lagging(sign * 0.55, false, after(-1.2, -1.2))).hasSize(1);
            assertThat(lagging(sign * 0.65, false, after(-1.2, -1.2, -1.2, -1.2)))
                    .isEmpty();
        }
        assertThat(lagging(Double.NaN, false, after(-1.2, -1.2))).hasSize(1);
    }

    /** Two storms count for thirty days. */
    @Test
    void stormsFarApartAreNotInARow() {
        assertThat(apart(10)).hasSize(1);
        assertThat(apart(11)).isEmpty();
    }

    /** The same storms, so many times three days between the two last. */
    private static List<WatchNotice> apart(int times) {
        double[] lags = new double[17 + times];
        Arrays.fill(lags, 0.8);
        Arrays.fill(lags, 17, lags.length - 1, Double.NaN);
        lags[16] = -1.2;
        lags[lags.length - 1] = -1.2;
        Findings findings = new Findings();
        GaugeClock clock = new GaugeClock(rule(readings(0, 0)).baseline(), findings);
        for (long hour = 0; hour < 72L * lags.length; hour++) {
            double lag = lags[(int) (hour / 72)];
            double since = hour % 72 - BEGIN;
            double after = since - lag;
            SiteHour of = new SiteHour(hour);
            of.rain = !Double.isNaN(lag) && since >= 0 && since < 2 ? 2.5 : 0;
            double wave = !(after >= 0) ? 0 : after < 2 ? 0.2 * (after + 1) : 0.4 * Math.exp(-(after - 1) / 1.5);
            clock.hour(of, wave, 0, false, false);
        }
        return findings.take();
    }

    @Test
    void whatIsOpenAtTheEndOfTheRecordStands() {
        List<SiteReading> late = readings(3, 32);
        assertThat(rule(late).over(late))
                .extracting(WatchNotice::kind)
                .containsExactly(WatchNotice.Kind.FOUND, WatchNotice.Kind.STANDING);
    }

    /** A storm carried by the ground says nothing, and so do storms that differ among themselves. */
    @Test
    void stormsThatComeVeryLateOrDoNotAgreeAreLeftOut() {
        assertThat(lagging(0, false, after(4.8, 4.8, 4.8, 4.8, 4.8))).isEmpty();
        assertThat(lagging(0, false, after(-1.2, 4.8, -1.2))).hasSize(1);
        assertThat(lagging(0, false, after(-0.9, -2.2))).isEmpty();
        assertThat(lagging(0, false, after(-0.9, -1.7))).hasSize(1);
    }

    /** Nobody learns from what he calls wrong: when it is over, a second time is told as the first. */
    @Test
    void twoStormsAsUsualEndAShiftOfTwoHours() {
        List<WatchNotice> told = lagging(0, false, after(-1.2, -1.2, -1.2, 0.8, 0.8, -1.2, -1.2));
        assertThat(told)
                .extracting(WatchNotice::kind)
                .containsExactly(WatchNotice.Kind.FOUND, WatchNotice.Kind.CLOSED, WatchNotice.Kind.FOUND);
        assertThat(told.get(1).finding().closed().orElseThrow()).isBetween(storm(19), storm(20));
        assertThat(told.get(2).finding().number()).isEqualTo(2);
        assertThat(told.get(2).finding().detail())
                .contains("in the last 2 storms")
                .endsWith("about 2.0 h late");
    }

    /** What took six storms to tell is not over after two that happen to come as usual, but after six. */
    @Test
    void closingTakesEvidenceOfTheStrengthOfOpening() {
        List<WatchNotice> lucky = scattered(26, storm -> storm >= 13 && storm != 19 && storm != 20);
        assertThat(lucky).hasSize(1);
        assertThat(lucky.get(0).finding().detail()).contains("in the last 6 storms");
        assertThat(scattered(25, storm -> storm >= 13 && storm < 20))
                .as("five back")
                .hasSize(1);
        List<WatchNotice> over = scattered(26, storm -> storm >= 13 && storm < 20);
        assertThat(over).hasSize(2);
        assertThat(over.get(1).kind()).isEqualTo(WatchNotice.Kind.CLOSED);
        // The first storm that came as usual, told when it and five dry hours were over.
        Instant first = Instant.EPOCH.plus(Duration.ofHours(72 * 20 + 30));
        assertThat(over.get(1).finding().closed().orElseThrow()).isBetween(first, first.plus(Duration.ofHours(12)));
    }

    @Test
    void depthThatComesLaterInAWetSeasonOrWithATideIsNoClock() {
        assertThat(straight(-2, 0, false, false)).hasSize(1);
        assertThat(straight(-2, 0, false, true)).isEmpty();
        assertThat(straight(3, 0, false, true))
                .as("rain after the depth cannot be")
                .hasSize(1);
        assertThat(straight(3, 0, true, false)).isEmpty();
    }

    @Test
    void stormThatLiftsNothingOrLacksDepthsTellsNothing() {
        assertThat(StormLag.of(rain(), new double[30], StormLag.LEAST_RISE).lag())
                .isNaN();
        double[] holes = excess(0);
        for (int i = 0; i < 7; i++) {
            holes[4 * i] = Double.NaN;
        }
        assertThat(StormLag.of(rain(), holes, StormLag.LEAST_RISE).lag()).isNaN();
    }

    /** Storms of two hours every two days; from a day on the gauge stamps its rain so many hours late. */
    static SiteReading reading(int i, double gaugeLate, int from) {
        double hours = i / 4.0;
        double day = hours / 24;
        double flow = 1 + 0.4 * Math.sin(2 * Math.PI * (hours - 9) / 24);
        double storm = 0;
        double rain = 0;
        double shift = day >= from ? gaugeLate : 0;
        for (int k = Math.max(0, (int) day - 3); k <= (int) day; k++) {
            if (k % 3 == 1) {
                double begins = 24 * k + 10 + k % 5;
                double since = hours - begins;
                storm += since < 0 ? 0 : since < 2 ? since : 2 * Math.exp(-(since - 2) / 1.5);
                rain += since - shift >= 0 && since - shift < 2 ? 0.6 : 0;
            }
        }
        double noise = 1 + 0.01 * Math.sin(12.9898 * i) + 0.01 * Math.sin(3.7 * i);
        double depth = 0.12 * Math.pow(flow + storm, 0.48) * noise;
        Instant time = InventedSite.START.plus(Duration.ofMinutes(15L * i));
        return new SiteReading(time, depth, 0.7 * Math.pow(depth / 0.12, 0.55), rain);
    }

    static List<SiteReading> readings(double gaugeLate, int from) {
        List<SiteReading> readings = new ArrayList<>();
        for (int i = 0; i < 96 * 45; i++) {
            readings.add(reading(i, gaugeLate, from));
        }
        return readings;
    }

    static WatchRule rule(List<SiteReading> readings) {
        BaselineSearch search = BaselineRule.of(InventedSite.MONITOR).learn(SiteRecord.ofReadings(readings));
        return WatchRule.of(search.baseline().orElseThrow(() -> new AssertionError(search.describe())));
    }

    @Test
    void gaugeThreeHoursLateIsNamedAfterTwoStorms() {
        List<SiteReading> readings = readings(3, 32);
        WatchRule rule = rule(readings);
        assertThat(rule.baseline().rainLagHours().orElseThrow()).isBetween(-0.5, 1.5);
        List<Finding> findings =
                WatchReport.of(rule.baseline(), rule.over(readings)).findings();
        assertThat(findings).hasSize(1);
        Finding finding = findings.get(0);
        assertThat(finding.names()).containsExactly(FindingName.CLOCK_OF_GAUGE);
        assertThat(finding.direction()).isEqualTo(Direction.UP);
        assertThat(finding.detail())
                .contains("in the last 2 storms")
                // Few dry hours stand before a storm, so that its lag is told to a tenth of an hour.
                .containsPattern("stamps of the gauge about (2\\.9|3\\.0) h late");
        assertThat(finding.since()).isBetween(InventedSite.START.plus(DAY.multipliedBy(32)), finding.found());
        assertThat(finding.found()).isBefore(InventedSite.START.plus(DAY.multipliedBy(39)));
    }

    @Test
    void soundGaugeIsLeftInPeaceAndARestartChangesNothing() {
        List<SiteReading> sound = readings(0, 0);
        WatchRule rule = rule(sound);
        assertThat(rule.over(sound)).isEmpty();
        List<SiteReading> late = readings(3, 32);
        WatchRule other = rule(late);
        Machine<SiteReading, WatchNotice, WatchState> machine = other.start();
        List<WatchNotice> told = new ArrayList<>();
        for (int i = 0; i < late.size(); i++) {
            told.addAll(machine.next(late.get(i)));
            if (i % 371 == 0) {
                machine = other.start(other.parseState(machine.state().toText()));
            }
        }
        told.addAll(machine.finish());
        assertThat(told).isEqualTo(other.over(late)).isNotEmpty();
    }

    @Test
    void siteWithoutRainSaysThatTheGaugeIsNotTested() {
        SiteBaseline baseline = BaselineRule.of(InventedSite.MONITOR)
                .learn(InventedSite.of(20, 3).record(Fault.NONE, true, false))
                .baseline()
                .orElseThrow();
        assertThat(baseline.notTested()).contains("the clock of the rain gauge: no rain is known");
        assertThat(baseline.rainLagHours()).isEmpty();
    }

    /**
     * Four storms of 0.4 h count beside those known, whose squares are the mean of a robust and a plain one. Lags 0, 0 and 3
     * about 0: robust 0, plain 9/3, so 1.5; (4·0.16 + 3·1.5)/7 = 0.734286. Lags 1, 2 and 3 about 2: robust 1/0.674490, squared
     * 2.198110, plain 2/3, so 1.432388; (0.64 + 4.297165)/7 = 0.705309.
     */
    @Test
    void scatterOfFewLagsLeansOnThatOfOtherSites() {
        assertThat(GaugeClock.scatter(new double[] {0, 0, 3}, 0)).isCloseTo(Math.sqrt(0.734286), within(1e-6));
        assertThat(GaugeClock.scatter(new double[] {1, 2, 3}, 2)).isCloseTo(Math.sqrt(0.705309), within(1e-6));
        assertThat(GaugeClock.scatter(new double[] {0.4}, 0.4)).isCloseTo(Math.sqrt(0.64 / 5), within(1e-12));
    }
}
