package dev.runnel.rainfall.event;

import dev.runnel.timeseries.EpochNanos;
import java.time.Instant;
import org.apiguardian.api.API;

/**
 * What a tipping-bucket gauge tells at one instant: how often it tipped then, and that it has not tipped since the count
 * before.
 *
 * @param time the instant
 * @param tips tips at it; 0 if the gauge only says that it is at work and dry, more than 1 from a clock too coarse to part
 *     them; at most 1 000 000
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record TipCount(Instant time, int tips) {
    static final int MOST = 1_000_000;

    /**
     * Checks the arguments.
     *
     * @param time the instant
     * @param tips tips at it; 0 to 1 000 000
     * @throws IllegalArgumentException if an argument is out of range
     */
    public TipCount {
        EpochNanos.of(time);
        if (tips < 0 || tips > MOST) {
            throw new IllegalArgumentException("tips must be in [0, " + MOST + "], was " + tips);
        }
    }

    /**
     * Returns one tip.
     *
     * @param time when the bucket tipped
     * @return the count
     */
    public static TipCount tip(Instant time) {
        return new TipCount(time, 1);
    }

    /**
     * Returns the word that the gauge is at work and has not tipped again.
     *
     * @param time until when
     * @return the count
     */
    public static TipCount none(Instant time) {
        return new TipCount(time, 0);
    }
}
