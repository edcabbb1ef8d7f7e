package dev.runnel.hydraulics.internal;

import dev.runnel.internal.Require;
import java.util.function.DoubleUnaryOperator;
import org.apiguardian.api.API;

/** The loop behind the bulk forms: the scalar form once per element, so that both give the same bits. */
@API(status = API.Status.INTERNAL)
public final class Bulk {
    private Bulk() {}

    /**
     * Applies a function to each element. A NaN is a missing reading and stays NaN; anything else that the function
     * refuses is refused here too, with the index in the message.
     *
     * @param name name of the input, for the message
     * @param in values; not modified unless it is also {@code out}
     * @param outName name of the output, for the message
     * @param out results; same length, overwritten
     * @param function the scalar form
     * @throws IllegalArgumentException if the lengths differ or the function refuses a value; results before that value
     *     have been written
     */
    public static void apply(String name, double[] in, String outName, double[] out, DoubleUnaryOperator function) {
        Require.sameLength(outName, in.length, out.length);
        int i = 0;
        try {
            for (; i < in.length; i++) {
                double value = in[i];
                out[i] = Double.isNaN(value) ? Double.NaN : function.applyAsDouble(value);
            }
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException(name + "[" + i + "]: " + e.getMessage(), e);
        }
    }
}
