package dev.runnel.verification.simulation;

import org.apache.commons.math3.util.FastMath;

/**
 * What lies downstream and holds the water up: a share of the depth at any flow, a dam that large flows drown, or a
 * narrow place whose loss grows with the square of the flow. All lift the usual depth by the same share.
 */
enum Obstruction {
    SHARE {
        @Override
        double depth(double normal, double flow, double rise, double usualDepth, double usualFlow) {
            return normal * (1 + rise);
        }
    },
    DAM {
        @Override
        double depth(double normal, double flow, double rise, double usualDepth, double usualFlow) {
            // Water over the crest, h ~ q^⅔; the deeper of the two depths prevails, with a smooth change between them.
            double wanted = usualDepth * FastMath.pow(FastMath.pow(1 + rise, BLEND) - 1, 1 / BLEND);
            double over = FastMath.min(0.3 * usualDepth, 0.5 * wanted);
            double crest = wanted - over;
            double dammed = crest + over * FastMath.pow(FastMath.max(0, flow) / usualFlow, 2.0 / 3);
            return FastMath.pow(FastMath.pow(normal, BLEND) + FastMath.pow(dammed, BLEND), 1 / BLEND);
        }
    },
    NARROWS {
        @Override
        double depth(double normal, double flow, double rise, double usualDepth, double usualFlow) {
            double ratio = flow / usualFlow;
            // The square law of a narrow place would lift a storm without limit; water finds its way over it.
            double loss = rise * usualDepth * FastMath.min(ratio * ratio, 1 + 2 * FastMath.log(FastMath.max(1, ratio)));
            return normal + loss;
        }
    };

    private static final double BLEND = 4;

    /**
     * Depth at the monitor, m.
     *
     * @param normal depth at which the flow would run, m
     * @param flow m³/s
     * @param rise share by which the usual depth is lifted
     * @param usualDepth m
     * @param usualFlow m³/s
     */
    abstract double depth(double normal, double flow, double rise, double usualDepth, double usualFlow);
}
