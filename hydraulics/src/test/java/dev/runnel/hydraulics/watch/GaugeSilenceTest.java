package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import dev.runnel.internal.StateText;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Machine;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** A gauge that writes nothing while the sewer rises as after rain. */
class GaugeSilenceTest {
    private static final int DAYS = 60;
    private static final int DEAD_FROM = 25;

    /** When the gauge, or the sewer, is as the case has it. */
    private enum Case {
        SOUND,
        DEAD,
        DEAD_UNTIL_DAY_50,
        NOTHING_WRITTEN,
        DROUGHT,
        MORNING_RUSH,
        /** Dead from day 29 to day 52, in which one storm lifts the depth, farther than those before. */
        ONE_STORM_MISSED
    }

    private static final int MISSED = 46;

    private static boolean isQuiet(int day, Case of) {
        return of == Case.ONE_STORM_MISSED && day >= 29 && day < 52;
    }

    private static double size(int day, Case of) {
        return !isQuiet(day, of) ? 1 : day == MISSED ? 1.4 : 0;
    }

    private static double begins(int day) {
        return 24 * day + 7 * day % 24;
    }

    private static SiteReading reading(int i, Case of) {
        double hours = i / 4.0;
        int day = (int) (hours / 24);
        double flow = 1 + 0.4 * Math.sin(2 * Math.PI * (hours - 9) / 24);
        double storm = 0;
        double rain = 0;
        for (int k = Math.max(0, day - 3); k <= day; k++) {
            boolean dry = k >= DEAD_FROM && (of == Case.DROUGHT || of == Case.MORNING_RUSH);
            double begins = of == Case.MORNING_RUSH && k >= DEAD_FROM ? 24 * k + 5 : begins(k);
            if (k % 3 == 1 && (!dry || of == Case.MORNING_RUSH)) {
                double since = hours - begins;
                storm += size(k, of) * (since < 0 ? 0 : since < 2 ? since : 2 * Math.exp(-(since - 2) / 1.5));
                rain += !dry && !isQuiet(k, of) && since >= 0 && since < 2 ? 0.6 : 0;
            }
        }
        boolean dead = day >= DEAD_FROM && (of == Case.DEAD || of == Case.DEAD_UNTIL_DAY_50 && day < 50);
        double written = dead ? 0 : of == Case.NOTHING_WRITTEN && day >= DEAD_FROM ? Double.NaN : rain;
        double noise = 1 + 0.01 * Math.sin(12.9898 * i) + 0.01 * Math.sin(3.7 * i);
        double depth = 0.12 * Math.pow(flow + storm, 0.48) * noise;
        Instant time = InventedSite.START.plus(Duration.ofMinutes(15L * i));
        return new SiteReading(time, depth, 0.7 * Math.pow(depth / 0.12, 0.55), written);
    }

    private static List<SiteReading> readings(Case of) {
        List<SiteReading> readings = new ArrayList<>();
        for (int i = 0; i < 96 * DAYS; i++) {
            readings.add(reading(i, of));
        }
        return readings;
    }

    private static WatchRule rule() {
        BaselineSearch search =
                BaselineRule.of(InventedSite.MONITOR).learn(SiteRecord.ofReadings(readings(Case.SOUND)));
        return WatchRule.of(search.baseline().orElseThrow(() -> new AssertionError(search.describe())));
    }

    private static List<Finding> silences(Case of) {
        WatchRule rule = rule();
        return WatchReport.of(rule.baseline(), rule.over(readings(of))).findings().stream()
                .filter(finding -> finding.name() == FindingName.SILENT_GAUGE)
                .toList();
    }

    @Test
    void deadGaugeIsToldWithTheRisesThatItMissed() {
        List<Finding> found = silences(Case.DEAD);
        assertThat(found).hasSize(1);
        Finding finding = found.get(0);
        // The first storm that is missed is that of day 25 itself, at 7 times 25 hours of the day.
        Instant missed = InventedSite.START.plus(Duration.ofMinutes(Math.round(60 * begins(25))));
        assertThat(finding.since()).isBetween(missed.minus(Duration.ofHours(1)), missed.plus(Duration.ofHours(3)));
        assertThat(finding.sinceRange().start()).isBefore(missed.minus(Duration.ofDays(2)));
        assertThat(finding.isOpen()).isTrue();
        assertThat(finding.detail())
                .contains("rises of the depth like those after rain")
                .contains("before came with rain");
        // The storms of days 25, 28, 31, 34 and 37 are missed; each begins 3 h earlier in the day than that before, so
        // every
        // other one counts, and the last is over within a day.
        assertThat(finding.found()).isBefore(InventedSite.START.plus(Duration.ofDays(39)));
    }

    @Test
    void nextDropEndsIt() {
        List<Finding> found = silences(Case.DEAD_UNTIL_DAY_50);
        assertThat(found).hasSize(1);
        Instant next = InventedSite.START.plus(Duration.ofMinutes(Math.round(60 * begins(52))));
        assertThat(found.get(0).closed().orElseThrow())
                .isBetween(next.minus(Duration.ofHours(1)), next.plus(Duration.ofHours(1)));
    }

    /** Storms came every third day until then; 24 days without a drop and a rise in them are no weather. */
    @Test
    void oneClearRiseTellsInASilenceFarLongerThanAnyBefore() {
        List<Finding> found = silences(Case.ONE_STORM_MISSED);
        assertThat(found).hasSize(1);
        Finding finding = found.get(0);
        Instant missed = InventedSite.START.plus(Duration.ofMinutes(Math.round(60 * begins(MISSED))));
        assertThat(finding.since()).isBetween(missed.minus(Duration.ofHours(1)), missed.plus(Duration.ofHours(3)));
        // The last drop fell on day 28, at 7 times 28 hours of the day.
        Instant last = InventedSite.START.plus(Duration.ofMinutes(Math.round(60 * begins(28))));
        assertThat(finding.sinceRange().start()).isBetween(last, last.plus(Duration.ofHours(3)));
        Instant next = InventedSite.START.plus(Duration.ofMinutes(Math.round(60 * begins(52))));
        assertThat(finding.closed().orElseThrow())
                .isBetween(next.minus(Duration.ofHours(1)), next.plus(Duration.ofHours(1)));
        assertThat(finding.detail())
                .startsWith("1 rise of the depth like those after rain (2026-04-17T")
                .contains("where it never had none for longer than 3.8 days; ")
                .contains(" before came with rain");
    }

    /** Hours that each storm of a day lifts the depth by, and a single one without rain, of a gauge by itself. */
    private static boolean isTold(int storms, int every, int dryBefore, double missed, int silent) {
        return isTold(storms, every, dryBefore, missed, silent - 60, silent);
    }

    private static boolean isTold(int storms, int every, int dryBefore, double missed, int until, int silent) {
        return isTold(storms, every, dryBefore, missed, until, silent, 0);
    }

    /** With a level that stands higher by so much from the day before the rise on. */
    private static boolean isTold(
            int storms, int every, int dryBefore, double missed, int until, int silent, double stands) {
        GaugeSilence silence = new GaugeSilence(rule().baseline(), new Findings());
        double[] shape = {0, 0.3, 0.6, 0.3, 0.1};
        int begin = storms * every + dryBefore + until;
        for (int i = 0; i < storms * every + dryBefore + silent; i++) {
            SiteHour hour = new SiteHour(400_000 + i);
            boolean isBefore = i < (storms - 1) * every;
            int since = isBefore ? i % every : i - (storms - 1) * every - dryBefore;
            hour.rain = since == 0 ? 1 : 0;
            hour.lnVelocity = 0;
            double size = i >= begin ? missed : 1;
            int at = i >= begin ? i - begin : since;
            double storm = at >= 0 && at < shape.length ? size * shape[at] : 0;
            double excess = storm + (i > begin - 30 ? stands : 0);
            silence.hour(hour, excess, excess, false);
        }
        return silence.isOpen();
    }

    /** While depths are false echoes, or water comes up the sewer, a rise says nothing of rain; the watch is told so by the faults of single readings. */
    @Test
    void risesWithinFalseEchoesAreNoneOfRain() {
        assertThat(silences(Case.DEAD)).hasSize(1);
        WatchRule rule = rule();
        List<SiteReading> readings = readings(Case.DEAD);
        List<SiteReading> echoing = new ArrayList<>();
        for (int i = 0; i < readings.size(); i++) {
            SiteReading each = readings.get(i);
            boolean isEcho = i >= 96 * (DEAD_FROM - 1) && i % 7 == 0;
            echoing.add(isEcho ? new SiteReading(each.time(), 3 * each.depth(), each.velocity(), each.rain()) : each);
        }
        List<FindingName> found = WatchReport.of(rule.baseline(), rule.over(echoing)).findings().stream()
                .map(Finding::name)
                .toList();
        assertThat(found).contains(FindingName.FALSE_ECHO).doesNotContain(FindingName.SILENT_GAUGE);
    }

    /** Behind an obstruction the level stays up, and what it does there beside the usual day is no rain. */
    @Test
    void nothingIsToldWhileTheLevelStandsAboveTheUsual() {
        assertThat(isTold(12, 72, 0, 1.2, 560, 620, 0.99 * Math.log(1.05))).isTrue();
        assertThat(isTold(12, 72, 0, 1.2, 560, 620, 1.01 * Math.log(1.05))).isFalse();
    }

    /** Storms three days apart; the least that tells is 7 days and more than twice the longest gap, and chance allows it. */
    @Test
    void oneRiseTellsBeyondTwiceTheLongestSilence() {
        assertThat(isTold(12, 72, 0, 1.2, 620)).isTrue();
        // A gap of 382 h before, of which 381 are dry: the silence is 72 h longer than what is added at the end.
        assertThat(isTold(12, 72, 310, 1.2, 680)).isFalse();
        assertThat(isTold(12, 72, 310, 1.2, 700)).isTrue();
    }

    /** The rise came 22 h after the last drop, and 144 h later, twice the longest silence, the silence was not yet long. */
    @Test
    void whatOneRiseCannotTellADroughtAfterItTellsEvenLess() {
        assertThat(isTold(12, 72, 0, 1.2, -50, 620)).isFalse();
        assertThat(isTold(12, 72, 0, 1.2, 500, 620)).isTrue();
    }

    @Test
    void oneRiseTellsOnlyIfItIsAsLargeAsThoseWithRainAndAfterEnoughOfThem() {
        assertThat(isTold(12, 72, 0, 1.01, 620)).isTrue();
        assertThat(isTold(12, 72, 0, 0.99, 620)).isFalse();
        // Nine spells of rain have eight silences between them.
        assertThat(isTold(9, 72, 0, 1.2, 620)).isTrue();
        assertThat(isTold(8, 72, 0, 1.2, 620)).isFalse();
    }

    @Test
    void soundGaugeADroughtAndRainThatNobodyKnowsAreNone() {
        assertThat(silences(Case.SOUND)).isEmpty();
        assertThat(silences(Case.DROUGHT)).isEmpty();
        assertThat(silences(Case.NOTHING_WRITTEN)).isEmpty();
    }

    @Test
    void risesThatKeepToTheirHourAreHabits() {
        assertThat(silences(Case.MORNING_RUSH)).isEmpty();
    }

    /** Every morning rises as after rain, with rain or without, and so do those of a dry month: nothing of it is the gauge's. */
    @Test
    void dailyRisesOfADryMonthAreNoneWhereTheyCameDailyBefore() {
        GaugeSilence silence = new GaugeSilence(rule().baseline(), new Findings());
        double[] shape = {0, 0.3, 0.6, 0.3, 0.1};
        Random random = new Random(3);
        int at = 0;
        for (int day = 0; day < 90; day++) {
            int begin = 5 + random.nextInt(12);
            double size = 0.8 + 0.4 * random.nextDouble();
            for (int i = 0; i < 24; i++) {
                SiteHour hour = new SiteHour(400_000 + at++);
                hour.rain = day < 60 && day % 5 == 0 && i == 3 ? 1 : 0;
                hour.lnVelocity = 0;
                double excess = i >= begin && i < begin + shape.length ? size * shape[i - begin] : 0;
                silence.hour(hour, excess, excess, false);
                assertThat(silence.isOpen()).isFalse();
            }
        }
    }

    /** A swell that is at its highest 8 h after its beginning is no storm, however much water it brings. */
    @Test
    void whatRisesSlowlyIsNoStorm() {
        assertThat(isToldAfterSwells(3)).isTrue();
        assertThat(isToldAfterSwells(8)).isFalse();
    }

    private static boolean isToldAfterSwells(int climb) {
        GaugeSilence silence = new GaugeSilence(rule().baseline(), new Findings());
        for (int i = 0; i < 12 * 72 + 24 * 25; i++) {
            SiteHour hour = new SiteHour(400_000 + i);
            boolean isBefore = i < 12 * 72;
            int since = isBefore ? i % 72 : (i - 12 * 72) % 77 - 30;
            hour.rain = isBefore && since == 0 ? 1 : 0;
            hour.lnVelocity = 0;
            int to = isBefore ? 3 : climb;
            double excess = since < 0 ? 0 : since <= to ? 0.3 + 0.5 * since / to : since <= to + 3 ? 0.5 : 0;
            silence.hour(hour, excess, excess, false);
        }
        return silence.isOpen();
    }

    /** After eight storms in 24 days; each hour of a storm so many times as high as those before. */
    private static boolean isToldByTwo(int apart, double size) {
        return afterEightStorms(new Findings(), apart, size).isOpen();
    }

    private static GaugeSilence afterEightStorms(Findings findings, int apart, double size) {
        GaugeSilence silence = new GaugeSilence(rule().baseline(), findings);
        double[] shape = {0, 0.3, 0.6, 0.3, 0.1};
        int first = 8 * 72 + 300;
        for (int i = 0; i < first + apart + 30; i++) {
            SiteHour hour = new SiteHour(400_000 + i);
            int since = i < 8 * 72 ? i % 72 : i < first + apart ? i - first : i - first - apart;
            hour.rain = i < 8 * 72 && since == 0 ? 1 : 0;
            hour.lnVelocity = 0;
            double excess = since >= 0 && since < shape.length ? (i < 8 * 72 ? 1 : size) * shape[since] : 0;
            silence.hour(hour, excess, excess, false);
        }
        return silence;
    }

    /** With little record much larger rises are asked for, and two of one day may be one thing. */
    @Test
    void twoLargeRisesOfTwoDaysTellAfterAShortRecord() {
        assertThat(isToldByTwo(52, 3)).isTrue();
        assertThat(isToldByTwo(28, 3)).isTrue();
        assertThat(isToldByTwo(20, 3)).isFalse();
        assertThat(isToldByTwo(52, 1)).isFalse();
    }

    /** Two of a day are not told, but the silence is remarked when it is over, or the record. */
    @Test
    void silenceThatIsHardlyByChanceIsRemarked() {
        Findings findings = new Findings();
        GaugeSilence silence = afterEightStorms(findings, 20, 3);
        assertThat(findings.take()).isEmpty();
        long end = 400_000 + 8 * 72 + 350;
        silence.finish(end * SiteHour.NANOS);
        assertRemark(findings.take(), end);
        SiteHour rain = new SiteHour(end);
        rain.rain = 1;
        silence.hour(rain, 0, 0, false);
        assertRemark(findings.take(), end);
        // Rises smaller than all with rain speak of none.
        silence = afterEightStorms(findings, 20, 0.9);
        silence.finish(end * SiteHour.NANOS);
        assertThat(findings.take()).isEmpty();
    }

    private static void assertRemark(List<WatchNotice> told, long until) {
        assertThat(told).hasSize(1);
        assertThat(told.get(0).kind()).isEqualTo(WatchNotice.Kind.NOTED);
        Finding remark = told.get(0).finding();
        assertThat(remark.number()).isZero();
        assertThat(remark.name()).isEqualTo(FindingName.SILENT_GAUGE);
        assertThat(remark.since()).isEqualTo(hour(8 * 72 + 300 + 1));
        // The last drop fell in the first hour of the eighth storm.
        assertThat(remark.sinceRange().start()).isEqualTo(hour(7 * 72 + 1));
        assertThat(remark.closed()).contains(EpochNanos.toInstant(until * SiteHour.NANOS));
        assertThat(remark.detail()).startsWith("2 rises of the depth like those after rain");
    }

    private static Instant hour(int number) {
        return EpochNanos.toInstant((400_000L + number) * SiteHour.NANOS);
    }

    @Test
    void restartChangesNothing() {
        WatchRule rule = rule();
        List<SiteReading> dead = readings(Case.DEAD_UNTIL_DAY_50);
        Machine<SiteReading, WatchNotice, WatchState> machine = rule.start();
        List<WatchNotice> told = new ArrayList<>();
        for (int i = 0; i < dead.size(); i++) {
            told.addAll(machine.next(dead.get(i)));
            if (i % 371 == 0) {
                machine = rule.start(rule.parseState(machine.state().toText()));
            }
        }
        told.addAll(machine.finish());
        assertThat(told).isEqualTo(rule.over(dead)).isNotEmpty();
    }

    @Test
    void everyNumberOfAStateIsReadByItsNameAndOneThatIsMissingRefused() {
        GaugeSilence silence = new GaugeSilence(rule().baseline(), new Findings());
        StateText state = silence.write()
                .with("begins", new long[] {400, 433})
                .with("sizes", new double[] {0.8, 0.7})
                .with("climbs", new long[] {2, 5})
                .with("risesWith", new double[] {0.7, 0.6, 0.5})
                .with("risesWithout", new double[] {0.4, 0.3});
        List<String> counts = List.of(
                "lastRain",
                "lastUnknown",
                "silentHours",
                "longestSilence",
                "riseBegin",
                "risePeak",
                "countWithout",
                "wetHours",
                "dryHours",
                "spells");
        List<String> numbers = List.of("riseBase", "riseHighest", "riseSpeedBefore", "riseSpeed", "riseSize");
        for (int i = 0; i < counts.size(); i++) {
            state.with(counts.get(i), 301 + i);
        }
        for (int i = 0; i < numbers.size(); i++) {
            state.with(numbers.get(i), 0.11 + i);
        }
        silence.read(state.toString());
        assertThat(silence.write()).hasToString(state.toString());
        for (String each : counts) {
            String cut = state.toString().replace(each + "=", each + "Of=");
            assertThat(cut).isNotEqualTo(state.toString());
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> silence.read(cut))
                    .withMessageContaining(each);
        }
    }

    /** A rise of ln 1.25 begins with the hour in which half of that is there: ln 1.25 / 2 = 0.1116. */
    @Test
    void riseBeginsWhereHalfOfWhatMakesOneIsThere() {
        SiteBaseline baseline = rule().baseline();
        for (double half : new double[] {0.1094, 0.1138}) {
            GaugeSilence silence = new GaugeSilence(baseline, new Findings());
            double[] excess = {0.05, 0, 0, half, 0.3};
            for (int i = 0; i < excess.length; i++) {
                silence.hour(new SiteHour(400 + i), excess[i], i < 4 ? 0 : 0.3, false);
            }
            assertThat(silence.write().count("riseBegin")).isEqualTo(half < 0.1116 ? 404 : 403);
            assertThat(silence.write().number("riseBase")).isZero();
        }
    }
}
