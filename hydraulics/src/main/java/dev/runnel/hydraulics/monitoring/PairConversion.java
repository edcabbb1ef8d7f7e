package dev.runnel.hydraulics.monitoring;

import dev.runnel.hydraulics.internal.CircleLoops;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.timeseries.Quality;

/** What is made of one pair of readings: the one place where the table in {@link PipeMonitor} is carried out. */
final class PairConversion {
    /** Chosen here, m: deeper than water stands over nearly any sewer, and below nearly every depth in millimetres. */
    static final double LARGEST_DEPTH_READING = 50;

    private static final long INFINITE = Double.doubleToRawLongBits(Double.POSITIVE_INFINITY);
    private static final long SIZE = Long.MAX_VALUE;
    private static final byte POOR = Quality.POOR.toCode();
    private static final byte SUSPECT = Quality.SUSPECT.toCode();
    private static final byte MISSING = Quality.MISSING.toCode();

    /** No number, a number, and one above the soffit. */
    private static final DepthCondition[] USUAL_DEPTHS = {
        DepthCondition.NO_DEPTH, DepthCondition.PART_FULL, DepthCondition.SURCHARGED
    };

    /** No number, one above 0, 0, and one below. */
    private static final VelocityCondition[] USUAL_VELOCITIES = {
        VelocityCondition.NO_VELOCITY, VelocityCondition.FORWARD, VelocityCondition.STANDING, VelocityCondition.REVERSE
    };

    private static final byte[] USUAL = usualCodes();

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

    /** Bits of the highest level that counts as part full. */
    private final long aboveSoffit;

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
        this.aboveSoffit = Double.doubleToRawLongBits(SurchargeRule.highestNotAbove(soffit));
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

    /**
     * Code of what was done with a pair of which all else follows from the readings: no depth or one in flowing water, whatever
     * the velocity. The level is then the reading with the offset, the flow a product, and their qualities are those of the
     * readings. Numbers instead of jumps, since in a poor record these pairs come in no order: those of 0 and more are in the
     * order of their bits, and what is no number is after infinity.
     *
     * @return a {@link FlowCounts#code}, or -1 for another pair
     */
    int usualCode(double depth, double velocity) {
        double level = depth + offset;
        if (depth <= 0 || depth > LARGEST_DEPTH_READING || level <= bed) {
            return -1;
        }
        long ofLevel = Double.doubleToRawLongBits(level) & SIZE;
        int ofDepth = 1 + isAfter(ofLevel, aboveSoffit) - 2 * isAfter(ofLevel, INFINITE);
        // Adding 0 turns -0.0, which would count as less, into 0.0.
        long bits = Double.doubleToRawLongBits(velocity + 0.0);
        long speed = bits & SIZE;
        int ofVelocity = (1 - isAfter(speed, INFINITE)) * (1 + isAfter(1, speed) + 2 * isAfter(0, bits));
        return USUAL[ofDepth * USUAL_VELOCITIES.length + ofVelocity];
    }

    private static int isAfter(long bits, long others) {
        return (int) (others - bits >>> 63);
    }

    /** Whether all else follows from the readings where a depth has this condition. */
    static boolean isUsual(DepthCondition condition) {
        return condition.isFlowing() || condition == DepthCondition.NO_DEPTH;
    }

    private static byte[] usualCodes() {
        byte[] codes = new byte[USUAL_DEPTHS.length * USUAL_VELOCITIES.length];
        for (int i = 0; i < codes.length; i++) {
            codes[i] = FlowCounts.code(
                    USUAL_DEPTHS[i / USUAL_VELOCITIES.length], USUAL_VELOCITIES[i % USUAL_VELOCITIES.length]);
        }
        return codes;
    }

    static byte worse(byte one, byte other) {
        return one >= other ? one : other;
    }

    /**
     * Writes the discharge of each pair of readings, bit for bit as {@link #discharge}. Blocks of readings are worked on in
     * passes without a branch, as if all of them were taken in flowing water; the others are then done one by one.
     */
    void discharges(double[] depths, double[] velocities, double[] discharges) {
        Blocks blocks = new Blocks(depths, velocities, discharges);
        while (blocks.hasNext()) {
            blocks.next();
        }
    }

    /** The discharges of pairs of readings, block after block, so that whoever needs more of a pair finds it in the cache. */
    final class Blocks {
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
        private int products;
        private boolean overflows;

        Blocks(double[] depths, double[] velocities, double[] discharges) {
            this.depths = depths;
            this.velocities = velocities;
            this.discharges = discharges;
            inPlace = discharges == depths || discharges == velocities;
            depth = new double[0];
            area = depth;
            places = new int[Math.min(BLOCK, depths.length)];
            fours = new int[places.length / 4 + 1];
        }

        boolean hasNext() {
            return to < depths.length;
        }

        /** Writes the discharges of the next block. */
        void next() {
            advance();
            if (showsOthers && !inPlace) {
                stretch();
                mendCircle(CircleLoops.notFinite(discharges, from, to, places, fours));
            } else {
                ofAny();
            }
        }

        /**
         * The same, and finds the pairs that are not water under the soffit that flows forward.
         *
         * @return how many; they are in {@link #places()}
         */
        int nextAndOthers() {
            advance();
            if (showsOthers && !inPlace) {
                CircleLoops.discharge(depths, velocities, discharges, from, to, soffit, velocityFactor);
                // What is finite and above 0 is the product of a depth under the soffit and a velocity above 0.
                int count = CircleLoops.notPositive(discharges, from, to, places, fours);
                mendCircle(count);
                return count;
            }
            ofAny();
            return notPlain();
        }

        private void advance() {
            from = to;
            to = from + Math.min(BLOCK, depths.length - from);
        }

        /** The memory is slow to start: a long loop waits for it once, and what is done block by block then finds all near. */
        private void stretch() {
            if (from >= products) {
                products = from + Math.min(STRETCH, depths.length - from);
                CircleLoops.discharge(depths, velocities, discharges, from, products, soffit, velocityFactor);
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
                mend(depths, velocities, discharges, from, to);
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

        /** Finds the others by both readings, without a jump, by the order of their bits. */
        private int notPlain() {
            long lowest = Double.doubleToRawLongBits(lowestPlain);
            long highest = Double.doubleToRawLongBits(highestPlain());
            int count = 0;
            for (int i = from; i < to; i++) {
                long reading = Double.doubleToRawLongBits(depths[i]);
                long velocity = Double.doubleToRawLongBits(velocities[i]);
                places[count] = i;
                count += (int) ((reading - lowest | highest - reading | velocity - 1 | INFINITE - velocity) >>> 63);
            }
            return count;
        }

        /** Where in the readings the others of the block done last are, from index 0 on. */
        int[] places() {
            return places;
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

    /**
     * What the loop of the circle leaves to be said. A depth above the soffit, none at all and a missing velocity are one
     * formula, since which of them comes next is what a processor guesses wrongly: without a depth the last term is NaN, and
     * else the 0 that makes a 0 of −0.
     */
    private double other(double depth, double velocity, double product) {
        boolean isUsual = !(depth <= 0) && !(depth > LARGEST_DEPTH_READING) && !(Math.abs(velocity) > Double.MAX_VALUE);
        if (isUsual) {
            double full = Math.fma(velocityFactor * velocity, fullArea, 0 * depth);
            return Double.isNaN(product) ? full : product;
        }
        PipeMonitor.notInfinite("velocityReadings", velocity);
        return isPlain(depth) || Double.isNaN(depth) ? product : special(depth, velocity);
    }

    /** Does one by one the readings that are no product; without a depth the product is missing as it must be. */
    @SuppressWarnings("ShortCircuitBoolean") // one jump instead of three
    private void mend(double[] depths, double[] velocities, double[] discharges, int from, int to) {
        double lowest = lowestPlain;
        for (int i = from; i < to; i++) {
            double depth = depths[i];
            // Both are false for a missing depth; one jump for all three, hardly ever taken.
            if (depth < lowest | depth > LARGEST_DEPTH_READING | Math.abs(velocities[i]) > Double.MAX_VALUE) {
                PipeMonitor.notInfinite("velocityReadings", velocities[i]);
                discharges[i] = special(depth, velocities[i]);
            }
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

    /** Up to here a depth is one of flowing water under the soffit. */
    private double highestPlain() {
        double open = LARGEST_DEPTH_READING;
        return Double.isInfinite(soffit) ? open : Math.min(soffit - offset - 4 * Math.ulp(soffit), open);
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
