package dev.runnel.timeseries.csv;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;

/**
 * Texts of up to eight letters of the numbers that were written before: a sensor of three digits has a thousand of them, and a
 * column of its readings takes each again and again. Where they do not come again, as in a column that is calculated, nothing
 * is kept any more.
 */
final class KnownNumbers {
    private static final int BITS = 11;

    /** Spreads the bits of numbers that differ in a few; the golden ratio of 64 bits. */
    private static final long SPREAD = 0x9E3779B97F4A7C15L;

    /** So many more new numbers than known ones, and it is given up; chosen here. */
    private static final int MOST_NEW = 1 << 13;

    private static final VarHandle EIGHT = MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);

    private final long[] numbers = new long[1 << BITS];
    private final long[] letters = new long[1 << BITS];

    /** 0 where there is none. */
    private final byte[] lengths = new byte[1 << BITS];

    private int moreNew;

    private static int place(long bits) {
        return (int) (bits * SPREAD >>> Long.SIZE - BITS);
    }

    /**
     * Puts a number that is known into a text that has room for eight letters more.
     *
     * @return the place behind it; -1, and nothing put down, if it is not known
     */
    int write(double value, byte[] text, int at) {
        if (moreNew >= MOST_NEW) {
            return -1;
        }
        long bits = Double.doubleToRawLongBits(value);
        int place = place(bits);
        if (numbers[place] != bits || lengths[place] == 0) {
            moreNew++;
            return -1;
        }
        moreNew -= moreNew > 0 ? 1 : 0;
        EIGHT.set(text, at, letters[place]);
        return at + lengths[place];
    }

    /** Keeps what was put down for a number, in the place of another one if need be. */
    void learn(double value, byte[] text, int from, int end) {
        if (moreNew < MOST_NEW && end > from && end - from <= Long.BYTES) {
            long bits = Double.doubleToRawLongBits(value);
            int place = place(bits);
            numbers[place] = bits;
            letters[place] = (long) EIGHT.get(text, from);
            lengths[place] = (byte) (end - from);
        }
    }
}
