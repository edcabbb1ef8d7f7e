package dev.runnel.hydraulics.internal;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import org.apiguardian.api.API;

/**
 * Long tables of coefficients, made by the programs in src/generator: lines of {@code #} that tell what they are, an empty
 * line, and big-endian doubles. Not text, since a first question would wait longer for the reading of ten thousand numbers
 * than for all else.
 */
@API(status = API.Status.INTERNAL)
public final class Coefficients {
    private Coefficients() {}

    /**
     * Reads a table.
     *
     * @param owner class beside which the file lies
     * @param name file name
     * @return the numbers, row by row; a new array
     * @throws IllegalStateException if there is no such file, or it ends within a number
     */
    public static double[] read(Class<?> owner, String name) {
        byte[] all = bytes(owner, name);
        int start = 0;
        while (start + 1 < all.length && !(all[start] == '\n' && all[start + 1] == '\n')) {
            start++;
        }
        int from = start + 2;
        int size = all.length - from;
        if (size <= 0 || size % Double.BYTES != 0) {
            throw new IllegalStateException("table " + name + " holds no whole numbers");
        }
        double[] numbers = new double[size / Double.BYTES];
        ByteBuffer.wrap(all, from, size).asDoubleBuffer().get(numbers);
        return numbers;
    }

    private static byte[] bytes(Class<?> owner, String name) {
        try (InputStream stream = owner.getResourceAsStream(name)) {
            if (stream == null) {
                throw new IllegalStateException("no table " + name + " beside " + owner.getName());
            }
            return stream.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
