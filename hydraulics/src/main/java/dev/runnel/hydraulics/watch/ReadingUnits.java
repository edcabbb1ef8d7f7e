package dev.runnel.hydraulics.watch;

import dev.runnel.hydraulics.monitoring.MonitorHistory;
import dev.runnel.internal.StateText;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.baseline.DayCurve;
import java.util.Optional;

/** Looks whether depth or velocity leapt by the factor of another unit, and takes out of the hours what may have. */
final class ReadingUnits {
    /** Hours without rain, and how little is none, mm, after which no storm lifts a level at once; chosen here. */
    private static final int LEAST_DRY_HOURS = 6;

    private static final double LEAST_RAIN = 0.05;

    private final MonitorHistory monitors;
    private final LocalHours local;
    private final Optional<DayCurve> depth;
    private final Optional<DayCurve> velocity;
    private final Optional<UsualVelocity> law;
    private final ReadingUnit ofDepth;
    private final boolean pumped;

    /** The last hour with rain, or in which none is known. */
    private long lastWet = Long.MIN_VALUE;

    private final ReadingUnit ofVelocity;

    ReadingUnits(SiteBaseline baseline, MonitorHistory monitors, Findings findings, ReadingUnit.Told told) {
        this.monitors = monitors;
        this.pumped = baseline.isPumped();
        this.local = baseline.localHours();
        this.depth = baseline.day(Quantity.DEPTH);
        this.velocity = baseline.day(Quantity.VELOCITY);
        this.law = baseline.usualVelocity();
        this.ofDepth = new ReadingUnit(Quantity.DEPTH, findings, told);
        this.ofVelocity = new ReadingUnit(Quantity.VELOCITY, findings, told);
    }

    /** Takes an hour of the baseline, which is normal by definition. */
    void learn(SiteHour hour) {
        ofDepth.steps(hour);
        ofDepth.learn(hour.hour, depth(hour), byDay(hour, velocity, hour.lnReadVelocity));
        ofVelocity.learn(hour.hour, velocity(hour), depth(hour));
    }

    /** Takes an hour; what of it may be of another unit is missing from it afterwards. */
    void hour(SiteHour hour) {
        double y = depth(hour);
        double v = velocity(hour);
        lastWet = hour.rain <= LEAST_RAIN ? lastWet : hour.hour;
        // A pump lifts a level at once in any weather.
        boolean dry = !pumped && hour.hour - LEAST_DRY_HOURS > lastWet;
        ofDepth.steps(hour);
        ofDepth.hour(hour.hour, y, byDay(hour, velocity, hour.lnReadVelocity), dry);
        // A velocity follows its depth; where that is not read truly, the hour of the day must do.
        double byDepth = law.isPresent() && hour.hasDepth() && !ofDepth.isSoonSure() ? v : Double.NaN;
        ofVelocity.hour(hour.hour, byDepth, y, dry);
        if (ofDepth.isSoonSure()) {
            hour.withholdDepth();
        }
        if (ofVelocity.isSoonSure()) {
            hour.withholdVelocity();
        }
    }

    private double byDay(SiteHour hour, Optional<DayCurve> curve, double read) {
        return curve.isEmpty() || Double.isNaN(read)
                ? Double.NaN
                : read - curve.orElseThrow().value(local.hourOfDay(hour.hour), local.isRest(hour.hour));
    }

    /** Logarithm of the depth read over the one that is usual at the hour, both as the sensor gives them. */
    private double depth(SiteHour hour) {
        if (depth.isEmpty() || Double.isNaN(hour.lnReadDepth)) {
            return Double.NaN;
        }
        double usual = Math.exp(depth.orElseThrow().value(local.hourOfDay(hour.hour), local.isRest(hour.hour)))
                - (monitors.isConstant()
                        ? monitors.first().sensorOffset()
                        : monitors.at(EpochNanos.toInstant(hour.hour * SiteHour.NANOS))
                                .sensorOffset());
        return usual > 0 ? hour.lnReadDepth - Math.log(usual) : Double.NaN;
    }

    private double velocity(SiteHour hour) {
        return law.isEmpty() || Double.isNaN(hour.lnReadVelocity) || !hour.hasDepth()
                ? Double.NaN
                : hour.lnReadVelocity - law.orElseThrow().lnVelocity(hour.lnDepth);
    }

    void finish(long end) {
        ofDepth.finish(end);
        ofVelocity.finish(end);
    }

    void write(StateText text) {
        text.with("lastWet", lastWet).with("depthUnit", ofDepth.write()).with("velocityUnit", ofVelocity.write());
    }

    void read(StateText text) {
        lastWet = text.count("lastWet");
        ofDepth.read(text.text("depthUnit"));
        ofVelocity.read(text.text("velocityUnit"));
    }
}
