package dev.runnel.hydraulics.section;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.ArrayList;
import java.util.List;
import org.apiguardian.api.API;

/**
 * One wall of a section, drawn from the invert upwards as arcs and straight pieces; each step returns a longer copy.
 * Immutable and thread-safe.
 *
 * <p>Places are (x, level) in m, x to the right of the middle line. The wall never falls: a level stretch is a bench or a
 * flat invert. An arc is part of a circle around a centre and may pass its widest place, but not its top or bottom.
 *
 * <pre>
 * Wall.from(0, 0).arcTo(0.5, 0.5, 0, 0.5).lineTo(0.5, 1.2).mirrored()     // a U with a flat cover
 * </pre>
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class Wall {
    /** Of the radius: both ends of an arc must be this equally far from the centre. */
    private static final double RADIUS_SLACK = 1e-9;

    /** Places between two breaks where two walls are held apart; chosen here. */
    private static final int CROSSING_SAMPLES = 52;

    private final double startX;
    private final double x;
    private final double level;
    private final List<Piece> pieces;
    private final List<Outline.Flat> flats;

    private Wall(double startX, double x, double level, List<Piece> pieces, List<Outline.Flat> flats) {
        this.startX = startX;
        this.x = x;
        this.level = level;
        this.pieces = pieces;
        this.flats = flats;
    }

    /**
     * Returns a wall that so far is only its foot.
     *
     * @param x place of the foot, m; half of the width of a flat invert, 0 for a round or pointed one
     * @param level level of the foot, m; must be 0, the invert
     * @return the foot
     * @throws IllegalArgumentException if {@code x} is not finite or {@code level} is not 0
     */
    public static Wall from(double x, double level) {
        Sizes.place("x", x);
        Require.inRange("level", level, 0, 0, "m");
        return new Wall(x, x, 0, List.of(), List.of());
    }

    /**
     * Returns the wall with a straight piece added.
     *
     * @param endX end of the piece, m
     * @param endLevel level of the end, m; not below the end of the wall so far
     * @return the longer wall
     * @throws IllegalArgumentException if the piece falls, has no length or is not finite
     */
    public Wall lineTo(double endX, double endLevel) {
        Sizes.place("endX", endX);
        if (!(endLevel >= level)) {
            throw new IllegalArgumentException("endLevel must be at least the level reached, " + Text.number(level)
                    + " m, was " + Text.number(endLevel));
        }
        Sizes.place("endLevel", endLevel);
        if (endLevel == level) {
            if (endX == x) {
                throw new IllegalArgumentException("a piece must have a length, both ends were " + at(x, level));
            }
            List<Outline.Flat> more = new ArrayList<>(flats);
            more.add(new Outline.Flat(level, Math.abs(endX - x)));
            return new Wall(startX, endX, endLevel, pieces, List.copyOf(more));
        }
        return with(List.of(LinePiece.between(x, level, endX, endLevel)), endX, endLevel);
    }

    /**
     * Returns the wall with an arc added.
     *
     * @param endX end of the arc, m
     * @param endLevel level of the end, m; above the end of the wall so far
     * @param centreX centre of the circle, m
     * @param centreLevel level of the centre, m
     * @return the longer wall
     * @throws IllegalArgumentException if the two ends are not equally far from the centre (within 1e-9 of the radius) or
     *     the arc would not rise all the way
     */
    public Wall arcTo(double endX, double endLevel, double centreX, double centreLevel) {
        Sizes.place("endX", endX);
        Sizes.centre("centreX", centreX);
        Sizes.centre("centreLevel", centreLevel);
        if (!(endLevel > level)) {
            throw new IllegalArgumentException("endLevel of an arc must be above the level reached, "
                    + Text.number(level) + " m, was " + Text.number(endLevel));
        }
        Sizes.place("endLevel", endLevel);
        double radius = Math.hypot(x - centreX, level - centreLevel);
        double endRadius = Math.hypot(endX - centreX, endLevel - centreLevel);
        if (!(Math.abs(endRadius - radius) <= RADIUS_SLACK * radius)) {
            throw new IllegalArgumentException("both ends of an arc must be equally far from its centre "
                    + at(centreX, centreLevel) + ", were " + Text.number(radius) + " m and " + Text.number(endRadius)
                    + " m");
        }
        double slack = RADIUS_SLACK * radius;
        double from = snap(x - centreX, slack);
        double to = snap(endX - centreX, slack);
        if (from * to < 0) {
            throw new IllegalArgumentException("an arc must rise all the way, from " + at(x, level) + " to "
                    + at(endX, endLevel) + " around " + at(centreX, centreLevel) + " it does not");
        }
        int side = from < 0 || to < 0 ? -1 : 1;
        double v0 = level - centreLevel;
        double v1 = endLevel - centreLevel;
        List<Piece> arcs = new ArrayList<>();
        if (v0 < 0 && v1 > 0) {
            double widest = centreX + side * radius;
            arcs.add(new ArcPiece(x, level, Math.abs(from), v0, widest, centreLevel, radius, 0, radius, side));
            arcs.add(new ArcPiece(widest, centreLevel, radius, 0, endX, endLevel, Math.abs(to), v1, radius, side));
        } else {
            arcs.add(new ArcPiece(x, level, Math.abs(from), v0, endX, endLevel, Math.abs(to), v1, radius, side));
        }
        return with(arcs, endX, endLevel);
    }

    /** Where an end lies straight above or below the centre, rounding must not decide on which side it is. */
    private static double snap(double offset, double slack) {
        return Math.abs(offset) <= slack ? 0 : offset;
    }

    private Wall with(List<? extends Piece> added, double endX, double endLevel) {
        List<Piece> more = new ArrayList<>(pieces);
        more.addAll(added);
        return new Wall(startX, endX, endLevel, List.copyOf(more), flats);
    }

    /**
     * Returns the wall upside down: what was its top is its foot.
     *
     * @return the turned wall
     */
    public Wall inverted() {
        List<Piece> turned = new ArrayList<>();
        for (int i = pieces.size() - 1; i >= 0; i--) {
            turned.add(pieces.get(i).inverted(level));
        }
        List<Outline.Flat> turnedFlats = new ArrayList<>();
        flats.forEach(flat -> turnedFlats.add(new Outline.Flat(level - flat.level(), flat.length())));
        return new Wall(x, startX, level, List.copyOf(turned), List.copyOf(turnedFlats));
    }

    /**
     * Returns the closed section with this wall on the right and its mirror image on the left. Where the wall does not end
     * on the middle line, a level soffit closes it.
     *
     * @return the section
     * @throws IllegalArgumentException if the wall has no height or crosses the middle line
     */
    public ProfileSection mirrored() {
        return new ProfileSection("ProfileSection", mirroredOutline(false));
    }

    /**
     * Returns the open section with this wall on the right and its mirror image on the left, the last straight piece
     * going on upwards without end.
     *
     * @return the section
     * @throws IllegalArgumentException if the wall crosses the middle line or does not end with a rising straight piece
     *     that keeps away from the middle line
     */
    public OpenSection mirroredOpen() {
        return new OpenSection("OpenSection", mirroredOutline(true));
    }

    private Outline mirroredOutline(boolean open) {
        requireHeight();
        List<Outline.Part> parts = new ArrayList<>();
        for (int i = 0; i < pieces.size(); i++) {
            Piece piece = pieces.get(i);
            if (piece.x(piece.low()) < 0 || piece.x(piece.high()) < 0) {
                throw new IllegalArgumentException("a mirrored wall must stay right of the middle line, x was "
                        + Text.number(Math.min(piece.x(piece.low()), piece.x(piece.high()))) + " m");
            }
            boolean last = i == pieces.size() - 1;
            parts.add(new Outline.Part(open && last ? piece.endless() : piece, 2, 2));
        }
        List<Outline.Flat> all = new ArrayList<>();
        flats.forEach(flat -> all.add(new Outline.Flat(flat.level(), 2 * flat.length())));
        if (startX > 0) {
            all.add(new Outline.Flat(0, 2 * startX));
        }
        if (!open && x > 0) {
            all.add(new Outline.Flat(level, 2 * x));
        }
        if (open && (pieces.get(pieces.size() - 1) instanceof LinePiece line) && line.slope() < 0) {
            throw new IllegalArgumentException(
                    "an open wall must not lean inwards at its end, its slope dx/dy was " + Text.number(line.slope()));
        }
        return new Outline(parts, all, open ? Double.POSITIVE_INFINITY : level);
    }

    /** The outline between two different walls. */
    static Outline between(Wall left, Wall right) {
        left.requireHeight();
        right.requireHeight();
        if (left.level != right.level) {
            throw new IllegalArgumentException("both walls must end at one level, were " + Text.number(left.level)
                    + " m and " + Text.number(right.level) + " m");
        }
        List<Outline.Part> parts = new ArrayList<>();
        right.pieces.forEach(piece -> parts.add(new Outline.Part(piece, 1, 1)));
        left.pieces.forEach(piece -> parts.add(new Outline.Part(piece, -1, 1)));
        List<Outline.Flat> all = new ArrayList<>(right.flats);
        all.addAll(left.flats);
        if (right.startX > left.startX) {
            all.add(new Outline.Flat(0, right.startX - left.startX));
        }
        if (right.x > left.x) {
            all.add(new Outline.Flat(right.level, right.x - left.x));
        }
        Outline outline = new Outline(parts, all, right.level);
        requireApart(outline);
        return outline;
    }

    /**
     * At every break from below and from above, where a ledge may cross over, and between breaks, where arcs may bulge: at
     * even distances, and ever closer to both ends, where two walls may start or end together.
     */
    private static void requireApart(Outline outline) {
        double[] breaks = outline.breaks();
        for (int i = 0; i < breaks.length; i++) {
            boolean last = i + 1 == breaks.length;
            double from = breaks[i];
            double to = last ? from : breaks[i + 1];
            boolean crossed = outline.width(from) < 0;
            for (int k = 1; k <= CROSSING_SAMPLES && !last; k++) {
                double even = from + (to - from) * k / (CROSSING_SAMPLES + 1);
                double close = Math.scalb(to - from, -k);
                crossed |= outline.width(even) < 0
                        || outline.width(Math.max(from + close, Math.nextUp(from))) < 0
                        || outline.width(to - close) < 0;
            }
            if (crossed) {
                throw new IllegalArgumentException(
                        "the left wall must stay left of the right wall, they cross below level " + Text.number(to)
                                + " m");
            }
        }
    }

    private void requireHeight() {
        if (pieces.isEmpty()) {
            throw new IllegalArgumentException("a wall must rise, it ended at level " + Text.number(level) + " m");
        }
    }

    private static String at(double x, double level) {
        return "(" + Text.number(x) + ", " + Text.number(level) + ")";
    }

    @Override
    public String toString() {
        return "Wall[" + pieces.size() + " pieces, from " + at(startX, 0) + " to " + at(x, level) + " m]";
    }
}
