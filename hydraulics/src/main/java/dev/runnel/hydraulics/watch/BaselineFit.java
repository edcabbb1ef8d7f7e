package dev.runnel.hydraulics.watch;

import dev.runnel.hydraulics.monitoring.MonitorHistory;
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
    static final int LEAST_DRY_HOURS = 100;

    /** The same of what came before a step, which is too little to look for more; chosen here. */
    static final int LEAST_DRY_HOURS_BEFORE_STEP = 50;

    /**
     * Change of the velocity at its depth, against that of the dry depth and beyond so many standard errors, by which a step of the depth is
     * a sensor that was moved or water that is held up, and no other flow; chosen here.
     */
    private static final double LEAST_CHANGE_BESIDE_DEPTH = 0.04;

    private static final double BESIDE_DEPTH_STATISTIC = 3;

    /** Rise of the velocity, beside one of the velocity at its depth, by which a step is the end of a fault; chosen here. */
    private static final double LEAST_CHANGE_OF_RELEASE = 0.06;

    /** Least share of the hours with readings; chosen here. */
    private static final double LEAST_COVERAGE = 0.5;

    /** Share of zero velocities above which nothing is learned; chosen here. */
    private static final double MOST_ZEROS = 0.2;

    /** Longest run of equal depths in a stretch to learn from; chosen here. */
    private static final long LONGEST_DEPTH_RUN = Duration.ofHours(16).toNanos();

    /** Longest run of equal velocities there; chosen here. */
    private static final long LONGEST_VELOCITY_RUN = Duration.ofHours(8).toNanos();

    /** Shorter runs of equal depths are never called frozen; chosen here. */
    private static final long LEAST_DEPTH_LIMIT = Duration.ofHours(8).toNanos();

    /** Shorter runs of equal velocities are never called frozen; chosen here. */
    private static final long LEAST_VELOCITY_LIMIT = Duration.ofHours(3).toNanos();

    /** Over the largest step of a level in the baseline; chosen here. */
    private static final double OVER_LARGEST_STEP = 1.5;

    /** Above this scatter of an hour velocity is no function of depth. */
    private static final double LARGEST_SCATTER = 0.25;

    /** Share of the variance the course of the day must explain to tell the clock by; chosen here. */
    private static final double CLOCK_EXPLAINED = 0.3;

    /** Harmonics of the day that places a clock: people get up within an hour or two; chosen here. */
    private static final int CLOCK_HARMONICS = 8;

    /** Scales of a tidal site are larger by this, for one fortnight shows few spring and neap tides, and behind pumps, whose strokes beat
     * with the hours, those of depth, velocity and flow; chosen here. */
    private static final double WIDER_SCALE = 1.5;

    private final PipeMonitor monitor;
    private final MonitorHistory monitors;
    private final StretchHours of;
    private final ZoneId zone;
    private final Set<DayOfWeek> restDays;
    private final Set<LocalDate> holidays;
    private final List<String> reasons = new ArrayList<>();
    private final List<String> notes = new ArrayList<>();
    private boolean lacksDryHours;
    private final int leastDryHours;
    private long step = Long.MIN_VALUE;
    private boolean faultCameFirst;
    private final Optional<SiteBaseline> baseline;

    BaselineFit(
            PipeMonitor monitor,
            MonitorHistory monitors,
            LearningHours all,
            Interval stretch,
            int leastDryHours,
            ZoneId zone,
            Set<DayOfWeek> restDays,
            Set<LocalDate> holidays) {
        this.monitor = monitor;
        this.leastDryHours = leastDryHours;
        this.monitors = monitors;
        this.zone = zone;
        this.restDays = restDays;
        this.holidays = holidays;
        this.of = new StretchHours(all, stretch, new LocalHours(zone, restDays, holidays));
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
        return of.stretch;
    }

    /** Hour of the last step for which the stretch was refused, or long ago. */
    long step() {
        return step;
    }

    /** Whether that step looks like the end of a fault: an obstruction that went, a velocity that came back. */
    boolean faultCameFirst() {
        return faultCameFirst;
    }

    private Optional<SiteBaseline> fit() {
        long depthRun = 0;
        long velocityRun = 0;
        for (int i = 0; i < of.size; i++) {
            depthRun = Math.max(depthRun, of.hour(i).depthRun);
            velocityRun = Math.max(velocityRun, of.hour(i).velocityRun);
        }
        if (of.seen < LEAST_COVERAGE * of.stretch.hours()) {
            // What froze is missing for all that follows: the reader wants the cause first.
            frozen(depthRun, velocityRun);
            reasons.addAll(BaselineWords.missing(of));
            return Optional.empty();
        }
        if (of.seenDry < leastDryHours) {
            lacksDryHours = true;
            reasons.add(of.seenDry + " dry hours, " + leastDryHours + " are needed");
            return Optional.empty();
        }
        boolean strokes = StretchFigures.strokes(of);
        EchoShares echo = new EchoShares(of, strokes);
        frozen(depthRun, velocityRun);
        zeros(echo);
        DayCurve depth = of.curve(of.lnDepth, of.dry);
        Left left = new Left(depth);
        stability(left);
        if (!reasons.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(SiteBaseline.of(monitor, text(depth, left, echo, depthRun, velocityRun, strokes)));
    }

    private void frozen(long depthRun, long velocityRun) {
        if (depthRun > LONGEST_DEPTH_RUN) {
            reasons.add("the depth repeated one value for " + inHours(depthRun) + " h");
        }
        if (velocityRun > LONGEST_VELOCITY_RUN) {
            reasons.add("the velocity repeated one value for " + inHours(velocityRun) + " h");
        }
    }

    /** The longest run of equal readings that a sound sensor may show: twice the longest, or what comes once in ten years. */
    private static long frozen(long least, double[] daily, long longest) {
        return Math.max(least, Math.max(2 * longest, Math.round(StretchFigures.onceInTenYears(daily))));
    }

    /** The largest step of a level in dry weather, m, that a sound sensor may show; NaN if nothing is known of it. */
    private double depthStep() {
        double[] daily = StretchFigures.largestSteps(of);
        double tenYears = StretchFigures.onceInTenYears(daily);
        return tenYears > 0
                ? Math.max(
                        tenYears, OVER_LARGEST_STEP * Arrays.stream(daily).max().orElseThrow())
                : Double.NaN;
    }

    private void zeros(EchoShares echo) {
        if (echo.zeroShare > MOST_ZEROS) {
            reasons.add(
                    "the velocity was 0 under water in " + Text.fixed(100 * echo.zeroShare, 0) + " % of the readings");
        }
    }

    /** What the hours leave over of the usual, and the curves of the usual. */
    private final class Left {
        boolean moving;
        final boolean tidal;
        Optional<UsualVelocity> law = Optional.empty();
        Optional<ExchangedFit> exchanged = Optional.empty();
        Optional<LowWater.Learned> low = Optional.empty();
        Optional<DayCurve> velocity = Optional.empty();
        Optional<DayCurve> flow = Optional.empty();
        double[] lnFlow = of.nan();
        final double[] meanLnFlow = of.nan();
        double[] r = of.nan();
        double[] d;
        double[] u = of.nan();
        double[] q = of.nan();

        Left(DayCurve depth) {
            moving = of.both >= UsualVelocity.leastHours();
            if (!moving && of.both > 0) {
                notes.add("velocity in only " + of.both + " hours: it is not watched");
            }
            if (moving) {
                law();
            }
            d = of.residuals(depth, of.lnDepth, of.dry);
            tidal = Tide.isTidal(of.hours, d);
            if (moving && StretchHours.count(of.lnVelocity, of.dry) >= LEAST_DRY_HOURS / 2) {
                DayCurve fitted = of.curve(of.lnVelocity, of.dry);
                velocity = Optional.of(fitted);
                u = of.residuals(fitted, of.lnVelocity, of.dry);
                boolean[] flowDry = StretchHours.count(lnFlow, of.longDry) >= LEAST_DRY_HOURS / 2 ? of.longDry : of.dry;
                DayCurve fittedFlow = of.curve(lnFlow, flowDry);
                flow = Optional.of(fittedFlow);
                q = of.residuals(fittedFlow, lnFlow, flowDry);
            }
            if (tidal) {
                LowWater.Learned learned = new LowWater.Learned(of);
                low = Optional.of(learned);
                d = learned.d;
                u = learned.u;
            }
        }

        private void law() {
            exchanged = ExchangedFit.of(there(), of);
            exchanged.ifPresent(fit -> notes.add(fit.words()));
            boolean[] known = of.moving();
            UsualVelocity learned =
                    UsualVelocity.learn(StretchHours.pick(of.lnDepth, known), StretchHours.pick(of.lnVelocity, known));
            for (int i = 0; i < of.size; i++) {
                r[i] = known[i] ? of.lnVelocity[i] - learned.lnVelocity(of.lnDepth[i]) : Double.NaN;
                lnFlow[i] = known[i] ? of.hour(i).lnFlow(monitors) : Double.NaN;
                meanLnFlow[i] = known[i] ? of.hour(i).meanLnFlow(monitors) : Double.NaN;
            }
            if (learned.scatter() > LARGEST_SCATTER) {
                notes.add("velocity does not follow depth here (hours scatter by "
                        + Text.fixed(100 * learned.scatter(), 0) + " %): it is not watched; " + BaselineWords.NO_LAW);
                moving = false;
                r = of.nan();
            } else {
                law = Optional.of(learned);
                notes.addAll(BaselineWords.ofLaw(there(), learned, of));
            }
        }

        private boolean watches(Quantity quantity) {
            return switch (quantity) {
                case VELOCITY_AT_DEPTH -> moving;
                case DEPTH -> !tidal || StretchHours.count(d) >= LEAST_DRY_HOURS / 2;
                case VELOCITY ->
                    moving && velocity.isPresent() && (!tidal || StretchHours.count(u) >= LEAST_DRY_HOURS / 2);
                case FLOW -> moving && velocity.isPresent() && !tidal;
            };
        }
    }

    private StateText text(
            DayCurve depth, Left left, EchoShares echo, long depthRun, long velocityRun, boolean strokes) {
        boolean pumped = StretchFigures.pumped(of);
        double[] centre = new double[Quantity.COUNT];
        double[] scale = new double[Quantity.COUNT];
        double[][] residuals = {left.r, left.d, left.u, left.q};
        for (Quantity quantity : Quantity.values()) {
            int at = quantity.ordinal();
            if (left.watches(quantity)) {
                BlockScale learned = BlockScale.learn(quantity, of.hours, residuals[at]);
                centre[at] = learned.centre;
                boolean beats = strokes && quantity != Quantity.VELOCITY_AT_DEPTH;
                scale[at] = learned.scale * (left.tidal || beats ? WIDER_SCALE : 1);
            }
        }
        double dayScatter = left.watches(Quantity.VELOCITY_AT_DEPTH)
                ? BlockScale.ofDays(of.hours, left.r) * (left.tidal || strokes ? WIDER_SCALE : 1)
                : 0;
        double middle = Medians.of(StretchHours.pick(of.lnDepth, of.dry));
        ClockUsual clock =
                StretchFigures.clock(of, of.meanLnDepth, new ClockDay(depth, false, ClockUsual.unknown()), false);
        StateText text = StateText.of(SiteBaseline.NAME, SiteBaseline.VERSION)
                .with("monitor", monitor.toString())
                .with("zone", zone.getId())
                .with(
                        "restDays",
                        restDays.stream().sorted().map(DayOfWeek::name).toList())
                .with(
                        "holidays",
                        holidays.stream().sorted().map(LocalDate::toString).toList())
                .with("from", of.stretch.start().toString())
                .with("to", of.stretch.end().toString())
                .with("hours", of.seen)
                .with("dryHours", of.seenDry)
                .with("rain", of.rain)
                .with("depth", depth.toText());
        left.law.ifPresent(found -> text.with("law", found.toText()));
        left.velocity.ifPresent(found -> text.with("velocity", found.toText()));
        left.flow.ifPresent(found -> text.with("flow", found.toText()));
        left.low.ifPresent(found -> text.with("lowWater", new double[] {found.lnDepth, found.lnVelocity}));
        // Strokes of pumps beat with the hours; the smoother day above bears that better.
        if (!left.tidal && !pumped) {
            clock(text, SiteBaseline.CLOCK_DEPTH, of.meanLnDepth, false);
            if (left.flow.isPresent()) {
                clock(text, SiteBaseline.CLOCK_FLOW, left.meanLnFlow, true);
            }
        }
        if (!left.moving && !left.tidal) {
            StretchFigures.levels(of, depth).write(text);
        }
        text.with("kappa", kappa(Math.exp(middle)))
                .with("centre", centre)
                .with("scale", scale)
                .with("covariance", StretchFigures.covariance(left.d, left.u))
                .with("dayScatter", dayScatter);
        limits(echo, depthRun, velocityRun).write(text);
        clock.write(text, "clock");
        left.exchanged.ifPresent(fit -> fit.write(text));
        return text.with("tidal", left.tidal)
                .with("pumped", pumped)
                .with("strokes", strokes)
                .with("swings", StretchFigures.swings(of))
                .with("clock", !left.tidal && depth.explained() >= CLOCK_EXPLAINED)
                .with("peak", StretchFigures.peak(of))
                .with("stormLags", StretchFigures.stormLags(of, depth))
                .with("notes", notes);
    }

    private SensorLimits limits(EchoShares echo, long depthRun, long velocityRun) {
        return new SensorLimits(
                frozen(LEAST_DEPTH_LIMIT, StretchFigures.longestDepthRuns(of), depthRun),
                frozen(LEAST_VELOCITY_LIMIT, StretchFigures.longestVelocityRuns(of), velocityRun),
                StretchFigures.chanceRun(of),
                depthStep(),
                echo.narrow,
                echo.zeroLimit,
                echo.echoLimit,
                echo.flipLimit,
                echo.loneLimit,
                echo.strayLimit,
                StretchFigures.upstreamHours(of));
    }

    /** The usual day that places a clock, where its phases lie and what they scatter. */
    private void clock(StateText text, String key, double[] values, boolean byFlow) {
        if (StretchHours.count(values, of.dry) < LEAST_DRY_HOURS / 2) {
            return;
        }
        DayCurve day = of.curve(values, of.dry, CLOCK_HARMONICS);
        if (day.explained() < CLOCK_EXPLAINED) {
            return;
        }
        ClockUsual usual = StretchFigures.clock(of, values, new ClockDay(day, true, ClockUsual.unknown()), byFlow);
        usual.write(text.with(key, day.toText()), key);
    }

    private static String inHours(long nanos) {
        return Text.fixed(nanos / 3.6e12, 1);
    }

    /** The monitor with which the stretch began. */
    private PipeMonitor there() {
        return monitors.at(of.stretch.start());
    }

    /** Elasticity of the flow area, d ln A / d ln y. */
    private double kappa(double level) {
        double step = 1e-5;
        double above = there().flowArea(level * (1 + step));
        double below = there().flowArea(level * (1 - step));
        return below > 0 ? Math.log(above / below) / Math.log((1 + step) / (1 - step)) : 1;
    }

    private void stability(Left left) {
        if (left.moving) {
            StabilityTest byDepth = new StabilityTest("velocity at the same depth", of.hours, left.r, 12, 0.12);
            byDepth.failure().ifPresent(this::refuse);
            StabilityTest depth = new StabilityTest("depth", of.hours, left.d, 6, 0.18);
            StabilityTest velocity = new StabilityTest("velocity", of.hours, left.u, 6, 0.18);
            if (reasons.isEmpty()) {
                depth.failure().filter(failure -> against(failure, byDepth)).ifPresent(this::refuse);
            }
            faultCameFirst = byDepth.changeAt(step, 0) > 0 && velocity.changeAt(step, 0) > LEAST_CHANGE_OF_RELEASE;
            if (depth.failure().isPresent() && velocity.failure().isPresent()) {
                notes.add("the flow wandered within the baseline: "
                        + depth.failure().orElseThrow().words());
            }
        } else if (!left.tidal) {
            StabilityTest depth = new StabilityTest("dry depth", of.hours, left.d, 6, 0.20);
            depth.failure().ifPresent(this::refuse);
            faultCameFirst = depth.changeAt(step, 0) < 0;
        }
    }

    /** Whether the velocity at its depth stepped against the depth, which another flow does not make it do. */
    private static boolean against(StabilityTest.Failure depth, StabilityTest velocityAtDepth) {
        double beside = depth.step()
                .map(hour -> velocityAtDepth.changeAt(hour, BESIDE_DEPTH_STATISTIC))
                .orElse(0.0);
        return beside * depth.change() < 0 && Math.abs(beside) >= LEAST_CHANGE_BESIDE_DEPTH;
    }

    private void refuse(StabilityTest.Failure failure) {
        reasons.add(failure.words());
        failure.step().ifPresent(hour -> step = Math.max(step, hour));
    }
}
