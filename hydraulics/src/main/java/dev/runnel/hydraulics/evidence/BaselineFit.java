package dev.runnel.hydraulics.evidence;

import dev.runnel.hydraulics.monitoring.PipeMonitor;
import dev.runnel.internal.StateText;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.baseline.DayCurve;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Learns a baseline from one stretch of hours and tests it. */
final class BaselineFit {
    /** Fewest dry hours to learn from, about four days; chosen here. */
    private static final int LEAST_DRY_HOURS = 100;

    /** Least share of the hours with readings; chosen here. */
    private static final double LEAST_COVERAGE = 0.5;

    /** Share of zero velocities above which nothing is learned; chosen here. */
    private static final double MOST_ZEROS = 0.2;

    /** Longest run of equal depths in a stretch to learn from; chosen here. */
    private static final long LONGEST_DEPTH_RUN = Duration.ofHours(16).toNanos();

    /** Longest run of equal velocities there; chosen here. */
    private static final long LONGEST_VELOCITY_RUN = Duration.ofHours(8).toNanos();

    /** Shorter runs of equal depths are never called frozen; chosen here. */
    private static final long LEAST_DEPTH_LIMIT = Duration.ofHours(6).toNanos();

    /** Shorter runs of equal velocities are never called frozen; chosen here. */
    private static final long LEAST_VELOCITY_LIMIT = Duration.ofHours(3).toNanos();

    /** Above this scatter of an hour velocity is no function of depth. */
    private static final double LARGEST_SCATTER = 0.25;

    /** Share of the variance the course of the day must explain to tell the clock by; chosen here. */
    private static final double CLOCK_EXPLAINED = 0.3;

    /** Scales of a tidal site are larger by this, spring and neap not having been seen; chosen here. */
    private static final double TIDAL_SCALE = 1.5;

    /** Scatter of the velocities of an hour below which the echo is steady; chosen here. */
    private static final double STEADY_ECHO = 0.05;
    /** Share of bad velocities that a sound sensor may have beyond its usual one. */
    private static final double LEAST_EXCESS = 0.1;

    /** Usual ln of highest over lowest depth of an hour above which water is pumped; chosen here. */
    private static final double PUMPED_SPREAD = 0.25;

    /** Velocities of 24 hours from which shares of them say something; chosen here. */
    private static final int LEAST_READINGS = 12;

    private final PipeMonitor monitor;
    private final LearningHours all;
    private final Interval stretch;
    private final ZoneId zone;
    private final Set<DayOfWeek> restDays;
    private final Set<LocalDate> holidays;
    private final List<String> reasons = new ArrayList<>();
    private final List<String> notes = new ArrayList<>();
    private final int from;
    private final int size;
    private boolean lacksDryHours;
    private long goOn = Long.MIN_VALUE;
    private final Optional<SiteBaseline> baseline;

    BaselineFit(
            PipeMonitor monitor,
            LearningHours all,
            Interval stretch,
            ZoneId zone,
            Set<DayOfWeek> restDays,
            Set<LocalDate> holidays) {
        this.monitor = monitor;
        this.all = all;
        this.stretch = stretch;
        this.zone = zone;
        this.restDays = restDays;
        this.holidays = holidays;
        this.from = all.from(Math.floorDiv(stretch.start().getEpochSecond() + 3599, 3600L));
        this.size = Math.max(0, all.from(Math.floorDiv(stretch.end().getEpochSecond(), 3600L)) - from);
        this.baseline = fit();
    }

    Optional<SiteBaseline> baseline() {
        return baseline;
    }

    List<String> reasons() {
        return reasons;
    }

    boolean lacksDryHours() {
        return lacksDryHours;
    }

    Interval stretch() {
        return stretch;
    }

    /** Hour at which the search should go on behind a step, or long ago. */
    long goOnAt() {
        return goOn;
    }

    private SiteHour hour(int i) {
        return all.hour(from + i);
    }

    private Optional<SiteBaseline> fit() {
        long[] hours = new long[size];
        double[] lnDepth = new double[size];
        double[] lnVelocity = new double[size];
        boolean[] dry = new boolean[size];
        boolean[] longDry = new boolean[size];
        int seen = 0;
        int seenDry = 0;
        int both = 0;
        boolean rain = false;
        for (int i = 0; i < size; i++) {
            SiteHour each = hour(i);
            hours[i] = each.hour;
            lnDepth[i] = each.lnDepth;
            lnVelocity[i] = each.lnVelocity;
            dry[i] = all.isDry(from + i);
            longDry[i] = all.isLongDry(from + i);
            seen += each.hasDepth() ? 1 : 0;
            seenDry += each.hasDepth() && dry[i] ? 1 : 0;
            both += each.hasBoth() ? 1 : 0;
            rain |= !Double.isNaN(each.rain);
        }
        if (seen < LEAST_COVERAGE * stretch.hours()) {
            reasons.add(
                    "depth in " + seen + " of " + Text.fixed(stretch.hours(), 0) + " hours, half of them are needed");
            return Optional.empty();
        }
        if (seenDry < LEAST_DRY_HOURS) {
            lacksDryHours = true;
            reasons.add(seenDry + " dry hours, " + LEAST_DRY_HOURS + " are needed");
            return Optional.empty();
        }
        long depthRun = 0;
        long velocityRun = 0;
        for (int i = 0; i < size; i++) {
            depthRun = Math.max(depthRun, hour(i).depthRun);
            velocityRun = Math.max(velocityRun, hour(i).velocityRun);
        }
        if (depthRun > LONGEST_DEPTH_RUN) {
            reasons.add("the depth repeated one value for " + inHours(depthRun) + " h");
        }
        if (velocityRun > LONGEST_VELOCITY_RUN) {
            reasons.add("the velocity repeated one value for " + inHours(velocityRun) + " h");
        }
        Echo echo = new Echo();
        if (echo.zeroShare > MOST_ZEROS) {
            reasons.add(
                    "the velocity was 0 under water in " + Text.fixed(100 * echo.zeroShare, 0) + " % of the readings");
        }
        boolean moving = both >= UsualVelocity.leastHours();
        if (!moving && both > 0) {
            notes.add("velocity in only " + both + " hours: it is not watched");
        }
        LocalHours local = new LocalHours(zone, restDays, holidays);
        DayCurve depth = curve(local, hours, lnDepth, dry);
        double[] lnFlow = new double[size];
        double[] r = nan();
        Optional<UsualVelocity> law = Optional.empty();
        if (moving) {
            law = Optional.of(
                    UsualVelocity.learn(pick(lnDepth, lnDepth, lnVelocity), pick(lnVelocity, lnDepth, lnVelocity)));
            for (int i = 0; i < size; i++) {
                boolean known = hour(i).hasBoth();
                r[i] = known ? lnVelocity[i] - law.orElseThrow().lnVelocity(lnDepth[i]) : Double.NaN;
                lnFlow[i] = known ? lnVelocity[i] + Math.log(monitor.flowArea(Math.exp(lnDepth[i]))) : Double.NaN;
            }
            if (law.orElseThrow().scatter() > LARGEST_SCATTER) {
                notes.add("velocity does not follow depth here (hours scatter by "
                        + Text.fixed(100 * law.orElseThrow().scatter(), 0) + " %): it is not watched");
                moving = false;
                law = Optional.empty();
                r = nan();
            }
        }
        double[] d = residuals(local, depth, hours, lnDepth, dry);
        boolean tidal = Tide.isTidal(hours, d);
        double[] u = nan();
        double[] q = nan();
        Optional<DayCurve> velocity = Optional.empty();
        Optional<DayCurve> flow = Optional.empty();
        if (moving && count(lnVelocity, dry) >= LEAST_DRY_HOURS / 2) {
            DayCurve fitted = curve(local, hours, lnVelocity, dry);
            velocity = Optional.of(fitted);
            u = residuals(local, fitted, hours, lnVelocity, dry);
            boolean[] flowDry = count(lnFlow, longDry) >= LEAST_DRY_HOURS / 2 ? longDry : dry;
            DayCurve fittedFlow = curve(local, hours, lnFlow, flowDry);
            flow = Optional.of(fittedFlow);
            q = residuals(local, fittedFlow, hours, lnFlow, flowDry);
        }
        stability(hours, r, d, u, moving, tidal);
        if (!reasons.isEmpty()) {
            return Optional.empty();
        }
        double[] centre = {0, 0, 0, 0};
        double[] scale = {0, 0, 0, 0};
        double[][] residuals = {r, d, u, q};
        for (Quantity quantity : Quantity.values()) {
            int at = quantity.ordinal();
            boolean watched = quantity == Quantity.DEPTH
                    ? !(tidal && moving)
                    : moving && (quantity == Quantity.VELOCITY_AT_DEPTH || !tidal && velocity.isPresent());
            if (watched) {
                BlockScale learned = BlockScale.learn(quantity, hours, residuals[at]);
                centre[at] = learned.centre;
                scale[at] = learned.scale * (tidal ? TIDAL_SCALE : 1);
            }
        }
        double middle = Medians.of(pick(lnDepth, dry));
        ClockUsual clock = clock(local, depth, hours, lnDepth);
        StateText text = StateText.of(SiteBaseline.NAME, SiteBaseline.VERSION)
                .with("monitor", monitor.toString())
                .with("zone", zone.getId())
                .with(
                        "restDays",
                        restDays.stream().sorted().map(DayOfWeek::name).toList())
                .with(
                        "holidays",
                        holidays.stream().sorted().map(LocalDate::toString).toList())
                .with("from", stretch.start().toString())
                .with("to", stretch.end().toString())
                .with("hours", seen)
                .with("dryHours", seenDry)
                .with("rain", rain)
                .with("depth", depth.toText());
        law.ifPresent(found -> text.with("law", found.toText()));
        velocity.ifPresent(found -> text.with("velocity", found.toText()));
        flow.ifPresent(found -> text.with("flow", found.toText()));
        text.with("kappa", kappa(Math.exp(middle)))
                .with("centre", centre)
                .with("scale", scale)
                .with("covariance", covariance(d, u))
                .with("depthFrozen", Math.max(LEAST_DEPTH_LIMIT, 2 * depthRun))
                .with("velocityFrozen", Math.max(LEAST_VELOCITY_LIMIT, 2 * velocityRun))
                .with("narrowEcho", echo.narrow)
                .with("zeroLimit", echo.zeroLimit)
                .with("echoLimit", echo.echoLimit)
                .with("flipLimit", echo.flipLimit)
                .with("upstreamHours", upstreamHours())
                .with("clockCentre", clock.centres())
                .with("clockScatter", clock.scatters())
                .with("tidal", tidal)
                .with("pumped", pumped(dry))
                .with("clock", !tidal && depth.explained() >= CLOCK_EXPLAINED)
                .with("peak", peak(local, hours, lnDepth, dry))
                .with("stormLags", stormLags(local, depth))
                .with("notes", notes);
        return Optional.of(SiteBaseline.of(monitor, text));
    }

    private static String inHours(long nanos) {
        return Text.fixed(nanos / 3.6e12, 1);
    }

    private double[] nan() {
        double[] values = new double[size];
        Arrays.fill(values, Double.NaN);
        return values;
    }

    /** Elasticity of the flow area, d ln A / d ln y. */
    private double kappa(double level) {
        double step = 1e-3;
        double above = monitor.flowArea(level * (1 + step));
        double below = monitor.flowArea(level * (1 - step));
        return below > 0 ? Math.log(above / below) / Math.log((1 + step) / (1 - step)) : 1;
    }

    private static int count(double[] values, boolean[] where) {
        int count = 0;
        for (int i = 0; i < values.length; i++) {
            count += where[i] && !Double.isNaN(values[i]) ? 1 : 0;
        }
        return count;
    }

    private static double[] pick(double[] values, boolean[] where) {
        double[] picked = new double[values.length];
        int used = 0;
        for (int i = 0; i < values.length; i++) {
            if (where[i] && !Double.isNaN(values[i])) {
                picked[used++] = values[i];
            }
        }
        return Arrays.copyOf(picked, used);
    }

    /** The values where both of two others are known. */
    private static double[] pick(double[] values, double[] one, double[] other) {
        boolean[] where = new boolean[values.length];
        for (int i = 0; i < values.length; i++) {
            where[i] = !Double.isNaN(one[i]) && !Double.isNaN(other[i]);
        }
        return pick(values, where);
    }

    private DayCurve curve(LocalHours local, long[] hours, double[] values, boolean[] where) {
        int count = count(values, where);
        double[] hourOfDay = new double[count];
        boolean[] rest = new boolean[count];
        int used = 0;
        for (int i = 0; i < size; i++) {
            if (where[i] && !Double.isNaN(values[i])) {
                hourOfDay[used] = local.hourOfDay(hours[i]);
                rest[used++] = local.isRest(hours[i]);
            }
        }
        return DayCurve.fit(hourOfDay, rest, pick(values, where));
    }

    private double[] residuals(LocalHours local, DayCurve curve, long[] hours, double[] values, boolean[] where) {
        double[] residuals = nan();
        for (int i = 0; i < size; i++) {
            if (where[i]) {
                residuals[i] = values[i] - curve.value(local.hourOfDay(hours[i]), local.isRest(hours[i]));
            }
        }
        return residuals;
    }

    private static double[] covariance(double[] d, double[] u) {
        double dd = 0;
        double du = 0;
        double uu = 0;
        int count = 0;
        for (int i = 0; i < d.length; i++) {
            if (!Double.isNaN(d[i]) && !Double.isNaN(u[i])) {
                dd += d[i] * d[i];
                du += d[i] * u[i];
                uu += u[i] * u[i];
                count++;
            }
        }
        return count == 0 ? new double[] {0, 0, 0} : new double[] {dd / count, du / count, uu / count};
    }

    /** Median over the dry days of the highest hourly level, m. */
    private double peak(LocalHours local, long[] hours, double[] lnDepth, boolean[] dry) {
        List<Double> peaks = new ArrayList<>();
        long day = Long.MIN_VALUE;
        double highest = Double.NaN;
        int count = 0;
        for (int i = 0; i <= size; i++) {
            long next = i < size ? local.day(hours[i]) : Long.MAX_VALUE;
            if (next != day) {
                if (count >= ClockWatch.LEAST_HOURS) {
                    peaks.add(highest);
                }
                day = next;
                count = 0;
                highest = Double.NEGATIVE_INFINITY;
            }
            if (i < size && dry[i] && !Double.isNaN(lnDepth[i])) {
                highest = Math.max(highest, lnDepth[i]);
                count++;
            }
        }
        if (peaks.isEmpty()) {
            double[] sorted = pick(lnDepth, dry);
            Arrays.sort(sorted);
            return Math.exp(Medians.quantile(sorted, 0.95));
        }
        return Math.exp(
                Medians.of(peaks.stream().mapToDouble(Double::doubleValue).toArray()));
    }

    /** The most hours of upstream velocity in a day. */
    private int upstreamHours() {
        int most = 0;
        long day = Long.MIN_VALUE;
        int count = 0;
        for (int i = 0; i < size; i++) {
            long next = Math.floorDiv(hour(i).hour, 24L);
            count = next == day ? count : 0;
            day = next;
            count += Double.isNaN(hour(i).upstream) ? 0 : 1;
            most = Math.max(most, count);
        }
        return most;
    }

    /** Where the phases of single dry days lie, and their scatter. */
    private ClockUsual clock(LocalHours local, DayCurve depth, long[] hours, double[] lnDepth) {
        ClockWatch clock = new ClockWatch(depth, ClockUsual.unknown());
        ClockUsual.Learner learner = new ClockUsual.Learner();
        long day = Long.MIN_VALUE;
        for (int i = 0; i < size; i++) {
            long next = local.day(hours[i]);
            boolean rest = i > 0 && local.isRest(hours[i - 1]);
            if (next != day && i > 0 && clock.endDay(day, rest)) {
                learner.add(rest, clock.shift(0));
            }
            day = next;
            if (all.isNearlyDry(from + i) && !Double.isNaN(lnDepth[i])) {
                clock.add(local.hourOfDay(hours[i]), lnDepth[i]);
            }
        }
        return learner.usual();
    }

    /** Lags of the depth behind the rain of the storms in the stretch, h. */
    private double[] stormLags(LocalHours local, DayCurve depth) {
        StormLags storms = new StormLags();
        List<Double> lags = new ArrayList<>();
        for (int i = 0; i < size; i++) {
            SiteHour each = hour(i);
            double usual = depth.value(local.hourOfDay(each.hour), local.isRest(each.hour));
            storms.add(each.hour, each.rain, each.lnDepth - usual).ifPresent(lags::add);
        }
        return lags.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private boolean pumped(boolean[] dry) {
        double[] spreads = nan();
        for (int i = 0; i < size; i++) {
            spreads[i] = dry[i] && hour(i).hasDepth() ? hour(i).depthSpread : Double.NaN;
        }
        return Medians.of(spreads) > PUMPED_SPREAD;
    }

    private void stability(long[] hours, double[] r, double[] d, double[] u, boolean moving, boolean tidal) {
        if (moving) {
            StabilityTest.of("velocity at the same depth", hours, r, 12, 0.12).ifPresent(this::refuse);
            StabilityTest depth = new StabilityTest("depth", hours, d, 6, 0.18);
            StabilityTest velocity = new StabilityTest("velocity", hours, u, 6, 0.18);
            if (depth.failure().isPresent() && velocity.failure().isPresent()) {
                notes.add("the flow wandered within the baseline: "
                        + depth.failure().orElseThrow().words());
            }
        } else if (!tidal) {
            StabilityTest.of("dry depth", hours, d, 6, 0.20).ifPresent(this::refuse);
        }
    }

    private void refuse(StabilityTest.Failure failure) {
        reasons.add(failure.words());
        failure.step().ifPresent(step -> goOn = Math.max(goOn, step));
    }

    /** Shares of velocities that are 0, far below their hour, or of the wrong sign. */
    private final class Echo {
        final boolean narrow;
        final double zeroShare;
        final double zeroLimit;
        final double echoLimit;
        final double flipLimit;

        Echo() {
            double[] scatters = nan();
            for (int i = 0; i < size; i++) {
                scatters[i] = hour(i).velocityScatter;
            }
            narrow = Medians.of(scatters) < STEADY_ECHO;
            double[] zeros = new double[size];
            double[] lows = new double[size];
            double[] flips = new double[size];
            int used = 0;
            long looked = 0;
            long zero = 0;
            for (int at = 0; at < size; ) {
                long day = Math.floorDiv(hour(at).hour, 24L);
                int n = 0;
                int z = 0;
                int low = 0;
                int flip = 0;
                for (; at < size && Math.floorDiv(hour(at).hour, 24L) == day; at++) {
                    SiteHour each = hour(at);
                    n += each.looked;
                    z += each.zeros;
                    low += narrow ? each.lowNarrow : each.lowWide;
                    flip += each.flips;
                }
                looked += n;
                zero += z;
                if (n >= LEAST_READINGS) {
                    zeros[used] = (double) z / n;
                    lows[used] = (double) low / n;
                    flips[used++] = (double) flip / n;
                }
            }
            zeroShare = looked == 0 ? 0 : (double) zero / looked;
            zeroLimit = limit(Arrays.copyOf(zeros, used));
            echoLimit = limit(Arrays.copyOf(lows, used));
            flipLimit = limit(Arrays.copyOf(flips, used));
        }

        private double limit(double[] shares) {
            if (shares.length < 2) {
                return 2 * LEAST_EXCESS;
            }
            return Arrays.stream(shares).average().orElseThrow()
                    + LEAST_EXCESS
                    + 4 * Math.sqrt(Medians.variance(shares));
        }
    }
}
