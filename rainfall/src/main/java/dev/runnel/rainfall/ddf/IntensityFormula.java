package dev.runnel.rainfall.ddf;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.timeseries.EpochNanos;
import java.time.Duration;
import java.util.List;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * Intensity over duration for one return period, i [mm/h] against t [min]. Immutable and thread-safe.
 *
 * <blockquote>Bernard, Montana: i = a t<sup>−n</sup><br>
 * Talbot: i = a/(t + b)<br>
 * Sherman: i = a/(t + b)<sup>n</sup><br>
 * Kimijima: i = a/(t<sup>n</sup> + b)</blockquote>
 *
 * <p>Sources: Sherman (1931), Frequency and intensity of excessive rainfalls at Boston, Transactions of the American
 * Society of Civil Engineers 95; Bernard (1932), Formulas for rainfall intensities of long duration, the same 96; the
 * names of Talbot and Kimijima as in Japanese sewer design guides. Montana's form is Bernard's, in France with i in mm/min
 * (Instruction technique 77-284, 1977).
 *
 * <p>A formula holds over the durations it was fitted to, which are part of it. Coefficients of other units must be
 * converted: a for inches per hour times 25.4.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class IntensityFormula {
    /**
     * The algebraic form.
     *
     * @since 0.1
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public enum Form {
        /** i = a t<sup>−n</sup>, also Montana's. */
        BERNARD,
        /** i = a/(t + b). */
        TALBOT,
        /** i = a/(t + b)<sup>n</sup>. */
        SHERMAN,
        /** i = a/(t<sup>n</sup> + b). */
        KIMIJIMA
    }

    private final Form form;
    private final double a;
    private final double b;
    private final double n;
    private final Duration shortest;
    private final Duration longest;

    private IntensityFormula(Form form, double a, double b, double n, Duration shortest, Duration longest) {
        this.form = form;
        this.a = Require.positive("a", a, "");
        this.b = Require.finite("b", b, "");
        this.n = Require.positive("n", n, "");
        EpochNanos.positive("shortest", shortest);
        if (longest.compareTo(shortest) < 0) {
            throw new IllegalArgumentException("longest must not be shorter than " + Text.exactDuration(shortest)
                    + ", was " + Text.exactDuration(longest));
        }
        this.shortest = shortest;
        this.longest = longest;
        requireRising();
    }

    /** Depth must not fall over the range, and b must not make the intensity infinite or negative at its start. */
    private void requireRising() {
        double from = minutes(shortest);
        double start = form == Form.KIMIJIMA ? Math.pow(from, n) + b : from + b;
        if (!(start > 0)) {
            throw new IllegalArgumentException(
                    "b must leave the intensity finite at " + Text.exactDuration(shortest) + ", was " + Text.number(b));
        }
        for (Duration end : List.of(shortest, longest)) {
            if (!(growth(minutes(end)) >= 0)) {
                throw new IllegalArgumentException(
                        "depth must not fall with duration, does at " + Text.exactDuration(end) + " in " + this);
            }
        }
    }

    /** Sign of d(i t)/dt, which each of the forms changes at most once. */
    private double growth(double t) {
        return switch (form) {
            case BERNARD -> 1 - n;
            case TALBOT -> b;
            case SHERMAN -> t * (1 - n) + b;
            case KIMIJIMA -> Math.pow(t, n) * (1 - n) + b;
        };
    }

    /**
     * Returns i = a t<sup>−n</sup>.
     *
     * @param a factor, mm/h at 1 min; greater than 0
     * @param n exponent; above 0, no more than 1
     * @param shortest shortest duration it holds for
     * @param longest longest duration it holds for
     * @return the formula
     * @throws IllegalArgumentException if an argument is out of range or depth would fall with duration
     */
    public static IntensityFormula bernard(double a, double n, Duration shortest, Duration longest) {
        return new IntensityFormula(Form.BERNARD, a, 0, n, shortest, longest);
    }

    /**
     * Returns Montana's formula with French coefficients: i = a t<sup>−b</sup> in mm/min, so that the depth is
     * a t<sup>1−b</sup> mm.
     *
     * @param a factor, mm/min at 1 min; greater than 0
     * @param b exponent; above 0, no more than 1
     * @param shortest shortest duration it holds for
     * @param longest longest duration it holds for
     * @return the formula, with its factor in mm/h
     * @throws IllegalArgumentException if an argument is out of range or depth would fall with duration
     */
    public static IntensityFormula montana(double a, double b, Duration shortest, Duration longest) {
        return bernard(60 * a, b, shortest, longest);
    }

    /**
     * Returns i = a/(t + b).
     *
     * @param a factor, mm min/h; greater than 0
     * @param b addend, min; 0 or greater
     * @param shortest shortest duration it holds for
     * @param longest longest duration it holds for
     * @return the formula
     * @throws IllegalArgumentException if an argument is out of range or depth would fall with duration
     */
    public static IntensityFormula talbot(double a, double b, Duration shortest, Duration longest) {
        return new IntensityFormula(Form.TALBOT, a, b, 1, shortest, longest);
    }

    /**
     * Returns i = a/(t + b)<sup>n</sup>.
     *
     * @param a factor; greater than 0
     * @param b addend, min
     * @param n exponent; above 0
     * @param shortest shortest duration it holds for
     * @param longest longest duration it holds for
     * @return the formula
     * @throws IllegalArgumentException if an argument is out of range or depth would fall with duration
     */
    public static IntensityFormula sherman(double a, double b, double n, Duration shortest, Duration longest) {
        return new IntensityFormula(Form.SHERMAN, a, b, n, shortest, longest);
    }

    /**
     * Returns i = a/(t<sup>n</sup> + b).
     *
     * @param a factor; greater than 0
     * @param b addend
     * @param n exponent; above 0
     * @param shortest shortest duration it holds for
     * @param longest longest duration it holds for
     * @return the formula
     * @throws IllegalArgumentException if an argument is out of range or depth would fall with duration
     */
    public static IntensityFormula kimijima(double a, double b, double n, Duration shortest, Duration longest) {
        return new IntensityFormula(Form.KIMIJIMA, a, b, n, shortest, longest);
    }

    /**
     * Returns the mean intensity.
     *
     * @param duration duration of rain; in the range of the formula
     * @return i, mm/h
     * @throws IllegalArgumentException if the duration is out of range
     */
    public double intensityMmPerHour(Duration duration) {
        if (duration.compareTo(shortest) < 0 || duration.compareTo(longest) > 0) {
            throw new IllegalArgumentException("duration must be in [" + Text.exactDuration(shortest) + ", "
                    + Text.exactDuration(longest) + "], was " + Text.exactDuration(duration));
        }
        double t = minutes(duration);
        return switch (form) {
            case BERNARD -> a * Math.pow(t, -n);
            case TALBOT -> a / (t + b);
            case SHERMAN -> a * Math.pow(t + b, -n);
            case KIMIJIMA -> a / (Math.pow(t, n) + b);
        };
    }

    /**
     * Returns the depth.
     *
     * @param duration duration of rain; in the range of the formula
     * @return i t, mm
     * @throws IllegalArgumentException if the duration is out of range
     */
    public double depthMm(Duration duration) {
        return intensityMmPerHour(duration) * Rain.hours(duration);
    }

    static double minutes(Duration duration) {
        return 60 * Rain.hours(duration);
    }

    /**
     * Returns the form.
     *
     * @return the form
     */
    public Form form() {
        return form;
    }

    /**
     * Returns the factor.
     *
     * @return a, mm/h times a power of min
     */
    public double a() {
        return a;
    }

    /**
     * Returns the addend.
     *
     * @return b; 0 for Bernard's form
     */
    public double b() {
        return b;
    }

    /**
     * Returns the exponent.
     *
     * @return n; 1 for Talbot's form
     */
    public double n() {
        return n;
    }

    /**
     * Returns the shortest duration.
     *
     * @return the duration
     */
    public Duration shortestDuration() {
        return shortest;
    }

    /**
     * Returns the longest duration.
     *
     * @return the duration
     */
    public Duration longestDuration() {
        return longest;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof IntensityFormula that
                && form == that.form
                && Double.compare(a, that.a) == 0
                && Double.compare(b, that.b) == 0
                && Double.compare(n, that.n) == 0
                && shortest.equals(that.shortest)
                && longest.equals(that.longest);
    }

    @Override
    public int hashCode() {
        return Objects.hash(form, a, b, n, shortest, longest);
    }

    @Override
    public String toString() {
        String formula = switch (form) {
            case BERNARD -> Text.significant(a, 6) + " t^-" + Text.significant(n, 6);
            case TALBOT -> Text.significant(a, 6) + "/(t + " + Text.significant(b, 6) + ")";
            case SHERMAN -> Text.significant(a, 6) + "/(t + " + Text.significant(b, 6) + ")^" + Text.significant(n, 6);
            case KIMIJIMA ->
                Text.significant(a, 6) + "/(t^" + Text.significant(n, 6) + " + " + Text.significant(b, 6) + ")";
        };
        return "IntensityFormula[i = " + formula + " mm/h, t in min, " + Text.duration(shortest) + " to "
                + Text.duration(longest) + "]";
    }
}
