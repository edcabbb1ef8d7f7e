package dev.runnel.rainfall.areal;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.time.Duration;

/** The formula of 1977, in five ranges of area. */
enum KeersWescott implements ArealReduction {
    INSTANCE;

    private static final Duration SHORTEST = Duration.ofMinutes(5);
    private static final Duration LONGEST = Duration.ofDays(25);

    @Override
    public double factor(double areaKm2, Duration duration) {
        Require.inRange("areaKm2", areaKm2, 1, 20_000, "km2");
        if (duration.compareTo(SHORTEST) < 0 || duration.compareTo(LONGEST) > 0) {
            throw new IllegalArgumentException("duration must be in [" + Text.exactDuration(SHORTEST) + ", "
                    + Text.exactDuration(LONGEST) + "], was " + Text.exactDuration(duration));
        }
        double hours = duration.toMillis() / 3.6e6;
        double factor = 1 - b(areaKm2) * Math.pow(hours, -a(areaKm2));
        if (!(factor > 0)) {
            throw new IllegalArgumentException("duration must be longer for an area of " + Text.number(areaKm2)
                    + " km2, was " + Text.exactDuration(duration));
        }
        return factor;
    }

    private static double a(double area) {
        double log = Math.log(area);
        if (area <= 20) {
            return 0.40 - 0.0208 * Math.log(4.6 - log);
        }
        if (area < 500) {
            return 0.40 - 0.00382 * (4.6 - log) * (4.6 - log);
        }
        return 0.40 - 0.0208 * Math.log(log - 4.6);
    }

    private static double b(double area) {
        if (area < 100) {
            return 0.0394 * Math.pow(area, 0.354);
        }
        return area < 1000 ? 0.0627 * Math.pow(area, 0.254) : 0.1050 * Math.pow(area, 0.180);
    }

    @Override
    public String toString() {
        return "ArealReduction[Keers and Wescott (1977)]";
    }
}
