package dev.runnel.examples.pages;

import dev.runnel.internal.Text;
import java.util.ArrayList;
import java.util.List;

/** From values to places on a figure, straight or logarithmic, with ticks at round values. */
final class Scale {
    private final double from;
    private final double to;
    private final double start;
    private final double end;
    private final boolean logarithmic;

    private Scale(double from, double to, double start, double end, boolean logarithmic) {
        this.from = from;
        this.to = to;
        this.start = start;
        this.end = end;
        this.logarithmic = logarithmic;
    }

    /** A straight scale that holds 0 and the largest value, ended at a round one. */
    static Scale fromZero(double largest, double start, double end) {
        double top = largest > 0 && Double.isFinite(largest) ? largest : 1;
        double step = step(top, 5);
        return new Scale(0, step * Math.ceil(top / step * (1 - 1e-9)), start, end, false);
    }

    /** A straight scale that holds two values and ends at round ones. */
    static Scale round(double low, double high, double start, double end) {
        double step = step(high > low ? high - low : Math.max(1, Math.abs(high)), 5);
        double from = step * Math.floor(low / step + 1e-9);
        double to = step * Math.ceil(high / step - 1e-9);
        return new Scale(from, to > from ? to : from + step, start, end, false);
    }

    /** A straight scale between two values as they are. */
    static Scale between(double from, double to, double start, double end) {
        return new Scale(from, to > from ? to : from + 1, start, end, false);
    }

    /** A logarithmic scale between two positive values. */
    static Scale logarithmic(double from, double to, double start, double end) {
        return new Scale(from, to > from ? to : from * 10, start, end, true);
    }

    double from() {
        return from;
    }

    double to() {
        return to;
    }

    double start() {
        return start;
    }

    double end() {
        return end;
    }

    double at(double value) {
        double share = logarithmic ? Math.log(value / from) / Math.log(to / from) : (value - from) / (to - from);
        return start + share * (end - start);
    }

    boolean holds(double value) {
        return value >= from && value <= to;
    }

    /** Round values between the ends: 1, 2 and 5 of each decade on a logarithmic scale. */
    List<Double> ticks() {
        List<Double> ticks = new ArrayList<>();
        if (logarithmic) {
            for (double decade = Math.pow(10, Math.floor(Math.log10(from))); decade <= to; decade *= 10) {
                for (double factor : new double[] {1, 2, 5}) {
                    if (holds(decade * factor)) {
                        ticks.add(decade * factor);
                    }
                }
            }
            return ticks;
        }
        double step = step(to - from, 5);
        for (double tick = step * Math.ceil(from / step - 1e-9); tick <= to + 1e-9 * step; tick += step) {
            ticks.add(Math.abs(tick) < 1e-9 * step ? 0 : tick);
        }
        return ticks;
    }

    static String label(double tick) {
        return Text.significant(tick, 4);
    }

    /** The round step that makes about so many parts of a span. */
    private static double step(double span, int parts) {
        double raw = span / parts;
        double decade = Math.pow(10, Math.floor(Math.log10(raw)));
        double factor = raw / decade;
        return decade * (factor <= 1 ? 1 : factor <= 2 ? 2 : factor <= 5 ? 5 : 10);
    }
}
