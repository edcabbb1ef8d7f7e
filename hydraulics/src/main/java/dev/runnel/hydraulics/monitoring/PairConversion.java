package dev.runnel.hydraulics.monitoring;

import dev.runnel.hydraulics.internal.CircleLoops;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.timeseries.Quality;

/** What is made of one pair of readings: the one place where the table in {@link PipeMonitor} is carried out. */
final class PairConversion {
    /** Chosen here, m: deeper than water stands over nearly any sewer, and below nearly every depth in millimetres. */
    static final double LARGEST_DEPTH_READING = 50;

    private static final byte POOR = Quality.POOR.toCode();
    private static final byte SUSPECT = Quality.SUSPECT.toCode();
    private static final byte MISSING = Quality.MISSING.toCode();

    /** Readings that are worked on at once: they stay in the first cache. */
    static final int BLOCK = 1024;

    /** Readings whose products are written at once, in blocks; they and the products stay in the second cache. */
    private static final int STRETCH = 16 * BLOCK;

    private final CrossSection section;
    private final double soffit;
    private final double offset;
    private final double bed;
    private final double velocityFactor;

    /** The least reading in flowing water: every one below has a choice of its own. */
    private final double lowestPlain;

    /** Up to the soffit, m². */
    private final double fullArea;

    /** Whether a reading that is no product shows by a product that is not finite. */
    private final boolean showsOthers;

    PairConversion(CrossSection section, double offset, double velocityFactor) {
        this.section = section;
        this.soffit = section.withoutSediment().height();
        this.offset = offset;
        this.bed = section.bedAboveInvert();
        this.velocityFactor = velocityFactor;
        // A reading can round to a level on the bed or above it; 4 ulp of all that is added is further than that.
        this.lowestPlain = Math.max(Double.MIN_VALUE, bed - offset + 4 * Math.ulp(Math.max(bed, offset)));
        this.fullArea = Double.isInfinite(soffit) ? Double.POSITIVE_INFINITY : section.area(section.height());
        this.showsOthers = section instanceof CircularSection && offset == 0 && bed == 0;
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
        return SurchargeRule.isAbove(level, soffit) ? DepthCondition.SURCHARGED : DepthCondition.PART_FULL;
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

    /** Code of the quality of the level; the other is that of the depth reading. The worse of two has the larger code. */
    static byte levelQuality(double level, DepthCondition condition, byte depth) {
        if (Double.isNaN(level)) {
            return MISSING;
        }
        return condition == DepthCondition.NEGATIVE ? worse(depth, SUSPECT) : depth;
    }

    /** Code of the quality of the flow; the qualities are those of the two readings. */
    static byte quality(double discharge, DepthCondition condition, byte depth, double velocity, byte ofVelocity) {
        if (Double.isNaN(discharge)) {
            return MISSING;
        }
        switch (condition) {
            case NEGATIVE:
                return worse(depth, SUSPECT);
            case BELOW_BED:
                return worse(depth, POOR);
            case DRY:
                // A velocity in an empty pipe means that one of the two sensors is wrong.
                return Double.isNaN(velocity) || velocity == 0 ? depth : worse(depth, POOR);
            default:
                return worse(depth, ofVelocity);
        }
    }

    /** Code of what is done with a pair. */
    byte code(double depth, double velocity) {
        return FlowCounts.code(depthCondition(depth), VelocityCondition.of(velocity));
    }

    static byte worse(byte one, byte other) {
        return one >= other ? one : other;
    }

    /**
     * Writes the discharge of each pair of readings, bit for bit as {@link #discharge}. Blocks of readings are worked on in
     * passes without a branch, as if all of them were taken in flowing water; the others are then done one by one.
     */
    void discharges(double[] depths, double[] velocities, double[] discharges) {
        new Products(depths, velocities, discharges).write();
    }

    /** The same, and tells what it leaves to be done where the level and the qualities of the pairs are wanted too. */
    Products products(double[] depths, double[] velocities, double[] discharges) {
        Products products = new Products(depths, velocities, discharges);
        products.looksForOthers = true;
        products.write();
        return products;
    }

    /** The discharges of pairs of readings, written block after block, and what they leave to be said of the others. */
    final class Products {
        private final double[] depths;
        private final double[] velocities;
        private final double[] discharges;
        private final boolean inPlace;
        private double[] depth;
        private double[] area;
        private final int[] places;
        private final int[] fours;
        private int from;
        private int to;
        private int multiplied;
        private boolean looksForOthers;
        private boolean hasOthers;
        private boolean overflows;

        private Products(double[] depths, double[] velocities, double[] discharges) {
            this.depths = depths;
            this.velocities = velocities;
            this.discharges = discharges;
            inPlace = discharges == depths || discharges == velocities;
            depth = new double[0];
            area = depth;
            places = new int[Math.min(BLOCK, depths.length)];
            fours = new int[places.length / 4 + 1];
        }

        private void write() {
            while (to < depths.length) {
                from = to;
                to = from + Math.min(BLOCK, depths.length - from);
                if (showsOthers && !inPlace) {
                    stretch();
                    mendCircle(find());
                } else {
                    ofAny();
                }
            }
        }

        /** At depth 0 alone an other is finite: that is looked for until there is one. */
        private int find() {
            return looksForOthers && !hasOthers
                    ? CircleLoops.zeroOrNotFinite(discharges, from, to, places, fours)
                    : CircleLoops.notFinite(discharges, from, to, places, fours);
        }

        /** The memory is slow to start: a long loop waits for it once, and what is done block by block then finds all near. */
        private void stretch() {
            if (from >= multiplied) {
                multiplied = from + Math.min(STRETCH, depths.length - from);
                CircleLoops.discharge(depths, velocities, discharges, from, multiplied, soffit, velocityFactor);
            }
        }

        private void ofAny() {
            overflows = true;
            int count = to - from;
            if (count != depth.length) {
                depth = new double[count];
                area = new double[count];
            }
            depthsAboveBed(depths, from, depth);
            areas(depth, area);
            if (inPlace) {
                for (int i = 0; i < count; i++) {
                    area[i] = one(depths[from + i], velocities[from + i], area[i]);
                }
                System.arraycopy(area, 0, discharges, from, count);
            } else {
                products(velocities, from, area, discharges);
                mend();
            }
        }

        /**
         * Mends the discharges in a clean circle with the sensor at the invert, where a reading is the depth. All that are no
         * product of the area under the soffit show by one that is not finite: below 0 and above the soffit the loop of the
         * circle has no area, at 0 a missing velocity is all that matters, and an infinite velocity stays so.
         */
        private void mendCircle(int count) {
            for (int k = 0; k < count; k++) {
                int i = places[k];
                discharges[i] = other(depths[i], velocities[i], discharges[i]);
                overflows |= Double.isInfinite(discharges[i]);
            }
        }

        /**
         * What the loop of the circle leaves to be said. A depth above the soffit, none at all and a missing velocity are one
         * formula, since which of them comes next is what a processor guesses wrongly: without a depth the last term is NaN,
         * and else the 0 that makes a 0 of −0.
         */
        private double other(double depth, double velocity, double product) {
            boolean isUsual =
                    !(depth <= 0) && !(depth > LARGEST_DEPTH_READING) && !(Math.abs(velocity) > Double.MAX_VALUE);
            if (isUsual) {
                double full = Math.fma(velocityFactor * velocity, fullArea, 0 * depth);
                return Double.isNaN(product) ? full : product;
            }
            PipeMonitor.notInfinite("velocityReadings", velocity);
            hasOthers = true;
            return special(depth, velocity);
        }

        /** Does one by one the readings that are no product; without a depth the product is missing as it must be. */
        @SuppressWarnings("ShortCircuitBoolean") // one jump instead of three
        private void mend() {
            double lowest = lowestPlain;
            for (int i = from; i < to; i++) {
                double reading = depths[i];
                // Both are false for a missing depth; one jump for all three, hardly ever taken.
                if (reading < lowest | reading > LARGEST_DEPTH_READING | Math.abs(velocities[i]) > Double.MAX_VALUE) {
                    PipeMonitor.notInfinite("velocityReadings", velocities[i]);
                    discharges[i] = special(reading, velocities[i]);
                    hasOthers |= isOther(reading);
                }
            }
        }

        /** Whether there is a pair whose level and qualities do not follow from the readings alone. */
        boolean hasOthers() {
            return hasOthers;
        }

        /** Whether a discharge may be infinite. */
        boolean overflows() {
            return overflows;
        }
    }

    /** Areas of depths inside the section or missing, which stay so. */
    private void areas(double[] depth, double[] area) {
        if (section instanceof CircularSection circle) {
            double diameter = circle.diameter();
            CircleLoops.area(depth, area, 0, depth.length, diameter, 1 / diameter, diameter * diameter);
        } else {
            section.area(depth, area);
        }
    }

    /** Level over reading as if all were taken in flowing water: the readings themselves without an offset. */
    double[] levels(double[] depths) {
        if (offset == 0) {
            return depths;
        }
        double[] levels = new double[depths.length];
        for (int i = 0; i < levels.length; i++) {
            levels[i] = depths[i] + offset;
        }
        return levels;
    }

    private double one(double depth, double velocity, double area) {
        PipeMonitor.notInfinite("velocityReadings", velocity);
        return isPlain(depth) ? product(velocity, area) : special(depth, velocity);
    }

    private double special(double depth, double velocity) {
        PipeMonitor.notInfinite("depthReadings", depth);
        return discharge(depth, velocity, depthCondition(depth));
    }

    /** Kept inside the section, since what lies outside is not plain and not refused here. */
    private void depthsAboveBed(double[] readings, int from, double[] depth) {
        double height = section.height();
        if (section instanceof CircularSection) {
            // A negative depth has no area in the loop of the circle, so one limit is enough, in half the time.
            for (int i = 0; i < depth.length; i++) {
                depth[i] = Math.min(readings[from + i] + offset - bed, height);
            }
            return;
        }
        for (int i = 0; i < depth.length; i++) {
            depth[i] = Math.max(0, Math.min(readings[from + i] + offset - bed, height));
        }
    }

    private void products(double[] velocities, int from, double[] area, double[] discharges) {
        for (int i = 0; i < area.length; i++) {
            discharges[from + i] = product(velocities[from + i], area[i]);
        }
    }

    /** Whether the depth is one in flowing water, so that the flow is a product. */
    private boolean isPlain(double depth) {
        return depth > 0 && depth <= LARGEST_DEPTH_READING && depth + offset > bed;
    }

    /** Whether the level and the qualities of a pair have rules of their own; without a depth they have not. */
    boolean isOther(double depth) {
        return !isPlain(depth) && !Double.isNaN(depth);
    }

    double discharge(double depthReading, double velocityReading, DepthCondition condition) {
        double level = level(depthReading, condition);
        if (Double.isNaN(level)) {
            return Double.NaN;
        }
        if (!condition.isFlowing()) {
            return 0;
        }
        return product(velocityReading, area(level));
    }

    /** Discharge of a velocity reading; adding 0 turns the -0.0 of standing water into 0.0. */
    private double product(double velocity, double area) {
        return Math.fma(velocityFactor * velocity, area, 0.0);
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
