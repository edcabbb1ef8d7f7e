package dev.runnel.examples.review;

import dev.runnel.hydraulics.monitoring.SurchargePeriod;
import dev.runnel.hydraulics.watch.BaselineSearch;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.Statistics;
import dev.runnel.timeseries.alarm.AlarmEvent;
import dev.runnel.timeseries.correction.VisitDifference;
import dev.runnel.timeseries.quality.QualityFlag;
import dev.runnel.timeseries.quality.QualityFlags;
import dev.runnel.timeseries.quality.Verdict;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.function.DoublePredicate;

/** What needs a person's eye, the gravest first. It names evidence and leaves the verdict open. */
final class Attention {
    /** Of the velocities: fewer that failed a test stand behind all else. Chosen here. */
    private static final double MANY_FAILED = 0.01;

    private static final Duration LONG_GAP = Duration.ofHours(1);
    /** Of lines or readings; chosen here. */
    static final double MANY_LOST = 0.02;

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
        ShiftText.point(review).ifPresent(attention.points::add);
        attention.noBaseline();
        attention.endOfRange();
        attention.failed(share -> share >= MANY_FAILED);
        attention.unlikeDays();
        attention.upstream();
        attention.lawOff();
        attention.plausibility();
        attention.visits();
        attention.gaps();
        attention.points.addAll(GaugePoints.of(review));
        attention.points.addAll(FilePoints.of(review));
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

    /** More was there than was written: what is left out here was the most of its time. */
    private void endOfRange() {
        endOfRange("depth", review.data().depth());
        review.data().velocity().ifPresent(velocity -> endOfRange("velocity", velocity));
    }

    private void endOfRange(String what, CheckedReadings readings) {
        readings.quality().flags().stream()
                .filter(flags -> flags.check().equals(EndOfRange.NAME))
                .filter(flags -> !flags.raised().isEmpty())
                .forEach(flags -> {
                    Instant first = flags.raised().get(0).time();
                    Instant last = flags.raised().get(flags.raised().size() - 1).time();
                    double end = readings.lines()
                            .series()
                            .value(readings.lines().series().firstIndexAtOrAfter(first));
                    points.add("From " + dates.time(first) + " to " + dates.time(last) + " the " + what
                            + " goes up to "
                            + (what.equals("depth") ? Show.mm(end) : Text.number(end) + " m/s") + " and no farther: "
                            + Show.count(flags.count(Verdict.UNUSUAL), "reading") + " ("
                            + Show.percent((double) flags.count(Verdict.UNUSUAL)
                                    / readings.series().size())
                            + ") stand there, for hours on many days. Does the range of the sensor or of the logger end there, or"
                            + " does something hold the water at that level? To check: the range that is set, and a reading by"
                            + " hand at the busiest hour. They are the least that was there: doubtful in the volumes, left out of the dry"
                            + " weather flow, and the true peaks are not known.");
                });
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
        DailyGaps.of(review.data().depth().gaps(), LONG_GAP)
                .ifPresent(
                        daily -> points.add(
                                "The monitor writes nothing at the same hours day after day: "
                                        + daily.gaps().size() + " times since "
                                        + dates.time(daily.first().start())
                                        + ", the first for "
                                        + Show.duration(daily.first().duration()) + ", the last on "
                                        + dates.time(daily.last().start()) + " for "
                                        + Show.duration(daily.last().duration())
                                        + ". Does the logger sleep, or its battery fail? What passed in these hours is in no figure: a day of which"
                                        + " less than three quarters is left is no dry day of the dry weather flow, and volumes are short of it."));
        if (!gaps.isEmpty()) {
            Interval longest = gaps.get(0);
            points.add(Show.count(gaps.size(), "gap") + " of more than " + Show.duration(LONG_GAP) + ", the longest "
                    + Show.duration(longest.duration()) + " from " + dates.time(longest.start()) + ".");
        }
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
