package dev.runnel.examples.review;

import dev.runnel.hydraulics.evidence.DailyEvidence;
import dev.runnel.hydraulics.monitoring.PipeMonitor;
import dev.runnel.hydraulics.watch.BaselineSearch;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Statistics;
import dev.runnel.timeseries.correction.VisitDifference;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;

/**
 * A depth that is read otherwise since one of the first weeks, of which no finding tells: the levels of these weeks alone show it,
 * and it may be less than what wanders at the site. The days since are marked, and a depth by hand decides.
 *
 * @param shift what velocity and depth show
 * @param time the time since, up to the finding that puts its readings in doubt anyway
 * @param share by how much the flow since is read too high if the depth before is the true one, as a share at the median depth of
 *     dry days since; negative if too low, empty without such days
 * @param before median of the mean flows of dry days before it, m3/s
 * @param since the same since
 */
record UntoldShift(
        BaselineSearch.Shift shift, Interval time, OptionalDouble share, OptionalDouble before, OptionalDouble since) {
    private static final double HALF = 0.5;

    /** Chosen here: a finding that begins so soon after a shift tells it. */
    private static final Duration SOON = Duration.ofDays(3);

    /** Returns nothing where none is seen, where a finding tells it, or where a depth by hand agrees with what is read since. */
    static Optional<UntoldShift> of(SiteReview review) {
        Interval record = review.data().record();
        return review.watched()
                .search()
                .shift()
                .filter(shift -> shift.from().isBefore(record.end()))
                .flatMap(shift -> of(review, shift, Interval.of(shift.from(), told(review, shift.from()))));
    }

    private static Optional<UntoldShift> of(SiteReview review, BaselineSearch.Shift shift, Interval time) {
        if (time.duration().compareTo(SOON) < 0
                || !time.overlaps(review.data().record())
                || isRefuted(review, shift, time)) {
            return Optional.empty();
        }
        PipeMonitor monitor = review.site().monitor();
        OptionalDouble level = median(review, time, true, DailyEvidence::medianLevel);
        return Optional.of(new UntoldShift(
                shift,
                time,
                level.isPresent() && level.getAsDouble() - shift.metres() > monitor.bedAboveInvert()
                        ? OptionalDouble.of(monitor.flowArea(level.getAsDouble())
                                        / monitor.flowArea(level.getAsDouble() - shift.metres())
                                - 1)
                        : OptionalDouble.empty(),
                median(review, time, false, DailyEvidence::meanFlow),
                median(review, time, true, DailyEvidence::meanFlow)));
    }

    /** When a finding tells it, if one does: the first of those that make the flow doubtful and last. */
    private static Instant told(SiteReview review, Instant from) {
        Instant end = review.data().record().end();
        return review.watched().findings().stream()
                .filter(finding -> Doubts.isLasting(finding) && review.doubts().isFlowDoubtful(finding))
                .map(finding -> finding.interval(end))
                .filter(stood -> stood.end().isAfter(from))
                .map(stood -> stood.start().isBefore(from) ? from : stood.start())
                .min(Comparator.naturalOrder())
                .orElse(end);
    }

    /** Whether a depth by hand, closer than the shift, agrees with the monitor since. */
    private static boolean isRefuted(SiteReview review, BaselineSearch.Shift shift, Interval time) {
        return review.visits().differences().stream()
                .filter(VisitDifference::isCompared)
                .filter(each -> each.quantity().equals("depth"))
                .filter(each -> time.contains(each.visit().time()))
                .anyMatch(each -> !each.isBeyond() && each.tolerance() < Math.abs(shift.metres()));
    }

    /** Whether most of a day lies in the time that is read otherwise. */
    boolean isOf(LocalDate day, ZoneId zone) {
        return Doubts.hours(day, zone).shareCoveredBy(time) > HALF;
    }

    private static OptionalDouble median(
            SiteReview review, Interval time, boolean isSince, ToDoubleFunction<DailyEvidence> figure) {
        double[] values = review.dryDays().stream()
                .filter(day -> isSince
                        ? hours(day.date(), review).shareCoveredBy(time) > HALF
                        : !hours(day.date(), review).end().isAfter(time.start()))
                .mapToDouble(figure)
                .toArray();
        return values.length == 0
                ? OptionalDouble.empty()
                : OptionalDouble.of(Statistics.of(values).median());
    }

    private static Interval hours(LocalDate day, SiteReview review) {
        return Doubts.hours(day, review.site().zone());
    }
}
