package dev.runnel.examples.pages;

import java.time.Instant;
import java.time.LocalDate;
import java.time.format.TextStyle;
import java.util.List;
import java.util.Locale;

/** The record as a still drawing, for print and for readers without script: each column from its lowest to its highest. */
final class PrintedRecord {
    private static final double LEFT = 52;
    private static final double RIGHT = 870;
    private static final double ROW = 98;
    private static final double FREE = 24;
    private static final int COLUMNS = 818;

    private PrintedRecord() {}

    static String of(RecordRows record) {
        List<RecordRows.Row> rows =
                record.rows().stream().filter(row -> row.times().length > 0).toList();
        Svg svg = Svg.of(
                880, 24 + ROW * rows.size() + 24, "The record", "Rows over time, lowest to highest in each column");
        if (rows.isEmpty()) {
            return svg.toString();
        }
        long first = rows.stream().mapToLong(row -> row.times()[0]).min().orElse(0);
        long last = rows.stream()
                .mapToLong(row -> row.times()[row.times().length - 1])
                .max()
                .orElse(1);
        Scale x = Scale.between(first / 1e9, Math.max(last, first + 1) / 1e9, LEFT, RIGHT);
        for (RecordRows.Mark mark : record.marks()) {
            if (mark.kind() == RecordRows.Kind.GAP || mark.kind() == RecordRows.Kind.LEFT_OUT) {
                double from = Math.max(LEFT, x.at((double) mark.from().getEpochSecond()));
                double to = Math.min(RIGHT, x.at((double) mark.to().getEpochSecond()));
                for (int i = 0; i < rows.size(); i++) {
                    if (mark.row().isEmpty() || mark.row().equals(rows.get(i).name())) {
                        svg.rectangle(
                                mark.kind() == RecordRows.Kind.GAP ? "gap" : "left",
                                from,
                                24 + ROW * i,
                                to - from,
                                ROW - FREE);
                    }
                }
            }
        }
        for (int i = 0; i < rows.size(); i++) {
            row(svg, x, rows.get(i), 24 + ROW * i);
        }
        months(svg, x, record, 24 + ROW * rows.size());
        for (RecordRows.Mark mark : record.marks()) {
            if (mark.kind() == RecordRows.Kind.VISIT || mark.kind() == RecordRows.Kind.CORRECTION) {
                double place = x.at((double) mark.from().getEpochSecond());
                if (place >= LEFT && place <= RIGHT) {
                    svg.line("grid", place, 14, place, ROW * rows.size());
                    svg.text(
                            "label", place, 11, "middle", mark.kind() == RecordRows.Kind.VISIT ? "visit" : "corrected");
                }
            }
            if (mark.number() > 0) {
                double place =
                        Math.min(RIGHT, Math.max(LEFT, x.at((double) mark.from().getEpochSecond())));
                svg.circle("disc", place, 10, 8);
                svg.text("number", place, 14, "middle", "" + mark.number());
            }
        }
        return svg.toString();
    }

    private static void row(Svg svg, Scale x, RecordRows.Row row, double top) {
        double[] lowest = new double[COLUMNS + 1];
        double[] highest = new double[COLUMNS + 1];
        java.util.Arrays.fill(lowest, Double.NaN);
        java.util.Arrays.fill(highest, Double.NaN);
        double most = columns(x, row, lowest, highest);
        Scale y = Scale.fromZero(most, top + ROW - FREE, top);
        svg.axisY(y, LEFT, RIGHT, "");
        svg.text("label", 2, top - 8, "start", row.name());
        svg.path(row.bars() ? "rain" : "measured", strokes(y, row.bars(), lowest, highest));
    }

    /** Finds what is drawn in each column, and returns the highest of all. */
    private static double columns(Scale x, RecordRows.Row row, double[] lowest, double[] highest) {
        double most = 0;
        int size = row.times().length;
        int stride = 1;
        for (int from = 0; from < size; ) {
            int column = column(x, row.times()[from]);
            int to = endOf(column, x, row.times(), from, stride);
            if (column >= 0 && column <= COLUMNS) {
                if (row.bars()) {
                    most = Math.max(most, sum(row, from, to, highest, column));
                } else {
                    most = Math.max(most, span(row, from, to, lowest, highest, column));
                }
            }
            stride = to - from;
            from = to;
        }
        return most;
    }

    private static StringBuilder strokes(Scale y, boolean bars, double[] lowest, double[] highest) {
        StringBuilder path = new StringBuilder();
        for (int c = 0; c <= COLUMNS; c++) {
            if (!Double.isNaN(highest[c]) && !(bars && highest[c] == 0)) {
                double low = y.at(bars ? 0 : Math.max(0, lowest[c]));
                path.append('M').append((int) LEFT + c).append(' ').append(Svg.number(low));
                path.append('V').append(Svg.number(Math.min(y.at(highest[c]), low - 0.7)));
            }
        }
        return path;
    }

    private static int column(Scale x, long time) {
        return (int) (x.at(time / 1e9) - LEFT);
    }

    /**
     * The first place whose instant is drawn in a later column: instants rise, and columns with them.
     *
     * @param stride readings of the column before; steps are mostly equal, so that the end is there or one reading off
     */
    private static int endOf(int column, Scale x, long[] times, int from, int stride) {
        int inside = from;
        int beyond = times.length;
        // Around the guess, each time twice as far: a search over the whole year would look far away.
        int guess = from + stride;
        for (int wider = 1; guess > inside && guess < beyond; wider *= 2) {
            if (column(x, times[guess]) == column) {
                inside = guess;
                guess += wider;
            } else {
                beyond = guess;
                guess -= wider;
            }
        }
        while (beyond - inside > 1) {
            int middle = (inside + beyond) >>> 1;
            if (column(x, times[middle]) == column) {
                inside = middle;
            } else {
                beyond = middle;
            }
        }
        return beyond;
    }

    /** Adds the amounts of a column up, and returns the largest sum on the way. */
    private static double sum(RecordRows.Row row, int from, int to, double[] highest, int column) {
        double[] values = row.values();
        double factor = row.factor();
        double sum = 0;
        double most = 0;
        int missing = 0;
        for (int i = from; i < to; i++) {
            double value = values[i] * factor;
            // It hardly ever rains.
            if (value != 0) {
                if (Double.isNaN(value)) {
                    missing++;
                } else {
                    sum += value;
                    most = Math.max(most, sum);
                }
            }
        }
        highest[column] = missing < to - from ? sum : Double.NaN;
        return most;
    }

    /** Finds the lowest and the highest reading of a column, and returns the highest; 0 if there is none above. */
    private static double span(RecordRows.Row row, int from, int to, double[] lowest, double[] highest, int column) {
        double[] values = row.values();
        double factor = row.factor();
        double low = Double.NaN;
        double high = Double.NaN;
        for (int i = from; i < to; i++) {
            double value = values[i] * factor;
            if (!Double.isNaN(value)) {
                low = !(value > low) ? value : low;
                high = !(value < high) ? value : high;
            }
        }
        lowest[column] = low;
        highest[column] = high;
        return high > 0 ? high : 0;
    }

    private static void months(Svg svg, Scale x, RecordRows record, double y) {
        LocalDate day = LocalDate.ofInstant(Instant.ofEpochSecond((long) x.from()), record.zone());
        boolean isLong = x.to() - x.from() > 100 * 86_400;
        double last = Double.NEGATIVE_INFINITY;
        for (LocalDate date = isLong ? day.withDayOfMonth(1) : day;
                ;
                date = isLong ? date.plusMonths(1) : date.plusDays(1)) {
            double seconds = date.atStartOfDay(record.zone()).toEpochSecond();
            if (seconds > x.to()) {
                return;
            }
            double place = x.at(seconds);
            if (place >= LEFT && place - last > 56) {
                String month = date.getMonth().getDisplayName(TextStyle.SHORT, Locale.ENGLISH);
                svg.line("grid", place, 24, place, y - FREE + 4);
                svg.text(
                        "label",
                        place,
                        y,
                        "middle",
                        isLong ? month + " " + date.getYear() : date.getDayOfMonth() + " " + month);
                last = place;
            }
        }
    }
}
