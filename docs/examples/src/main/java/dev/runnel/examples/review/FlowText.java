package dev.runnel.examples.review;

import dev.runnel.hydraulics.monitoring.FullnessTime;
import dev.runnel.hydraulics.monitoring.SurchargePeriod;
import dev.runnel.hydraulics.watch.Finding;
import dev.runnel.internal.SeriesArrays;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.event.DryDays;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.Statistics;
import dev.runnel.timeseries.alarm.AlarmEvent;
import dev.runnel.timeseries.balance.DailyTotal;
import dev.runnel.timeseries.balance.DaySampling;
import dev.runnel.timeseries.balance.SpillTally;
import dev.runnel.timeseries.baseline.DayClass;
import dev.runnel.timeseries.baseline.DiurnalProfile;
import dev.runnel.timeseries.baseline.ProfileSlot;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** Flow, fullness, alarms and spills. */
final class FlowText {
    /** Chosen here: usual days that are as near to all stand for them. */
    private static final double APART = 0.05;

    private static final int MOST_PERIODS = 8;
    private static final double SECONDS_IN_DAY = 86_400;

    private FlowText() {}

    static void dryWeather(Page page, SiteReview review) {
        DryWeather dry = review.dryWeather();
        page.section("dry weather").say(dryDays(review));
        if (dry.usual().profile().isEmpty()) {
            page.say("no figure of the usual dry weather: it takes " + DryWeather.FEWEST_DAYS
                    + " such days with readings, there are "
                    + dry.usual().days().size());
        }
        spell(page, review, dry.usual());
        unlike(page, review);
        unlikeNights(page, review);
        for (DryWeather.Spell other : dry.others()) {
            page.say("days of finding " + other.finding().orElseThrow().number() + ", "
                    + Show.count(other.days().size(), "dry day") + " by themselves"
                    + (other.profile().isEmpty() ? ": too few for a figure" : ":"));
            spell(page, review, other);
        }
        dry.together()
                .ifPresent(all -> page.say("all " + all.days() + " dry days beyond doubt together: mean "
                        + dry.show(all.mean())
                        + apart(dry, all)));
        StatesText.say(page, review);
        AsSetUp.of(review).ifPresent(found -> page.say(found.text()));
        singleDays(page, review);
    }

    /** One mean over two states is neither. */
    private static void unlike(Page page, SiteReview review) {
        DryWeather dry = review.dryWeather();
        dry.unlike()
                .ifPresent(
                        parts -> page.say(
                                "the usual days are not alike: " + dry.show(parts.before())
                                        + " in the median before "
                                        + review.data().dates().day(parts.from()) + ", "
                                        + dry.show(parts.after())
                                        + " from then on (Pettitt's test, p < " + UnlikeDays.LARGEST_P
                                        + "), so the mean of all stands for neither. No finding tells"
                                        + " why: a season, or a change of the sewer or of a sensor that is too small or too slow for the watch"));
    }

    /** The mean of a day may hide what seeps in at night. */
    private static void unlikeNights(Page page, SiteReview review) {
        DryWeather dry = review.dryWeather();
        dry.unlikeNights()
                .ifPresent(parts -> page.say(
                        "the nights of the usual days are not alike, from 02:00 to 05:00: " + dry.show(parts.before())
                                + " in the median before "
                                + review.data().dates().day(parts.from()) + ", "
                                + dry.show(parts.after())
                                + " from then on (Pettitt's test, p < " + UnlikeDays.LARGEST_P
                                + "), while whole days are alike: more or less water that seeps in, or another use of the sewer at"
                                + " night"));
    }

    /** Behind pumps the mean of weeks is one thing and a day another. */
    private static void singleDays(Page page, SiteReview review) {
        DaySampling sampling = review.flow().sampling();
        SiteFigures.singleDay(sampling)
                .ifPresent(text -> page.say("single days: the flow comes in strokes of which readings every "
                        + Show.duration(review.data().depth().interval())
                        + " see a part. The even and the odd readings of a day tell volumes that differ by "
                        + Show.percent(2 * sampling.halves()) + ", and days scatter by "
                        + Show.percent(sampling.scatter()) + ", so the volume of one day may be off by " + text
                        + ", means over many days by less"));
    }

    /** How far the usual days are from all, where that matters. */
    private static String apart(DryWeather dry, DryWeather.Together all) {
        double usual = dry.usual().profile().map(DiurnalProfile::mean).orElse(Double.NaN);
        double more = usual / all.mean() - 1;
        return Math.abs(more) > APART
                ? "; the usual days alone are " + Show.percent(Math.abs(more)) + (more > 0 ? " above" : " below")
                        + " it and do not stand for the whole record"
                : "";
    }

    private static void spell(Page page, SiteReview review, DryWeather.Spell spell) {
        if (spell.profile().isEmpty()) {
            return;
        }
        boolean isFlow = review.dryWeather().isFlow();
        DiurnalProfile profile = spell.profile().get();
        List<List<String>> rows = new ArrayList<>();
        String unit = isFlow ? "l/s" : "mm";
        rows.add(
                List.of("", "days", "mean " + unit, "peak " + unit, "at", "10 to 90 % of days", "night " + unit, "at"));
        for (DayClass dayClass : spell.classes()) {
            Optional<DryWeather.Peak> peak = spell.peak(dayClass);
            Optional<ProfileSlot> night = profile.nightMinimum(dayClass);
            rows.add(List.of(
                    dayClass.toText(),
                    "" + profile.days(dayClass),
                    value(isFlow, profile.mean(dayClass)),
                    peak.map(found -> value(isFlow, found.slot().mean())).orElse("-"),
                    peak.map(found -> "" + found.slot().start()).orElse("-"),
                    peak.map(found -> value(isFlow, found.lower()) + " to " + value(isFlow, found.upper()))
                            .orElse("-"),
                    night.map(slot -> value(isFlow, slot.mean())).orElse("-"),
                    night.map(slot -> "" + slot.start()).orElse("-")));
        }
        page.table("lrrrrrrr", rows);
        if (profile.emptySlots() > 0) {
            page.say(profile.emptySlots() + " times of the day have too few days for a value, so there is no mean");
        } else if (spell.finding().isEmpty() && review.dryWeather().isMostlySuspect()) {
            page.say("the mean is withheld" + review.dryWeather().suspect() + mark(review));
        } else if (isFlow) {
            page.say((review.rain().isPresent() ? "dry weather flow " : "mean of these days ")
                    + Show.flow(profile.mean()) + " (" + Show.volume(profile.mean() * SECONDS_IN_DAY) + " a day)"
                    + (spell.classes().size() > 1 ? ", weekdays and weekends as in a week" : "")
                    + (spell.finding().isPresent()
                            ? ""
                            : StatesText.orElse(review)
                                    + doubtful(review)
                                    + review.dryWeather().suspect())
                    + mark(review));
        }
    }

    /** What must be known of every figure of the flow. */
    static String mark(SiteReview review) {
        return (review.watched().baseline().isPresent()
                        ? ""
                        : "; not tested against what is usual: it may rest on faulty readings")
                + ShiftText.mark(review)
                + review.dryWeather().against().mark();
    }

    /** How much was left out, so that the figure itself rests on none of it. */
    static String doubtful(SiteReview review) {
        double share = review.dryWeather().doubtfulShare();
        return share > 0 ? "; " + Show.percent(share) + " of the readings of dry days are doubtful and left out" : "";
    }

    /** What a quarter of the complete days stay below, m3/s: where wet days cannot be told, dry weather lies between it and the mean. */
    static OptionalDouble lowerQuarter(SiteReview review) {
        double[] means = review.flow().volumes().stream()
                .filter(day ->
                        day.isComplete() && review.dryWeather().usual().days().contains(day.date()))
                .mapToDouble(DailyTotal::mean)
                .toArray();
        return means.length < DryWeather.FEWEST_DAYS
                ? OptionalDouble.empty()
                : OptionalDouble.of(Statistics.of(means).quantile(0.25));
    }

    private static String dryDays(SiteReview review) {
        DryWeather dry = review.dryWeather();
        StringBuilder text = new StringBuilder();
        if (review.rain().isPresent()) {
            DryDays days = review.rain().get().days();
            Site.RainRules rules = review.site().rain();
            text.append(Show.count(days.dates().size(), "dry day"))
                    .append(", ")
                    .append(days.notDry().size())
                    .append(" wet, ")
                    .append(days.unknown().size())
                    .append(" not known; dry: at most ")
                    .append(Show.rain(rules.dryDayLimitMm()))
                    .append(Page.BOUND)
                    .append("mm that day and ")
                    .append(rules.daysAfterRain() == 1 ? "the day" : "each of " + rules.daysAfterRain() + " days")
                    .append(" before");
        } else {
            text.append(review.muteGauge().isPresent() ? "no rain was written" : "no gauge")
                    .append(" to tell dry days: all days of the record, wet ones among them");
            lowerQuarter(review)
                    .ifPresent(flow -> text.append(
                                    ", so that the mean is rather too high; a quarter of the days have less than ")
                            .append(Show.flow(flow)));
        }
        text.append("; ")
                .append(Show.count(dry.usual().days().size(), "usual day"))
                .append(" with readings");
        Map<Integer, Long> doubtful = dry.doubtful().values().stream()
                .collect(Collectors.groupingBy(Finding::number, TreeMap::new, Collectors.counting()));
        doubtful.forEach((number, days) -> text.append("; ")
                .append(days)
                .append(" left out as doubtful by finding ")
                .append(number));
        return text.toString();
    }

    static String value(boolean isFlow, double value) {
        return isFlow ? Show.flowValue(value) : Double.isNaN(value) ? "-" : "" + Math.round(value * 1000);
    }

    static void fullness(Page page, SiteReview review) {
        String shares = review.flow().fullness().stream()
                .map(time -> Show.percent(time.fullness()) + " for " + Show.duration(time.above()) + " ("
                        + Show.percent(time.share()) + ")")
                .collect(Collectors.joining(", "));
        FullnessTime first = review.flow().fullness().get(0);
        double doubtful = review.doubts().shareOfDepth(List.of(review.data().record()));
        page.section("fullness")
                .say("above " + shares + " of the " + Show.percent(first.coverage()) + " of the time that is covered"
                        + (doubtful > 0
                                ? "; the depth is in doubt for " + Show.percent(doubtful) + " of the record"
                                : ""));
        Dates dates = review.data().dates();
        largestFlow(page, review, dates);
        List<SurchargePeriod> periods = review.flow().surcharges();
        page.section("surcharge");
        if (periods.isEmpty()) {
            page.say("none");
            return;
        }
        Duration total = periods.stream().map(SurchargePeriod::duration).reduce(Duration.ZERO, Duration::plus);
        double share = LevelPeaks.doubtfulShare(review, periods);
        page.say(Show.count(periods.size(), "period") + ", " + Show.duration(total) + " together"
                + (share > 0 ? ", " + Show.percent(share) + " of it by doubtful depths" : ""));
        periods(page, review, periods, "the soffit");
    }

    private static String alone(double largest, double inARow) {
        OptionalDouble beside = InARow.beside(largest, inARow);
        return beside.isPresent()
                ? ", in one reading alone: two in a row reached " + Show.flow(beside.getAsDouble())
                : "";
    }

    private static void largestFlow(Page page, SiteReview review, Dates dates) {
        Series flow = review.flow().record().flow();
        int largest = largest(SeriesArrays.keeper().usableValues(flow));
        if (largest >= 0) {
            double fullBore = review.flow()
                    .record()
                    .monitor(largest)
                    .withoutSediment()
                    .conduit()
                    .fullBore()
                    .discharge();
            page.say("largest flow " + Show.flow(flow.value(largest)) + " at " + dates.time(flow.time(largest)) + ", "
                    + Show.percent(flow.value(largest) / fullBore) + " of full bore"
                    + alone(
                            flow.value(largest),
                            InARow.highest(flow, review.data().longestGap()))
                    + review.doubts()
                            .doubtOf(true, flow.time(largest))
                            .map(finding -> ", a flow that finding " + finding.number() + " puts in doubt")
                            .orElse(""));
        }
    }

    private static int largest(double[] flows) {
        int largest = -1;
        for (int i = 0; i < flows.length; i++) {
            if (!Double.isNaN(flows[i]) && (largest < 0 || flows[i] > flows[largest])) {
                largest = i;
            }
        }
        return largest;
    }

    private static void periods(Page page, SiteReview review, List<SurchargePeriod> periods, String level) {
        Dates dates = review.data().dates();
        for (SurchargePeriod period : periods.subList(0, Math.min(MOST_PERIODS, periods.size()))) {
            page.say(dates.time(period.interval().start()) + " for " + Show.duration(period.duration())
                    + ", up to "
                    + Show.mm(period.peakAbove()) + " above " + level + " at " + dates.time(period.peakTime())
                    + LevelPeaks.mark(review, period.peakTime())
                    + (period.isComplete() ? "" : ", the record hides its start or end"));
        }
        more(page, periods.size());
    }

    private static void more(Page page, int count) {
        if (count > MOST_PERIODS) {
            page.say("and " + (count - MOST_PERIODS) + " more in the files");
        }
    }

    static void alarms(Page page, SiteReview review) {
        page.section("alarms");
        if (review.site().alarm().isEmpty()) {
            page.say("no alarm level is set");
            return;
        }
        Site.AlarmRule rule = review.site().alarm().get();
        List<AlarmEvent> alarms = review.flow().alarms();
        page.say("depth above " + Show.mm(rule.level()) + ", deadband " + Show.mm(rule.deadband()) + ", on-delay "
                + Show.duration(rule.onDelay()) + ", off-delay " + Show.duration(rule.offDelay()) + ": "
                + Show.count(alarms.size(), "alarm"));
        if (alarms.isEmpty()) {
            return;
        }
        Dates dates = review.data().dates();
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("onset", "active", "returned", "peak", "at", "unobserved"));
        List<AlarmEvent> shown = alarms.subList(0, Math.min(MOST_PERIODS, alarms.size()));
        Set<Integer> doubting = new TreeSet<>();
        for (AlarmEvent alarm : shown) {
            Optional<Finding> doubt = review.doubts().doubtOf(false, alarm.peakTime());
            doubt.ifPresent(finding -> doubting.add(finding.number()));
            rows.add(List.of(
                    dates.time(alarm.onset()),
                    Show.clock(alarm.activation(), dates.zone()),
                    alarm.returned().map(time -> dates.time(time)).orElse("still active"),
                    Show.mm(alarm.peak()) + (doubt.isPresent() ? " ?" : ""),
                    dates.time(alarm.peakTime()),
                    alarm.unobserved().isZero() ? "-" : Show.duration(alarm.unobserved())));
        }
        page.table("lllrlr", rows);
        if (!doubting.isEmpty()) {
            page.say("?: a depth that finding "
                    + doubting.stream().map(String::valueOf).collect(Collectors.joining(", ")) + " puts in doubt");
        }
        more(page, alarms.size());
    }

    /** What was counted but not measured. */
    private static String seenOnce(SiteReview review, FlowFindings.Spills spills) {
        return spills.seenOnce() == 0
                ? ""
                : "; " + spills.seenOnce() + " seen in one reading only, taken as "
                        + Show.duration(review.data().depth().interval()) + " each";
    }

    static void overflow(Page page, SiteReview review) {
        review.flow().spills().ifPresent(spills -> {
            page.section("overflow");
            String crest = "crest at " + Show.mm(review.site().crestLevel().orElseThrow());
            if (spills.periods().isEmpty()) {
                page.say(crest + ": no water above it");
                return;
            }
            SpillTally tally = spills.tally();
            page.say(crest + ": water above it " + Show.count(spills.periods().size(), "time") + ", "
                    + Show.duration(tally.duration()) + " together; " + Show.count(tally.count(), "spill")
                    + " by blocks of 12 and 24 h" + seenOnce(review, spills));
            double share = SiteFigures.doubtfulSpills(review);
            if (share > 0) {
                page.say(Show.percent(share) + " of that time rests on depths that a finding puts in doubt"
                        + (share > Doubts.MOST ? ", so the count is withheld from the figures" : ""));
            }
            periods(page, review, spills.periods(), "the crest");
            review.spillReturn().ifPresent(found -> volumes(page, review, found));
        });
    }

    /** What went over, how sure it is, and how much of the year was seen. */
    private static void volumes(Page page, SiteReview review, SpillReturn found) {
        if (found.uncertain() > 0) {
            page.say(found.uncertain()
                    + " of these may have been none: the level stood above the crest by no more than twice "
                    + "its uncertainty, or only in readings that a test calls unusual, or in one that none could "
                    + "judge, or a finding puts the depth in doubt");
        }
        review.site()
                .weir()
                .ifPresentOrElse(
                        weir -> page.say("volume " + volume(found)
                                + (found.below() > 0
                                        ? "; " + Show.volume(found.below()) + " of it at heads below "
                                                + Show.mm(weir.lowestHead())
                                                + ", where the law is not to be trusted"
                                        : "")
                                + (found.withoutVolume() > 0
                                        ? "; " + Show.count(found.withoutVolume(), "spill")
                                                + " without volume, seen for less than half of the time"
                                        : "")
                                + "; by " + weir.words()),
                        () -> page.say("no volume: \"overflow crest length = ...\" in " + SiteFile.NAME
                                + " tells of the weir"));
        found.returns().stream()
                .filter(line -> line.observed() > 0)
                .forEach(line -> page.say(line.label() + ": " + Show.count(line.spills(), "spill")
                        + (line.spillsWithUncertain() == line.spills()
                                ? ""
                                : " (" + line.spillsWithUncertain() + " with uncertain ones)")
                        + ", " + Text.fixed(line.hours(), 2) + Page.BOUND + "h; seen "
                        + Show.percent(line.observed()) + " of the time"));
    }

    /** A volume with what twice the uncertainty of the level makes of it, if that is stated. */
    static String volume(SpillReturn found) {
        return Show.volume(found.volume())
                + (found.raised() > 0
                        ? " (" + Show.volume(found.lowered()) + " to " + Show.volume(found.raised())
                                + " by twice the uncertainty of the level)"
                        : "");
    }
}
