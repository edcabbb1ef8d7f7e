package dev.runnel.rainfall.areal;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineSegment;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.Polygonal;
import org.locationtech.jts.geom.TopologyException;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.locationtech.jts.operation.valid.IsValidOp;
import org.locationtech.jts.operation.valid.TopologyValidationError;

/** Parts and holes of a catchment. The only class that knows the geometry library, which may be absent. */
final class Polygons {
    private static final GeometryFactory FACTORY = new GeometryFactory();

    /** Relative to the origin, so that grid coordinates of millions of metres cost no digits. */
    private final Geometry figure;

    private final Location origin;

    private Polygons(Geometry figure) {
        Envelope extent = figure.getEnvelopeInternal();
        this.origin = new Location(extent.centre().x, extent.centre().y);
        this.figure = AffineTransformation.translationInstance(-origin.x(), -origin.y())
                .transform(figure);
    }

    static Polygons inside(List<Location> corners) {
        Coordinate[] ring = Stream.concat(corners.stream(), corners.stream().limit(1))
                .map(corner -> new Coordinate(corner.x(), corner.y()))
                .toArray(Coordinate[]::new);
        return checked("area inside the corners", FACTORY.createPolygon(ring));
    }

    static Polygons parse(String text) {
        Geometry geometry;
        try {
            geometry = new WKTReader(FACTORY).read(text);
        } catch (ParseException | IllegalArgumentException e) {
            throw new IllegalArgumentException(
                    "text must be a polygon in well-known text, was " + Text.quoted(text) + ": " + e.getMessage(), e);
        }
        if (!(geometry instanceof Polygonal)) {
            throw new IllegalArgumentException("text must be a POLYGON or MULTIPOLYGON, was a "
                    + geometry.getGeometryType().toUpperCase(Locale.ROOT));
        }
        for (Coordinate each : geometry.getCoordinates()) {
            Require.finite("x", each.x, "m");
            Require.finite("y", each.y, "m");
        }
        return checked("area of the polygons", geometry);
    }

    private static Polygons checked(String area, Geometry geometry) {
        Require.positive(area, geometry.getArea(), "m2");
        TopologyValidationError error = new IsValidOp(geometry).getValidationError();
        if (error != null) {
            Coordinate at = error.getCoordinate();
            throw new IllegalArgumentException("boundary must neither cross nor touch itself, has "
                    + error.getMessage().toLowerCase(Locale.ROOT) + " at "
                    + Location.of(at.x, at.y));
        }
        return new Polygons(geometry);
    }

    double area() {
        return figure.getArea();
    }

    /** The area of the part that lies in a rectangle. */
    double areaWithin(double fromX, double fromY, double toX, double toY) {
        Envelope cell = new Envelope(fromX - origin.x(), toX - origin.x(), fromY - origin.y(), toY - origin.y());
        if (!figure.getEnvelopeInternal().intersects(cell)) {
            return 0;
        }
        return common(figure, FACTORY.toGeometry(cell)).getArea();
    }

    /** The area of the part that is nearer to one place than to any of the others. */
    double areaNearestTo(Location place, List<Location> others) {
        List<Coordinate> cell =
                Arrays.asList(FACTORY.toGeometry(figure.getEnvelopeInternal()).getCoordinates());
        for (Location other : others) {
            cell = nearer(cell, place, other);
        }
        Coordinate[] ring = Stream.concat(cell.stream(), cell.stream().limit(1)).toArray(Coordinate[]::new);
        return common(figure, FACTORY.createPolygon(ring)).getArea();
    }

    /** The corners of the part of a convex figure that is nearer to one place than to another. */
    private List<Coordinate> nearer(List<Coordinate> corners, Location place, Location other) {
        List<Coordinate> kept = new ArrayList<>();
        for (int i = 0; i < corners.size(); i++) {
            Coordinate from = corners.get(i);
            Coordinate to = corners.get((i + 1) % corners.size());
            double before = beyondMiddle(from, place, other);
            double after = beyondMiddle(to, place, other);
            if (before < 0) {
                kept.add(from);
            }
            if (before < 0 != after < 0) {
                kept.add(new LineSegment(from, to).pointAlong(before / (before - after)));
            }
        }
        return kept;
    }

    /** How far a point lies beyond the line half way to another place, times twice the distance of the places. */
    private double beyondMiddle(Coordinate point, Location place, Location other) {
        double x = point.x + origin.x() - place.x() + (point.x + origin.x() - other.x());
        double y = point.y + origin.y() - place.y() + (point.y + origin.y() - other.y());
        return x * (other.x() - place.x()) + y * (other.y() - place.y());
    }

    private static Geometry common(Geometry one, Geometry other) {
        try {
            return OverlayNGRobust.overlay(one, other, OverlayNG.INTERSECTION);
        } catch (TopologyException e) {
            throw new IllegalStateException("polygons could not be cut: " + e.getMessage(), e);
        }
    }

    @Override
    public String toString() {
        int parts = figure.getNumGeometries();
        int holes = 0;
        for (int i = 0; i < parts; i++) {
            holes += ((Polygon) figure.getGeometryN(i)).getNumInteriorRing();
        }
        return (parts == 1 ? "" : parts + " parts, ")
                + (holes == 0 ? "" : holes + (holes == 1 ? " hole, " : " holes, "))
                + (figure.getNumPoints() - parts - holes) + " corners";
    }
}
