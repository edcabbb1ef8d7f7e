package dev.runnel.rainfall.frequency;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.ddf.DdfBand;
import dev.runnel.rainfall.ddf.EventRarity;
import dev.runnel.rainfall.ddf.ReturnPeriod;
import dev.runnel.rainfall.distribution.Bootstrap;
import dev.runnel.rainfall.distribution.ConfidenceInterval;
import dev.runnel.rainfall.distribution.DistributionFamily;
import dev.runnel.rainfall.distribution.FitMethod;
import dev.runnel.rainfall.distribution.NoFitException;
import dev.runnel.rainfall.event.PeakDepth;
import dev.runnel.rainfall.event.RainfallEvent;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import org.apiguardian.api.API;

/**
 * Limits of confidence of a {@link ScaledDdf}: the years of the record are drawn anew with replacement, all durations of a year
 * together since they share their storms, and each draw is fitted anew. One set of draws answers every question, so that the
 * rarity of an event over several durations at once is a question like another. Immutable and thread-safe.
 *
 * <p>Source: Efron and Tibshirani (1993), An introduction to the bootstrap, Chapman and Hall, chapters 6 and 13.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class ScaledDdfLimits {
    private final ScaledDdf relation;
    private final Bootstrap bootstrap;
    private final List<ScaledDdf> replicates;

    private ScaledDdfLimits(ScaledDdf relation, Bootstrap bootstrap, List<ScaledDdf> replicates) {
        this.relation = relation;
        this.bootstrap = bootstrap;
        this.replicates = replicates;
    }

    /**
     * Fits the relation, and as many replicates of it as asked for; make it once.
     *
     * @param maxima annual maxima of at least 3 durations
     * @param family family of the rescaled maxima
     * @param method how to estimate its parameters
     * @param bootstrap number of replicates, seed and confidence
     * @return the limits
     * @throws IllegalArgumentException as {@link ScaledDdf#of}
     * @throws NoFitException as {@link ScaledDdf#of}
     */
    public static ScaledDdfLimits of(
            AnnualMaxima maxima, DistributionFamily family, FitMethod method, Bootstrap bootstrap) {
        ScaledDdf relation = ScaledDdf.of(maxima, family, method);
        double[][] depths = maxima.durations().stream().map(maxima::depthsMm).toArray(double[][]::new);
        return new ScaledDdfLimits(
                relation,
                bootstrap,
                bootstrap.replicates(
                        random -> ScaledDdf.ofReplicate(drawn(maxima.durations(), depths, random), family, method)));
    }

    private static AnnualMaxima drawn(List<Duration> durations, double[][] depths, SplittableRandom random) {
        int count = depths[0].length;
        double[][] columns = new double[depths.length][count];
        List<Integer> years = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            years.add(i);
            int year = random.nextInt(count);
            for (int j = 0; j < depths.length; j++) {
                columns[j][i] = depths[j][year];
            }
        }
        SortedMap<Duration, double[]> drawn = new TreeMap<>();
        for (int j = 0; j < columns.length; j++) {
            drawn.put(durations.get(j), columns[j]);
        }
        return AnnualMaxima.of(years, drawn, Duration.ZERO);
    }

    /**
     * Returns the relation of the record itself.
     *
     * @return the relation
     */
    public ScaledDdf relation() {
        return relation;
    }

    /**
     * Returns the limits of a depth.
     *
     * @param duration duration of rain, in the range of the relation
     * @param years return period among annual maxima, years; in the range of the relation
     * @return the interval, mm
     * @throws IllegalArgumentException if an argument is out of range or fewer than 20 replicates could be fitted
     */
    public Bootstrap.Interval depthMm(Duration duration, double years) {
        return bootstrap.limits(relation.depthMm(duration, years), of(each -> each.levelMm(duration, years)));
    }

    /**
     * Returns the limits of the return period of a depth.
     *
     * @param duration duration of rain, in the range of the relation
     * @param depthMm depth, mm; greater than 0
     * @return the limits, years, among annual maxima; the estimate may lie beyond the range of the relation
     * @throws IllegalArgumentException if an argument is out of range or fewer than 20 replicates could be fitted
     */
    public ConfidenceInterval returnPeriod(Duration duration, double depthMm) {
        Require.positive("depthMm", depthMm, "mm");
        return years(each -> each.exceedance(duration, depthMm));
    }

    /**
     * Returns the limits of the return period of an event over several durations at once: in each replicate the greatest over
     * the durations of the event that the relation covers.
     *
     * @param event the event
     * @return the limits, years, among annual maxima: {@code 10, 90 % between 6 and 31}
     * @throws IllegalArgumentException if the relation covers none of the durations of the event or fewer than 20 replicates could be
     *     fitted
     */
    public ConfidenceInterval returnPeriod(RainfallEvent event) {
        List<PeakDepth> covered = event.peaks().stream()
                .filter(peak -> relation.covers(peak.duration()))
                .toList();
        if (covered.isEmpty()) {
            throw new IllegalArgumentException(
                    "event must have a duration between " + Text.exactDuration(relation.shortestDuration()) + " and "
                            + Text.exactDuration(relation.longestDuration()) + ", had none");
        }
        return years(each -> covered.stream()
                .mapToDouble(peak -> each.exceedance(peak.duration(), peak.depthMm()))
                .min()
                .orElseThrow());
    }

    /**
     * Returns how rare an event was, with the limits over several durations at once.
     *
     * @param event the event
     * @return its rarity with {@link EventRarity#limits}; a limit beyond the range of the relation is a bound
     * @throws IllegalArgumentException as {@link #returnPeriod(RainfallEvent)}
     */
    public EventRarity rarity(RainfallEvent event) {
        ConfidenceInterval years = returnPeriod(event);
        return EventRarity.of(relation, event)
                .withLimits(new DdfBand.Rarity(
                        standing(years.estimate()),
                        standing(years.lower()),
                        standing(years.upper()),
                        years.confidence()));
    }

    private ReturnPeriod standing(double years) {
        if (years < relation.smallestYears()) {
            return new ReturnPeriod(ReturnPeriod.Standing.BELOW, relation.smallestYears(), relation.basis());
        }
        return years > relation.greatestYears()
                ? new ReturnPeriod(ReturnPeriod.Standing.ABOVE, relation.greatestYears(), relation.basis())
                : new ReturnPeriod(ReturnPeriod.Standing.WITHIN, years, relation.basis());
    }

    /** Limits of one over a probability, which may be infinite, from those of the probability, which is not. */
    private ConfidenceInterval years(ToDoubleFunction<ScaledDdf> exceedance) {
        Bootstrap.Interval p = bootstrap.limits(exceedance.applyAsDouble(relation), of(exceedance));
        return new ConfidenceInterval(1 / p.estimate(), 1 / p.upper(), 1 / p.lower(), p.confidence());
    }

    private double[] of(ToDoubleFunction<ScaledDdf> question) {
        return replicates.stream().mapToDouble(question).toArray();
    }

    @Override
    public String toString() {
        return "ScaledDdfLimits[" + replicates.size() + " replicates of " + relation + ", " + bootstrap + "]";
    }
}
