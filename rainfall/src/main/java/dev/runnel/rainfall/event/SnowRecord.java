package dev.runnel.rainfall.event;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.RegularSeries;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * Precipitation parted into rain and snow, and the melt of the snow. In every step rain and snow add up to the precipitation; all snow is
 * either melted or still lies.
 *
 * @param rain rain in each step, mm; NaN where the precipitation is missing
 * @param snow snow in each step, melted, mm; NaN where the precipitation is missing
 * @param melt melt in each step, mm
 * @param lying snow that lies at the end of each step, melted, mm
 * @param unknown steps without temperature, whose precipitation was taken as rain
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record SnowRecord(RegularSeries rain, RegularSeries snow, RegularSeries melt, RegularSeries lying, int unknown) {
    /**
     * Checks that nothing is missing.
     *
     * @param rain rain in each step, mm; NaN where the precipitation is missing
     * @param snow snow in each step, melted, mm; NaN where the precipitation is missing
     * @param melt melt in each step, mm
     * @param lying snow that lies at the end of each step, melted, mm
     * @param unknown steps without temperature, whose precipitation was taken as rain
     */
    public SnowRecord {
        Objects.requireNonNull(rain, "rain");
        Objects.requireNonNull(snow, "snow");
        Objects.requireNonNull(melt, "melt");
        Objects.requireNonNull(lying, "lying");
    }

    /**
     * Returns the water that reaches the ground's surface as water.
     *
     * @return rain and melt in each step, mm; NaN where the precipitation is missing
     */
    public RegularSeries water() {
        return rain.combine(melt, Double::sum);
    }

    @Override
    public String toString() {
        return "SnowRecord[" + Text.significant(rain.sum(), 4) + " mm rain, " + Text.significant(snow.sum(), 4)
                + " mm snow, " + Text.significant(melt.sum(), 4) + " mm of it melted, " + unknown
                + " steps without temperature]";
    }
}
