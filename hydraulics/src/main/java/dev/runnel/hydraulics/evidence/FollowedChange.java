package dev.runnel.hydraulics.evidence;

import java.util.Arrays;

/** The change that the watch follows, or followed last: what moved, which way, since when, and how far at most. */
final class FollowedChange {
    /** Ordinal of the quantity that told of it. */
    int channel;

    /** 1 if that went up, -1 if down. */
    int sign;

    /** Blocks in which it began, was told and closed. */
    long start;

    long openedAt;
    long closedAt;

    /** Whether it stands high, so that it may fall. */
    boolean risen;

    /** Where depth, velocity and flow stood before it, by quantity: 0 but in a season that another finding tells of. */
    final double[] origin = new double[Quantity.COUNT];

    /** Largest daily distance from usual, in scales. */
    double largest;

    boolean isWithinSeason() {
        return origin[ChangeSeries.D] != 0;
    }

    void begin(int quantity, int direction, long startBlock, long block) {
        channel = quantity;
        sign = direction;
        start = startBlock;
        openedAt = block;
        largest = 0;
        Arrays.fill(origin, 0);
    }
}
