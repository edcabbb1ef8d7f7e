package dev.runnel.hydraulics.watch;

import dev.runnel.hydraulics.evidence.Direction;
import dev.runnel.hydraulics.monitoring.MonitorHistory;
import dev.runnel.hydraulics.monitoring.PipeMonitor;
import dev.runnel.internal.StateText;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.baseline.DayCurve;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Whether the columns of depth and velocity were exchanged, by a cable, a logger or an export: the depth then reads like the usual
 * velocity and the velocity like the usual depth, each in the unit of the other. One factor says which units. Water that is held up
 * also reads deep and slow, but neither at once nor so that the depth follows the velocity as the velocity else follows the depth.
 */
final class ExchangedColumns {
    // Every number of this class is chosen here; the reasons stand beside them.

    /** Distance in ln of a velocity from the usual one at its depth that is still like it: half as much again. */
    private static final double FITS = 0.4;

    /** A depth like the usual one of the hour, in ln: storms lift it. */
    private static final double LOWEST = -0.5;

    private static final double HIGHEST = 1.5;

    /** A lower level is none, m: below any reading, in whatever unit it is. */
    private static final double LEAST_LEVEL = 1e-6;

    /** Hours that must fit when exchanged, and how many others in between end the question. */
    private static final int HOURS = 12;

    private static final int MOST_OTHERS = 3;

    /** Hours in which it is decided; a night says little, and what is asked about for longer than it takes to be sure is judged by others. */
    private static final int OPEN_HOURS = 48;

    /** Both columns stand so far from what is usual at the hour, in ln, the one above and the other below. */
    private static final double LEAPT = 0.6;

    /** Distance of the median of these hours from the usual velocity at the depth. */
    private static final double EXACT = 0.2;

    /** Scatter over that of the readings as they are written: what is held up keeps its velocity by its depth, but for a share. */
    private static final double FOLLOWS = 0.8;

    /** Hours from which on water that is held up, which is no exchange, is not held back any longer. */
    private static final int FEW = 4;

    /** Known hours before an exchange of which half must fit as they are written: what is held up for long has other hours in storms. */
    private static final int HOURS_BEFORE = 24;

    /** Hours in a row that fit as they are written and end a finding. */
    private static final int HOURS_HOME = 24;

    /** One that comes back within this time is the same. */
    private static final long RETURN = 5 * Track.DAY;

    private static final long NONE = Long.MIN_VALUE;

    /** What an hour is like. */
    private enum Like {
        AS_WRITTEN,
        EXCHANGED,
        NEITHER
    }

    private final SiteBaseline baseline;
    private final MonitorHistory monitors;
    private final LocalHours local;
    private final Optional<UsualVelocity> law;
    private final Optional<DayCurve> depth;
    private final ReadingUnit.Told told;
    private final Findings findings;
    private final OneFinding finding;

    /** What the velocity leaves over at its depth when exchanged, and as it is written, of the hours asked about. */
    private final Ring asked = new Ring(OPEN_HOURS, 2);

    /** Of the last known hours: 1 for one that fits as it is written, else 0. */
    private final Ring right = new Ring(HOURS_BEFORE, 1);

    private int others;
    private double lnFactor;
    private long since = NONE;
    private long lastAsWritten = NONE;
    private long before = NONE;
    private boolean follows;

    /** Hours since the beginning that were known, that fit when exchanged, and as they are written. */
    private final long[] counts = new long[3];

    private int home;
    private double left;
    private double leftAsWritten;

    ExchangedColumns(SiteBaseline baseline, MonitorHistory monitors, Findings findings, ReadingUnit.Told told) {
        this.baseline = baseline;
        this.monitors = monitors;
        this.local = baseline.localHours();
        this.law = baseline.usualVelocity();
        this.depth = baseline.day(Quantity.DEPTH);
        this.told = told;
        this.findings = findings;
        this.finding = new OneFinding(findings);
    }

    /** Whether the readings of this time are judged by nothing else. */
    private boolean holdsBack() {
        // No water reads like another unit.
        boolean isNoWater = lnFactor != 0 || asked.size() < HOURS && (asked.size() < FEW || follows(1));
        return baseline.exchanged.isPresent() || finding.isOpen() || asked.size() > 0 && isNoWater;
    }

    /**
     * Takes an hour; what of it may be exchanged is missing from it afterwards.
     *
     * @param learning whether it is one of the baseline
     */
    void hour(SiteHour hour, boolean learning) {
        if (baseline.exchanged.isPresent()) {
            fromTheFirstDay(hour, learning);
        } else if (law.isPresent() && depth.isPresent() && isKnown(hour)) {
            Like like = like(hour);
            if (!learning) {
                judge(hour, like);
            }
            // The hour in between may hold readings of both kinds.
            follows = like == Like.AS_WRITTEN || like == Like.NEITHER && lastAsWritten == hour.hour - 1;
            lastAsWritten = like == Like.AS_WRITTEN ? hour.hour : lastAsWritten;
            right.add(hour.hour, like == Like.AS_WRITTEN ? 1 : 0);
        }
        if (holdsBack()) {
            hour.withholdDepth();
            hour.withholdVelocity();
        }
    }

    /** A baseline of exchanged columns knows no usual hour; what the drawings say must do. */
    private void fromTheFirstDay(SiteHour hour, boolean learning) {
        long end = (hour.hour + 1) * SiteHour.NANOS;
        if (since == NONE) {
            since = hour.hour;
        }
        if (learning) {
            return;
        }
        if (finding.last().isEmpty()) {
            System.arraycopy(baseline.exchanged.orElseThrow().counts(), 0, counts, 0, counts.length);
            Track open = finding.open(FindingName.EXCHANGED_COLUMNS, since * SiteHour.NANOS, end);
            open.detail = detail();
            finding.report(WatchNotice.Kind.FOUND, end);
        } else if (isKnown(hour)) {
            PipeMonitor monitor = monitor(hour);
            double y = Math.exp(hour.lnReadDepth);
            double v = Math.exp(hour.lnReadVelocity);
            boolean exchanged = ExchangedFit.fits(monitor, v, y);
            goOn(hour, ExchangedFit.fits(monitor, y, v) ? Like.AS_WRITTEN : exchanged ? Like.EXCHANGED : Like.NEITHER);
        }
    }

    private void judge(SiteHour hour, Like like) {
        if (finding.isOpen()) {
            goOn(hour, like);
        } else if (asked.size() > 0) {
            ask(hour, like);
        } else if (like == Like.EXCHANGED && follows && isSettled()) {
            others = 0;
            since = hour.hour;
            before = lastAsWritten;
            ask(hour, like);
        }
    }

    private boolean isSettled() {
        return Arrays.stream(right.column(0, 0)).sum() >= HOURS_BEFORE / 2.0;
    }

    private void ask(SiteHour hour, Like like) {
        if (like != Like.EXCHANGED) {
            others++;
        } else {
            asked.add(hour.hour, left, leftAsWritten);
            if (isSure()) {
                tell((hour.hour + 1) * SiteHour.NANOS);
                return;
            }
        }
        if (others >= MOST_OTHERS || hour.hour - since >= OPEN_HOURS) {
            asked.clear();
        }
    }

    /** Whether the hours asked about lie by the relation when exchanged, and lie less well by it as they are written. */
    private boolean isSure() {
        if (asked.size() < HOURS) {
            return false;
        }
        double[] values = asked.column(0, 0);
        return Math.abs(Medians.of(values)) < EXACT
                && Medians.scatter(values)
                        < ReadingUnit.smallScatter(law.orElseThrow().scatter())
                && follows(FOLLOWS);
    }

    /** Whether the velocity follows the depth when exchanged, with less than a share of the scatter that it has as written. */
    private boolean follows(double share) {
        return Medians.scatter(asked.column(0, 0)) < share * Medians.scatter(asked.column(0, 1));
    }

    private void tell(long end) {
        long begin = since * SiteHour.NANOS;
        boolean back = finding.last().map(last -> begin - last.closed <= RETURN).orElse(false);
        Optional<Track> renamed = told.giveAway(Quantity.DEPTH, begin, end);
        home = 0;
        int hours = asked.size();
        asked.clear();
        if (back) {
            Track open = finding.last().orElseThrow();
            open.comeBack(begin);
            count(hours, others, 0);
            open.detail = detail();
            renamed.ifPresent(other -> findings.close(other, begin, end));
            finding.report(WatchNotice.Kind.RETURNED, end);
            return;
        }
        counts[0] = 0;
        counts[1] = 0;
        counts[2] = 0;
        count(hours, others, 0);
        Track open =
                renamed.map(finding::take).orElseGet(() -> finding.open(FindingName.EXCHANGED_COLUMNS, begin, end));
        open.names = List.of(FindingName.EXCHANGED_COLUMNS);
        open.since = begin;
        open.earliest = before * SiteHour.NANOS;
        open.latest = begin + SiteHour.NANOS;
        open.shape = ChangeShape.STEP;
        open.direction = Direction.NONE;
        open.moved = List.of();
        open.alarm = Optional.empty();
        open.soffit = Optional.empty();
        open.detail = detail();
        finding.report(renamed.isPresent() ? WatchNotice.Kind.CHANGED : WatchNotice.Kind.FOUND, end);
    }

    private void count(int exchanged, int neither, int written) {
        counts[0] += exchanged + neither + written;
        counts[1] += exchanged;
        counts[2] += written;
    }

    private void goOn(SiteHour hour, Like like) {
        if (!finding.isOpen()) {
            return;
        }
        count(like == Like.EXCHANGED ? 1 : 0, like == Like.NEITHER ? 1 : 0, like == Like.AS_WRITTEN ? 1 : 0);
        home = like == Like.AS_WRITTEN ? home + 1 : 0;
        if (home >= HOURS_HOME) {
            long end = (hour.hour + 1) * SiteHour.NANOS;
            counts[0] -= home;
            counts[2] -= home;
            finding.last().orElseThrow().detail = detail();
            finding.close(end - HOURS_HOME * SiteHour.NANOS, end);
        }
    }

    private static boolean isKnown(SiteHour hour) {
        return !Double.isNaN(hour.lnReadDepth) && !Double.isNaN(hour.lnReadVelocity);
    }

    private PipeMonitor monitor(SiteHour hour) {
        return monitors.isConstant() ? monitors.first() : monitors.at(EpochNanos.toInstant(hour.hour * SiteHour.NANOS));
    }

    /** What an hour is like by the usual velocity at its depth and the usual depth of the hour. */
    private Like like(SiteHour hour) {
        double offset = monitor(hour).sensorOffset();
        double usual = depth.orElseThrow().value(local.hourOfDay(hour.hour), local.isRest(hour.hour));
        if (isUsual(offset, hour.lnReadDepth, hour.lnReadVelocity, usual)) {
            return Like.AS_WRITTEN;
        }
        double depthAway = lnLevel(offset, hour.lnReadDepth) - usual;
        double velocityAway = hour.lnReadVelocity - law.orElseThrow().lnVelocity(usual);
        if (!(Math.min(Math.abs(depthAway), Math.abs(velocityAway)) > LEAPT
                && Math.signum(depthAway) != Math.signum(velocityAway))) {
            // Another unit moves one column, and water both the same way.
            return Like.NEITHER;
        }
        if (asked.size() == 0 && !finding.isOpen()) {
            lnFactor = nearest(offset, hour);
        }
        double lnDepth = hour.lnReadVelocity - lnFactor;
        double lnVelocity = hour.lnReadDepth + lnFactor;
        left = over(offset, lnDepth, lnVelocity);
        leftAsWritten = over(offset, hour.lnReadDepth, hour.lnReadVelocity);
        return isUsual(offset, lnDepth, lnVelocity, usual) ? Like.EXCHANGED : Like.NEITHER;
    }

    /** ln of the factor of units by which exchanged readings come nearest to the usual velocity at the depth. */
    private double nearest(double offset, SiteHour hour) {
        return Arrays.stream(UnitFactor.lnBetweenColumns())
                .boxed()
                .min(Comparator.comparingDouble(
                        ln -> Math.abs(over(offset, hour.lnReadVelocity - ln, hour.lnReadDepth + ln))))
                .orElseThrow();
    }

    /** ln of a velocity over the usual one at a depth. */
    private double over(double offset, double lnDepth, double lnVelocity) {
        return lnVelocity - law.orElseThrow().lnVelocity(lnLevel(offset, lnDepth));
    }

    private boolean isUsual(double offset, double lnDepth, double lnVelocity, double usual) {
        double above = lnLevel(offset, lnDepth) - usual;
        return Math.abs(over(offset, lnDepth, lnVelocity)) < FITS && above > LOWEST && above < HIGHEST;
    }

    /** Of a sensor below the invert nothing may be left: that is like nothing. */
    private static double lnLevel(double offset, double lnDepth) {
        return Math.log(Math.max(LEAST_LEVEL, Math.exp(lnDepth) + offset));
    }

    private String detail() {
        String factor = lnFactor == 0
                ? ""
                : ", the depth as written times " + Text.significant(Math.exp(lnFactor), 4)
                        + " for the velocity, the velocity as written over it for the depth";
        return "columns exchanged? " + counts[1] + " of " + counts[0] + " hours fit "
                + (baseline.exchanged.isPresent()
                        ? "uniform flow by gradient and roughness as given"
                        : "the usual velocity at its depth")
                + " when depth and velocity are exchanged" + factor + ", " + counts[2] + " as they are written";
    }

    void finish(long end) {
        if (finding.isOpen()) {
            finding.last().orElseThrow().detail = detail();
        }
        finding.finish(end);
    }

    void write(StateText text) {
        asked.write(text, "exchangedAsked");
        right.write(text, "exchangedRight");
        finding.write(text, "exchangedTrack");
        text.with("exchangedHours", new long[] {since, before, lastAsWritten, others, home})
                .with("exchangedFollows", follows)
                .with("exchangedCounts", counts)
                .with("exchangedFactor", lnFactor);
    }

    void read(StateText text) {
        asked.read(text, "exchangedAsked");
        right.read(text, "exchangedRight");
        finding.read(text, "exchangedTrack");
        long[] hours = text.counts("exchangedHours", 5);
        since = hours[0];
        before = hours[1];
        lastAsWritten = hours[2];
        others = (int) hours[3];
        home = (int) hours[4];
        follows = text.flag("exchangedFollows");
        System.arraycopy(text.counts("exchangedCounts", counts.length), 0, counts, 0, counts.length);
        lnFactor = text.number("exchangedFactor");
    }
}
