package dev.runnel.hydraulics.evidence;

import dev.runnel.internal.StateText;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.zone.ZoneOffsetTransition;
import java.time.zone.ZoneRules;
import java.util.Optional;

/** A clock of the monitor that is off: several dry days in a row whose course comes early or late. */
final class ClockFinding {
    /** Calendar days within which dry days must agree; chosen here, as are all limits of this class. */
    private static final int WITHIN_DAYS = 8;

    /** Shift of a single day that still agrees, h. */
    private static final double LEAST_SHIFT = 0.2;

    /** Median shift of five days that is a finding, h. */
    private static final double SMALL_SHIFT = 0.35;

    /** Median shift of three days that is a finding, h. */
    private static final double LARGE_SHIFT = 0.55;

    /** The same of three days in scatters of a usual day. */
    private static final double LARGE_SCATTERS = 1.5;

    /** The same of five days. */
    private static final double SCATTERS = 1.2;

    /** How much better, relatively, the moved course must fit. */
    private static final double GAIN = 0.8;

    /** Shift of two days near a change of the civil clock that is a finding, h. */
    private static final double CIVIL_SHIFT = 0.6;

    /** Days around a change of the civil clock that are near it. */
    private static final int CIVIL_DAYS = 8;

    private static final int DAYS_AFTER = 2;

    /** A shift beyond this is nearer to an hour than to none. */
    private static final double NEARER_AN_HOUR = 0.5;

    private static final double LESS_THAN_TWO_HOURS = 1.5;

    private final SiteBaseline baseline;
    private final Findings findings;
    private final Optional<ClockWatch> clock;
    private final LocalHours local;
    private final ZoneRules civil;
    private Optional<Track> track = Optional.empty();
    private double shift;
    private Optional<MovedLogger> moved = Optional.empty();

    ClockFinding(WatchRule rule, Findings findings) {
        this.baseline = rule.baseline();
        this.findings = findings;
        this.clock = baseline.clock ? baseline.day(Quantity.DEPTH).map(ClockWatch::new) : Optional.empty();
        this.local = baseline.localHours();
        this.civil = rule.civilZone().getRules();
    }

    /** Hours by which the clock of the open finding is late; 0 without one. */
    double shift() {
        return isOpen() ? shift : 0;
    }

    private boolean isOpen() {
        return track.map(each -> each.open).orElse(false);
    }

    void add(double hourOfDay, double lnDepth) {
        clock.ifPresent(watch -> watch.add(hourOfDay, lnDepth));
    }

    /** Looks for a gap in the stamps that a logger leaves which is moved by an hour some time after a civil change. */
    void stamps(SiteHour hour) {
        if (hour.gap > 0 && clock.isPresent() && !isOpen()) {
            moved = MovedLogger.of(hour, civil).or(() -> moved);
        }
    }

    private void movedLogger(ClockWatch watch, long day, long end) {
        MovedLogger logger = moved.orElseThrow();
        long firstDay = local.day(Math.floorDiv(logger.change(), SiteHour.NANOS));
        long lastDay = local.day(Math.floorDiv(logger.gapFrom(), SiteHour.NANOS));
        boolean known = track.isPresent() && track.orElseThrow().since >= logger.change() - Track.DAY;
        if (day > lastDay + CIVIL_DAYS || known) {
            moved = Optional.empty();
            return;
        }
        double later = watch.mean(firstDay, lastDay, 1, Integer.MAX_VALUE);
        double back = watch.mean(lastDay + 1, day, DAYS_AFTER, DAYS_AFTER);
        if (Double.isNaN(back)) {
            return;
        }
        moved = Optional.empty();
        if (!(back - later > Math.max(NEARER_AN_HOUR, SCATTERS * baseline.clockScatter))) {
            return;
        }
        Track closed = findings.open(FindingName.CLOCK_OF_MONITOR, logger.change(), end);
        closed.direction = Direction.DOWN;
        closed.shape = ChangeShape.STEP;
        closed.detail = "clock of the monitor moved by an hour at the civil change, but late: the stamps leap by "
                + Text.fixed(logger.gap() / 6e10, 0) + " min after " + EpochNanos.toInstant(logger.gapFrom())
                + ", and up to there the usual dry day came " + Text.fixed(back - later, 2)
                + " h early against the days after";
        findings.report(WatchNotice.Kind.FOUND, end, closed);
        closed.open = false;
        closed.closed = logger.gapFrom();
        findings.report(WatchNotice.Kind.CLOSED, end, closed);
    }

    void endDay(long day, boolean rest, boolean quiet, long end) {
        if (clock.isEmpty()) {
            return;
        }
        ClockWatch watch = clock.orElseThrow();
        if (!quiet) {
            watch.dropDay();
            return;
        }
        if (!watch.endDay(day, rest)) {
            return;
        }
        if (isOpen()) {
            close(watch, end);
        } else {
            open(watch, day, end);
        }
        if (moved.isPresent()) {
            movedLogger(watch, day, end);
        }
    }

    private void open(ClockWatch watch, long day, long end) {
        int days = 0;
        if (agree(watch, day, 3, WITHIN_DAYS, LARGE_SHIFT / 2)
                && Math.abs(median(watch, 3)) > Math.max(LARGE_SHIFT, LARGE_SCATTERS * baseline.clockScatter)) {
            days = 3;
        } else if (agree(watch, day, 5, 2 * WITHIN_DAYS, LEAST_SHIFT)
                && Math.abs(median(watch, 5)) > Math.max(SMALL_SHIFT, SCATTERS * baseline.clockScatter)) {
            days = 5;
        } else if (agree(watch, day, 2, 2, CIVIL_SHIFT) && afterCivilChange(watch.day(1))) {
            days = 2;
        }
        if (days == 0) {
            return;
        }
        shift = median(watch, days);
        long first = local.firstHour(watch.day(days - 1)) * SiteHour.NANOS;
        boolean back = track.isPresent() && first - track.orElseThrow().closed <= 5 * Track.DAY;
        Track opened = back ? track.orElseThrow() : findings.open(FindingName.CLOCK_OF_MONITOR, first, end);
        opened.open = true;
        opened.direction = shift > 0 ? Direction.UP : Direction.DOWN;
        opened.shape = ChangeShape.STEP;
        boolean byAnHour = Math.abs(shift) > NEARER_AN_HOUR && Math.abs(shift) < LESS_THAN_TWO_HOURS;
        opened.detail = "the usual dry day comes " + Text.fixed(Math.abs(shift), 2) + " h "
                + (shift > 0 ? "late" : "early") + " by the clock of the monitor, on " + days + " dry days in a row"
                + (byAnHour && afterCivilChange(watch.day(days - 1))
                        ? ": clock of the monitor moved by an hour at the civil change, or left behind by it"
                        : "");
        if (back) {
            opened.returns++;
        } else {
            opened.earliest = first - Track.DAY;
            opened.latest = first + Track.DAY;
        }
        track = Optional.of(opened);
        findings.report(back ? WatchNotice.Kind.RETURNED : WatchNotice.Kind.FOUND, end, opened);
    }

    private static boolean agree(ClockWatch watch, long day, int days, int within, double least) {
        if (watch.size() < days || day - watch.day(days - 1) >= within) {
            return false;
        }
        double sign = Math.signum(watch.shift(0));
        double unmoved = 0;
        double moved = 0;
        for (int i = 0; i < days; i++) {
            if (!(sign * watch.shift(i) > least)) {
                return false;
            }
            unmoved += watch.squaresUnmoved(i);
            moved += watch.squaresMoved(i);
        }
        return unmoved - moved > GAIN * moved;
    }

    private static double median(ClockWatch watch, int days) {
        double[] shifts = new double[days];
        for (int i = 0; i < days; i++) {
            shifts[i] = watch.shift(i);
        }
        return Medians.of(shifts);
    }

    /** Whether civil clocks changed on a day or up to eight days before it. */
    private boolean afterCivilChange(long from) {
        if (civil.isFixedOffset()) {
            return false;
        }
        Instant early = Instant.ofEpochSecond((from - CIVIL_DAYS) * 86_400L);
        Instant late = Instant.ofEpochSecond((from + 1) * 86_400L);
        ZoneOffsetTransition next = civil.nextTransition(early);
        return next != null
                && next.getInstant().isBefore(late.atOffset(ZoneOffset.UTC).toInstant());
    }

    private void close(ClockWatch watch, long end) {
        int days = watch.size() < 2 ? 1 : 2;
        for (int i = 0; i < days; i++) {
            if (!(Math.abs(watch.shift(i)) < Math.max(LEAST_SHIFT, Math.abs(shift) / 2))) {
                return;
            }
        }
        Track open = track.orElseThrow();
        open.open = false;
        open.closed = local.firstHour(watch.day(days - 1)) * SiteHour.NANOS;
        findings.report(WatchNotice.Kind.CLOSED, end, open);
    }

    void finish(long end) {
        track.filter(each -> each.open).ifPresent(each -> findings.report(WatchNotice.Kind.STANDING, end, each));
    }

    void write(StateText text) {
        clock.ifPresent(watch -> watch.write(text));
        text.with("clockShift", shift)
                .with("clockMoved", moved.map(MovedLogger::counts).orElse(new long[0]))
                .with("clockTrack", track.map(each -> each.write().toString()).orElse(""));
    }

    void read(StateText text) {
        clock.ifPresent(watch -> watch.read(text));
        shift = text.number("clockShift");
        moved = MovedLogger.ofCounts(text.counts("clockMoved"));
        String found = text.text("clockTrack");
        track = found.isEmpty() ? Optional.empty() : Optional.of(Track.read(found));
    }
}
