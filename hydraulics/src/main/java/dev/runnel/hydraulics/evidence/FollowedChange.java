package dev.runnel.hydraulics.evidence;

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

    /** Largest daily distance from usual, in scales. */
    double largest;

    void begin(int quantity, int direction, long startBlock, long block) {
        channel = quantity;
        sign = direction;
        start = startBlock;
        openedAt = block;
        largest = 0;
    }
}
