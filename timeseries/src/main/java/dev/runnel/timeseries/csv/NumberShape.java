package dev.runnel.timeseries.csv;

/**
 * How the last number of a column was written: how many digits before and behind its point. The next one is mostly written
 * so too, and is then read without a search for its end.
 */
final class NumberShape {
    /** Bytes that say whether a number has this shape: the number and the letter behind it. */
    long seen;

    /** What there is in the highest bits of these bytes, which are set where no digit stands; nothing has that at first. */
    long others = 1;

    /** The byte of the point, if there is one. */
    long point;

    /** Bytes of the digits ahead of the point, and of those behind it once they are moved up to it. */
    long ahead;

    long behind;

    /** Bits by which the digits are moved up to be eight, with zeros ahead of them. */
    int shift;

    int length;
    double power = 1;

    /** Takes the shape of a number without a sign; of a long one the letter behind it would not be seen. */
    void learn(int whole, int newLength, int decimals, double newPower) {
        if (newLength >= Long.BYTES) {
            return;
        }
        boolean hasPoint = newLength > whole;
        length = newLength;
        power = newPower;
        shift = 8 * (8 - whole - decimals);
        point = hasPoint ? 0xFFL << 8 * whole : 0;
        ahead = hasPoint ? ~(-1L << 8 * whole) : -1;
        behind = ~ahead;
        seen = newLength == Long.BYTES - 1 ? -1 : ~(-1L << 8 * (newLength + 1));
        others = 0x80L << 8 * newLength | (hasPoint ? 0x80L << 8 * whole : 0);
    }
}
