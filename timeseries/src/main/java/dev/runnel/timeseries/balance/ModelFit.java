package dev.runnel.timeseries.balance;

import dev.runnel.internal.Moments;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.util.Arrays;
import org.apiguardian.api.API;

/**
 * How well a modelled record follows the observed one, over the steps that both know. Immutable and thread-safe.
 *
 * <p>With observed values o and modelled ones s, means ō and s̄, standard deviations σ, correlation r:
 * <ul>
 *   <li>Nash-Sutcliffe efficiency 1 − Σ (o − s)² / Σ (o − ō)² (Nash and Sutcliffe 1970, Journal of Hydrology 10, 282-290)
 *   <li>Kling-Gupta efficiency 1 − √((r − 1)² + (α − 1)² + (β − 1)²), α = σs/σo, β = s̄/ō (Gupta, Kling, Yilmaz and Martinez
 *       2009, Journal of Hydrology 377, 80-91), and in its later form with γ = (σs/s̄)/(σo/ō) for α (Kling, Fuchs and
 *       Paulin 2012, Journal of Hydrology 424-425, 264-277)
 *   <li>differences of peak and volume (modelled − observed)/observed, of the time of the peak
 * </ul>
 * Criteria for a verified model differ from code to code; the page lists some. None is built in.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class ModelFit {
    private final int steps;
    private final double nashSutcliffe;
    private final double correlation;
    private final double alpha;
    private final double beta;
    private final double gamma;
    private final double rootMeanSquare;
    private final double observedPeak;
    private final double modelledPeak;
    private final Duration peakLag;

    private ModelFit(double[] observed, double[] modelled, long[] times) {
        steps = observed.length;
        double meanO = Moments.mean(observed);
        double meanS = Moments.mean(modelled);
        double squares = 0;
        double spreadO = 0;
        double spreadS = 0;
        double product = 0;
        int peakO = 0;
        int peakS = 0;
        for (int i = 0; i < steps; i++) {
            double o = observed[i] - meanO;
            double s = modelled[i] - meanS;
            squares += (observed[i] - modelled[i]) * (observed[i] - modelled[i]);
            spreadO += o * o;
            spreadS += s * s;
            product += o * s;
            peakO = observed[i] > observed[peakO] ? i : peakO;
            peakS = modelled[i] > modelled[peakS] ? i : peakS;
        }
        nashSutcliffe = 1 - squares / spreadO;
        rootMeanSquare = Math.sqrt(squares / steps);
        correlation = product / Math.sqrt(spreadO * spreadS);
        alpha = Math.sqrt(spreadS / spreadO);
        beta = meanS / meanO;
        gamma = alpha / beta;
        observedPeak = observed[peakO];
        modelledPeak = modelled[peakS];
        peakLag = Duration.ofNanos(times[peakS] - times[peakO]);
    }

    /**
     * Compares two records of equal steps.
     *
     * @param observed the observed record
     * @param modelled the modelled record, with steps that lie alike
     * @return the comparison
     * @throws IllegalArgumentException if steps differ or lie apart, fewer than two steps are known to both, the observed
     *     values do not vary, or their mean is 0
     */
    public static ModelFit of(RegularSeries observed, RegularSeries modelled) {
        long step = observed.step().toNanos();
        long apart = Duration.between(modelled.start(), observed.start()).toNanos();
        if (!modelled.step().equals(observed.step()) || apart % step != 0) {
            throw new IllegalArgumentException("modelled must have steps of " + Text.duration(observed.step())
                    + " that lie as from " + observed.start() + ", had steps of " + Text.duration(modelled.step())
                    + " from " + modelled.start());
        }
        int count = 0;
        double[] o = new double[observed.size()];
        double[] s = new double[observed.size()];
        long[] times = new long[observed.size()];
        for (int i = 0; i < observed.size(); i++) {
            long there = i + apart / step;
            boolean known = there >= 0
                    && there < modelled.size()
                    && !Double.isNaN(observed.value(i))
                    && !Double.isNaN(modelled.value((int) there));
            if (known) {
                o[count] = observed.value(i);
                s[count] = modelled.value((int) there);
                times[count++] = i * step;
            }
        }
        Require.atLeast("number of steps known to both", count, 2);
        ModelFit fit = new ModelFit(Arrays.copyOf(o, count), Arrays.copyOf(s, count), Arrays.copyOf(times, count));
        if (!Double.isFinite(fit.nashSutcliffe) || !Double.isFinite(fit.beta)) {
            throw new IllegalArgumentException("observed must vary and have a mean other than 0, did not");
        }
        return fit;
    }

    /**
     * Returns how many steps both records know.
     *
     * @return count, 2 or more
     */
    public int steps() {
        return steps;
    }

    /**
     * Returns the Nash-Sutcliffe efficiency.
     *
     * @return 1 for a model without error; 0 for one no better than the mean
     */
    public double nashSutcliffe() {
        return nashSutcliffe;
    }

    /**
     * Returns the Kling-Gupta efficiency of 2009.
     *
     * @return 1 for a model without error; NaN if the model does not vary
     */
    public double klingGupta() {
        return 1 - Math.sqrt(square(correlation - 1) + square(alpha - 1) + square(beta - 1));
    }

    /**
     * Returns the Kling-Gupta efficiency in its form of 2012.
     *
     * @return 1 for a model without error; NaN if the model does not vary or its mean is 0
     */
    public double klingGupta2012() {
        return 1 - Math.sqrt(square(correlation - 1) + square(gamma - 1) + square(beta - 1));
    }

    private static double square(double value) {
        return value * value;
    }

    /**
     * Returns the coefficient of correlation.
     *
     * @return r, in [-1, 1]; NaN if the model does not vary
     */
    public double correlation() {
        return correlation;
    }

    /**
     * Returns the ratio of the standard deviations, modelled over observed.
     *
     * @return α
     */
    public double alpha() {
        return alpha;
    }

    /**
     * Returns the ratio of the means, modelled over observed: over equal steps also that of the volumes.
     *
     * @return β
     */
    public double beta() {
        return beta;
    }

    /**
     * Returns the ratio of the coefficients of variation, modelled over observed.
     *
     * @return γ
     */
    public double gamma() {
        return gamma;
    }

    /**
     * Returns the root of the mean square of the differences.
     *
     * @return in the unit of the records
     */
    public double rootMeanSquare() {
        return rootMeanSquare;
    }

    /**
     * Returns the difference of the volumes over the observed one.
     *
     * @return (modelled − observed)/observed
     */
    public double volumeDifference() {
        return beta - 1;
    }

    /**
     * Returns the difference of the peaks over the observed one. Of levels take {@link #peakRise}.
     *
     * @return (modelled − observed)/observed; NaN if the observed peak is 0
     */
    public double peakDifference() {
        return observedPeak == 0 ? Double.NaN : (modelledPeak - observedPeak) / observedPeak;
    }

    /**
     * Returns the difference of the peaks, for levels and depths.
     *
     * @return modelled − observed, in the unit of the records
     */
    public double peakRise() {
        return modelledPeak - observedPeak;
    }

    /**
     * Returns how much later the modelled peak comes; of equal peaks the first counts.
     *
     * @return time; negative if it comes earlier
     */
    public Duration peakLag() {
        return peakLag;
    }

    @Override
    public String toString() {
        return "ModelFit[" + steps + " steps, NSE " + Text.significant(nashSutcliffe, 3) + ", KGE "
                + Text.significant(klingGupta(), 3) + ", volume " + Text.significant(100 * volumeDifference(), 3)
                + " %, peak " + Text.significant(100 * peakDifference(), 3) + " %, " + Text.duration(peakLag)
                + " later]";
    }
}
