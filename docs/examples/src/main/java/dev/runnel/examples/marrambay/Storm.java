package dev.runnel.examples.marrambay;

import java.time.Duration;
import java.time.Instant;

/**
 * One storm as it is planted at Saltings Lane.
 *
 * @param start when the first cell arrives
 * @param hours length, h
 * @param depthMm depth of rain, mm
 * @param isConvective true for a few hard cells with a burst among them, false for many soft ones
 */
public record Storm(Instant start, double hours, double depthMm, boolean isConvective) {
    static Storm frontal(String start, double hours, double depthMm) {
        return new Storm(Instant.parse(start), hours, depthMm, false);
    }

    static Storm convective(String start, double hours, double depthMm) {
        return new Storm(Instant.parse(start), hours, depthMm, true);
    }

    /**
     * Returns when the last cell is gone.
     *
     * @return end of the rain
     */
    public Instant end() {
        return start.plus(Duration.ofSeconds(Math.round(hours * 3600)));
    }
}
