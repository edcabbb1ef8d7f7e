package dev.runnel.rainfall.gauge;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.Interval;
import java.time.Duration;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import org.apiguardian.api.API;

/**
 * A recording gauge against the {@link StorageGauge} at its side.
 *
 * @param allowance greatest difference let be, as a share of what was stored
 * @param rows one for each reading of the storage gauge, in order of time
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record StorageComparison(double allowance, List<Row> rows) {
    /**
     * How a recording gauge stands against what was stored.
     *
     * @since 0.1
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public enum Verdict {
        /** It recorded as much, within the allowance. */
        WITHIN,
        /** It recorded more. */
        HIGH,
        /** It recorded less. */
        LOW,
        /** A part of its record is missing. */
        UNKNOWN
    }

    /**
     * One reading of the storage gauge.
     *
     * @param period since the reading before
     * @param storedMm rain in the storage gauge, mm
     * @param recordedMm rain recorded in that time, mm; without what fell while the record was missing
     * @param missing time of which the record says nothing
     * @param verdict how the two compare
     * @since 0.1
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public record Row(Interval period, double storedMm, double recordedMm, Duration missing, Verdict verdict) {
        /**
         * Checks that nothing is missing.
         *
         * @param period since the reading before
         * @param storedMm rain in the storage gauge, mm
         * @param recordedMm rain recorded in that time, mm; without what fell while the record was missing
         * @param missing time of which the record says nothing
         * @param verdict how the two compare
         */
        public Row {
            Objects.requireNonNull(period, "period");
            Objects.requireNonNull(missing, "missing");
            Objects.requireNonNull(verdict, "verdict");
        }

        /**
         * Returns what was recorded over what was stored.
         *
         * @return ratio; empty if nothing was stored or a part of the record is missing
         */
        public OptionalDouble ratio() {
            return storedMm == 0 || !missing.isZero()
                    ? OptionalDouble.empty()
                    : OptionalDouble.of(recordedMm / storedMm);
        }

        @Override
        public String toString() {
            return "Row[" + period + ", " + Text.significant(recordedMm, 4) + " recorded of "
                    + Text.significant(storedMm, 4) + " mm"
                    + (missing.isZero() ? "" : ", " + Text.duration(missing) + " missing")
                    + switch (verdict) {
                        case WITHIN -> ": within]";
                        case HIGH -> ": high]";
                        case LOW -> ": low]";
                        case UNKNOWN -> ": unknown]";
                    };
        }
    }

    /**
     * Copies the list.
     *
     * @param allowance greatest difference let be
     * @param rows one for each reading
     */
    public StorageComparison {
        Objects.requireNonNull(rows, "rows");
        rows = List.copyOf(rows);
    }

    /**
     * Returns what was recorded over what was stored, all complete readings together.
     *
     * @return Σrecorded/Σstored; empty if nothing was stored in them. The factor that would bring the record to the storage
     *     gauge is one over it
     */
    public OptionalDouble ratio() {
        double stored = complete().stream().mapToDouble(Row::storedMm).sum();
        double recorded = complete().stream().mapToDouble(Row::recordedMm).sum();
        return stored == 0 ? OptionalDouble.empty() : OptionalDouble.of(recorded / stored);
    }

    /**
     * Returns how many readings have a verdict.
     *
     * @param verdict the verdict
     * @return count
     */
    public int count(Verdict verdict) {
        Objects.requireNonNull(verdict, "verdict");
        return (int) rows.stream().filter(row -> row.verdict() == verdict).count();
    }

    /**
     * Returns the double-mass comparison of the complete readings.
     *
     * @return the comparison
     * @throws IllegalArgumentException if nothing was stored in them
     */
    public DoubleMass doubleMass() {
        return DoubleMass.of(
                complete().stream().mapToDouble(Row::recordedMm).toArray(),
                complete().stream().mapToDouble(Row::storedMm).toArray());
    }

    private List<Row> complete() {
        return rows.stream().filter(row -> row.missing().isZero()).toList();
    }

    @Override
    public String toString() {
        return "StorageComparison[" + rows.size() + " readings, "
                + (ratio().isPresent() ? "ratio " + Text.significant(ratio().getAsDouble(), 4) : "no ratio") + ", "
                + count(Verdict.WITHIN) + " within " + Text.significant(100 * allowance, 4) + " %, "
                + count(Verdict.HIGH) + " high, " + count(Verdict.LOW) + " low, " + count(Verdict.UNKNOWN)
                + " unknown]";
    }
}
