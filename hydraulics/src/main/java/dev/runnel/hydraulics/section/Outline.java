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
    private final double[] breaks;
    private final double[] breakAreas;

    Outline(List<Part> parts, List<Flat> flats, double height) {
        this.parts = List.copyOf(parts);
        this.flats = List.copyOf(flats);
        this.height = height;
        TreeSet<Double> levels = new TreeSet<>(List.of(0.0));
        parts.forEach(part -> {
            levels.add(part.piece().low());
            levels.add(part.piece().high());
        });
        levels.remove(Double.POSITIVE_INFINITY);
        this.breaks = levels.stream().mapToDouble(Double::doubleValue).toArray();
        this.breakAreas = Arrays.stream(breaks).map(this::area).toArray();
    }

    double height() {
        return height;
    }

    double[] breaks() {
        return breaks.clone();
    }

    double area(double depth) {
        double sum = 0;
        for (Part part : parts) {
            Piece piece = part.piece();
            if (piece.low() < depth) {
                sum += part.weight() * piece.area(Math.min(depth, piece.high()));
            }
        }
        return sum;
    }

    double perimeter(double depth) {
        double sum = 0;
        for (Part part : parts) {
            Piece piece = part.piece();
            if (piece.low() < depth) {
                sum += part.copies() * piece.length(Math.min(depth, piece.high()));
            }
        }
        for (Flat flat : flats) {
            if (flat.level() < depth || depth == height) {
                sum += flat.length();
            }
        }
        return sum;
    }

    /** Width from below at a corner, except at the invert. */
    double width(double depth) {
        double sum = 0;
        for (Part part : parts) {
            Piece piece = part.piece();
            boolean spans = piece.low() < depth && depth <= piece.high();
            if (spans || depth == 0 && piece.low() == 0) {
                sum += part.weight() * piece.x(depth);
            }
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
        double top = next < breaks.length ? breaks[next] : 2 * Math.max(breaks[next - 1], 1);
        while (area(top) < area) {
            top *= 2;
        }
        if (next > 1) {
            return Roots.between(y -> area(y) - area, breaks[next - 1], top);
        }
        // From the invert: the logarithms are nearly proportional, over any number of decades.
        double bottom = top;
        do {
            bottom /= 16;
        } while (area(bottom) > area);
        double end = top;
        double log =
                Roots.between(u -> Math.log(area(Math.min(Math.exp(u), end)) / area), Math.log(bottom), Math.log(top));
        return Math.min(Math.exp(log), end);
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
