package dev.runnel.rainfall.ddf;

import dev.runnel.rainfall.event.RainfallEvent;
import dev.runnel.rainfall.internal.Rain;
import java.time.Duration;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * A relation between depth of rain, its duration and its return period at one place.
 *
 * <p>Contract: depth is above 0, never falls with duration and rises with return period;
 * {@code returnPeriod(d, depthMm(d, t))} gives back {@code t}, at the limits of the range too. Whoever writes a relation gets the
 * limits right with {@link ReturnPeriod#of}.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public interface DepthDurationFrequency {
    /**
     * Returns the depth that is reached once in the given return period.
     *
     * @param duration duration of rain D; in the range of the relation
     * @param returnPeriodYears return period T, years, in the {@link #basis} and range of the relation
     * @return depth P, mm
     * @throws IllegalArgumentException if an argument is out of range; nothing is extrapolated
     */
    double depthMm(Duration duration, double returnPeriodYears);

    /**
     * Returns how rare a depth is.
     *
     * @param duration duration of rain D; in the range of the relation
     * @param depthMm depth P in that duration, mm; 0 or greater
     * @return the return period, or that it lies below or above the range of the relation
     * @throws IllegalArgumentException if the duration is out of range, or the depth negative or NaN
     */
    ReturnPeriod returnPeriod(Duration duration, double depthMm);

    /**
     * Returns what the return periods of this relation count.
     *
     * @return the basis
     */
    ReturnPeriodBasis basis();

    /**
     * Returns the shortest duration of the relation.
     *
     * @return the duration
     */
    Duration shortestDuration();

    /**
     * Returns the longest duration of the relation.
     *
     * @return the duration
     */
    Duration longestDuration();

    /**
     * Returns the smallest return period of the relation.
     *
     * @return years
     */
    double smallestYears();

    /**
     * Returns the greatest return period of the relation.
     *
     * @return years
     */
    double greatestYears();

    /**
     * Tells whether the relation has an answer for a duration.
     *
     * @param duration the duration
     * @return true if it is neither shorter nor longer than the range
     */
    default boolean covers(Duration duration) {
        return duration.compareTo(shortestDuration()) >= 0 && duration.compareTo(longestDuration()) <= 0;
    }

    /**
     * Returns the mean intensity that is reached once in the given return period.
     *
     * @param duration duration of rain D; in the range of the relation
     * @param returnPeriodYears return period T, years
     * @return depth over duration, mm/h
     * @throws IllegalArgumentException if an argument is out of range
     */
    default double intensityMmPerHour(Duration duration, double returnPeriodYears) {
        return depthMm(duration, returnPeriodYears) / Rain.hours(duration);
    }

    /**
     * Tells whether the answers for a depth fall in a part of the relation that its own source, or a later one, warns of.
     * A relation without such a part says no.
     *
     * @param duration duration of rain D
     * @param depthMm depth P in that duration, mm
     * @return true if depth and return period are to be doubted there, for the reason that the relation gives
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    default boolean isDoubtful(Duration duration, double depthMm) {
        Objects.requireNonNull(duration, "duration");
        return false;
    }

    /**
     * Returns how rare an event was, over each of the durations for which its peaks were measured.
     *
     * @param event the event
     * @return the return period for each duration and the governing one
     */
    default EventRarity rarity(RainfallEvent event) {
        return EventRarity.of(this, event);
    }

    /**
     * Returns this relation with return periods that count something else.
     *
     * @param basis what they should count
     * @return the relation with the same depths, and its range of return periods converted
     * @throws IllegalArgumentException if the smallest return period is so short that as annual maxima it cannot be told
     *     from one year, below 0.03 years
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    default DepthDurationFrequency withBasis(ReturnPeriodBasis basis) {
        Objects.requireNonNull(basis, "basis");
        return basis == basis() ? this : ConvertedRelation.of(this, basis);
    }

    /**
     * Returns this relation with every depth raised for a future climate.
     *
     * @param uplift the allowance, with its name
     * @return the raised relation, with the same range and basis
     */
    default DepthDurationFrequency withUplift(ClimateUplift uplift) {
        Objects.requireNonNull(uplift, "uplift");
        return new UpliftedRelation(this, uplift);
    }
}
