package dev.runnel.examples.shell;

import dev.runnel.internal.Text;
import java.nio.charset.Charset;
import java.nio.charset.IllegalCharsetNameException;
import java.nio.charset.UnsupportedCharsetException;

/**
 * A record as one line of the terminal: the highest of each column, a blank where there is none, then lowest and highest.
 * The least of the eight steps is the lowest value, so that a line that looks flat may still move: read the ends.
 */
public final class Sparkline {
    private static final int COLUMNS = 60;

    /** As escapes, since a shell in a plain locale loses such letters when it reads them. */
    private static final String BLOCKS = "\u2581\u2582\u2583\u2584\u2585\u2586\u2587\u2588";

    private static final String PLAIN = "_.-:=+*#";

    private final double[] values;

    private Sparkline(double[] values) {
        this.values = values;
    }

    /**
     * Returns the line of some values in equal steps.
     *
     * @param values values; NaN for a missing one
     * @return the line
     */
    public static Sparkline of(double... values) {
        return new Sparkline(values.clone());
    }

    /**
     * Returns the line, in letters that the terminal can show.
     *
     * @return one line, without its end
     */
    @Override
    public String toString() {
        return with(canShowBlocks() ? BLOCKS : PLAIN);
    }

    String with(String steps) {
        int columns = Math.min(COLUMNS, values.length);
        double[] highest = new double[columns];
        java.util.Arrays.fill(highest, Double.NaN);
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        int missing = 0;
        for (int i = 0; i < values.length; i++) {
            double value = values[i];
            if (Double.isNaN(value)) {
                missing++;
                continue;
            }
            int column = (int) ((long) i * columns / values.length);
            highest[column] = value < highest[column] ? highest[column] : value;
            least = Math.min(least, value);
            most = Math.max(most, value);
        }
        if (!(least <= most)) {
            return "(no value)";
        }
        StringBuilder line = new StringBuilder();
        for (double value : highest) {
            double share = most > least ? (value - least) / (most - least) : 0;
            line.append(Double.isNaN(value) ? ' ' : steps.charAt((int) Math.round(share * (steps.length() - 1))));
        }
        return line + "  lowest " + Text.significant(least, 3) + ", highest " + Text.significant(most, 3)
                + (missing > 0 ? ", " + missing + " missing" : "");
    }

    private static boolean canShowBlocks() {
        String name = System.getProperty("stdout.encoding", System.getProperty("native.encoding", "US-ASCII"));
        try {
            return Charset.forName(name).newEncoder().canEncode(BLOCKS);
        } catch (IllegalCharsetNameException | UnsupportedCharsetException | UnsupportedOperationException e) {
            return false;
        }
    }
}
