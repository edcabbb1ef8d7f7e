package dev.runnel.hydraulics.watch;

import dev.runnel.hydraulics.monitoring.MonitorHistory;
import dev.runnel.internal.StateText;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.baseline.DayCurve;
import java.util.Arrays;
import java.util.Optional;
import java.util.function.Consumer;

/** Holds hours against the baseline and hands on what is left over. */
final class HourlyWatch implements Consumer<SiteHour> {
    private static final int VERSION = 2;
    private static final long NONE = Long.MIN_VALUE;

    /** ln y may lie this far outside of the learned depths and still be judged. */
    private static final double BEYOND = 0.05;

    /** Farther out a dry residual is drawn towards 0 by this times the logarithm of the excess. */
    private static final double DEAD_ZONE = 0.6;

    /** Hours about an hour of the day in whose usual levels a rise may be something else than rain; chosen here. */
    private static final int AROUND = 4;

    private final SiteBaseline baseline;
    private final MonitorHistory monitors;
    private final double soffit;
    private final Optional<UsualVelocity> law;
    private final Optional<DayCurve> depth;
    private final Optional<DayCurve> velocity;
    private final Optional<DayCurve> flow;
    private final long baselineFrom;
    private final long baselineTo;
    private final LocalHours local;
    private final DryHours dry = new DryHours();
    private final ExchangedColumns exchanged;
    private final ReadingUnits units;
    private final ReadingFaults faults;
    private final ChangeWatch change;
    private final TideWatch tide;
    private final LowWater lowWater = new LowWater();
    private final ClockFinding clock;
    private final GaugeClock gauge;
    private final GaugeSilence silence;
    private final GaugeCatch gaugeCatch;
    private final Optional<LevelChannels> level;
    private final Optional<LevelStep> levelStep;

    /** Hours of the day asked for last, by their whole hours, and the highest that is usual around them. */
    private final double[] aroundHour = new double[24];

    private final double[] highestAround = new double[24];
    private long block = NONE;
    private long day = NONE;
    private long lastHour = NONE;

    HourlyWatch(WatchRule rule, Findings findings) {
        Arrays.fill(aroundHour, Double.NaN);
        this.baseline = rule.baseline();
        this.monitors = rule.monitors();
        this.soffit = baseline.monitor().soffit();
        this.law = baseline.usualVelocity();
        this.depth = baseline.day(Quantity.DEPTH);
        this.velocity = baseline.day(Quantity.VELOCITY);
        this.flow = baseline.day(Quantity.FLOW);
        this.baselineFrom = Math.floorDiv(baseline.interval().start().getEpochSecond() + 3599, 3600L);
        this.baselineTo = Math.floorDiv(baseline.interval().end().getEpochSecond(), 3600L);
        this.local = baseline.localHours();
        this.faults = new ReadingFaults(baseline, findings);
        this.exchanged = new ExchangedColumns(baseline, monitors, findings, this::giveAway);
        this.units = new ReadingUnits(baseline, monitors, findings, this::giveAway);
        this.tide = new TideWatch(baseline.isTidal(), findings);
        this.change = new ChangeWatch(rule, findings, tide);
        this.clock = new ClockFinding(rule, findings, tide);
        this.gauge = new GaugeClock(baseline, findings);
        this.silence = new GaugeSilence(baseline, findings);
        this.gaugeCatch = new GaugeCatch(baseline, findings);
        this.level = baseline.levelUsual.isPresent()
                ? depth.map(curve -> new LevelChannels(LevelChannels.lowestHour(curve)))
                : Optional.empty();
        level.ifPresent(channels -> findings.say(channels, baseline.levelUsual.orElseThrow()));
        this.levelStep = level.map(channels -> new LevelStep(findings));
    }

    @Override
    public void accept(SiteHour hour) {
        boolean learning = hour.hour >= baselineFrom && hour.hour < baselineTo;
        exchanged.hour(hour, learning);
        if (learning) {
            units.learn(hour);
        } else {
            units.hour(hour);
        }
        double excess =
                depth.map(curve -> hour.lnDepth - usual(curve, hour.hour)).orElse(Double.NaN);
        double above = depth.map(curve -> hour.lnDepth - highestAround(curve, hour.hour))
                .orElse(Double.NaN);
        boolean movesDepth = change.isOpen() && !change.isWater() || tide.isSeen() || faults.movesDepth();
        silence.hour(hour, excess, above, movesDepth);
        boolean isOffClock = clock.isOpen() || gauge.isOpen();
        gaugeCatch.hour(hour, moreFlow(hour), change.isOpen() || tide.isSeen() || silence.isOpen() || isOffClock);
        dry.add(hour, silence.believed(hour));
        endBlockAndDay(hour.hour);
        lastHour = hour.hour;
        if (learning) {
            block = NONE;
            day = NONE;
            return;
        }
        block = ChangeSeries.blockOf(hour.hour);
        day = local.day(hour.hour);
        faults.hour(hour, change.slows(), change.lowersDepth());
        clock.stamps(hour);
        boolean isDry = dry.isDry();
        double hourOfDay = local.hourOfDay(hour.hour);
        boolean rest = local.isRest(hour.hour);
        level.ifPresent(channels ->
                channels.hour(hour, local.hourOfDay(hour.hour), usual(depth.orElseThrow(), hour.hour), dry.isDry()));
        levelStep.ifPresent(step -> step.hour(hour, isDry ? excess : Double.NaN, change.isOpen(), tide.isSeen()));
        boolean speed = hour.hasBoth() && !faults.explainsVelocity();
        if (dry.isNearlyDry() && hour.hasDepth()) {
            clock.add(hourOfDay, hour.meanLnDepth, speed ? hour.meanLnFlow(monitors) : Double.NaN);
        }
        if (depth.isPresent()) {
            gauge.hour(hour, excess, clock.dayShift(), tide.isSeen() || change.movesDepth(), change.isWater());
            tide.add(hour.hour, isDry ? excess : Double.NaN);
        }
        hourOfDay = moved(hourOfDay - clock.shift());
        double d =
                isDry && depth.isPresent() ? hour.lnDepth - depth.orElseThrow().value(hourOfDay, rest) : Double.NaN;
        double u = isDry && speed && velocity.isPresent()
                ? hour.lnVelocity - velocity.orElseThrow().value(hourOfDay, rest)
                : Double.NaN;
        double q = dry.isLongDry() && speed && flow.isPresent()
                ? hour.lnFlow(monitors) - flow.orElseThrow().value(hourOfDay, rest)
                : Double.NaN;
        double plain = speed && law.isPresent() && Math.exp(hour.lnDepth) <= soffit
                ? hour.lnVelocity - law.orElseThrow().lnVelocity(hour.lnDepth)
                : Double.NaN;
        double r = atDepth(hour, plain, isDry);
        if (baseline.lowWater.isPresent()) {
            double[] usual = baseline.lowWater.orElseThrow();
            lowWater.add(hour.hour, hour.lnDepth, speed ? hour.lnVelocity : Double.NaN);
            double lowest = isDry ? lowWater.lnDepth() - usual[0] : Double.NaN;
            double then = isDry ? lowWater.lnVelocity() - usual[1] : Double.NaN;
            change.hour(hour.hour, r, lowest, then, Double.NaN, plain);
        } else {
            change.hour(hour.hour, r, d, u, q, plain);
        }
        change.steps(hour, d, u);
    }

    private Optional<Track> giveAway(Quantity quantity, long since, long end) {
        Optional<Track> impossible = quantity == Quantity.DEPTH ? faults.giveImpossibleDepths(since) : Optional.empty();
        Optional<Track> changed = change.giveAway(since, end);
        lowWater.dropFrom(Math.floorDiv(since, SiteHour.NANOS));
        return impossible.or(() -> changed);
    }

    /** Flow of an hour above that of the usual dry day, m3/s; NaN for missing. */
    private double moreFlow(SiteHour hour) {
        return flow.map(curve -> Math.exp(hour.lnFlow(monitors)) - Math.exp(usual(curve, hour.hour)))
                .orElse(Double.NaN);
    }

    private static double moved(double hourOfDay) {
        double moved = hourOfDay % 24;
        return moved < 0 ? moved + 24 : moved;
    }

    private double usual(DayCurve curve, long hour) {
        return curve.value(local.hourOfDay(hour), local.isRest(hour));
    }

    /** The highest that is usual some hours earlier or later: a clock, a holiday or a late riser makes no storm of it. */
    private double highestAround(DayCurve curve, long hour) {
        double hourOfDay = local.hourOfDay(hour);
        // The same every day but for a change of the clock.
        int at = (int) hourOfDay;
        if (aroundHour[at] == hourOfDay) {
            return highestAround[at];
        }
        double highest = Double.NEGATIVE_INFINITY;
        for (int k = -AROUND; k <= AROUND; k++) {
            double then = moved(hourOfDay + k);
            highest = Math.max(highest, Math.max(curve.value(then, false), curve.value(then, true)));
        }
        aroundHour[at] = hourOfDay;
        highestAround[at] = highest;
        return highest;
    }

    /** Residual of the velocity at its depth; NaN at depths that were not learned. */
    private double atDepth(SiteHour hour, double plain, boolean isDry) {
        if (Double.isNaN(plain)) {
            return Double.NaN;
        }
        UsualVelocity usual = law.orElseThrow();
        double residual = plain;
        double outside = Math.max(usual.lowest() - hour.lnDepth, hour.lnDepth - usual.highest());
        if (outside > BEYOND) {
            // Storm water that runs off is faster the deeper it is: what stands deeper and slower than was learned,
            // hours
            // after the rain, is no storm.
            boolean heldUp = plain < 0 && hour.lnDepth > usual.highest() && dry.isNearlyDry();
            if (!isDry && !heldUp) {
                return Double.NaN;
            }
            residual = Math.signum(residual) * Math.max(0, Math.abs(residual) - DEAD_ZONE * outside);
        }
        return residual / usual.relativeScatter(hour.lnDepth);
    }

    private void endBlockAndDay(long next) {
        if (block != NONE && ChangeSeries.blockOf(next) != block) {
            change.block(block);
        }
        if (day != NONE && local.day(next) != day) {
            clock.endDay(
                    day,
                    local.isRest(lastHour),
                    (!change.isOpen() || change.isWater()) && !silence.isOpen(),
                    change.isWater(),
                    (lastHour + 1) * SiteHour.NANOS);
        }
    }

    void finish() {
        if (block != NONE) {
            change.block(block);
        }
        long end = lastHour == NONE ? EpochNanos.of(java.time.Instant.EPOCH) : (lastHour + 1) * SiteHour.NANOS;
        change.finish(end);
        exchanged.finish(end);
        units.finish(end);
        faults.finish(end);
        clock.finish(end);
        gauge.finish(end);
        silence.finish(end);
        gaugeCatch.finish(end);
        levelStep.ifPresent(step -> step.finish(end));
    }

    StateText write() {
        StateText text = StateText.of("hourly-watch", VERSION)
                .with("block", block)
                .with("day", day)
                .with("lastHour", lastHour);
        dry.write(text);
        tide.write(text);
        lowWater.write(text);
        exchanged.write(text);
        units.write(text);
        clock.write(text);
        level.ifPresent(channels -> text.with("level", channels.write().toString()));
        levelStep.ifPresent(step -> text.with("levelStep", step.write().toString()));
        return text.with("gauge", gauge.write().toString())
                .with("silence", silence.write().toString())
                .with("catch", gaugeCatch.write().toString())
                .with("faults", faults.write().toString())
                .with("change", change.write().toString());
    }

    void read(String state) {
        StateText text = StateText.parse("hourly-watch", VERSION, state);
        block = text.count("block");
        day = text.count("day");
        lastHour = text.count("lastHour");
        dry.read(text);
        tide.read(text);
        lowWater.read(text);
        exchanged.read(text);
        units.read(text);
        clock.read(text);
        gauge.read(text.text("gauge"));
        silence.read(text.text("silence"));
        gaugeCatch.read(text.text("catch"));
        level.ifPresent(channels -> channels.read(text.text("level")));
        levelStep.ifPresent(step -> step.read(text.text("levelStep")));
        faults.read(text.text("faults"));
        change.read(text.text("change"));
    }
}
