package dev.runnel.hydraulics.flow;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.stream.DoubleStream;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;

/**
 * The depth along a uniform reach from a known one: slow flow against the stream, fast flow with it.
 *
 * <p>In a uniform reach the equation of varied flow has the distance alone on one side, x = ∫ (1 − Fr²)/(S₀ − Sf) dy, and
 * the depth only rises or only falls: towards the next depth where S₀ − Sf changes its sign (normal depth, or a bench or
 * soffit where friction jumps), towards critical depth, or upwards without end. The integral is cut at the corners of the
 * section and halved until halving changes it no more; towards a normal depth the logarithm of the difference makes it
 * smooth. So no depth can pass normal or critical depth, and the error does not depend on where answers are wanted.
 */
final class DepthCurve {
    /** Relative error of a distance at which a piece of the integral is halved no more; chosen here. */
    private static final double HALVING_ERROR = 1e-10;

    /** Deepest halving; chosen here: beyond it the rounding of S₀ − Sf near normal depth would be halved. */
    private static final int HALVINGS = 10;

    /** Of the depth: an error at which a piece is halved no more; chosen here. */
    private static final double DEPTH_ERROR = 1e-11;

    /** Of the normal depth: a difference that counts as none; chosen here. */
    private static final double ARRIVED = 1e-10;

    /** Of the slopes: a difference that counts as none, as the normal depth has its rounding; chosen here. */
    private static final double UNIFORM = 1e-12;

    /** Longest piece before halving, in the logarithm. */
    private static final double PIECE = 1;

    private static final GaussIntegrator GAUSS = new GaussIntegratorFactory().legendre(10);

    private final ReachFlow flow;
    private final double start;
    /** Depth towards which it goes, +∞ without end; that of the start if it stays. */
    private final double target;
    /** Whether the curve goes on at its target (normal depth, a bench), or ends there (critical depth). */
    private final boolean goesOn;

    /** y = base + sign · exp(way · u), with u growing from that of the start to that of the target. */
    private final double base;

    private final double sign;
    private final double way;
    private final double first;
    private final double last;
    private final double[] cuts;

    private final Deque<Piece> pieces = new ArrayDeque<>();

    private DepthCurve(ReachFlow flow, double start, double target, boolean isZero, boolean goesOn, double[] corners) {
        this.flow = flow;
        this.start = start;
        this.target = target;
        this.goesOn = goesOn;
        this.base = isZero ? target : 0;
        this.sign = Math.signum(start - base);
        double from = Math.log(Math.abs(start - base));
        double to = isZero ? Math.log(ARRIVED * target) : Math.log(target);
        this.way = to > from ? 1 : -1;
        this.first = way * from;
        this.last = way * to;
        // Those behind the start and beyond the target cut nothing, or cut once more than needed.
        this.cuts = Arrays.stream(corners)
                .map(corner -> way * Math.log(Math.abs(corner - base)))
                .toArray();
    }

    /** Slow flow upstream from a level at or above critical depth. */
    static DepthCurve slow(ReachFlow flow, double start) {
        return of(flow, start, false);
    }

    /** Fast flow downstream from a depth at or below critical depth. */
    static DepthCurve fast(ReachFlow flow, double start) {
        double from = Math.min(start, flow.fastestFor(start));
        return of(flow, from, true);
    }

    private static DepthCurve of(ReachFlow flow, double start, boolean fast) {
        double above = flow.slopeExcess(Math.nextUp(start));
        double below = flow.slopeExcess(Math.nextDown(start));
        double none = UNIFORM * Math.max(Math.abs(flow.bedSlope()), flow.frictionSlope(start));
        boolean rises = above < -none;
        double[] corners = flow.reach().section().breakDepths();
        if (!rises && !(below > none)) {
            return new DepthCurve(flow, start, start, false, true, corners);
        }
        double zero = next(flow.normalDepths(), start, rises);
        double ledge = next(flow.ledges(), start, rises);
        // Slow flow that falls and fast flow that rises end at critical depth; the others have no end.
        double end = rises ? fast ? flow.lowestCritical() : Double.POSITIVE_INFINITY : fast ? 0 : flow.critical();
        double target = rises ? Math.min(zero, Math.min(ledge, end)) : Math.max(zero, Math.max(ledge, end));
        boolean isZero = target == zero && target != end;
        boolean goesOn = target != end || !Double.isFinite(target) || target == 0;
        return new DepthCurve(flow, start, target, isZero, goesOn, corners);
    }

    /** The nearest of some depths in the direction it goes; those beyond critical depth lie behind its end. */
    private static double next(double[] depths, double start, boolean rises) {
        DoubleStream beyond = Arrays.stream(depths).filter(depth -> rises ? depth > start : depth < start);
        return rises
                ? beyond.min().orElse(Double.POSITIVE_INFINITY)
                : beyond.max().orElse(0);
    }

    /**
     * Returns the depth at a distance from the start, against the stream for slow flow, with it for fast flow.
     *
     * @return depth or level, m; NaN beyond the place where the curve reaches critical depth
     */
    double depthAt(double distance) {
        if (distance == 0 || start == target && goesOn) {
            return start;
        }
        extendTo(distance);
        for (Piece piece : pieces) {
            if (distance <= piece.end()) {
                return inside(piece, distance - piece.distance());
            }
        }
        return goesOn ? target : Double.NaN;
    }

    /** The depth at a distance, or at the end of the curve if that comes before: for distances that rounding carries over. */
    double depthWithin(double distance) {
        double depth = depthAt(distance);
        return Double.isNaN(depth) ? target : depth;
    }

    /** Distance at which the curve ends at critical depth, m; +∞ if it goes on. */
    double end(double distance) {
        if (goesOn) {
            return Double.POSITIVE_INFINITY;
        }
        extendTo(distance);
        return isWhole() ? reached() : Double.POSITIVE_INFINITY;
    }

    private double reached() {
        return pieces.isEmpty() ? 0 : pieces.getLast().end();
    }

    private boolean isWhole() {
        return !pieces.isEmpty() && pieces.getLast().to() == last;
    }

    private void extendTo(double distance) {
        while (reached() < distance && !isWhole()) {
            double from = pieces.isEmpty() ? first : pieces.getLast().to();
            double to = Math.min(from + PIECE, last);
            for (double cut : cuts) {
                if (from < cut && cut < to) {
                    to = cut;
                }
            }
            add(from, to, integral(from, to), HALVINGS);
        }
    }

    private void add(double from, double to, double whole, int halvings) {
        double middle = (from + to) / 2;
        double first = integral(from, middle);
        double second = integral(middle, to);
        double error = Math.abs(first + second - whole);
        // The halves are far better than the whole they are compared with.
        if (halvings == 0 || error <= HALVING_ERROR * (first + second) || depthError(to, error) <= DEPTH_ERROR) {
            pieces.add(new Piece(from, middle, reached(), first));
            pieces.add(new Piece(middle, to, reached(), second));
        } else {
            add(from, middle, first, halvings - 1);
            add(middle, to, second, halvings - 1);
        }
    }

    /** What an error of the distance makes of the depth at the end of a piece, relative. */
    private double depthError(double u, double error) {
        double depth = depth(u);
        return error / (Math.abs(flow.distancePerDepth(depth)) * depth);
    }

    /**
     * The depth at a distance from the beginning of a piece, by Newton's method kept inside it: the slope is known, and each try
     * is an integral, of which a search that asks for values alone needs three times as many.
     */
    private double inside(Piece piece, double distance) {
        double low = piece.from();
        double high = piece.to();
        double u = piece.length() == 0 ? high : low + (high - low) * distance / piece.length();
        for (int i = 0; i < 60; i++) {
            double excess = integral(piece.from(), u) - distance;
            if (Math.abs(excess) <= 1e-15 * piece.length()) {
                break;
            }
            if (excess > 0) {
                high = u;
            } else {
                low = u;
            }
            double next = u - excess / rate(u);
            if (!(low < next && next < high)) {
                next = (low + high) / 2;
            }
            if (Math.abs(next - u) <= 1e-14 * Math.max(1, Math.abs(u))) {
                break;
            }
            u = next;
        }
        return bounded(depth(u));
    }

    /** Rounding must not carry a depth over the one it goes to, nor behind the one it comes from. */
    private double bounded(double depth) {
        return Math.max(Math.min(start, target), Math.min(depth, Math.max(start, target)));
    }

    private double integral(double from, double to) {
        double half = (to - from) / 2;
        double middle = (from + to) / 2;
        double sum = 0;
        for (int i = 0; i < GAUSS.getNumberOfPoints(); i++) {
            sum += GAUSS.getWeight(i) * rate(middle + half * GAUSS.getPoint(i));
        }
        return sum * half;
    }

    /** |dx/du|. */
    private double rate(double u) {
        double step = Math.exp(way * u);
        return Math.abs(flow.distancePerDepth(base + sign * step)) * step;
    }

    private double depth(double u) {
        return base + sign * Math.exp(way * u);
    }

    /** A piece of the curve: from one u to another, the distance at its beginning, and its length. */
    private record Piece(double from, double to, double distance, double length) {
        double end() {
            return distance + length;
        }
    }
}
