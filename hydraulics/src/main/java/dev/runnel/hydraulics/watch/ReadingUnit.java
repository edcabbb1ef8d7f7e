package dev.runnel.hydraulics.watch;

import dev.runnel.hydraulics.evidence.Direction;
import dev.runnel.internal.StateText;
import dev.runnel.internal.Text;
import java.util.List;
import java.util.Optional;

/**
 * Whether the readings of a quantity leapt by the factor of another unit. What leaps so is held back from all that judges
 * readings until it is decided, which takes less than a day or two.
 */
final class ReadingUnit {
    // Every number of this class is chosen here; the reasons stand beside them.

    /** Hours that show what the readings were against usual just before: five days, so that a season plays no part. */
    private static final int HOURS_BEFORE = 120;

    private static final int LEAST_BEFORE = 24;

    /** Distance from there, in ln, that is none: a storm, a blockage that is not told yet. */
    private static final double AT_HOME = 0.6;

    /** Where the level is all that is known, a leap of feet must begin nearer: a blockage that grows leaps in a storm too. */
    private static final double NEAR_HOME = 0.3;

    /** Distance of a dry leap from the logarithm of a large factor: what comes after it is not asked for as much. */
    private static final double DRY_BAND = 0.3;

    /** A leap takes place from one hour to the next, in the hour between, or across a gap that is no longer than this. */
    private static final int LEAP_HOURS = 3;

    /** Share of a leap, in ln, that one reading shows over the one before it where a unit changes. */
    private static final double AT_ONCE = 0.75;

    /** Hours after a leap in which it is decided: storms lift a level for a while, whatever its unit. */
    private static final int OPEN_HOURS = 48;

    /** Largest scatter of an unchanged day seen through another scale, and that over the usual one. */
    private static final double SMALL_SCATTER = 0.12;

    private static final double LARGEST_SCATTER = 0.2;
    private static final double OVER_USUAL = 1.5;

    /** The other quantity, in ln, has not moved. */
    private static final double UNMOVED = 0.25;

    /** Water held up slows it by more than this, in ln, and a velocity that parts so is not alone. */
    private static final double PARTED = 0.5;

    /** Scatter of the days before above which a leap is nothing new: what is held up and let go, pumps. */
    private static final double STEADY = 0.3;

    /** Hours back at home that end the question. */
    private static final int MOST_HOME = 3;

    /** Hours back at home that end a finding; a storm brings a depth in feet home for less than a day. */
    private static final int HOURS_HOME = 24;

    /** What others told of the same readings before their unit was seen. */
    interface Told {
        /** Gives away the finding that began with the readings, if there is one, and forgets what they did. */
        Optional<Track> giveAway(Quantity quantity, long since, long end);
    }

    private final Quantity quantity;
    private final Findings findings;
    private final Told told;
    private final Ring before = new Ring(HOURS_BEFORE, 2);
    private final Ring leapt = new Ring(UnitFactor.MOST_HOURS, 2);
    private Optional<UnitFactor> asked = Optional.empty();
    private Optional<Track> track = Optional.empty();
    private final Ring last = new Ring(2, 1);

    /** Of the last hours: whether all steps between readings are known, 1 or 0, and the largest of them in ln. */
    private final Ring steps = new Ring(LEAP_HOURS + 1, 2);

    private long askedSince;

    /** Whether there was no rain about the leap, so that no storm made it. */
    private boolean leaptDry;

    private int home;

    ReadingUnit(Quantity quantity, Findings findings, Told told) {
        this.quantity = quantity;
        this.findings = findings;
        this.told = told;
    }

    boolean isOpen() {
        return track.map(each -> each.open).orElse(false);
    }

    /** Whether its readings are of another unit, or it will be decided within hours: nothing else need judge them. */
    boolean isSoonSure() {
        return isOpen() || asked.map(UnitFactor::isLarge).orElse(false);
    }

    /** Takes what single readings of an hour, before it is judged, say of steps. */
    void steps(SiteHour hour) {
        steps.add(hour.hour, hour.alone == 0 ? 1 : 0, Math.log(hour.leap));
    }

    void learn(long hour, double x, double other) {
        if (!Double.isNaN(x)) {
            before.add(hour, x, other);
            last.add(hour, x);
        }
    }

    /**
     * Takes an hour.
     *
     * @param x logarithm of the median reading over its usual value; NaN if one is not known
     * @param other the same of the other quantity; NaN if it is not known
     * @param dry whether it is known that no rain fell for some hours
     */
    void hour(long hour, double x, double other, boolean dry) {
        if (Double.isNaN(x)) {
            return;
        }
        if (before.size() < LEAST_BEFORE) {
            before.add(hour, x, other);
            last.add(hour, x);
            return;
        }
        if (isOpen() || asked.isPresent() || mayLeap(hour, x)) {
            judge(hour, x, other, x - Medians.of(before.column(0, 0)), dry);
        } else {
            before.add(hour, x, other);
        }
        last.add(hour, x);
    }

    private void judge(long hour, double x, double other, double away, boolean dry) {
        if (isOpen()) {
            goOn(hour, away);
            return;
        }
        // A storm may have been asked about when the unit changes.
        Optional<UnitFactor> leap = leap(hour, x, away, Double.isNaN(other), dry);
        if (leap.isPresent()
                && (asked.isEmpty()
                        || !leap.orElseThrow().isOfFoot() && Math.abs(away - asked.orElseThrow().ln) > AT_HOME)) {
            asked = leap;
            leapt.clear();
            home = 0;
            askedSince = hour;
            leaptDry = dry;
        }
        if (asked.isPresent()) {
            ask(hour, away, other);
        } else {
            before.add(hour, x, other);
        }
    }

    /** Whether this hour is far from one of the last two, as few are: a quick look. */
    private boolean mayLeap(long hour, double x) {
        for (int i = 0; i < last.size(); i++) {
            if (hour - last.number(i) <= LEAP_HOURS && Math.abs(x - last.value(i, 0)) > UnitFactor.LEAST_LEAP) {
                return true;
            }
        }
        return false;
    }

    /**
     * The factor by which this hour lies above one of the last two, which may have been the hour of the leap itself, and
     * above what is usual: what falls back to usual leaps as well.
     */
    private Optional<UnitFactor> leap(long hour, double x, double away, boolean alone, boolean dry) {
        for (int i = 0; i < last.size(); i++) {
            double by = x - last.value(i, 0);
            UnitFactor factor = UnitFactor.nearest(by);
            if (hour - last.number(i) <= LEAP_HOURS
                    && Math.abs(by - factor.ln) < (factor.isLarge() && dry ? DRY_BAND : factor.band())
                    && isPlace(factor, x, away, dry)
                    && !(alone && isGradual(last.number(i), hour, by))
                    && !(alone && factor.isOfFoot() && Math.abs(away - by) > NEAR_HOME)
                    && (factor.isLarge() && dry || Medians.scatter(before.column(0, 0)) < STEADY)) {
                return Optional.of(factor);
            }
        }
        return Optional.empty();
    }

    /** Whether it is known that no two readings from an hour to another leapt by most of a leap: a unit changes at once. */
    private boolean isGradual(long from, long to, double by) {
        int at = steps.from(from);
        double largest = 0;
        for (int i = at; i < steps.size(); i++) {
            if (steps.value(i, 0) == 0) {
                return false;
            }
            largest = Math.max(largest, steps.value(i, 1));
        }
        return steps.size() - at == to - from + 1 && largest < AT_ONCE * Math.abs(by);
    }

    /** Whether a reading in the unit may lie so far above what is usual, and above the days before: in storms higher. */
    private static boolean isPlace(UnitFactor factor, double x, double away, boolean dry) {
        return factor.isLarge() && dry
                ? factor.isInAnyWeather(x) && factor.isInAnyWeather(away)
                : Math.abs(x - factor.ln) < factor.ofUsual() && Math.abs(away - factor.ln) < AT_HOME;
    }

    private void ask(long hour, double away, double other) {
        UnitFactor factor = asked.orElseThrow();
        home += Math.abs(away) < AT_HOME ? 1 : 0;
        if (home >= MOST_HOME || hour - askedSince > OPEN_HOURS) {
            asked = Optional.empty();
            return;
        }
        if (!(factor.isLarge() && leaptDry
                ? factor.isInAnyWeather(away)
                : Math.abs(away - factor.ln) < factor.band())) {
            return;
        }
        leapt.add(hour, away, other);
        double[] others = Medians.known(leapt.column(0, 1));
        boolean alone = others.length * 2 < leapt.size();
        double moved = alone ? 0 : Medians.of(others) - Medians.of(before.column(0, 1));
        boolean parts =
                quantity == Quantity.DEPTH ? Math.signum(factor.ln) * moved < -PARTED : Math.abs(moved) > PARTED;
        if (parts) {
            asked = Optional.empty();
            return;
        }
        int wanted = factor.hours(alone);
        double[] aways = leapt.column(Math.max(0, leapt.size() - wanted), 0);
        double median = Medians.of(aways);
        boolean exact = Math.abs(median - factor.ln) < factor.exact(leaptDry)
                && (factor.isLarge() || Medians.scatter(aways) < smallScatter(Medians.scatter(before.column(0, 0))));
        if (aways.length == wanted && exact && !(Math.abs(moved) > UNMOVED)) {
            asked = Optional.empty();
            tell(factor, median, (hour + 1) * SiteHour.NANOS);
        }
    }

    /** Largest scatter that is the one of the usual day, of that of the days before. */
    static double smallScatter(double before) {
        return Math.min(LARGEST_SCATTER, Math.max(SMALL_SCATTER, OVER_USUAL * before));
    }

    private void tell(UnitFactor factor, double median, long end) {
        long since = askedSince * SiteHour.NANOS;
        boolean depth = quantity == Quantity.DEPTH;
        home = 0;
        boolean back = track.isPresent() && since - track.orElseThrow().closed <= (long) HOURS_BEFORE * SiteHour.NANOS;
        FindingName name = depth ? FindingName.DEPTH_UNIT : FindingName.VELOCITY_UNIT;
        Optional<Track> renamed = told.giveAway(quantity, since, end);
        if (!back) {
            track = renamed.or(() -> Optional.of(findings.open(name, since, end)));
        }
        Track open = track.orElseThrow();
        open.names = List.of(name);
        if (back) {
            open.comeBack(since);
            renamed.ifPresent(other -> findings.close(other, since, end));
        } else {
            open.earliest = since - SiteHour.NANOS;
            open.latest = since + SiteHour.NANOS;
            open.shape = ChangeShape.STEP;
            open.direction = median > 0 ? Direction.UP : Direction.DOWN;
        }
        open.detail = "unit changed? the " + quantity + " is read about " + Text.significant(Math.exp(median), 3)
                + " times as large as in the days before, from one hour to the next, and else goes on as usual; the factor of"
                + " a unit: " + factor.describe();
        findings.report(
                back
                        ? WatchNotice.Kind.RETURNED
                        : renamed.isPresent() ? WatchNotice.Kind.CHANGED : WatchNotice.Kind.FOUND,
                end,
                open);
    }

    private void goOn(long hour, double away) {
        home = Math.abs(away) < AT_HOME ? home + 1 : 0;
        if (home >= HOURS_HOME) {
            Track open = track.orElseThrow();
            long end = (hour + 1) * SiteHour.NANOS;
            findings.close(open, end - (long) HOURS_HOME * SiteHour.NANOS, end);
        }
    }

    void finish(long end) {
        track.filter(each -> each.open).ifPresent(each -> findings.report(WatchNotice.Kind.STANDING, end, each));
    }

    String write() {
        StateText text = StateText.of("reading-unit", 1)
                .with("asked", asked.map(UnitFactor::name).orElse(""))
                .with("track", track.map(each -> each.write().toString()).orElse(""))
                .with("askedSince", askedSince)
                .with("leaptDry", leaptDry)
                .with("home", home);
        before.write(text, "before");
        leapt.write(text, "leapt");
        last.write(text, "last");
        steps.write(text, "steps");
        return text.toString();
    }

    void read(String state) {
        StateText text = StateText.parse("reading-unit", 1, state);
        String factor = text.text("asked");
        asked = factor.isEmpty() ? Optional.empty() : Optional.of(text.constant("asked", UnitFactor.class));
        String found = text.text("track");
        track = found.isEmpty() ? Optional.empty() : Optional.of(Track.read(found));
        askedSince = text.count("askedSince");
        leaptDry = text.flag("leaptDry");
        home = text.index("home");
        before.read(text, "before");
        leapt.read(text, "leapt");
        last.read(text, "last");
        steps.read(text, "steps");
    }
}
