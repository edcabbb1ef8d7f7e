package dev.runnel.hydraulics.gauging;

import dev.runnel.internal.Text;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.apiguardian.api.API;

/**
 * Reads the field sheet of a gauging from comma-separated text.
 *
 * <p>The first line names the columns: {@code distance_m} and {@code depth_m} always; {@code relative_depth} (from the surface, 0 to 1)
 * where more than one point is measured or the point is not 0.6; then {@code velocity_m_per_s}, or {@code revolutions} and {@code
 * seconds} for a current meter. One row a point; rows of one vertical follow each other with the same distance. The first and the
 * last row are the edges of the water and carry no velocity; an edge with a depth above 0 is a wall. Empty lines and lines that begin
 * with {@code #} are skipped.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class GaugingSheet {
    private static final List<String> KNOWN =
            List.of("distance_m", "depth_m", "relative_depth", "velocity_m_per_s", "revolutions", "seconds");

    /** Numbers closer than this are the same in a sheet; chosen here, far below what is written there. */
    private static final double SAME_DEPTH = 1e-9;

    private final Map<String, Integer> columns = new LinkedHashMap<>();
    private final Optional<CurrentMeter> meter;

    private GaugingSheet(String header, int line, Optional<CurrentMeter> meter) {
        this.meter = meter;
        String[] names = header.split(",", -1);
        for (int i = 0; i < names.length; i++) {
            String name = names[i].strip();
            if (!KNOWN.contains(name)) {
                throw refused(line, i, "must be one of " + String.join(", ", KNOWN), name);
            }
            columns.put(name, i);
        }
        for (String needed : List.of("distance_m", "depth_m")) {
            if (!columns.containsKey(needed)) {
                throw new IllegalArgumentException("line " + line + ": column " + needed + " must be there");
            }
        }
    }

    private record Row(int line, double distance, double depth, double relativeDepth, double velocity) {}

    /**
     * Reads a sheet with measured velocities.
     *
     * @param text the sheet
     * @return the gauging
     * @throws IllegalArgumentException if a line cannot be read; the message names line and column
     */
    public static VelocityAreaGauging parse(CharSequence text) {
        return parse(text, Optional.empty());
    }

    /**
     * Reads a sheet with revolutions of a current meter.
     *
     * @param text the sheet
     * @param meter the meter
     * @return the gauging
     * @throws IllegalArgumentException if a line cannot be read; the message names line and column
     */
    public static VelocityAreaGauging parse(CharSequence text, CurrentMeter meter) {
        return parse(text, Optional.of(meter));
    }

    private static VelocityAreaGauging parse(CharSequence text, Optional<CurrentMeter> meter) {
        String[] lines = text.toString().split("\\R", -1);
        GaugingSheet sheet = null;
        List<Row> rows = new ArrayList<>();
        for (int i = 0; i < lines.length; i++) {
            String line = lines[i];
            if (line.isBlank() || line.startsWith("#")) {
                continue;
            }
            if (sheet == null) {
                sheet = new GaugingSheet(line, i + 1, meter);
            } else {
                rows.add(sheet.row(line, i + 1));
            }
        }
        if (rows.size() < 3) {
            throw new IllegalArgumentException(
                    "a sheet must have an edge, at least one point and an edge, was " + rows.size() + " rows");
        }
        return gauging(rows);
    }

    private Row row(String line, int number) {
        String[] cells = line.split(",", -1);
        double velocity = cell(cells, "velocity_m_per_s", number);
        double revolutions = cell(cells, "revolutions", number);
        double seconds = cell(cells, "seconds", number);
        if (!Double.isNaN(revolutions) && !Double.isNaN(seconds) && seconds > 0) {
            velocity = meter.orElseThrow(() -> new IllegalArgumentException(
                            "line " + number + ": revolutions need the equation of their current meter"))
                    .velocityOfRevolutionsAndSeconds(revolutions, seconds);
        }
        return new Row(
                number,
                needed(cells, "distance_m", number),
                needed(cells, "depth_m", number),
                cell(cells, "relative_depth", number),
                velocity);
    }

    private double needed(String[] cells, String name, int line) {
        double value = cell(cells, name, line);
        if (Double.isNaN(value)) {
            throw refused(line, columns.getOrDefault(name, 0), name + " must be a number", "");
        }
        return value;
    }

    /** Returns the number in a cell, NaN for one that is empty or not there. */
    private double cell(String[] cells, String name, int line) {
        Integer column = columns.get(name);
        if (column == null || column >= cells.length || cells[column].isBlank()) {
            return Double.NaN;
        }
        try {
            double value = Double.parseDouble(cells[column].strip());
            if (Double.isFinite(value)) {
                return value;
            }
        } catch (NumberFormatException e) {
            // refused below, with its place
        }
        throw refused(line, column, name + " must be a number", cells[column]);
    }

    private static IllegalArgumentException refused(int line, int column, String rule, String was) {
        return new IllegalArgumentException(
                "line " + line + ", column " + (column + 1) + ": " + rule + ", was " + Text.quoted(was));
    }

    private static VelocityAreaGauging gauging(List<Row> rows) {
        List<Vertical> verticals = new ArrayList<>();
        int i = 1;
        while (i < rows.size() - 1) {
            int end = i;
            while (end < rows.size() - 1
                    && rows.get(end).distance() == rows.get(i).distance()) {
                end++;
            }
            verticals.add(vertical(rows.subList(i, end)));
            i = end;
        }
        return VelocityAreaGauging.of(edge(rows.get(0)), verticals, edge(rows.get(rows.size() - 1)));
    }

    private static WaterEdge edge(Row row) {
        if (!Double.isNaN(row.velocity()) && row.velocity() != 0) {
            throw new IllegalArgumentException("line " + row.line()
                    + ": the first and the last row are the edges of the water and carry no velocity, was "
                    + Text.number(row.velocity()) + " m/s");
        }
        return row.depth() > 0 ? WaterEdge.wall(row.distance(), row.depth()) : WaterEdge.bank(row.distance());
    }

    private static Vertical vertical(List<Row> rows) {
        TreeMap<Double, Double> points = new TreeMap<>();
        Row first = rows.get(0);
        for (Row row : rows) {
            if (Double.isNaN(row.velocity())) {
                throw new IllegalArgumentException(
                        "line " + row.line() + ": a point between the edges must have a velocity");
            }
            if (row.depth() != first.depth()) {
                throw new IllegalArgumentException("line " + row.line() + ": depth_m must be that of line "
                        + first.line() + ", " + Text.number(first.depth()) + ", was " + Text.number(row.depth()));
            }
            double relative = Double.isNaN(row.relativeDepth()) ? 0.6 : row.relativeDepth();
            if (points.put(relative, row.velocity()) != null) {
                throw new IllegalArgumentException("line " + row.line()
                        + ": relative_depth must differ from those before, was " + Text.number(relative));
            }
        }
        double[] depths = points.keySet().stream().mapToDouble(d -> d).toArray();
        double[] velocities = points.values().stream().mapToDouble(v -> v).toArray();
        for (PointRule rule : PointRule.values()) {
            if (same(rule.relativeDepths(), depths)) {
                try {
                    return Vertical.of(first.distance(), first.depth(), rule, velocities);
                } catch (IllegalArgumentException e) {
                    throw new IllegalArgumentException("line " + first.line() + ": " + e.getMessage(), e);
                }
            }
        }
        throw new IllegalArgumentException("line " + first.line() + ": relative_depth must be the points of a rule"
                + " (0.6; 0.5; 0.2 0.8; 0.2 0.6 0.8; 0 0.2 0.6 0.8 1; 0 0.2 0.4 0.6 0.8 1), was "
                + Arrays.toString(depths));
    }

    private static boolean same(double[] a, double[] b) {
        if (a.length != b.length) {
            return false;
        }
        for (int i = 0; i < a.length; i++) {
            if (Math.abs(a[i] - b[i]) > SAME_DEPTH) {
                return false;
            }
        }
        return true;
    }
}
