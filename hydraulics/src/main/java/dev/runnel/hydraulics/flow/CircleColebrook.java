package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.internal.Segment;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.internal.Roots;
import java.util.function.DoubleUnaryOperator;

/**
 * Uniform flow by the law of Colebrook and White in a circle: the depth of a discharge without a search, so that a conduit
 * that is asked once costs little.
 *
 * <p>With x = y/D, the parts a = A/D², p = P/D and ρ = a/p of the unit circle, and α = ks/(14.8 D),
 * β = 2.51 ν/(4 D √(8 g S D)), the discharge is
 *
 * <pre>
 * Q = D² √(8 g S D) · (2/ln 10) · a √ρ (−L)     L = ln(α/ρ + β/ρ^(3/2))
 * </pre>
 *
 * <p>Manning's law, whose inverse is known, gives a start within some per cent; from there each step solves the quadratic
 * that has the curve's value, slope and curvature, which goes on working at the crest, where the slope vanishes. Two steps
 * are the rule.
 *
 * <p>Only for pipes that have twice the least Reynolds' number of turbulent flow when full, and ks below 4R there; a laminar
 * depth is found by {@link LaminarFilm}, and one at which the flow is neither, or the wall rougher than deep, by secants.
 */
final class CircleColebrook implements UniformCurve {
    static final double FULL_AREA = Math.PI / 4;

    /** A step so short, as a part of the depth and of the way to the crest, leaves an error of its cube. */
    private static final double SHORT = 1e-5;

    private static final int MOST_STEPS = 30;

    private static final double HALF = 0.5;

    /** Of ln Q by ln y below the middle in turbulent flow, and bounds of that of all laws with a margin. */
    private static final double USUAL_RISE = 2.2;

    private static final double LEAST_RISE = 1.2;

    private static final double MOST_RISE = 6;

    /** A start with so small a part of the least Reynolds' number, and a step so short from there, will not become turbulent. */
    private static final double SURELY_BELOW = 0.25;

    private static final double SHORT_STEP = 0.3;

    /** A secant's step so short leaves nothing but rounding. */
    private static final double CLOSE = 1e-14;

    /** As a part of the discharge; at the crest no step gets closer. */
    private static final double ROUNDING = 4e-16;

    /** Newton's next step would be the square of this one. */
    private static final double CREST_STEP = 1e-7;

    /** Where the start of the search for the crest lies; it is at 0.938 to 0.95. */
    private static final double NEAR_CREST = 0.94;

    /** From this part of the full-bore discharge on, whether the crest reaches it is asked first; it is 1.05 at least. */
    private static final double ASK_CREST = 1.02;

    private final Conduit conduit;
    private final double diameter;
    private final double alpha;
    private final double beta;
    private final double perUnit;
    private final ColebrookCells cells;

    /** 0 until it is known. */
    private volatile double crest;

    private CircleColebrook(Conduit conduit, ColebrookPipe pipe) {
        this.conduit = conduit;
        this.diameter = pipe.diameter;
        this.alpha = pipe.alpha;
        this.beta = pipe.beta;
        this.perUnit = pipe.perUnit;
        this.cells = new ColebrookCells(pipe);
    }

    /** The curve of a conduit, or one that searches more if its flow is not surely turbulent when full. */
    static UniformCurve of(Conduit conduit, CircularSection section, ColebrookWhite law) {
        ColebrookPipe pipe = ColebrookPipe.of(section, law, conduit.gradient().value(), conduit.gravity());
        return pipe.isTurbulent() ? new CircleColebrook(conduit, pipe) : new SlowCircle(conduit, pipe);
    }

    /** Whether the flow is turbulent and the wall less rough than deep, and not so close to either that a step decides. */
    private boolean isTurbulent(Local at) {
        return reynolds(at) >= 1.001 * DarcyFriction.TURBULENT_LIMIT && 3.7 * alpha <= 0.999 * at.radius;
    }

    private double reynolds(Local at) {
        return -2.51 * ColebrookRoot.TO_LOGARITHM * at.log / beta * at.radius * at.root;
    }

    @Override
    public double discharge(double depth) {
        return conduit.dischargeByLaw(depth);
    }

    @Override
    public double lowestDepth(double discharge) {
        double known = diameter * cells.depth(discharge * perUnit);
        return known > 0 ? known : solved(discharge);
    }

    /** Writes the lowest depth of each discharge; what the cells do not tell is left to another form. */
    void lowestDepths(double[] discharge, double[] depth, DoubleUnaryOperator other) {
        cells.depths(discharge, depth, perUnit, diameter, other);
    }

    private double solved(double discharge) {
        double q = discharge * perUnit;
        double film = LaminarFilm.part(alpha, beta, q);
        if (film > 0) {
            return diameter * film;
        }
        double ratio = q / cells.full();
        double start = CircleManning.lowestPart(Math.min(ratio, 1));
        double top = 1;
        double deepest = diameter;
        if (ratio > ASK_CREST) {
            double most = conduit.dischargeByLaw(depthOfMostDischarge());
            if (!(discharge < most)) {
                return discharge == most ? crest : Double.NaN;
            }
            deepest = crest;
            top = crest / diameter;
            start = Math.min(start, top);
        }
        double x = solve(q, start, top);
        double depth = x < 0 ? byLaw(discharge, Math.min(start, HALF)) : diameter * x;
        // A search whose own largest discharge is the last digit less finds none.
        boolean isAtCrest = deepest == crest && Double.isNaN(depth);
        return isAtCrest ? deepest : Math.min(depth, deepest);
    }

    /**
     * The depth of a discharge that is hardly turbulent, or on a wall rougher than deep: secants of ln Q over ln y, in which
     * every law of friction is nearly straight. Below the middle the discharge rises under each of them.
     */
    private double byLaw(double discharge, double start) {
        if (discharge == 0) {
            return 0;
        }
        double middle = HALF * diameter;
        double depth = diameter * start;
        double rise = USUAL_RISE;
        double excess = Math.log(conduit.dischargeByLaw(depth) / discharge);
        for (int i = 0; i < MOST_STEPS; i++) {
            double step = -excess / rise;
            double next = Math.min(depth * Math.exp(step), middle);
            if (Math.abs(step) <= CLOSE) {
                return next;
            }
            // More than the middle carries, or a discharge so small that no digits are left.
            if (next == depth || !(next > 0)) {
                break;
            }
            double before = excess;
            excess = Math.log(conduit.dischargeByLaw(next) / discharge);
            rise = Math.min(Math.max((excess - before) / Math.log(next / depth), LEAST_RISE), MOST_RISE);
            depth = next;
        }
        return conduit.curves().discharge().lowestDepthFor(discharge);
    }

    /** The zero of Q(x) − q on the rising branch, −1 where this class does not know it. */
    private double solve(double q, double start, double top) {
        double x = start;
        for (int i = 0; i < MOST_STEPS; i++) {
            if (!(x > 0)) {
                return -1;
            }
            Local here = at(x);
            if (!(here.log < 0)) {
                return -1;
            }
            double excess = 1 - q / here.value;
            double curvature = here.bend + here.slope * here.slope;
            double square = here.slope * here.slope - 2 * excess * curvature;
            // Above what the quadratic reaches, its top is the best guess.
            double step = square > 0 && here.slope + Math.sqrt(square) > 0
                    ? -2 * excess / (here.slope + Math.sqrt(square))
                    : -here.slope / curvature;
            double next = x + step;
            if (!(next <= top)) {
                next = (x + top) / 2;
            } else if (!(next > 0)) {
                next = x / 2;
            }
            double toCrest = Math.abs(here.slope / here.bend);
            boolean isShort = Math.abs(next - x) <= SHORT * Math.min(x, toCrest);
            if (isShort || Math.abs(excess) <= ROUNDING) {
                return isTurbulent(here) ? next : -1;
            }
            boolean isFar = Math.abs(next - x) > SHORT_STEP * x;
            if (!isFar && reynolds(here) < SURELY_BELOW * DarcyFriction.TURBULENT_LIMIT) {
                return -1;
            }
            x = next;
        }
        return -1;
    }

    /** Radius ρ and its root, L, discharge a √ρ (−L), and first and second derivative of its logarithm by x. */
    private record Local(double radius, double root, double log, double value, double slope, double bend) {}

    private Local at(double x) {
        boolean low = x <= 0.5;
        double w = low ? x : 1 - x;
        double segment = Segment.area(w);
        double angle = Segment.halfAngle(w);
        double area = low ? segment : FULL_AREA - segment;
        double perimeter = low ? angle : Math.PI - angle;
        double width = 2 * Math.sqrt(w * (1 - w));
        double radius = area / perimeter;
        double root = Math.sqrt(radius);
        double smooth = beta / root;
        double inner = alpha + smooth;
        double log = Math.log(inner / radius);
        // Derivatives of ln a, ln p and ln ρ by x, and of L by ln ρ.
        double ofArea = width / area;
        double ofPerimeter = 2 / (width * perimeter);
        double slopeOfWidth = (2 - 4 * x) / width;
        double ofRadius = ofArea - ofPerimeter;
        double bendOfArea = slopeOfWidth / area - ofArea * ofArea;
        double bendOfRadius = bendOfArea + ofPerimeter * (slopeOfWidth / width + ofPerimeter);
        double part = smooth / inner;
        double ofLog = (1 + 0.5 * part) / log;
        double exponent = 0.5 - ofLog;
        double slope = ofArea + ofRadius * exponent;
        double bend = bendOfArea
                + bendOfRadius * exponent
                + ofRadius * ofRadius * (0.25 * part * (1 - part) / log - ofLog * ofLog);
        return new Local(radius, root, log, area * root * -log, slope, bend);
    }

    @Override
    public double[] depths(double discharge) {
        double lowest = lowestDepth(discharge);
        if (Double.isNaN(lowest)) {
            return new double[0];
        }
        double crestDepth = depthOfMostDischarge();
        if (discharge < conduit.dischargeByLaw(diameter) || lowest == crestDepth) {
            return new double[] {lowest};
        }
        // Measured in the root of the air under the soffit, in which the round crown is smooth.
        double t = Roots.between(
                u -> Math.log(conduit.dischargeByLaw(diameter - u * u) / discharge),
                0,
                Math.sqrt(diameter - crestDepth));
        double upper = diameter - t * t;
        return upper > lowest ? new double[] {lowest, upper} : new double[] {lowest};
    }

    @Override
    public double depthOfMostDischarge() {
        double depth = crest;
        if (depth == 0) {
            double x = NEAR_CREST;
            for (int i = 0; i < MOST_STEPS; i++) {
                Local here = at(x);
                double step = here.slope / here.bend;
                x -= step;
                if (Math.abs(step) <= CREST_STEP) {
                    break;
                }
            }
            depth = x * diameter;
            crest = depth;
        }
        return depth;
    }

    @Override
    public double depthOfMostVelocity() {
        return CircleManning.FASTEST * diameter;
    }
}
