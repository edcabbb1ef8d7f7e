package dev.runnel.examples.pages;

import dev.runnel.internal.SeriesArrays;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;

/**
 * The record of a site over time: rows one below the other on one axis of time, and marks across them. Immutable; each
 * {@code with} returns a copy with one thing more.
 */
public final class RecordRows {
    /**
     * One row.
     *
     * @param name what it shows, with its unit
     * @param step the smallest difference that is drawn, in that unit
     * @param factor from the unit of the values to that of the row
     * @param bars whether values are amounts of steps, drawn as bars and added up, or readings
     * @param times instants, nanoseconds since 1970; for amounts the beginnings of their steps
     * @param values values, NaN where there is none
     */
    record Row(String name, double step, double factor, boolean bars, long[] times, double[] values) {}

    /** What a mark says. */
    public enum Kind {
        /** No readings. */
        GAP,
        /** Readings that are left out of every figure. */
        LEFT_OUT,
        /** Something to be looked at. */
        FINDING,
        /** Above the alarm level. */
        ALARM,
        /** Above the soffit. */
        SURCHARGE,
        /** Above the crest of an overflow. */
        SPILL,
        /** Somebody was there. */
        VISIT,
        /** Readings that were corrected. */
        CORRECTION,
        /** The stretch that tells what is usual. */
        BASELINE
    }

    /**
     * A mark.
     *
     * @param kind what it says
     * @param from its beginning
     * @param to its end; the beginning for a moment
     * @param row name of the row it belongs to; empty for all
     * @param number number of the point it belongs to; 0 for none
     * @param text what it says, in words
     */
    public record Mark(Kind kind, Instant from, Instant to, String row, int number, String text) {
        /**
         * Returns a mark over an interval and all rows.
         *
         * @param kind what it says
         * @param interval where
         * @param text what it says, in words
         * @return the mark
         */
        public static Mark of(Kind kind, Interval interval, String text) {
            return new Mark(kind, interval.start(), interval.end(), "", 0, text);
        }
    }

    private final ZoneId zone;
    private final List<Row> rows;
    private final List<Mark> marks;

    private RecordRows(ZoneId zone, List<Row> rows, List<Mark> marks) {
        this.zone = zone;
        this.rows = rows;
        this.marks = marks;
    }

    /**
     * Returns a record without rows.
     *
     * @param zone clock of its axis
     * @return the record
     */
    public static RecordRows in(ZoneId zone) {
        return new RecordRows(zone, List.of(), List.of());
    }

    /**
     * Adds a row of readings; those whose quality is not usable are left out of the line.
     *
     * @param name what it shows, with its unit
     * @param series the readings
     * @param factor from their unit to that of the row
     * @param step the smallest difference that is drawn, in the unit of the row
     * @return a copy with it
     */
    public RecordRows withReadings(String name, Series series, double factor, double step) {
        SeriesArrays.Keeper keeper = SeriesArrays.keeper();
        return with(new Row(name, step, factor, false, keeper.times(series), keeper.usableValues(series)));
    }

    /**
     * Adds a row of amounts.
     *
     * @param name what it shows, with its unit
     * @param series amounts of equal steps
     * @param step the smallest difference that is drawn
     * @return a copy with it
     */
    public RecordRows withAmounts(String name, RegularSeries series, double step) {
        long[] times = new long[series.size()];
        long first = series.size() == 0 ? 0 : nanos(series.start());
        long length = series.step().toNanos();
        for (int i = 0; i < times.length; i++) {
            times[i] = first + i * length;
        }
        return with(new Row(name, step, 1, true, times, series.toValues()));
    }

    private static long nanos(Instant time) {
        return Math.addExact(Math.multiplyExact(time.getEpochSecond(), 1_000_000_000L), time.getNano());
    }

    private RecordRows with(Row row) {
        List<Row> more = new ArrayList<>(rows);
        more.add(row);
        return new RecordRows(zone, List.copyOf(more), marks);
    }

    /**
     * Adds a mark.
     *
     * @param mark the mark
     * @return a copy with it
     */
    public RecordRows withMark(Mark mark) {
        List<Mark> more = new ArrayList<>(marks);
        more.add(mark);
        return new RecordRows(zone, rows, List.copyOf(more));
    }

    ZoneId zone() {
        return zone;
    }

    List<Row> rows() {
        return rows;
    }

    List<Mark> marks() {
        return marks;
    }
}
