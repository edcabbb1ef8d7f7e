package dev.runnel.hydraulics.flow;

import dev.runnel.internal.Require;
import org.apiguardian.api.API;

/**
 * The kinds of gradually varied profiles: the letter tells the bed slope (mild, steep, critical, horizontal, adverse), the
 * number the zone (1 above normal and critical depth, 2 between, 3 below both).
 *
 * <p>Source: Ven Te Chow, Open-Channel Hydraulics, 1959, section 9-4.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public enum ProfileType {
    /** Backwater on a mild slope. */
    M1,
    /** Drawdown on a mild slope. */
    M2,
    /** Fast flow slowing down on a mild slope. */
    M3,
    /** Backwater behind a jump on a steep slope. */
    S1,
    /** Drawdown from critical to normal depth on a steep slope. */
    S2,
    /** Fast flow below normal depth on a steep slope. */
    S3,
    /** Backwater on a critical slope. */
    C1,
    /** Fast flow on a critical slope. */
    C3,
    /** Drawdown on a level bed. */
    H2,
    /** Fast flow on a level bed. */
    H3,
    /** Drawdown on an adverse bed. */
    A2,
    /** Fast flow on an adverse bed. */
    A3,
    /** Uniform flow: the depth is the normal depth. */
    UNIFORM;

    /** Relative, in which two depths count as equal. */
    private static final double EQUAL = 1e-9;

    /**
     * Returns the type of the profile that passes through a depth.
     *
     * @param reach section, gradient and resistance
     * @param discharge discharge, m³/s; greater than 0
     * @param depth depth, m; in (0, height of the section]
     * @return the type
     * @throws IllegalArgumentException if an argument is out of range or NaN
     */
    public static ProfileType ofDischargeAndDepth(Reach reach, double discharge, double depth) {
        Require.positive("depth", depth, "m");
        ReachFlow flow = new ReachFlow(reach, discharge);
        boolean fast = flow.flow().froudeNumber(depth) > 1;
        double bed = flow.bedSlope();
        if (bed <= 0) {
            return bed < 0 ? (fast ? A3 : A2) : (fast ? H3 : H2);
        }
        Side side = side(flow.frictionSlope(depth), bed);
        boolean aboveNormal = side == Side.DEEPER;
        if (side == Side.NORMAL) {
            return UNIFORM;
        }
        return switch (side(flow.frictionSlope(flow.critical()), bed)) {
            case NORMAL -> aboveNormal ? C1 : C3;
            case SHALLOWER -> aboveNormal ? M1 : fast ? M3 : M2;
            case DEEPER -> !aboveNormal ? S3 : fast ? S2 : S1;
        };
    }

    /** Of a depth beside normal depth: friction smaller than the fall is that of a deeper one. */
    private enum Side {
        SHALLOWER,
        NORMAL,
        DEEPER
    }

    private static Side side(double friction, double bed) {
        if (Math.abs(friction / bed - 1) < EQUAL) {
            return Side.NORMAL;
        }
        return friction < bed ? Side.DEEPER : Side.SHALLOWER;
    }
}
