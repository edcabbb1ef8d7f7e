package dev.runnel.hydraulics.watch;

import dev.runnel.hydraulics.evidence.Direction;
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
    /** Shift of a day that is back, h; chosen here, as are all limits of this class. */
    private static final double BACK = 0.2;

    /**
     * Twice the logarithm by which an hour must be likelier than none for the days about a leap of the stamps: little, for a
     * leap of such a length so soon after the change speaks for itself, and nothing is held against the readings.
     */
    private static final double LIKELIER = 1;

    /** What is over so soon without anybody's doing was no clock. */
    private static final long SHORT = 21 * Track.DAY;

    /** So many findings that were over soon say that the days of this site do so by themselves. */
    private static final int MOST_SHORT = 2;

    /** Days around a change of the civil clock that are near it. */
    private static final int CIVIL_DAYS = 8;

    private static final int DAYS_AFTER = 2;

    /** Days for which it is kept whether a tide was seen: more than agree on a clock. */
    private static final int TIDE_DAYS = 16;

    /** Days whose shift is known to others. */
    private static final int LAST_DAYS = 3;

    /** A shift beyond this is nearer to an hour than to none. */
    private static final double NEARER_AN_HOUR = 0.5;

    private static final double LESS_THAN_TWO_HOURS = 1.5;

    private final SiteBaseline baseline;
    private final Findings findings;
    private final Optional<ClockWatch> clock;
    private final LocalHours local;
    private final ZoneRules civil;
    private final OneFinding finding;
    private double shift;
    private int closedSoon;
    private final TideWatch tide;
    private final Ring tideSeen = new Ring(TIDE_DAYS, 1);
    private Optional<MovedLogger> moved = Optional.empty();

    ClockFinding(WatchRule rule, Findings findings, TideWatch tide) {
        this.tide = tide;
        this.baseline = rule.baseline();
        this.findings = findings;
        this.finding = new OneFinding(findings);
        this.clock = baseline.clock ? baseline.clockWatch() : Optional.empty();
        this.local = baseline.localHours();
        this.civil = rule.civilZone().getRules();
    }

    /** Hours by which the clock of the open finding is late; 0 without one. */
    double shift() {
        return isOpen() ? shift : 0;
    }

    /** Median shift of the last working days, h; NaN if too few are known, or none is looked at. */
    double dayShift() {
        return clock.map(watch -> watch.size() < LAST_DAYS ? Double.NaN : new ClockEvidence(watch).median(LAST_DAYS))
                .orElse(Double.NaN);
    }

    boolean isOpen() {
        return finding.isOpen();
    }

    void add(double hourOfDay, double lnDepth, double lnFlow) {
        clock.ifPresent(watch -> watch.add(hourOfDay, lnDepth, lnFlow));
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
        boolean known = finding.last()
                .map(last -> isOfChange(last.since, logger.change()))
                .orElse(false);
        if (day > lastDay + CIVIL_DAYS || known) {
            moved = Optional.empty();
            return;
        }
        double[] later = watch.mean(firstDay, lastDay, 1, Integer.MAX_VALUE, lastDay);
        double[] back = watch.mean(lastDay + 1, day, DAYS_AFTER, DAYS_AFTER, lastDay);
        if (Double.isNaN(back[0])) {
            return;
        }
        moved = Optional.empty();
        double shift = back[0] - later[0];
        double variance = back[1] + later[1];
        // Twice the logarithm of how much more likely an hour is than none.
        if (!((2 * shift - 1) / variance > LIKELIER)) {
            return;
        }
        Track noted = new Track(0, FindingName.CLOCK_OF_MONITOR, logger.change(), end);
        noted.direction = Direction.DOWN;
        noted.shape = ChangeShape.STEP;
        noted.open = false;
        noted.closed = logger.gapFrom();
        noted.detail = movedLate(logger, shift);
        findings.report(WatchNotice.Kind.NOTED, end, noted);
    }

    private static String movedLate(MovedLogger logger, double shift) {
        return "clock of the monitor moved by an hour at the civil change, but late: the stamps leap by "
                + Text.fixed(logger.gap() / 6e10, 0) + " min after " + EpochNanos.toInstant(logger.gapFrom())
                + ", and up to there the usual dry day came " + Text.fixed(shift, 2)
                + " h early against the days after";
    }

    /**
     * Ends a day.
     *
     * @param quiet whether no other change is open, or one of water alone, and the gauge that tells dry days is not silent
     * @param water whether one of water is
     */
    void endDay(long day, boolean rest, boolean quiet, boolean water, long end) {
        if (clock.isEmpty()) {
            return;
        }
        ClockWatch watch = clock.orElseThrow();
        tideSeen.add(day, tide.isSeen() ? 1 : 0);
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
            open(watch, day, !water, end);
        }
        if (moved.isPresent()) {
            movedLogger(watch, day, end);
        }
    }

    private void open(ClockWatch watch, long day, boolean small, long end) {
        ClockEvidence evidence = new ClockEvidence(watch);
        int days = evidence.days(day, small);
        if (days == 0 && evidence.afterCivilChange(day) && afterCivilChange(watch.day(1))) {
            days = evidence.daysAfterCivilChange();
        }
        if (days == 0 || closedSoon >= MOST_SHORT || tide.isKnown()) {
            return;
        }
        // Days that came at other hours and came back, or the moon in the days before: that is no clock.
        if (closedSoon > 0 && tide.isSeen() || tideBefore(watch.day(days - 1))) {
            tide.tell(end);
            return;
        }
        shift = evidence.median(days);
        ClockBeginning began = ClockBeginning.of(watch, local, baseline, shift);
        boolean back = finding.last()
                .map(last -> began.since() - last.closed <= 5 * Track.DAY)
                .orElse(false);
        Track opened =
                back ? finding.last().orElseThrow() : finding.open(FindingName.CLOCK_OF_MONITOR, began.since(), end);
        opened.direction = shift > 0 ? Direction.UP : Direction.DOWN;
        opened.shape = ChangeShape.STEP;
        opened.detail = detail(days, watch.day(days - 1));
        if (back) {
            opened.comeBack(began.since());
        } else {
            opened.earliest = began.earliest();
            opened.latest = began.latest();
        }
        finding.report(back ? WatchNotice.Kind.RETURNED : WatchNotice.Kind.FOUND, end);
    }

    private String detail(int days, long firstDay) {
        return "the usual dry day comes " + Text.fixed(Math.abs(shift), 2) + " h " + (shift > 0 ? "late" : "early")
                + " by the clock of the monitor, on " + days + " dry days in a row"
                + (isNearAnHour(shift) && afterCivilChange(firstDay)
                        ? ": clock of the monitor moved by an hour at the civil change, or left behind by it"
                        : "");
    }

    /** Share of a day that went by the clock that is off, where its phase lies between the two; 0 where it is near the usual. */
    private double mixed(double shiftOfDay) {
        double share = shiftOfDay / shift;
        return Math.abs(shiftOfDay) > BACK && share > 0 ? Math.min(1, share) : 0;
    }

    /** Whether a tide was seen on the last day before another, whose clock could not yet be off. */
    private boolean tideBefore(long day) {
        int next = tideSeen.from(day);
        return next > 0 && tideSeen.value(next - 1, 0) > 0;
    }

    /** Whether what began at a time began with a change of the civil clock or later, to within a day. */
    static boolean isOfChange(long since, long change) {
        return since >= change - Track.DAY;
    }

    /** Whether a shift, h, is nearer to an hour, early or late, than to none or two. */
    static boolean isNearAnHour(double shift) {
        return Math.abs(shift) > NEARER_AN_HOUR && Math.abs(shift) < LESS_THAN_TWO_HOURS;
    }

    /** Whether a day of a shift, h, is back from where another stood. */
    static boolean isBack(double shift, double stood) {
        return Math.abs(shift) < Math.max(BACK, Math.abs(stood) / 2);
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
            if (!isBack(watch.shift(i), shift)) {
                return;
            }
        }
        Track open = finding.last().orElseThrow();
        long from = local.firstHour(watch.day(days - 1)) * SiteHour.NANOS;
        open.close(from + (long) (Track.DAY * mixed(watch.shift(days - 1))));
        boolean civilly = afterCivilChange(local.day(Math.floorDiv(open.since, SiteHour.NANOS)));
        closedSoon += open.closed - open.since < SHORT && !civilly ? 1 : 0;
        finding.report(WatchNotice.Kind.CLOSED, end);
    }

    void finish(long end) {
        finding.finish(end);
    }

    void write(StateText text) {
        clock.ifPresent(watch -> watch.write(text));
        tideSeen.write(text, "clockTide");
        text.with("clockShift", shift)
                .with("clockClosedSoon", closedSoon)
                .with("clockMoved", moved.map(MovedLogger::counts).orElse(new long[0]));
        finding.write(text, "clockTrack");
    }

    void read(StateText text) {
        clock.ifPresent(watch -> watch.read(text));
        shift = text.number("clockShift");
        closedSoon = text.index("clockClosedSoon");
        tideSeen.read(text, "clockTide");
        moved = MovedLogger.ofCounts(text.counts("clockMoved"));
        finding.read(text, "clockTrack");
    }
}
