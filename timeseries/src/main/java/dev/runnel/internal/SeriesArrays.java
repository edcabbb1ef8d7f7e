package dev.runnel.internal;

import java.util.Objects;
import org.apiguardian.api.API;
import org.jspecify.annotations.Nullable;

/**
 * The arrays of a series without a copy, for the modules of this project alone: a record of a year is several megabytes,
 * and copying it costs more than turning it into flow. Who takes an array must not write to it, and who gives one must
 * not touch it again. Series are plain objects here, since this package knows none; the series type itself is the keeper.
 */
@API(status = API.Status.INTERNAL)
public final class SeriesArrays {
    private static volatile @Nullable Keeper keeper;

    private SeriesArrays() {}

    /** Reaches into a series. */
    public interface Keeper {
        /**
         * Returns the values themselves.
         *
         * @param series a series
         * @return values; not to be modified
         */
        double[] values(Object series);

        /**
         * Returns the times themselves.
         *
         * @param series a series
         * @return ns since 1970-01-01T00:00:00Z; not to be modified
         */
        long[] times(Object series);

        /**
         * Returns the values of readings that are usable, NaN for the others: the values themselves where all are usable.
         *
         * @param series a series
         * @return values; not to be modified
         */
        double[] usableValues(Object series);

        /**
         * Returns the codes of the qualities themselves.
         *
         * @param series a series
         * @return codes; not to be modified
         */
        byte[] qualities(Object series);

        /**
         * Returns the qualities as they are kept.
         *
         * @param series a series
         * @return qualities
         */
        QualityCodes codes(Object series);

        /**
         * Returns a series with the times of another.
         *
         * @param clock the other series
         * @param values values; checked, kept and not to be modified any more
         * @param qualities codes; checked, kept and not to be modified any more
         * @return the series
         * @throws IllegalArgumentException if the lengths differ, a value is infinite, or one is missing without that quality
         */
        Object withReadings(Object clock, double[] values, byte[] qualities);

        /**
         * Returns a series with the times of another, of readings that are right by the way they were made: as many as there
         * are times, none infinite, and those missing, and no others, of that quality.
         *
         * @param clock the other series
         * @param values values; kept and not to be modified any more
         * @param qualities qualities of these values
         * @return the series
         */
        Object withRightReadings(Object clock, double[] values, QualityCodes qualities);

        /**
         * Returns a series of readings that are right by the way they were made: at times that increase strictly, none
         * infinite, and those missing, and no others, of that quality.
         *
         * @param times ns since 1970-01-01T00:00:00Z; kept and not to be modified any more
         * @param values values; as many, kept and not to be modified any more
         * @param qualities codes; as many, kept and not to be modified any more
         * @return the series
         */
        Object ofRightReadings(long[] times, double[] values, byte[] qualities);
    }

    /**
     * Takes the keeper; the series type calls this when it is loaded.
     *
     * @param newKeeper the keeper
     */
    public static void keptBy(Keeper newKeeper) {
        keeper = newKeeper;
    }

    /**
     * Returns the keeper.
     *
     * @return the keeper; there is one as soon as there is a series
     */
    public static Keeper keeper() {
        return Objects.requireNonNull(keeper, "keeper");
    }
}
