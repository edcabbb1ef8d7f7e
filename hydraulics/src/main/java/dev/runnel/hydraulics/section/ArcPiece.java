package dev.runnel.hydraulics.section;

import dev.runnel.hydraulics.internal.Segment;

/**
 * An arc of a circle within one quadrant. The ends are kept both as places (x, level) and as offsets (u, v) from the
 * centre; u ≥ 0 is measured towards {@code side}, +1 where the arc lies right of its centre and −1 where it lies left.
 *
 * <p>Everything is the trapezoid under the chord plus or minus the segment between chord and arc, which
 * {@link Segment} knows with full relative accuracy. The square of u is taken as a difference from the nearer of the two
 * ends that makes it a sum of positive terms: from the lower end below the centre, from the upper end above it.
 */
record ArcPiece(
        double x0,
        double low,
        double u0,
        double v0,
        double x1,
        double high,
        double u1,
        double v1,
        double radius,
        int side)
        implements Piece {
    /** Far above the numbers whose digits are cut off. */
    private static final double TINY = 1e-280;

    private double u(double level) {
        if (v0 < 0) {
            double h = level - low;
            return Math.sqrt(Math.max(u0 * u0 - h * (2 * v0 + h), 0));
        }
        double g = high - level;
        return Math.sqrt(Math.max(u1 * u1 + g * (2 * v1 - g), 0));
    }

    /** x − x0, without the cancellation of the plain difference. */
    private double rise(double level) {
        double h = level - low;
        double sum = u(level) + u0;
        // 0 at the foot, and for films so thin that their square is below the range of double.
        return sum == 0 ? 0 : -side * h * (2 * v0 + h) / sum;
    }

    /**
     * From the nearer end: where that one lies on the middle line, the place is a small part of how far out the other is, and
     * so is the width of a narrow foot or crown. Neither way is a difference of near numbers, as v keeps its sign.
     */
    @Override
    public double x(double level) {
        double g = high - level;
        if (level - low <= g) {
            return x0 + rise(level);
        }
        double sum = u(level) + u1;
        return sum == 0 ? x1 : x1 + side * g * (2 * v1 - g) / sum;
    }

    /** Square of the sine of half the angle between the radii to the lower end and to the level, up to 1/2. */
    private double halfSineSquared(double level) {
        double h = (level - low) * perDiameter();
        double r = rise(level) * perDiameter();
        return Math.min(h * h + r * r, 0.5);
    }

    private double perDiameter() {
        return 0.5 / radius;
    }

    /** Half the angle φ is the half angle of a segment of the height sin²(φ/2); a film too thin for its square is its chord. */
    @Override
    public double length(double level) {
        double square = halfSineSquared(level);
        return square > TINY ? radius * Segment.halfAngle(square) : Math.hypot(level - low, rise(level));
    }

    @Override
    public double area(double level) {
        double h = level - low;
        double segment = 4 * radius * radius * Segment.area(unitHeight(halfSineSquared(level)));
        return h * (x0 + x(level)) / 2 + side * segment;
    }

    @Override
    public double moment(double level) {
        double h = level - low;
        double square = halfSineSquared(level);
        double height = unitHeight(square);
        double segment = 4 * radius * radius * Segment.area(height);
        double aboutChord = 8 * radius * radius * radius * Segment.moment(height);
        // Vertical part of the direction from the centre to the middle of the arc.
        double up = (v0 + h / 2) / (radius * Math.sqrt(1 - square));
        return h * h * (2 * x0 + x(level)) / 6 + side * (segment * h / 2 - aboutChord * up);
    }

    /** Height of the segment over its circle's diameter, (1 − cos φ)/2; at most 0.1465 in one quadrant. */
    private static double unitHeight(double halfSineSquared) {
        return Math.min(halfSineSquared / (2 * (1 + Math.sqrt(1 - halfSineSquared))), Segment.SERIES_LIMIT);
    }

    @Override
    public Piece above(double level) {
        if (level <= low) {
            return new ArcPiece(x0, low - level, u0, v0, x1, high - level, u1, v1, radius, side);
        }
        return new ArcPiece(x(level), 0, u(level), v0 + (level - low), x1, high - level, u1, v1, radius, side);
    }

    @Override
    public Piece inverted(double height) {
        return new ArcPiece(x1, height - high, u1, -v1, x0, height - low, u0, -v0, radius, side);
    }

    @Override
    public Piece endless() {
        throw new IllegalArgumentException("an open wall must end with a rising straight piece, was an arc");
    }
}
