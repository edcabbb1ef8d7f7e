package dev.runnel.internal;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;

/** The worse of two qualities for many readings: eight codes are compared at once, as the bytes of a number. */
final class WorseCodes {
    private static final VarHandle EIGHT = MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);

    /** The highest bit of each byte, which no code has. */
    private static final long TOPS = 0x8080808080808080L;

    private WorseCodes() {}

    /** Codes, of which the larger is the worse, of the same length; a new array. */
    static byte[] of(byte[] one, byte[] other) {
        byte[] worse = new byte[one.length];
        int i = 0;
        for (; i <= one.length - Long.BYTES; i += Long.BYTES) {
            long a = (long) EIGHT.get(one, i);
            long b = (long) EIGHT.get(other, i);
            // The bit stays where the byte of a is not below that of b, and no byte borrows from the next.
            long isNotBelow = ((a | TOPS) - b & TOPS) >>> 7;
            long mask = isNotBelow * 0xff;
            EIGHT.set(worse, i, a & mask | b & ~mask);
        }
        for (; i < one.length; i++) {
            worse[i] = one[i] >= other[i] ? one[i] : other[i];
        }
        return worse;
    }
}
