package dev.runnel.rainfall.design;

import dev.runnel.rainfall.internal.ResourceText;
import java.time.Duration;
import org.apiguardian.api.API;

/**
 * Median time distributions of heavy storms in Illinois, by the quarter of the duration in which most rain fell. Storms of up to 6 h are
 * mostly of the first quartile, of 6.1 to 12 h of the second, of 12.1 to 24 h of the third, longer ones of the fourth (as in the circular
 * named below).
 *
 * <p>Linear between the points printed, every twentieth of the duration, whole percents. Source: Huff (1967), Time distribution of rainfall in
 * heavy storms, Water Resources Research 3(4), 1007-1019; as tabulated in Huff (1990), Illinois State Water Survey Circular 173, read in
 * two copies.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public enum HuffQuartile implements StormShape {
    /** Most rain in the first quarter. */
    FIRST("first"),
    /** Most rain in the second quarter. */
    SECOND("second"),
    /** Most rain in the third quarter. */
    THIRD("third"),
    /** Most rain in the last quarter. */
    FOURTH("fourth");

    private final String column;
    private final StormShape shape;

    HuffQuartile(String column) {
        this.column = column;
        this.shape = PointShape.of(
                ResourceText.column(PointShape.class, "huff-medians.csv", "percent"),
                ResourceText.column(PointShape.class, "huff-medians.csv", column));
    }

    /**
     * Returns the quartile that is usual for a duration.
     *
     * @param duration duration of the storm; greater than 0
     * @return the quartile
     */
    public static HuffQuartile usualFor(Duration duration) {
        if (duration.compareTo(Duration.ofHours(6)) <= 0) {
            return FIRST;
        }
        if (duration.compareTo(Duration.ofHours(12)) <= 0) {
            return SECOND;
        }
        return duration.compareTo(Duration.ofHours(24)) <= 0 ? THIRD : FOURTH;
    }

    @Override
    public double depthShare(double fraction) {
        return shape.depthShare(fraction);
    }

    /**
     * Returns a storm with this distribution.
     *
     * @param depthMm depth, mm; greater than 0
     * @param duration duration; greater than 0, a whole number of steps
     * @param step length of a step; greater than 0
     * @return the storm
     * @throws IllegalArgumentException if an argument is out of range
     */
    public DesignStorm storm(double depthMm, Duration duration, Duration step) {
        return DesignStorm.of("Huff " + column + " quartile, median", this, duration, depthMm, step);
    }
}
