package dev.runnel.examples.pages;

import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;

/**
 * Level against velocity: readings in small cells, coloured by the fifth of the record that fills them most, grey where at
 * least four fifths do; the law of the pipe, the usual relation of the site, lines of equal flow, and the readings of
 * findings on top.
 */
public final class LevelVelocityFigure {
    private static final double WIDTH = 440;
    private static final double HEIGHT = 300;
    private static final double LEFT = 44;
    private static final double RIGHT = 396;
    private static final double TOP = 26;
    private static final double BOTTOM = 250;
    private static final int CELL = 2;
    private static final int ROWS = (int) (BOTTOM / CELL) + 1;
    private static final int COLUMNS = (int) (RIGHT / CELL) + 1;
    private static final double ROOM_FOR_NAME = 100;
    private static final int PERIODS = 5;
    private static final int SEEN_ALWAYS = 4;

    /** Instead of a period: no reading fills the cell. */
    private static final int NEVER = -1;

    private static final int CURVE_POINTS = 120;

    private final Conduit conduit;
    private final double[] levels;
    private final double[] velocities;
    private final long[] times;
    private final List<Interval> findings;
    private final Optional<DoubleUnaryOperator> usual;

    private LevelVelocityFigure(
            Conduit conduit,
            long[] times,
            double[] levels,
            double[] velocities,
            List<Interval> findings,
            Optional<DoubleUnaryOperator> usual) {
        this.conduit = conduit;
        this.times = times;
        this.levels = levels;
        this.velocities = velocities;
        this.findings = findings;
        this.usual = usual;
    }

    /**
     * Returns the figure of some readings.
     *
     * @param conduit the pipe without sediment
     * @param times instants, nanoseconds since 1970, rising
     * @param levels levels above the invert, m; NaN for none
     * @param velocities mean velocities at the same instants, m/s; NaN for none
     * @return the figure
     */
    public static LevelVelocityFigure of(Conduit conduit, long[] times, double[] levels, double[] velocities) {
        return new LevelVelocityFigure(conduit, times, levels, velocities, List.of(), Optional.empty());
    }

    /**
     * Picks out the readings of findings.
     *
     * @param intervals when they were
     * @return a copy
     */
    public LevelVelocityFigure withFindings(List<Interval> intervals) {
        return new LevelVelocityFigure(conduit, times, levels, velocities, List.copyOf(intervals), usual);
    }

    /**
     * Draws the usual relation of the site.
     *
     * @param velocity mean velocity, m/s, at a level above the invert, m; NaN where it is not known
     * @return a copy
     */
    public LevelVelocityFigure withUsual(DoubleUnaryOperator velocity) {
        return new LevelVelocityFigure(conduit, times, levels, velocities, findings, Optional.of(velocity));
    }

    /**
     * Draws the figure.
     *
     * @return SVG
     */
    public String toSvg() {
        double soffit = conduit.section().height();
        double highest = Math.max(soffit, 1.02 * greatest(levels));
        double fastest = Math.max(conduit.maximum().velocity(), greatest(velocities));
        Scale x = Scale.fromZero(highest * 1000, LEFT, RIGHT);
        Scale y = Scale.fromZero(Math.min(fastest, 3 * conduit.maximum().velocity()), BOTTOM, TOP);
        Svg svg = Svg.of(
                WIDTH,
                HEIGHT,
                "Level and velocity",
                "Readings of velocity over level, with the law of the pipe and lines of equal flow");
        svg.axisX(x, TOP, BOTTOM, "level above the invert, mm");
        svg.axisY(y, LEFT, RIGHT, "velocity, m/s");
        cells(svg, x, y);
        equalFlow(svg, x, y);
        curve(svg, "law halo", x, y, this::law);
        curve(svg, "law", x, y, this::law);
        usual.ifPresent(relation -> curve(svg, "usual", x, y, relation));
        svg.line("soffit", x.at(soffit * 1000), TOP, x.at(soffit * 1000), BOTTOM);
        // Where levels far above the soffit leave it near the axis, the name would run into the figures there.
        boolean isFar = x.at(soffit * 1000) > LEFT + ROOM_FOR_NAME;
        svg.text(
                "over",
                x.at(soffit * 1000) + (isFar ? -4 : 4),
                TOP + 10,
                isFar ? "end" : "start",
                "soffit " + Math.round(soffit * 1000) + " mm");
        return svg.toString();
    }

    private double law(double level) {
        return level > 0 && level < conduit.section().height()
                ? conduit.at(level).velocity()
                : Double.NaN;
    }

    private void cells(Svg svg, Scale x, Scale y) {
        StringBuilder marks = new StringBuilder();
        int[] counts = counts(x, y, marks);
        StringBuilder[] paths = new StringBuilder[PERIODS + 1];
        for (int i = 0; i <= PERIODS; i++) {
            paths[i] = new StringBuilder();
        }
        for (int cell = 0; cell < COLUMNS * ROWS; cell++) {
            int period = fullest(counts, cell * PERIODS);
            if (period != NEVER) {
                square(paths[period], cell);
            }
        }
        svg.path("always", paths[PERIODS]);
        for (int i = 0; i < PERIODS; i++) {
            svg.path("period" + (i + 1), paths[i]);
        }
        svg.path("picked", marks);
    }

    /** Counts the readings of each period in each cell, and marks the cells that hold one of a finding. */
    private int[] counts(Scale x, Scale y, StringBuilder marks) {
        int[] cells = new int[times.length];
        for (int i = 0; i < cells.length; i++) {
            cells[i] = cell(x.at(levels[i] * 1000), y.at(velocities[i]));
        }
        mark(cells, marks);
        int[] counts = new int[COLUMNS * ROWS * PERIODS];
        int i = 0;
        for (int period = 0; period < PERIODS; period++) {
            for (; (long) PERIODS * i < (long) (period + 1) * cells.length; i++) {
                if (cells[i] >= 0) {
                    counts[cells[i] * PERIODS + period]++;
                }
            }
        }
        return counts;
    }

    private void mark(int[] cells, StringBuilder marks) {
        boolean[] picked = new boolean[COLUMNS * ROWS];
        List<Interval> sorted = findings.stream()
                .sorted((a, b) -> a.start().compareTo(b.start()))
                .toList();
        long[] starts = nanos(sorted, Interval::start);
        long[] ends = nanos(sorted, Interval::end);
        int at = 0;
        for (int finding = 0; finding < ends.length; finding++) {
            at = mark(cells, marks, picked, firstFrom(starts[finding], at), ends[finding]);
        }
    }

    /** The first reading from one on that is not before a time. */
    private int firstFrom(long time, int from) {
        int i = from;
        while (i < times.length && times[i] < time) {
            i++;
        }
        return i;
    }

    /** Marks the cells of the readings from one on to a time, and returns the reading there. */
    private int mark(int[] cells, StringBuilder marks, boolean[] picked, int from, long to) {
        int i = from;
        for (; i < cells.length && times[i] < to; i++) {
            if (cells[i] >= 0 && !picked[cells[i]]) {
                picked[cells[i]] = true;
                square(marks, cells[i]);
            }
        }
        return i;
    }

    /** The cell of a place, or a negative number if it lies outside of the axes or nowhere. */
    private static int cell(double x, double y) {
        return x >= LEFT && x <= RIGHT && y >= TOP && y <= BOTTOM ? ((int) (x / CELL)) * ROWS + (int) (y / CELL) : -1;
    }

    private static long[] nanos(List<Interval> intervals, Function<Interval, Instant> end) {
        return intervals.stream().map(end).mapToLong(EpochNanos::of).toArray();
    }

    /** Which period fills a cell most; the last place is for cells that are seen nearly always. */
    private static int fullest(int[] counts, int from) {
        int seen = 0;
        int best = 0;
        for (int i = 0; i < PERIODS; i++) {
            seen += counts[from + i] > 0 ? 1 : 0;
            best = counts[from + i] > counts[from + best] ? i : best;
        }
        return seen == 0 ? NEVER : seen >= SEEN_ALWAYS ? PERIODS : best;
    }

    private static void square(StringBuilder path, int cell) {
        path.append('M')
                .append(cell / ROWS * CELL)
                .append(' ')
                .append(cell % ROWS * CELL)
                .append("h2v2h-2z");
    }

    private static void curve(Svg svg, String type, Scale x, Scale y, DoubleUnaryOperator velocity) {
        double[] xs = new double[CURVE_POINTS];
        double[] ys = new double[CURVE_POINTS];
        for (int i = 0; i < CURVE_POINTS; i++) {
            double level = x.to() / 1000 * (i + 0.5) / CURVE_POINTS;
            double value = velocity.applyAsDouble(level);
            xs[i] = x.at(level * 1000);
            ys[i] = y.holds(value) ? y.at(value) : Double.NaN;
        }
        svg.path(type, Svg.polyline(xs, ys));
    }

    private void equalFlow(Svg svg, Scale x, Scale y) {
        double lastLabel = Double.NEGATIVE_INFINITY;
        double height = conduit.section().height();
        double most = conduit.section().area(height) * y.to();
        List<Double> flows =
                new ArrayList<>(Scale.logarithmic(most / 1000, most, 0, 1).ticks());
        Collections.reverse(flows);
        for (double flow : flows) {
            double[] xs = new double[CURVE_POINTS];
            double[] ys = new double[CURVE_POINTS];
            for (int i = 0; i < CURVE_POINTS; i++) {
                double level = x.to() / 1000 * (i + 1) / CURVE_POINTS;
                double velocity = flow / conduit.section().area(Math.min(level, height));
                xs[i] = x.at(level * 1000);
                ys[i] = y.holds(velocity) ? y.at(velocity) : Double.NaN;
            }
            double end = ys[CURVE_POINTS - 1];
            if (Double.isNaN(end) || Math.abs(end - lastLabel) < 14) {
                continue;
            }
            lastLabel = end;
            svg.path("equal", Svg.polyline(xs, ys));
            svg.text("label", RIGHT + 3, end + 4, "start", Scale.label(flow * 1000) + " l/s");
        }
    }

    private static double greatest(double[] values) {
        double greatest = 0;
        for (double value : values) {
            greatest = value > greatest ? value : greatest;
        }
        return greatest;
    }
}
