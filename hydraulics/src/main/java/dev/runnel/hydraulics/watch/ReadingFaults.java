package dev.runnel.hydraulics.watch;

import dev.runnel.internal.StateText;
import dev.runnel.internal.Text;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * The watch of single readings: frozen sensors, velocities of 0 or doubled, weak and false echoes, wrong signs, reverse flow, contradictions and
 * readings out of range, by their shares of the last 24 hours. Hourly medians cannot see most of these.
 */
final class ReadingFaults {
    private static final int HOURS = 24;

    private static final int VERSION = 4;

    /** Fewest readings that say something; chosen here, as are all limits of this class. */
    private static final int LEAST_READINGS = 12;

    /** Fewest hours with readings that say something. */
    private static final int LEAST_HOURS = 6;

    /** The same of depths that stand alone: in shallow water at night there are more of them than in the mean of the day. */
    private static final int MOST_OF_DAY = 18;

    /** Hours beyond the usual count that are a fault. */
    private static final int BAD_HOURS = 3;

    /** Velocities that stray upwards must be so many times those that stray downwards: else they scatter. */
    private static final int MORE_HIGH = 2;

    /** Hours of the 24 that have one: what strays in fewer is a storm. */
    private static final int STRAY_HOURS = 4;

    /**
     * Hours in a row that the share of a day must be beyond its limit, for it moves little from one hour to the next; and
     * how far beyond the limit it is told at once.
     */
    private static final int HOURS_BEYOND = 6;

    private static final double FAR_BEYOND = 1.25;

    /** A fault that comes back within this time is the same, whatever it then looks like. */
    private static final long RETURN = 5 * Track.DAY;

    /** Distance of ln |v| from the usual within which a velocity of the wrong sign is the usual one. */
    private static final double SAME_SPEED = 0.35;

    /** Depth and velocity that froze within this time froze together. */
    private static final long TOGETHER = 3 * SiteHour.NANOS;

    /** Kinds that are followed, each with a finding of its own. */
    private enum Kind {
        DEPTH_FROZEN,
        VELOCITY_FROZEN,
        ZEROS,
        ECHO,
        FLIPS,
        UPSTREAM,
        WITHOUT_WATER,
        OUT_OF_RANGE,
        LONE,
        STRAY;

        private static final int COUNT = values().length;
    }

    private final SiteBaseline baseline;
    private final Findings findings;
    private final List<Optional<Track>> tracks = new ArrayList<>();
    private final long[] lastSeen = new long[Kind.COUNT];

    /** When what stands now began: the finding itself may have gone and come back since it began. */
    private final long[] standsFrom = new long[Kind.COUNT];

    private final long[] beyond = new long[Kind.COUNT];
    // Readings looked at, zeros, lows, flips, hour upstream, hour without water, hour out of range, upstream speed by
    // law.
    private final Ring hours = new Ring(HOURS, 8);

    /** Depths held against their neighbours, depths alone. */
    private final Ring depths = new Ring(HOURS, 2);

    /** Velocities held against those before, velocities far above them, and far below. */
    private final Ring strays = new Ring(HOURS, 3);

    /** Sums of all columns but the last over the hours kept. */
    private final double[] sums = new double[7];

    ReadingFaults(SiteBaseline baseline, Findings findings) {
        this.baseline = baseline;
        this.findings = findings;
        for (int i = 0; i < Kind.COUNT; i++) {
            tracks.add(Optional.empty());
        }
    }

    /** Gives away the open finding of depths that cannot be, if there is one that began at about a time. */
    Optional<Track> giveImpossibleDepths(long since) {
        for (Kind kind : new Kind[] {Kind.WITHOUT_WATER, Kind.OUT_OF_RANGE}) {
            Optional<Track> track = tracks.get(kind.ordinal());
            if (isOpen(kind) && Math.abs(track.orElseThrow().since - since) <= TOGETHER) {
                tracks.set(kind.ordinal(), Optional.empty());
                // What these hours hold has been told by now.
                hours.clear();
                return track;
            }
        }
        return Optional.empty();
    }

    /** Whether a finding about velocities is open, which explains what the medians of velocity do. */
    boolean explainsVelocity() {
        return isOpen(Kind.ZEROS) || isOpen(Kind.ECHO) || isOpen(Kind.UPSTREAM) || isOpen(Kind.STRAY);
    }

    /** Whether a finding is open of which the depth may rise and fall with no rain: false echoes, and water that comes up the sewer. */
    boolean movesDepth() {
        return isOpen(Kind.LONE)
                || isOpen(Kind.UPSTREAM)
                        && tracks.get(Kind.UPSTREAM.ordinal())
                                .orElseThrow()
                                .names
                                .contains(FindingName.REVERSE_FLOW);
    }

    private boolean isOpen(Kind kind) {
        Optional<Track> track = tracks.get(kind.ordinal());
        return track.isPresent() && track.orElseThrow().open;
    }

    /**
     * Takes an hour.
     *
     * @param low whether a finding is open that explains low velocities
     * @param shallow whether one is open that explains depths of next to nothing
     */
    void hour(SiteHour hour, boolean low, boolean shallow) {
        long end = (hour.hour + 1) * SiteHour.NANOS;
        frozen(Kind.DEPTH_FROZEN, hour.depthRun, hour.depthRunFrom, baseline.sensor.depthFrozen(), end);
        frozen(Kind.VELOCITY_FROZEN, hour.velocityRun, hour.velocityRunFrom, baseline.sensor.velocityFrozen(), end);
        double upstream = Double.isNaN(hour.upstream) ? 0 : 1;
        double speed = Double.NaN;
        if (upstream > 0 && hour.hasDepth() && baseline.usualVelocity().isPresent()) {
            speed = Math.log(hour.upstream)
                    - baseline.usualVelocity().orElseThrow().lnVelocity(hour.lnDepth);
        }
        hours.add(
                hour.hour,
                hour.looked,
                hour.zeros,
                baseline.sensor.narrowEcho() ? hour.lowNarrow : hour.lowWide,
                hour.flips,
                upstream,
                2 * hour.withoutWater >= hour.readings ? 1 : 0,
                2 * hour.outOfRange >= hour.readings ? 1 : 0,
                speed);
        depths.add(hour.hour, hour.compared, hour.lone);
        depths.dropBefore(hour.hour - HOURS + 1);
        strays.add(hour.hour, hour.held, hour.strayHigh, hour.strayLow);
        strays.dropBefore(hour.hour - HOURS + 1);
        hours.dropBefore(hour.hour - HOURS + 1);
        addUp();
        boolean velocity = baseline.watches(Quantity.VELOCITY_AT_DEPTH) && enough(hours, LEAST_HOURS);
        // Behind pumps a stroke may be one reading long.
        share(
                Kind.LONE,
                enough(depths, MOST_OF_DAY) && !baseline.swings,
                1,
                baseline.sensor.loneLimit(),
                end,
                "far from the ones before and after");
        share(Kind.ZEROS, velocity && !low, 1, baseline.sensor.zeroLimit(), end, "0 under water");
        boolean upwards = hoursWith(strays, 1) >= STRAY_HOURS && sum(strays, 1) >= MORE_HIGH * sum(strays, 2);
        share(
                Kind.STRAY,
                baseline.watches(Quantity.VELOCITY_AT_DEPTH)
                        && !low
                        && enough(strays, MOST_OF_DAY)
                        && upwards
                        && !baseline.swings,
                1,
                baseline.sensor.strayLimit(),
                end,
                "far above the ones before");
        share(
                Kind.ECHO,
                velocity && !low && !areBesideHigh(upwards),
                2,
                baseline.sensor.echoLimit(),
                end,
                "far below the others of their hour");
        share(Kind.FLIPS, velocity && !isOpen(Kind.UPSTREAM), 3, baseline.sensor.flipLimit(), end, "of the wrong sign");
        // Flips of a coarse record make single hours look upstream.
        boolean inARow = !isOpen(Kind.FLIPS) && lastHours(4, BAD_HOURS) == BAD_HOURS;
        bad(
                Kind.UPSTREAM,
                baseline.watches(Quantity.VELOCITY_AT_DEPTH) && (inARow || isOpen(Kind.UPSTREAM)),
                4,
                baseline.sensor.upstreamHours(),
                end,
                "hours of upstream velocity");
        bad(Kind.WITHOUT_WATER, !shallow, 5, 0, end, "hours of velocity without water");
        // A depth of next to nothing below water that moves is told as that.
        bad(
                Kind.OUT_OF_RANGE,
                !shallow && !isOpen(Kind.WITHOUT_WATER),
                6,
                0,
                end,
                "hours of depths out of range or next to nothing");
        for (Kind kind : Kind.values()) {
            close(kind, end);
        }
    }

    /** Beside velocities that are doubled the true ones are low. */
    private boolean areBesideHigh(boolean upwards) {
        return isOpen(Kind.STRAY)
                ? sum(strays, 2) <= sum(strays, 1)
                : upwards && sum(strays, 1) > baseline.sensor.strayLimit() * sum(strays, 0);
    }

    private void addUp() {
        Arrays.fill(sums, 0);
        for (int i = 0; i < hours.size(); i++) {
            for (int c = 0; c < sums.length; c++) {
                sums[c] += hours.value(i, c);
            }
        }
    }

    /** Whether readings enough were looked at, in hours enough. */
    private static boolean enough(Ring hours, int least) {
        return sum(hours, 0) >= LEAST_READINGS && hoursWith(hours, 0) >= least;
    }

    /** How many hours have some of a column. */
    private static int hoursWith(Ring hours, int column) {
        int count = 0;
        for (int i = 0; i < hours.size(); i++) {
            count += hours.value(i, column) > 0 ? 1 : 0;
        }
        return count;
    }

    private static double sum(Ring hours, int column) {
        double sum = 0;
        for (int i = 0; i < hours.size(); i++) {
            sum += hours.value(i, column);
        }
        return sum;
    }

    /** Sum of a column over the last hours. */
    private double lastHours(int column, int count) {
        double sum = 0;
        for (int i = Math.max(0, hours.size() - count); i < hours.size(); i++) {
            sum += hours.value(i, column);
        }
        return sum;
    }

    private void frozen(Kind kind, long run, long from, long limit, long end) {
        if (run <= limit) {
            return;
        }
        boolean depth = kind == Kind.DEPTH_FROZEN;
        Kind other = depth ? Kind.VELOCITY_FROZEN : Kind.DEPTH_FROZEN;
        if (!isOpen(kind) && isOpen(other) && Math.abs(standsFrom[other.ordinal()] - from) <= TOGETHER) {
            both(other, run, end);
            return;
        }
        seen(
                kind,
                depth ? FindingName.FROZEN_DEPTH : FindingName.FROZEN_VELOCITY,
                from,
                from,
                end,
                (depth ? "the depth" : "the velocity") + " repeated one value for " + Text.fixed(run / 3.6e12, 1)
                        + " h; up to " + Text.fixed(limit / 3.6e12, 1) + " h are usual here");
    }

    /** Depth and velocity that freeze together are one finding, of the logger. */
    private void both(Kind first, long run, long end) {
        Track track = tracks.get(first.ordinal()).orElseThrow();
        lastSeen[first.ordinal()] = end;
        track.detail = "the depth and the velocity repeated one value each, together for " + Text.fixed(run / 3.6e12, 1)
                + " h";
        if (!track.names.contains(FindingName.FROZEN_LOGGER)) {
            track.names = List.of(FindingName.FROZEN_LOGGER);
            findings.report(WatchNotice.Kind.CHANGED, end, track);
        }
    }

    private void share(Kind kind, boolean test, int column, double limit, long end, String what) {
        if (!test) {
            beyond[kind.ordinal()] = 0;
            return;
        }
        Ring ring = kind == Kind.LONE ? depths : kind == Kind.STRAY ? strays : hours;
        double share = sum(ring, column) / sum(ring, 0);
        int at = kind.ordinal();
        beyond[at] = share > limit ? beyond[at] + 1 : 0;
        // A clock that is mended, or a storm, makes velocities stray for an hour or two.
        boolean farBeyond = kind != Kind.STRAY && share > FAR_BEYOND * limit;
        if (!(beyond[at] >= HOURS_BEYOND || farBeyond)) {
            return;
        }
        long first = (ring.number(firstWith(ring, column)) * SiteHour.NANOS);
        FindingName name = switch (kind) {
            case ZEROS -> FindingName.VELOCITY_ZEROS;
            case ECHO -> FindingName.WEAK_ECHO;
            case LONE -> FindingName.FALSE_ECHO;
            case STRAY -> FindingName.FALSE_VELOCITY;
            default -> FindingName.SIGN_FLIPS;
        };
        seen(kind, name, first, end - HOURS * SiteHour.NANOS, end, shares(share, ring == depths, what, limit));
    }

    private static String shares(double share, boolean ofDepths, String what, double limit) {
        return Text.fixed(100 * share, 0) + " % of the " + (ofDepths ? "depths" : "velocities") + " of 24 hours were "
                + what + "; up to " + Text.fixed(100 * limit, 0) + " % are usual here";
    }

    /** The first of the hours that has one of what a sum above 0 counts. */
    private static int firstWith(Ring hours, int column) {
        int at = 0;
        while (hours.value(at, column) == 0) {
            at++;
        }
        return at;
    }

    private void bad(Kind kind, boolean test, int column, double usual, long end, String what) {
        double count = sums[column];
        if (!test || count < usual + BAD_HOURS) {
            return;
        }
        long first = hours.number(firstWith(hours, column)) * SiteHour.NANOS;
        FindingName name = switch (kind) {
            case UPSTREAM ->
                Math.abs(Medians.of(hours.column(0, 7))) < SAME_SPEED
                        ? FindingName.REVERSED_SIGN
                        : FindingName.REVERSE_FLOW;
            case WITHOUT_WATER -> FindingName.CONTRADICTORY;
            default -> FindingName.OUT_OF_RANGE;
        };
        seen(kind, name, first, first - SiteHour.NANOS, end, Text.fixed(count, 0) + " " + what + " in 24 hours");
    }

    private void seen(Kind kind, FindingName name, long since, long earliest, long end, String detail) {
        int at = kind.ordinal();
        if (!isOpen(kind)) {
            takeLogger(kind, name, since);
        }
        Optional<Track> old = tracks.get(at);
        boolean back = old.map(last -> isBack(last, name, since)).orElse(false);
        lastSeen[at] = end;
        if (isOpen(kind) || back) {
            Track track = old.orElseThrow();
            if (back || !track.names.contains(FindingName.FROZEN_LOGGER)) {
                track.detail = detail;
            }
            if (back) {
                track.comeBack(since);
                // A logger that repeated both once does so again, whichever of the two is told first.
                track.names = track.names.contains(FindingName.FROZEN_LOGGER) ? track.names : List.of(name);
                standsFrom[at] = since;
                findings.report(WatchNotice.Kind.RETURNED, end, track);
            }
            return;
        }
        Track track = findings.open(name, since, end);
        track.earliest = Math.min(earliest, since);
        track.latest = since + SiteHour.NANOS;
        track.shape = ChangeShape.STEP;
        track.detail = detail;
        standsFrom[at] = since;
        tracks.set(at, Optional.of(track));
        findings.report(WatchNotice.Kind.FOUND, end, track);
    }

    private static boolean isBack(Track last, FindingName name, long since) {
        return !last.open && since - last.closed <= RETURN
                || last.isBack(name, since)
                || last.isBack(FindingName.FROZEN_LOGGER, since);
    }

    /** A logger that repeats both is one finding, whichever of the two is told first the next time. */
    private void takeLogger(Kind kind, FindingName name, long since) {
        if (kind != Kind.DEPTH_FROZEN && kind != Kind.VELOCITY_FROZEN) {
            return;
        }
        int own = kind.ordinal();
        int other = (kind == Kind.DEPTH_FROZEN ? Kind.VELOCITY_FROZEN : Kind.DEPTH_FROZEN).ordinal();
        boolean isOwn = tracks.get(own).map(last -> isBack(last, name, since)).orElse(false);
        Optional<Track> logger = tracks.get(other).filter(last -> last.isBack(FindingName.FROZEN_LOGGER, since));
        if (!isOwn && logger.isPresent()) {
            tracks.set(own, logger);
            tracks.set(other, Optional.empty());
        }
    }

    private void close(Kind kind, long end) {
        int at = kind.ordinal();
        boolean frozen = kind == Kind.DEPTH_FROZEN || kind == Kind.VELOCITY_FROZEN;
        long quiet = (frozen ? 6 : HOURS) * SiteHour.NANOS;
        if (isOpen(kind) && end - lastSeen[at] >= quiet) {
            Track track = tracks.get(at).orElseThrow();
            track.open = false;
            track.closed = lastSeen[at];
            findings.report(WatchNotice.Kind.CLOSED, end, track);
        }
    }

    void finish(long end) {
        tracks.forEach(track -> track.filter(each -> each.open)
                .ifPresent(each -> findings.report(WatchNotice.Kind.STANDING, end, each)));
    }

    StateText write() {
        StateText text = StateText.of("reading-faults", VERSION)
                .with("lastSeen", lastSeen)
                .with("standsFrom", standsFrom)
                .with("beyond", beyond)
                .with(
                        "tracks",
                        tracks.stream()
                                .map(track -> track.map(each -> each.write().toString())
                                        .orElse(""))
                                .toList());
        hours.write(text, "hours");
        depths.write(text, "depths");
        strays.write(text, "strays");
        return text;
    }

    void read(String state) {
        StateText text = StateText.parse("reading-faults", VERSION, state);
        long[] seen = text.counts("lastSeen", lastSeen.length);
        System.arraycopy(seen, 0, lastSeen, 0, lastSeen.length);
        System.arraycopy(text.counts("standsFrom", standsFrom.length), 0, standsFrom, 0, standsFrom.length);
        System.arraycopy(text.counts("beyond", beyond.length), 0, beyond, 0, beyond.length);
        List<String> found = text.list("tracks");
        for (int i = 0; i < Kind.COUNT; i++) {
            tracks.set(i, found.get(i).isEmpty() ? Optional.empty() : Optional.of(Track.read(found.get(i))));
        }
        hours.read(text, "hours");
        depths.read(text, "depths");
        strays.read(text, "strays");
    }
}
