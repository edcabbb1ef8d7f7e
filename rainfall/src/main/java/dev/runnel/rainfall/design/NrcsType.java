package dev.runnel.rainfall.design;

import dev.runnel.rainfall.internal.ResourceText;
import java.time.Duration;
import org.apiguardian.api.API;

/**
 * The four 24-hour distributions of the US Soil Conservation Service, now Natural Resources Conservation Service: one storm that holds the
 * rain of every shorter duration of the same frequency. I and IA belong to the Pacific coast, III to the Gulf and Atlantic coast, II to the
 * rest of the United States.
 *
 * <p>Linear between the points printed. Source: SCS (1973), TP-149; SCS (1986), Urban hydrology for small watersheds, TR-55; the figures as
 * in Chow, Maidment and Mays (1988), Applied hydrology, chapter 14; the hours 2, 8, 9.75, 11.5, 13 and 20 from memory. From memory too: since 2015 distributions from local
 * depth-duration-frequency data replace them.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public enum NrcsType implements StormShape {
    /** Pacific maritime climate, wet winters and dry summers. */
    I("I"),
    /** The same, with less intense rain. */
    IA("IA"),
    /** The interior, most intense. */
    II("II"),
    /** Gulf of Mexico and Atlantic coast, tropical storms. */
    III("III");

    private final String column;
    private final StormShape shape;

    NrcsType(String column) {
        this.column = column;
        this.shape = PointShape.of(
                ResourceText.column(PointShape.class, "nrcs-24-hour.csv", "hour"),
                ResourceText.column(PointShape.class, "nrcs-24-hour.csv", column));
    }

    @Override
    public double depthShare(double fraction) {
        return shape.depthShare(fraction);
    }

    /**
     * Returns the storm of 24 h.
     *
     * @param depthMm depth in 24 h, mm; greater than 0
     * @param step length of a step; 24 h must be a whole number of them
     * @return the storm
     * @throws IllegalArgumentException if an argument is out of range
     */
    public DesignStorm storm(double depthMm, Duration step) {
        return DesignStorm.of("NRCS type " + column, this, Duration.ofHours(24), depthMm, step);
    }
}
