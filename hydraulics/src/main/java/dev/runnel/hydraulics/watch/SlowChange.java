package dev.runnel.hydraulics.watch;

import dev.runnel.hydraulics.evidence.Direction;
import dev.runnel.internal.StateText;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Small or slow changes of the velocity at its depth, by the median of three weeks of days: what is too small for the sums of
 * hours may stand for months. So slow a median also sees a law that wanders; the limit is a multiple of how far days of the
 * site stray. It tells that velocity and depth parted, and not which of them did.
 */
final class SlowChange {
    // Every number of this class is chosen here; docs/methods/watch.md states them.

    /** The limit in the scatter of days, and the least one, in ln. */
    private static final double LIMIT = 3;

    private static final double LEAST = 0.06;

    /** Days of the median, fewest of them, and the days among which they must lie. */
    private static final int DAYS = 21;

    private static final int LEAST_DAYS = 14;
    private static final int WITHIN = 28;

    /** Days that must show that it still stands when it is told. */
    private static final int NOW = 7;

    /** Hours that make a day. */
    private static final int LEAST_HOURS = 8;

    /** It is over below this share of the limit. */
    private static final double OVER = 0.5;

    /** A quick change whose last hours stand so many times farther away is another. */
    private static final double OTHER = 3;

    private static final int LAST_HOURS = 6;

    /** The same finding if it comes back within so many days. */
    private static final long RETURN_DAYS = 42;

    /** Days after it was told in which its beginning is told anew, and days that are kept to see it. */
    private static final long SHAPE_DAYS = 30;

    private static final int KEPT = 120;

    private static final int R = ChangeSeries.R;
    private static final long NONE = Long.MIN_VALUE;

    private final SiteBaseline baseline;
    private final ChangeSeries series;
    private final OneFinding finding;
    private final double limit;

    /** Median of the velocity at its depth less its centre, and the hours it rests on. */
    private final Ring days = new Ring(KEPT, 2);

    private long day = NONE;

    SlowChange(SiteBaseline baseline, ChangeSeries series, Findings findings) {
        this.baseline = baseline;
        this.series = series;
        this.finding = new OneFinding(findings);
        this.limit = limit(baseline);
    }

    /** The least change that is told, in ln; NaN if none is. */
    static double limit(SiteBaseline baseline) {
        return baseline.watches(Quantity.VELOCITY_AT_DEPTH) ? Math.max(LEAST, LIMIT * baseline.dayScatter) : Double.NaN;
    }

    /**
     * Takes the end of a block.
     *
     * @param other block since which a quick change stands, whose days are its own; empty if none does
     */
    void block(long block, Optional<Long> other) {
        long end = ChangeSeries.time(block + 1);
        if (other.isPresent()) {
            long from = other.orElseThrow();
            days.dropFrom(dayOf(from));
            if (finding.isOpen()) {
                finding.close(ChangeSeries.time(from), end);
            }
        } else if (day != NONE && day != dayOf(block)) {
            endDay(end);
        }
        day = dayOf(block);
    }

    private static long dayOf(long block) {
        return Math.floorDiv(block, (long) ChangeSeries.BLOCKS_PER_DAY);
    }

    private void endDay(long end) {
        Ring hours = series.hours;
        double[] known = Medians.known(hours.column(hours.from(24 * day), hours.from(24 * (day + 1)), R));
        if (known.length < LEAST_HOURS) {
            return;
        }
        days.add(day, Medians.of(known) - series.centre(R), known.length);
        int from = Math.max(days.from(day - WITHIN + 1), days.size() - DAYS);
        double[] last = days.column(from, 0);
        if (last.length < LEAST_DAYS) {
            return;
        }
        double median = Medians.of(last);
        if (finding.isOpen()) {
            goOn(median, from, end);
        } else if (Math.abs(median) > limit
                && Math.signum(median) * Medians.of(Arrays.copyOfRange(last, last.length - NOW, last.length))
                        > OVER * limit) {
            tell(median, from, end);
        }
    }

    private void tell(double median, int from, long end) {
        Direction direction = median > 0 ? Direction.UP : Direction.DOWN;
        boolean returns = finding.last()
                .map(track -> track.direction == direction && end - track.closed < RETURN_DAYS * Track.DAY)
                .orElse(false);
        Track open;
        if (returns) {
            open = finding.last().orElseThrow();
            open.comeBack(time(days.number(from)));
        } else {
            open = finding.open(
                    median > 0 ? FindingName.VELOCITY_HIGH_FOR_DEPTH : FindingName.VELOCITY_LOW_FOR_DEPTH,
                    time(days.number(from)),
                    end);
            open.direction = direction;
            shape(open);
        }
        moved(open, median, from);
        finding.report(returns ? WatchNotice.Kind.RETURNED : WatchNotice.Kind.FOUND, end);
    }

    private void goOn(double median, int from, long end) {
        Track open = finding.last().orElseThrow();
        int sign = open.direction == Direction.UP ? 1 : -1;
        if (sign * median < OVER * limit) {
            finding.close(lastAway(sign), end);
            return;
        }
        if (sign * median > limit) {
            moved(open, median, from);
        }
        ChangeShape told = open.shape;
        if (open.returns() == 0 && end - open.found <= SHAPE_DAYS * Track.DAY) {
            shape(open);
        }
        if (open.shape != told) {
            finding.report(WatchNotice.Kind.CHANGED, end);
        }
    }

    /** End of the last day that stood away. */
    private long lastAway(int sign) {
        int last = days.size() - 1;
        while (last > 0 && sign * days.value(last, 0) < OVER * limit) {
            last--;
        }
        return time(days.number(last) + 1);
    }

    private void shape(Track open) {
        long first = days.number(0);
        int told = (int) (Math.floorDiv(open.found, Track.DAY) - first);
        if (told < 0) {
            return;
        }
        double[] values = new double[(int) (day - first + 1)];
        Arrays.fill(values, Double.NaN);
        for (int i = 0; i < days.size(); i++) {
            values[(int) (days.number(i) - first)] = days.value(i, 0);
        }
        ShapeFit fit = ShapeFit.of(values, told);
        open.shape = fit.shape;
        open.since = time(first + fit.onset);
        open.earliest = fit.isOpen
                ? Math.min(EpochNanos.of(baseline.interval().end()), time(first))
                : time(first + Math.max(0, fit.earliest - 1));
        open.latest = time(first + fit.latest + 1);
        open.beginByFound();
    }

    private void moved(Track open, double median, int from) {
        double hours = Arrays.stream(days.column(from, 1)).sum();
        open.moved = List.of(new Moved(
                Quantity.VELOCITY_AT_DEPTH, Math.expm1(median), baseline.dayScatter, (int) Math.round(hours)));
        open.detail = detail(median, days.size() - from);
    }

    private String detail(double median, int count) {
        return "velocity at the same depth " + (median < 0 ? "down" : "up") + " by about "
                + Text.fixed(100 * Math.abs(Math.expm1(median)), 0) + " % in the median of " + count + " days; "
                + Text.fixed(100 * limit, 0) + " % are beyond how this site wanders";
    }

    private static long time(long day) {
        return day * Track.DAY;
    }

    /** Whether what it tells of is what moves now: the last hours stand away that way, and not by a multiple of the last day. */
    boolean isNow() {
        if (!finding.isOpen() || days.size() == 0) {
            return false;
        }
        int sign = finding.last().orElseThrow().direction == Direction.UP ? 1 : -1;
        double[] known = Medians.known(series.hours.column(0, R));
        double now = sign
                * (Medians.of(Arrays.copyOfRange(known, Math.max(0, known.length - LAST_HOURS), known.length))
                        - series.centre(R));
        return now > 0 && now <= OTHER * Math.max(limit, sign * days.value(days.size() - 1, 0));
    }

    /** Gives its open finding, and the days of it, to a quick change that is told now, if that is the same at last. */
    Optional<Track> give() {
        if (!isNow()) {
            return Optional.empty();
        }
        days.dropFrom(Math.floorDiv(finding.last().orElseThrow().since, Track.DAY));
        return finding.give();
    }

    /** Forgets all from an hour on. */
    void dropFrom(long hour) {
        days.dropFrom(Math.floorDiv(hour, 24L));
    }

    void finish(long end) {
        finding.finish(end);
    }

    String write() {
        StateText text = StateText.of("slow-change", 1).with("day", day);
        days.write(text, "days");
        finding.write(text, "track");
        return text.toString();
    }

    void read(String state) {
        StateText text = StateText.parse("slow-change", 1, state);
        day = text.count("day");
        days.read(text, "days");
        finding.read(text, "track");
    }
}
