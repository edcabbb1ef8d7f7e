package dev.runnel.hydraulics.monitoring;

import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.timeseries.Quality;

/** What is made of one pair of readings: the one place where the table in {@link PipeMonitor} is carried out. */
final class Treatment {
    /** Chosen here, m: deeper than water stands over nearly any sewer, and below nearly every depth in millimetres. */
    static final double LARGEST_DEPTH_READING = 50;

    private final CrossSection section;
    private final double soffit;
    private final double offset;
    private final double bed;
    private final double velocityFactor;

    Treatment(CrossSection section, double offset, double velocityFactor) {
        this.section = section;
        this.soffit = section.withoutSediment().height();
        this.offset = offset;
        this.bed = section.bedAboveInvert();
        this.velocityFactor = velocityFactor;
    }

    DepthCondition depthCondition(double reading) {
        if (Double.isNaN(reading)) {
            return DepthCondition.NO_DEPTH;
        }
        if (Math.abs(reading) > LARGEST_DEPTH_READING) {
            return DepthCondition.IMPOSSIBLE;
        }
        if (reading < 0) {
            return DepthCondition.NEGATIVE;
        }
        if (reading == 0) {
            return missesNoWater() ? DepthCondition.DRY : DepthCondition.BELOW_SENSOR;
        }
        double level = reading + offset;
        if (level <= bed) {
            return DepthCondition.BELOW_BED;
        }
        return Surcharge.isAbove(level, soffit) ? DepthCondition.SURCHARGED : DepthCondition.PART_FULL;
    }

    /** Level above the invert, m; NaN where the reading does not tell it. */
    double level(double reading, DepthCondition condition) {
        switch (condition) {
            case NO_DEPTH:
            case BELOW_SENSOR:
            case IMPOSSIBLE:
                return Double.NaN;
            case NEGATIVE:
                return missesNoWater() ? offset : Double.NaN;
            default:
                return reading + offset;
        }
    }

    /** Quality of the level; the other is that of the depth reading. */
    static Quality levelQuality(double level, DepthCondition condition, Quality depth) {
        if (Double.isNaN(level)) {
            return Quality.MISSING;
        }
        return condition == DepthCondition.NEGATIVE ? depth.worst(Quality.SUSPECT) : depth;
    }

    /** Quality of the flow; the qualities are those of the two readings. */
    static Quality quality(
            double discharge, DepthCondition condition, Quality depth, double velocity, Quality ofVelocity) {
        if (Double.isNaN(discharge)) {
            return Quality.MISSING;
        }
        switch (condition) {
            case NEGATIVE:
                return depth.worst(Quality.SUSPECT);
            case BELOW_BED:
                return depth.worst(Quality.POOR);
            case DRY:
                // A velocity in an empty pipe means that one of the two sensors is wrong.
                return Double.isNaN(velocity) || velocity == 0 ? depth : depth.worst(Quality.POOR);
            default:
                return depth.worst(ofVelocity);
        }
    }

    double discharge(double depthReading, double velocityReading, DepthCondition condition) {
        double level = level(depthReading, condition);
        if (Double.isNaN(level)) {
            return Double.NaN;
        }
        if (!condition.isFlowing()) {
            return 0;
        }
        // Adding 0 turns the -0.0 of standing water into 0.0.
        return velocityFactor * velocityReading * area(level) + 0.0;
    }

    /** Area between bed and level, m²: of the whole section from the soffit on; 0 at or below the bed. */
    double area(double level) {
        return level <= bed ? 0 : section.area(depth(level));
    }

    /** Depth above the bed, m; that of the soffit from there on. */
    double depth(double level) {
        return Math.min(section.depthAboveBed(level), section.height());
    }

    /** A sensor at or under the bed sees all water that can flow. */
    private boolean missesNoWater() {
        return offset <= bed;
    }
}
