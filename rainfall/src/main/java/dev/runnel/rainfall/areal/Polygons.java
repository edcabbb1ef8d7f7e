package dev.runnel.rainfall.areal;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
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
    /** Beyond the catchment on every side, in its diameters: far enough to hold any part of it. */
    private static final double REACH = 2;

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
        Envelope extent = figure.getEnvelopeInternal();
        Envelope roomy = extent.copy();
        roomy.expandBy(extent.getDiameter() / 100);
        Geometry cell = FACTORY.toGeometry(roomy);
        // The nearest first, after which the others seldom cut anything more.
        List<Location> nearestFirst = others.stream()
                .sorted(Comparator.comparingDouble(place::distanceTo))
                .toList();
        for (Location other : nearestFirst) {
            cell = nearer(cell, place, other, REACH * extent.getDiameter());
        }
        return common(figure, cell).getArea();
    }

    private Geometry nearer(Geometry cell, Location place, Location other, double reach) {
        double distance = place.distanceTo(other);
        double towardsX = (other.x() - place.x()) / distance;
        double towardsY = (other.y() - place.y()) / distance;
        double middleX = place.x() - origin.x() + (other.x() - place.x()) / 2;
        double middleY = place.y() - origin.y() + (other.y() - place.y()) / 2;
        double least = Double.POSITIVE_INFINITY;
        double greatest = Double.NEGATIVE_INFINITY;
        for (Coordinate corner : cell.getCoordinates()) {
            double beyond = (corner.x - middleX) * towardsX + (corner.y - middleY) * towardsY;
            least = Math.min(least, beyond);
            greatest = Math.max(greatest, beyond);
        }
        if (greatest <= 0) {
            return cell;
        }
        if (least >= 0) {
            return FACTORY.createPolygon();
        }
        // The rectangle on the near side of the line half way, about the point of the line nearest to the origin.
        double offset = middleX * towardsX + middleY * towardsY;
        double footX = offset * towardsX;
        double footY = offset * towardsY;
        Coordinate[] near = new Coordinate[5];
        for (int i = 0; i < near.length; i++) {
            double along = i == 1 || i == 2 ? reach : -reach;
            double back = i == 2 || i == 3 ? reach : 0;
            near[i] = new Coordinate(
                    footX - along * towardsY - back * towardsX, footY + along * towardsX - back * towardsY);
        }
        return common(cell, FACTORY.createPolygon(near));
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
