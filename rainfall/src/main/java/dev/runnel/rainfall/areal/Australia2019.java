package dev.runnel.rainfall.areal;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.time.Duration;

/** The equations of Australian Rainfall and Runoff (2019): short rain alike everywhere, long rain by region. */
record Australia2019(AustralianRegion region, double annualExceedanceProbability) implements ArealReduction {
    private static final Duration SHORTEST = Duration.ofMinutes(30);
    private static final Duration LONGEST = Duration.ofHours(168);
    private static final double HALF_DAY = 720;
    private static final double DAY = 1440;

    Australia2019 {
        Require.inRange("annualExceedanceProbability", annualExceedanceProbability, 0.0005, 0.5, "");
    }

    @Override
    public double factor(double areaKm2, Duration duration) {
        if (duration.compareTo(SHORTEST) < 0 || duration.compareTo(LONGEST) > 0) {
            throw new IllegalArgumentException("duration must be in [" + Text.exactDuration(SHORTEST) + ", "
                    + Text.exactDuration(LONGEST) + "], was " + Text.exactDuration(duration));
        }
        double minutes = duration.toNanos() / 60e9;
        Require.inRange("areaKm2", areaKm2, 0, minutes < DAY ? 1000 : 30_000, "km2");
        if (areaKm2 <= 1) {
            return 1;
        }
        // Below 10 km2 a share of the reduction there, by a power of the area.
        return areaKm2 < 10
                ? 1 - 0.6614 * (1 - fromTen(10, minutes)) * (Math.pow(areaKm2, 0.4) - 1)
                : fromTen(areaKm2, minutes);
    }

    private double fromTen(double area, double minutes) {
        double rarity = 0.3 + Math.log10(annualExceedanceProbability);
        if (minutes <= HALF_DAY) {
            return shortFactor(area, minutes, rarity);
        }
        if (minutes >= DAY) {
            return region.longFactor(area, minutes, rarity);
        }
        double half = shortFactor(area, HALF_DAY, rarity);
        return half + (region.longFactor(area, DAY, rarity) - half) * (minutes - HALF_DAY) / HALF_DAY;
    }

    private static double shortFactor(double area, double minutes, double rarity) {
        return Math.min(
                1,
                1
                        - 0.287 * (Math.pow(area, 0.265) - 0.439 * Math.log10(minutes)) * Math.pow(minutes, -0.36)
                        + 2.26e-3 * Math.pow(area, 0.226) * Math.pow(minutes, 0.125) * rarity
                        + 0.0141
                                * Math.pow(area, 0.213)
                                * Math.pow(10, -0.021 * (minutes - 180) * (minutes - 180) / 1440)
                                * rarity);
    }

    @Override
    public String toString() {
        return "ArealReduction[Australian Rainfall and Runoff (2019), " + region + ", annual exceedance probability "
                + Text.significant(annualExceedanceProbability, 6) + "]";
    }
}
