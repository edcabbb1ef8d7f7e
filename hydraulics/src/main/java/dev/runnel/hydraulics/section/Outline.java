package dev.runnel.hydraulics.section;

import dev.runnel.internal.Roots;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;

/** The boundary of a section: wall pieces with the sign they count with, and level stretches. Levels are checked by users. */
final class Outline {
    /** A wall piece; {@code weight} is its part in the width (2 for mirrored, ±1 for two walls), {@code copies} its number. */
    record Part(Piece piece, double weight, double copies) {}

    /** A level stretch, wet when the water stands above it. */
    record Flat(double level, double length) {}

    private final List<Part> parts;
    private final List<Flat> flats;
    private final double height;

    /** Levels at which a piece begins or ends, and so each level stretch lies, from the invert up; 0 is the first. */
    private final double[] breaks;

    private final double[] breakAreas;

    /** What lies whole below each break, and what is cut between it and the next. */
    private final double[] areasBelow;

    private final double[] lengthsBelow;
    private final Part[][] cut;

    /** Level stretches in the soffit itself. */
    private final double soffitLength;

    Outline(List<Part> parts, List<Flat> flats, double height) {
        this.parts = List.copyOf(parts);
        this.flats = List.copyOf(flats);
        this.height = height;
        TreeSet<Double> ends = new TreeSet<>(List.of(0.0));
        parts.forEach(part -> {
            ends.add(part.piece().low());
            ends.add(part.piece().high());
        });
        ends.remove(Double.POSITIVE_INFINITY);
        this.breaks = ends.stream().mapToDouble(Double::doubleValue).toArray();
        this.areasBelow = new double[breaks.length];
        this.lengthsBelow = new double[breaks.length];
        this.cut = new Part[breaks.length][];
        for (int i = 0; i < breaks.length; i++) {
            sumBelow(i);
        }
        this.soffitLength = flats.stream()
                .filter(flat -> flat.level() >= height)
                .mapToDouble(Flat::length)
                .sum();
        this.breakAreas = Arrays.stream(breaks).map(this::area).toArray();
    }

    private void sumBelow(int i) {
        double level = breaks[i];
        List<Part> above = new ArrayList<>();
        for (Part part : parts) {
            Piece piece = part.piece();
            if (piece.high() <= level) {
                areasBelow[i] += part.weight() * piece.area(piece.high());
                lengthsBelow[i] += part.copies() * piece.length(piece.high());
            } else if (piece.low() <= level) {
                above.add(part);
            }
        }
        for (Flat flat : flats) {
            lengthsBelow[i] += flat.level() <= level ? flat.length() : 0;
        }
        cut[i] = above.toArray(Part[]::new);
    }

    /** The last level below a depth, the invert for depth 0. There are few, and each is compared without a jump. */
    private int under(double depth) {
        int count = 0;
        for (double level : breaks) {
            count += level < depth ? 1 : 0;
        }
        return Math.max(count - 1, 0);
    }

    double height() {
        return height;
    }

    double[] breaks() {
        return breaks.clone();
    }

    double area(double depth) {
        if (depth == 0) {
            return 0;
        }
        int under = under(depth);
        double sum = areasBelow[under];
        for (Part part : cut[under]) {
            sum += part.weight() * part.piece().area(depth);
        }
        return sum;
    }

    double perimeter(double depth) {
        if (depth == 0) {
            return 0;
        }
        int under = under(depth);
        double sum = lengthsBelow[under] + (depth == height ? soffitLength : 0);
        for (Part part : cut[under]) {
            sum += part.copies() * part.piece().length(depth);
        }
        return sum;
    }

    /** Width from below at a corner, except at the invert. */
    double width(double depth) {
        double sum = 0;
        for (Part part : cut[under(depth)]) {
            sum += part.weight() * part.piece().x(depth);
        }
        return sum;
    }

    /** First moment of the area about the surface. */
    double moment(double depth) {
        double sum = 0;
        for (Part part : parts) {
            Piece piece = part.piece();
            if (piece.low() < depth) {
                double top = Math.min(depth, piece.high());
                double lifted = depth > top ? piece.area(top) * (depth - top) : 0;
                sum += part.weight() * (piece.moment(top) + lifted);
            }
        }
        return sum;
    }

    double centroidDepth(double depth) {
        return depth == 0 ? 0 : moment(depth) / area(depth);
    }

    /** Area at the soffit, +∞ for an open outline. */
    double fullArea() {
        return Double.isInfinite(height) ? height : breakAreas[breaks.length - 1];
    }

    double depthForArea(double area) {
        int next = 0;
        while (next < breaks.length && breakAreas[next] < area) {
            next++;
        }
        if (next < breaks.length && breakAreas[next] == area) {
            return breaks[next];
        }
        double top =
                next < breaks.length ? breaks[next] : Roots.doubled(y -> area(y) - area, Math.max(breaks[next - 1], 1));
        if (next > 1) {
            return Roots.between(y -> area(y) - area, breaks[next - 1], top);
        }
        // From the invert: the logarithms are nearly proportional, over any number of decades.
        return Roots.overDecades(y -> Math.log(area(y) / area), top);
    }

    /** Largest width at any level; of a closed outline. Arcs are cut at their widest, so it is at a break. */
    double largestWidth() {
        return Arrays.stream(breaks)
                .map(level -> Math.max(width(level), level < height ? width(Math.nextUp(level)) : 0))
                .max()
                .orElseThrow();
    }

    /** The outline above a level bed. */
    Outline above(double level) {
        List<Part> kept = new ArrayList<>();
        for (Part part : parts) {
            if (part.piece().high() > level) {
                kept.add(new Part(part.piece().above(level), part.weight(), part.copies()));
            }
        }
        List<Flat> flatsKept = new ArrayList<>();
        for (Flat flat : flats) {
            if (flat.level() > level) {
                flatsKept.add(new Flat(flat.level() - level, flat.length()));
            }
        }
        // From just above, so that a bench at this very level is part of the bed.
        double bed = width(Math.nextUp(level));
        if (bed > 0) {
            flatsKept.add(new Flat(0, bed));
        }
        return new Outline(kept, flatsKept, height - level);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Outline
                && parts.equals(((Outline) other).parts)
                && flats.equals(((Outline) other).flats);
    }

    @Override
    public int hashCode() {
        return 31 * parts.hashCode() + flats.hashCode();
    }
}
