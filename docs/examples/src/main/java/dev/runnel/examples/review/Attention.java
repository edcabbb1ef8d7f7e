package dev.runnel.examples.review;

import dev.runnel.hydraulics.monitoring.SurchargePeriod;
import dev.runnel.hydraulics.watch.BaselineSearch;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.gauge.RainGrain;
import dev.runnel.rainfall.gauge.TipChecks;
import dev.runnel.rainfall.gauge.TipFlag;
import dev.runnel.rainfall.gauge.TipReview;
import dev.runnel.rainfall.gauge.Tips;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.Statistics;
import dev.runnel.timeseries.alarm.AlarmEvent;
import dev.runnel.timeseries.correction.VisitDifference;
import dev.runnel.timeseries.csv.CsvIssue;
import dev.runnel.timeseries.csv.CsvReport;
import dev.runnel.timeseries.quality.QualityFlag;
import dev.runnel.timeseries.quality.QualityFlags;
import dev.runnel.timeseries.quality.Verdict;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.DoublePredicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What needs a person's eye, the gravest first. It names evidence and leaves the verdict open. */
final class Attention {
    /** Of the velocities: fewer that failed a test stand behind all else. Chosen here. */
    private static final double MANY_FAILED = 0.01;

    private static final Duration LONG_GAP = Duration.ofHours(1);
    /** Chosen here: a few bounces and even gaps happen by chance. */
    private static final int FEWEST_TIPS = 10;

    private static final double MANY_DOUBLE = 0.05;

    /** Sound gauges have up to 2 % by chance. */
    private static final double MANY_PAIRED = 0.1;
    /** Chosen here: an even downpour makes rows of some tips, a drip or a test run makes long ones and many. */
    private static final double MANY_EVEN = 0.25;

    private static final int LONG_ROW = 30;
    private static final double MANY_LOST = 0.02;
    private static final double RATIO_FAR_OFF = 0.25;

    /** Chosen here: seasons of less are many. */
    private static final double UNLIKE = 0.2;

    /** What strokes of a pump may be taken for. */
    private static final Set<String> SPIKES = Set.of("spike", "lone reading");

    private final SiteReview review;
    private final Dates dates;
    private final List<String> points = new ArrayList<>();

    private Attention(SiteReview review) {
        this.review = review;
        this.dates = review.data().dates();
    }

    static Attention of(SiteReview review) {
        Attention attention = new Attention(review);
        attention.surcharge();
        attention.overflow();
        attention.activeAlarm();
        attention.evidence();
        attention.noBaseline();
        attention.failed(share -> share >= MANY_FAILED);
        attention.unlikeDays();
        attention.upstream();
        attention.lawOff();
        attention.plausibility();
        attention.visits();
        attention.gaps();
        attention.silentGauge();
        attention.tipsThatAreNoRain();
        attention.stepsThatAreNoRain();
        attention.farStamps();
        attention.displacedStamps();
        attention.clockChange();
        attention.lostLines();
        attention.failed(share -> share < MANY_FAILED);
        attention.uncertainty();
        return attention;
    }

    List<String> points() {
        return points;
    }

    private void surcharge() {
        List<SurchargePeriod> periods = review.flow().surcharges();
        if (periods.isEmpty()) {
            return;
        }
        List<SurchargePeriod> sound = periods.stream()
                .filter(period -> !LevelPeaks.isDoubtful(review, period))
                .toList();
        int doubtful = periods.size() - sound.size();
        SurchargePeriod highest = highest(sound.isEmpty() ? periods : sound);
        points.add("Surcharged " + times(sound.isEmpty() ? doubtful : sound.size())
                + (sound.isEmpty() ? ", by doubtful depths only" : "")
                + ", highest " + Show.mm(highest.peakAbove())
                + " above the soffit on " + dates.time(highest.peakTime())
                + (sound.isEmpty() ? "" : LevelPeaks.mark(review, highest.peakTime()))
                + alone(sound)
                + (sound.isEmpty() || doubtful == 0 ? "" : "; " + times(doubtful) + " more by doubtful depths")
                + ".");
    }

    /** An overflow spills whether or not the pipe is full: its crest may lie below the soffit. */
    private void overflow() {
        review.flow().spills().filter(found -> !found.periods().isEmpty()).ifPresent(found -> {
            SurchargePeriod highest = highest(found.periods());
            double doubtful = SiteFigures.doubtfulSpills(review);
            points.add("Water above the overflow's crest "
                    + times(found.periods().size()) + ", "
                    + Show.duration(found.tally().duration()) + " together"
                    + (doubtful > 0 ? " (" + Show.percent(doubtful) + " of it by doubtful depths)" : "")
                    + ", highest " + Show.mm(highest.peakAbove())
                    + " above it on " + dates.time(highest.peakTime()) + LevelPeaks.mark(review, highest.peakTime())
                    + alone(found.periods())
                    + ": "
                    + Show.count(found.tally().count(), "spill") + ".");
        });
    }

    /** What one reading alone tells may be a short peak or a false echo. */
    private static String alone(List<SurchargePeriod> periods) {
        int alone =
                (int) periods.stream().filter(period -> period.readings() == 1).count();
        return alone == 0 ? "" : "; " + times(alone) + " in one reading alone";
    }

    private static SurchargePeriod highest(List<SurchargePeriod> periods) {
        return periods.stream()
                .max(Comparator.comparingDouble(SurchargePeriod::peakAbove))
                .orElseThrow();
    }

    private void activeAlarm() {
        review.flow().alarms().stream()
                .filter(AlarmEvent::isActive)
                .forEach(alarm -> points.add("The depth alarm is still active at the end of the record, since "
                        + dates.time(alarm.activation()) + ", highest " + Show.mm(alarm.peak()) + " on "
                        + dates.time(alarm.peakTime()) + LevelPeaks.mark(review, alarm.peakTime()) + "."));
    }

    private void evidence() {
        review.watched().findings().forEach(finding -> points.add(FindingText.of(finding, review)));
    }

    /** Nothing is judged against what is not known. */
    private void noBaseline() {
        BaselineSearch search = review.watched().search();
        if (search.baseline().isEmpty()) {
            points.add("No stretch of the record tells what is usual, so nothing was watched for a change"
                    + search.refused().stream()
                            .reduce((first, last) -> last)
                            .map(refused -> ": " + String.join("; ", refused.reasons()))
                            .orElse("")
                    + ". \"baseline from\" and \"baseline to\" in the site file name one.");
        }
    }

    /** Tests that took out a share of the velocities as asked: a few lone ones of a year are no news. */
    private void failed(DoublePredicate which) {
        review.data()
                .velocity()
                .ifPresent(velocity -> velocity.quality().flags().stream()
                        .filter(flags -> flags.count(Verdict.FAIL) > 0)
                        .filter(flags -> which.test((double) flags.count(Verdict.FAIL)
                                / velocity.series().size()))
                        .forEach(flags -> points.add("Velocity: " + Show.count(flags.count(Verdict.FAIL), "reading")
                                + " failed the "
                                + flags.check() + " test, flagged from "
                                + dates.time(firstFailed(flags).time())
                                + (flags.count(Verdict.FAIL) == 1 ? "; its" : "; their") + " flow is left out.")));
    }

    /** The first may be merely unusual. */
    private static QualityFlag firstFailed(QualityFlags flags) {
        return flags.raised().stream()
                .filter(flag -> flag.verdict() == Verdict.FAIL)
                .findFirst()
                .orElseThrow();
    }

    /** What no finding tells may be a season, and small: it stands beside the figure then. */
    private void unlikeDays() {
        DryWeather dry = review.dryWeather();
        dry.unlike()
                .filter(parts -> Math.abs(parts.change()) > UNLIKE)
                .ifPresent(parts -> points.add((dry.isFlow() ? "The flow" : "The level")
                        + " of usual dry days is another since about " + dates.day(parts.from()) + ": "
                        + dry.show(parts.before()) + " in the median before, " + dry.show(parts.after())
                        + " from then on. No finding tells of these days: a season, other water, or a sensor that reads"
                        + " otherwise, by too little or too slowly for the watch."));
    }

    /** The watch learns what is usual: what ran backwards from the first day on is no change. */
    private void upstream() {
        AgainstStream against = review.dryWeather().against();
        if (against.matters()) {
            points.add(Show.percent(against.readings()) + " of the flows beyond doubt were read against the stream, "
                    + Show.percent(against.volume())
                    + " of what flowed either way: does water come back here (a tide, a pump, another branch), or does the sensor"
                    + " lose the sign? They enter volumes and dry weather flow with their sign, so these are what ran down less"
                    + " what came back.");
        }
    }

    /**
     * The whole record may stand off the law: then gradient, roughness, offset or factor are not as stated. The time of a finding has
     * a reason of its own.
     */
    private void lawOff() {
        Series left = review.doubts().withoutFindings(review.flow().record().velocityRatio());
        double ratio = left.statistics().median();
        if (Math.abs(ratio - 1) > RATIO_FAR_OFF) {
            points.add("Measured velocity is " + percentOf(ratio, 1)
                    + " of the law's at the same depth over the whole record"
                    + (review.watched().findings().isEmpty() ? "" : ", the time of the findings left out")
                    + ": gradient, roughness, sediment, offset or "
                    + "velocity factor may not be as stated, or the units.");
        }
    }

    private void plausibility() {
        Statistics level = review.flow().levels();
        double height = review.site().monitor().soffit();
        if (level.maximum() == 0) {
            points.add("The pipe reads dry throughout.");
        } else if (level.count() > 0 && level.maximum() < 0.02 * height) {
            points.add("The depth never exceeds " + Text.significant(level.maximum() * 1000, 2) + " mm in a pipe of "
                    + Show.mm(height) + ": is the unit of depth right?");
        } else if (level.count() > 0 && level.median() > 2 * height) {
            points.add("The median depth is " + Show.mm(level.median()) + " in a pipe of " + Show.mm(height)
                    + ": is the unit of depth right?");
        }
        if (review.flow().isInterpolated()) {
            points.add(
                    "Depth and velocity were read at different times: velocity is taken by a straight line between its "
                            + "readings.");
        }
        int lost = review.data().depth().series().size() - review.data().depth().usable();
        if (lost > MANY_LOST * review.data().depth().series().size()) {
            points.add(lost + " of " + review.data().depth().series().size() + " depth readings have no value or failed"
                    + strokes() + ".");
        }
    }

    /** Strokes of a pump between two readings look like false echoes where no velocity tells them apart; so many are the pump's. */
    private String strokes() {
        CheckedReadings depth = review.data().depth();
        int spikes = depth.quality().flags().stream()
                .filter(flags -> SPIKES.contains(flags.check()))
                .mapToInt(flags -> flags.count(Verdict.FAIL))
                .sum();
        if (spikes <= MANY_LOST * depth.series().size()) {
            return "";
        }
        return ", " + spikes
                + (review.data().velocity().isPresent()
                        ? " of them as spikes that the velocity did not share"
                        : " of them as spikes: where pumps start and stop between two readings these are no faults and the"
                                + " level is told too low without them; set \"depth spike\" in site.txt higher then");
    }

    private void visits() {
        review.visits().differences().stream()
                .filter(VisitDifference::isBeyond)
                .forEach(each -> points.add("The visit of "
                        + dates.time(each.visit().time()) + " found " + BooksText.words(each) + " of tolerance."));
    }

    private void gaps() {
        List<Interval> gaps = review.data().depth().gaps().stream()
                .filter(gap -> gap.duration().compareTo(LONG_GAP) > 0)
                .sorted(Comparator.comparing(Interval::duration).reversed())
                .toList();
        if (!gaps.isEmpty()) {
            Interval longest = gaps.get(0);
            points.add(Show.count(gaps.size(), "gap") + " of more than " + Show.duration(LONG_GAP) + ", the longest "
                    + Show.duration(longest.duration()) + " from " + dates.time(longest.start()) + ".");
        }
    }

    private void silentGauge() {
        review.muteGauge()
                .ifPresent(rain -> points.add("The gauge wrote no rain in the whole record of "
                        + Show.duration(rain.rain().interval().duration())
                        + ": a drought looks the same, but nothing shows that it was at work. The site is reviewed as one"
                        + " without a gauge: dry days are not known."));
        review.rain()
                .ifPresent(rain -> rain.silent()
                        .forEach(silent -> points.add("The gauge wrote nothing for "
                                + Show.duration(silent.duration()) + " from " + dates.time(silent.start()) + " to "
                                + dates.time(silent.end())
                                + ", more than twice as long as between any two signs of rain: was it dead? The rain of this time is taken as"
                                + " not known, and its days as neither wet nor dry.")));
    }

    /** Another column, or another unit. */
    private void stepsThatAreNoRain() {
        review.rain().or(review::muteGauge).flatMap(RainFindings::impossible).ifPresent(impossible -> {
            impossible
                    .first()
                    .ifPresent(
                            first -> points.add(
                                    "The gauge: " + Show.count(impossible.steps(), "step")
                                            + " with " + Show.rain(impossible.depthMm())
                                            + " mm hold more rain than fell anywhere in a step or a day, the first on "
                                            + dates.time(first)
                                            + ". They are set aside, and the rain of their times is not known: is the column the rain, and its unit right?"));
            RainGrain.of(impossible.others())
                    .flatMap(grain ->
                            GrainText.doubt(grain, review.site().rain().bucket().tipMm(), dates))
                    .ifPresent(points::add);
        });
    }

    /** A switch that bounces, work at the gauge, a funnel that drips: such tips look like rain. */
    private void tipsThatAreNoRain() {
        Optional<TipSource> source = review.data()
                .rain()
                .flatMap(rain -> rain instanceof TipSource tips ? Optional.of(tips) : Optional.empty());
        if (source.isEmpty()) {
            return;
        }
        Tips tips = source.get().tips();
        double tipMm = source.get().bucket().tipMm();
        TipReview found = TipChecks.of(source.get().bucket()).review(tips);
        int twice = found.count(TipFlag.DOUBLE);
        int even = found.count(TipFlag.EVENLY_SPACED);
        double share = Math.max(1, tips.size());
        if (twice > FEWEST_TIPS && twice / share > MANY_DOUBLE) {
            points.add("The gauge: " + twice + " of " + tips.size()
                    + " tips follow the one before faster than rain can, at "
                    + "more than 500 mm/h, the first on "
                    + dates.time(found.flagged(TipFlag.DOUBLE).toInstants().get(0)) + ": " + Show.rain(twice * tipMm)
                    + " mm that may be no rain. They stay in use.");
        }
        int paired = found.count(TipFlag.PAIRED);
        if (paired > FEWEST_TIPS && paired / share > MANY_PAIRED) {
            points.add("The gauge: " + paired + " of " + tips.size()
                    + " tips follow the one before within seconds, far sooner than those around, the first on "
                    + dates.time(found.flagged(TipFlag.PAIRED).toInstants().get(0))
                    + ": does the switch bounce, or was the file written twice with other stamps? "
                    + Show.rain(paired * tipMm) + " mm that may be no rain. They stay in use.");
        }
        if (even / share > MANY_EVEN && longestRow(found) >= LONG_ROW) {
            points.add("The gauge: " + even + " of " + tips.size() + " tips come at even gaps, the first on "
                    + dates.time(
                            found.flagged(TipFlag.EVENLY_SPACED).toInstants().get(0))
                    + ": does a blocked funnel drip, or a test run? " + Show.rain(even * tipMm)
                    + " mm that may be no rain. They stay in use.");
        }
    }

    private static int longestRow(TipReview found) {
        int longest = 0;
        int row = 0;
        for (int i = 0; i < found.tips().size(); i++) {
            row = found.flags(i).contains(TipFlag.EVENLY_SPACED) ? row + 1 : 0;
            longest = Math.max(longest, row);
        }
        return longest;
    }

    /** A clock that was reset, or a damaged line: such readings would stretch the record over years. */
    private void farStamps() {
        farStamps("depth", review.data().depth().lines().far());
        review.data()
                .velocity()
                .ifPresent(velocity -> farStamps("velocity", velocity.lines().far()));
        review.data().rain().ifPresent(rain -> farStamps(rain.what(), rain.far()));
    }

    private void farStamps(String what, List<Instant> far) {
        if (!far.isEmpty()) {
            points.add(Show.count(far.size(), "line") + " of " + what
                    + " stamped more than 30 days from all others and set aside, the first "
                    + Show.timeWithYear(far.get(0), review.site().zone()) + ": was the clock reset?");
        }
    }

    /** By the order of the lines: a clock that was wrong for a while. */
    private void displacedStamps() {
        reports()
                .filter(report -> report.count(CsvIssue.Kind.DISPLACED_STAMP) > 0)
                .map(report ->
                        Show.count(report.count(CsvIssue.Kind.DISPLACED_STAMP), "line") + " of " + report.source()
                                + " stamped with another time than the lines around"
                                + report.issues().stream()
                                        .filter(issue -> issue.kind() == CsvIssue.Kind.DISPLACED_STAMP)
                                        .findFirst()
                                        .map(issue -> ", from line " + issue.line() + " (" + issue.text() + ")")
                                        .orElse("")
                                + ": was the clock of the logger wrong for a while?")
                .distinct()
                .forEach(points::add);
    }

    private void clockChange() {
        long repeated = issues(CsvIssue.Kind.AMBIGUOUS_TIME);
        if (repeated > 0) {
            points.add(Show.count(repeated, "line")
                    + " in the hour that the clock change repeats: which of the two is meant "
                    + "is not written there. \"repeated hour = by order\" in the site file takes them in the order of the "
                    + "file.");
        }
        long skipped = issues(CsvIssue.Kind.SKIPPED_TIME);
        if (skipped > 0) {
            points.add(Show.count(skipped, "line")
                    + " in the hour that the clock change skips: does the logger follow that "
                    + "clock? \"logger clock\" and \"gauge clock\" in the site file say which.");
        }
    }

    /** A file of several quantities is read once for each, and its lines count once. */
    private long issues(CsvIssue.Kind kind) {
        return reports()
                .collect(Collectors.toMap(CsvReport::source, report -> report.count(kind), Math::max))
                .values()
                .stream()
                .mapToLong(Long::longValue)
                .sum();
    }

    private void lostLines() {
        reports()
                .filter(report -> report.rejected() > MANY_LOST * report.lines())
                .map(report -> report.source() + ": "
                        + Show.percent(report.rejected() / (double) report.lines()) + " of the lines were rejected."
                        + Hints.onRepeats(report))
                .distinct()
                .forEach(points::add);
    }

    private Stream<CsvReport> reports() {
        return review.data().reports().stream();
    }

    private void uncertainty() {
        review.flow().uncertainty().ifPresent(statistics -> {
            if (statistics.count() > 0) {
                points.add("Flow is uncertain by " + Show.percent(2 * statistics.median())
                        + " (median, k = 2) by the stated uncertainties of depth and velocity, by "
                        + Show.percent(2 * statistics.quantile(0.9)) + " or more in the worst tenth of the readings.");
            }
        });
    }

    private static String percentOf(double value, double whole) {
        return Math.round(100 * value / whole) + " %";
    }

    static String times(int count) {
        return count == 1 ? "once" : count == 2 ? "twice" : count + " times";
    }
}
