package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.internal.Roots;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * A quantity that is 0 at depth 0 (discharge, velocity, critical discharge), cut into the branches on which it only rises
 * or only falls, so that each branch can be inverted. Immutable.
 */
final class InvertibleCurve {
    /** How closely a depth must give back its value before it is taken as it was found. */
    private static final double CLOSE = 1e-13;

    private final List<Branch> branches;
    private final double[] breaks;

    private InvertibleCurve(List<Branch> branches, double[] breaks) {
        this.branches = branches;
        this.breaks = breaks;
    }

    static InvertibleCurve of(CrossSection section, double[] breaks, DoubleUnaryOperator quantity) {
        List<Branch> branches = new ArrayList<>();
        for (double[] corners : TurningDepths.of(section, breaks, quantity)) {
            for (int i = 0; i + 1 < corners.length; i++) {
                branches.add(new Branch(section, quantity, corners[i], corners[i + 1]));
            }
            if (corners.length == 1) {
                branches.add(new Branch(section, quantity, corners[0], corners[0]));
            }
        }
        return new InvertibleCurve(branches, breaks);
    }

    /** The same curve, prepared for many values: its rising first branch keeps what it finds in {@link DepthCells}. */
    InvertibleCurve forManyValues() {
        List<Branch> prepared = new ArrayList<>(branches);
        Branch first = prepared.get(0);
        if (first.low == 0 && first.lowValue == 0 && first.high > 0) {
            prepared.set(0, first.withCells(breaks));
        }
        return new InvertibleCurve(prepared, breaks);
    }

    /** Depth of the largest value; of a closed section. */
    double depthOfMaximum() {
        double depth = 0;
        double most = -1;
        for (Branch branch : branches) {
            if (branch.lowValue() > most) {
                most = branch.lowValue();
                depth = branch.low();
            }
            if (branch.highValue() > most) {
                most = branch.highValue();
                depth = branch.high();
            }
        }
        return depth;
    }

    /** The lowest depth with the value, NaN if there is none. */
    double lowestDepthFor(double value) {
        for (Branch branch : branches) {
            if (branch.holds(value)) {
                return branch.depthFor(value);
            }
        }
        return Double.NaN;
    }

    /** All depths with the value, ascending. */
    double[] depthsFor(double value) {
        double[] found = new double[branches.size()];
        int count = 0;
        for (Branch branch : branches) {
            if (branch.holds(value)) {
                double depth = branch.depthFor(value);
                // Where two branches meet, both find the same depth.
                if (count == 0 || depth > found[count - 1]) {
                    found[count++] = depth;
                }
            }
        }
        return Arrays.copyOf(found, count);
    }

    /** One rising or falling stretch, both ends included. */
    private static final class Branch {
        private final DoubleUnaryOperator quantity;
        private final double soffit;
        private final double low;
        private final double high;
        private final double lowValue;
        private final double highValue;
        private final @Nullable DepthCells cells;

        Branch(CrossSection section, DoubleUnaryOperator quantity, double low, double high) {
            this.quantity = quantity;
            this.soffit = section.height();
            this.low = low;
            this.high = high;
            this.lowValue = quantity.applyAsDouble(low);
            this.highValue = Double.isInfinite(high) ? high : quantity.applyAsDouble(high);
            this.cells = null;
        }

        private Branch(Branch other, double[] breaks) {
            this.quantity = other.quantity;
            this.soffit = other.soffit;
            this.low = other.low;
            this.high = other.high;
            this.lowValue = other.lowValue;
            this.highValue = other.highValue;
            this.cells = new DepthCells(quantity, other::search, highValue, high, other.cornerValues(breaks));
        }

        Branch withCells(double[] breaks) {
            return new Branch(this, breaks);
        }

        /** The values at which the curve may bend, ascending. */
        private double[] cornerValues(double[] breaks) {
            return Arrays.stream(breaks)
                    .filter(depth -> low < depth && depth < high)
                    .map(quantity)
                    .sorted()
                    .toArray();
        }

        double low() {
            return low;
        }

        double high() {
            return high;
        }

        double lowValue() {
            return lowValue;
        }

        double highValue() {
            return highValue;
        }

        boolean holds(double value) {
            return value >= Math.min(lowValue, highValue) && value <= Math.max(lowValue, highValue);
        }

        double depthFor(double value) {
            if (value == lowValue) {
                return low;
            }
            if (value == highValue) {
                return high;
            }
            return cells != null ? inside(cells.depth(value)) : search(value);
        }

        private double search(double value) {
            return closest(found(value), value);
        }

        /**
         * The best depth near one that a search has found in another variable: the rounding of a depth that was measured from
         * the soffit may be much of a small depth, and an ulp of the depth much of a value that rises steeply, as the critical
         * discharge does in a neck.
         */
        private double closest(double depth, double value) {
            if (Math.abs(excess(depth, value)) <= CLOSE) {
                return depth;
            }
            double nearest = Roots.between(y -> excess(y, value), inside(depth / 2), inside(2 * depth));
            for (double each : new double[] {Math.nextDown(nearest), Math.nextUp(nearest)}) {
                double neighbour = inside(each);
                nearest = Math.abs(excess(neighbour, value)) < Math.abs(excess(nearest, value)) ? neighbour : nearest;
            }
            return nearest;
        }

        private double found(double value) {
            if (low > 0) {
                return fromSoffit(value, low);
            }
            // Near the soffit the logarithm of the depth would be too coarse.
            double half = soffit / 2;
            boolean upperHalf = high > half && value > quantity.applyAsDouble(half);
            return upperHalf ? fromSoffit(value, half) : fromInvert(value);
        }

        /** From dry: the logarithms of depth and value are nearly proportional, over any number of decades. */
        private double fromInvert(double value) {
            return Roots.overDecades(y -> excess(y, value), Double.isInfinite(high) ? reaching(value, 1) : high);
        }

        /** Elsewhere; measured from the soffit in the root s = √(H − y), in which a round crown is smooth. */
        private double fromSoffit(double value, double from) {
            if (Double.isInfinite(soffit)) {
                double top = Double.isInfinite(high) ? reaching(value, from) : high;
                return Roots.between(y -> excess(y, value), from, top);
            }
            double s = Roots.between(
                    t -> excess(inside(soffit - t * t), value), Math.sqrt(soffit - high), Math.sqrt(soffit - from));
            return inside(soffit - s * s);
        }

        /** A depth above which an open section has at least the value. */
        private double reaching(double value, double from) {
            return Roots.doubled(y -> quantity.applyAsDouble(y) - value, from);
        }

        /** 0 where the depth has the value; bounded, as the critical discharge of a full section is infinite. */
        private double excess(double depth, double value) {
            return Math.min(Math.log(quantity.applyAsDouble(depth) / value), 1e4);
        }

        private double inside(double depth) {
            return Math.max(low, Math.min(depth, high));
        }
    }
}
