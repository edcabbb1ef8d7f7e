package dev.runnel.hydraulics.internal;

import dev.runnel.internal.Require;
import java.util.function.DoublePredicate;
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

    /**
     * Applies the scalar form where a faster loop has left NaN though the input is not, so that rounding at a limit is
     * forgiven and anything else refused as by {@link #apply}. Where input and output are one array, and no faster loop
     * can have run, it does all elements.
     *
     * @param name name of the input, for the message
     * @param in values; not modified unless it is also {@code out}
     * @param out results of the faster loop
     * @param from first index
     * @param to index after the last
     * @param function the scalar form
     * @throws IllegalArgumentException if the function refuses a value
     */
    public static void mend(String name, double[] in, double[] out, int from, int to, DoubleUnaryOperator function) {
        for (int i = from; i < to; i++) {
            if (Double.isNaN(out[i]) && !Double.isNaN(in[i]) || in == out) {
                out[i] = at(name, in, i, function);
            }
        }
    }

    /**
     * Applies the scalar form to one element, for loops that know a faster way for most.
     *
     * @param name name of the input, for the message
     * @param in values
     * @param i index
     * @param function the scalar form
     * @return its value; NaN for NaN
     * @throws IllegalArgumentException if the function refuses the value
     */
    public static double at(String name, double[] in, int i, DoubleUnaryOperator function) {
        try {
            return Double.isNaN(in[i]) ? Double.NaN : function.applyAsDouble(in[i]);
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException(name + "[" + i + "]: " + e.getMessage(), e);
        }
    }

    /**
     * Applies a function to each element that it is defined for, and marks the others with NaN.
     *
     * @param in values; NaN for missing; not modified unless it is also {@code out}
     * @param outName name of the output, for the message
     * @param out results; same length, overwritten
     * @param defined tells for what the function has an answer
     * @param function the scalar form
     * @return how many elements were there but have no answer
     * @throws IllegalArgumentException if the lengths differ
     */
    public static int applyWhere(
            double[] in, String outName, double[] out, DoublePredicate defined, DoubleUnaryOperator function) {
        Require.sameLength(outName, in.length, out.length);
        int marked = 0;
        for (int i = 0; i < in.length; i++) {
            double value = in[i];
            boolean answered = defined.test(value);
            marked += answered || Double.isNaN(value) ? 0 : 1;
            out[i] = answered ? function.applyAsDouble(value) : Double.NaN;
        }
        return marked;
    }
}
