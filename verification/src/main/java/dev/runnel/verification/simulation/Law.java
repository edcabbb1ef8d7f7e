package dev.runnel.verification.simulation;

import org.apache.commons.math3.util.FastMath;

/**
 * How fast the water runs at a depth on this site, v₀ (R/R₀)^⅔ (y/y₀)^δ, with a bend of the exponent above a depth on some
 * sites; and the inverse, at which depth a flow runs. Above the greatest flow the pipe is surcharged: the depth rises
 * with the square of the flow.
 */
final class Law {
    private static final int STEPS = 1500;
    /** Share of the height up to which the depth of a flow follows the law. */
    private static final double FREE = 0.92;

    private final Pipe pipe;
    private final double referenceDepth;
    private final double referenceVelocity;
    private final double referenceRadius;
    private final double excess;
    private final double bendDepth;
    private final double bend;
    private final double crest;
    private final double weirFlow;
    private final double[] discharge = new double[STEPS + 1];

    Law(Pipe pipe, double referenceDepth, double referenceVelocity, double excess, double bendDepth, double bend) {
        this(pipe, referenceDepth, referenceVelocity, excess, bendDepth, bend, 0, Double.POSITIVE_INFINITY);
    }

    private Law(
            Pipe pipe,
            double referenceDepth,
            double referenceVelocity,
            double excess,
            double bendDepth,
            double bend,
            double crest,
            double weirFlow) {
        this.pipe = pipe;
        this.referenceDepth = referenceDepth;
        this.referenceVelocity = referenceVelocity;
        this.referenceRadius = pipe.area(referenceDepth) / pipe.perimeter(referenceDepth);
        this.excess = excess;
        this.bendDepth = bendDepth;
        this.bend = bend;
        this.crest = crest;
        this.weirFlow = weirFlow;
        for (int i = 1; i <= STEPS; i++) {
            double depth = FREE * pipe.height() * i / STEPS;
            discharge[i] = FastMath.max(discharge[i - 1] * (1 + 1e-9), velocity(depth) * pipe.area(depth));
        }
    }

    /**
     * This law with a weir downstream that ponds the water: no flow up to its crest, and at the reference depth so many
     * times the flow of the pipe. What runs at a depth is less than either lets through.
     */
    Law behindWeir(double crestDepth, double times) {
        return new Law(
                pipe,
                referenceDepth,
                referenceVelocity,
                excess,
                bendDepth,
                bend,
                crestDepth,
                times * referenceVelocity * pipe.area(referenceDepth));
    }

    Pipe pipe() {
        return pipe;
    }

    /** Depth at which the velocity is the one the law was made with, m. */
    double referenceDepth() {
        return referenceDepth;
    }

    /** Slope by which a pipe of n = 0.013 would carry the reference flow, times a factor, m/m. */
    double gradient(double factor) {
        double root = 0.013 * referenceVelocity / FastMath.pow(referenceRadius, 2.0 / 3);
        return factor * root * root;
    }

    /** Velocity at a depth, m/s, as if nothing were held up; above the soffit that of the full pipe. */
    double velocity(double depth) {
        return velocity(FastMath.min(depth, pipe.height()), 0);
    }

    /** The same above a level bed; the depth from the invert. */
    private double velocity(double depth, double bed) {
        double area = pipe.area(depth) - pipe.area(bed);
        double perimeter = pipe.perimeter(depth) - (bed > 0 ? pipe.perimeter(bed) - pipe.width(bed) : 0);
        double ratio = area / perimeter / referenceRadius;
        double above = depth - bed > bendDepth ? bend * FastMath.log((depth - bed) / bendDepth) : 0;
        double free = referenceVelocity
                * FastMath.exp(
                        2.0 / 3 * FastMath.log(ratio) + excess * FastMath.log((depth - bed) / referenceDepth) + above);
        return crest > 0 ? ponded(free, depth, area) : free;
    }

    /** Velocity where both the pipe and the weir resist. */
    private double ponded(double free, double depth, double area) {
        if (depth <= crest) {
            return 0;
        }
        double weir = weirFlow * FastMath.pow((depth - crest) / (referenceDepth - crest), 1.5) / area;
        return FastMath.pow(FastMath.pow(free, -3) + FastMath.pow(weir, -3), -1.0 / 3);
    }

    /** Flow at a depth, m³/s. */
    double flow(double depth) {
        return velocity(depth) * pipe.area(depth);
    }

    /** Depth at which a flow runs, m. */
    double depth(double flow) {
        if (flow >= discharge[STEPS]) {
            double over = flow / discharge[STEPS];
            return pipe.height() * FastMath.min(4, FREE + 1.5 * (over * over - 1));
        }
        int low = 0;
        int high = STEPS;
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (discharge[middle] <= flow) {
                low = middle;
            } else {
                high = middle;
            }
        }
        double part = low == 0
                // Near the invert the flow goes with a power of the depth, not along a line.
                ? FastMath.pow(flow / discharge[1], 0.45)
                : (flow - discharge[low]) / (discharge[high] - discharge[low]);
        return FREE * pipe.height() * (low + part) / STEPS;
    }

    /** Depth from the invert at which a flow runs over a level bed of sediment, m. */
    double depthOverBed(double flow, double bed) {
        if (bed <= 0) {
            return depth(flow);
        }
        double low = bed + 1e-6;
        double high = FREE * pipe.height();
        if (velocity(high, bed) * (pipe.area(high) - pipe.area(bed)) <= flow) {
            return FastMath.max(high, depth(flow));
        }
        for (int i = 0; i < 40; i++) {
            double middle = (low + high) / 2;
            if (velocity(middle, bed) * (pipe.area(middle) - pipe.area(bed)) < flow) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }
}
