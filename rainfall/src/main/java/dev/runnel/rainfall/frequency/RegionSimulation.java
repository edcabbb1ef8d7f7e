package dev.runnel.rainfall.frequency;

import dev.runnel.internal.Text;
import dev.runnel.rainfall.distribution.Distribution;
import dev.runnel.rainfall.distribution.DistributionFamily;
import dev.runnel.rainfall.distribution.LMoments;
import dev.runnel.rainfall.distribution.NoFitException;
import dev.runnel.timeseries.Statistics;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.apiguardian.api.API;

/**
 * Heterogeneity of a region and goodness of fit of families to it, by simulation.
 *
 * <p>H<sub>1</sub>, H<sub>2</sub>, H<sub>3</sub> compare the scatter between sites (of &tau;; of &tau; and
 * &tau;<sub>3</sub>; of &tau;<sub>3</sub> and &tau;<sub>4</sub>) with that of simulated homogeneous groups: below 1
 * acceptably homogeneous, 2 or more definitely not. Z of a family compares its &tau;<sub>4</sub> with the regional one:
 * within 1.64 it fits at 90 %. Source: Hosking and Wallis (1997), Regional Frequency Analysis, sections 4.3 and 5.2.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class RegionSimulation {
    private static final int MOST_DRAWS = 100;
    private static final int FEWEST = 20;

    /** Chosen here; more would take hours and show nothing more. */
    private static final int MOST = 100_000;

    private static final List<DistributionFamily> CANDIDATES = List.of(
            DistributionFamily.GENERALIZED_LOGISTIC,
            DistributionFamily.GEV,
            DistributionFamily.GENERALIZED_NORMAL,
            DistributionFamily.PEARSON_III,
            DistributionFamily.GENERALIZED_PARETO);

    private final List<Double> heterogeneity;
    private final Map<DistributionFamily, Double> z;
    private final Distribution simulated;
    private final int simulations;
    private final long redrawn;

    private RegionSimulation(
            List<Double> heterogeneity,
            Map<DistributionFamily, Double> z,
            Distribution simulated,
            int simulations,
            long redrawn) {
        this.heterogeneity = heterogeneity;
        this.z = z;
        this.simulated = simulated;
        this.simulations = simulations;
        this.redrawn = redrawn;
    }

    /** One simulated group: its measures, and how many of its records had to be drawn again. */
    private record Group(double[] measures, long redrawn) {}

    static RegionSimulation of(Region region, int simulations, long seed) {
        if (simulations < FEWEST || simulations > MOST) {
            throw new IllegalArgumentException(
                    "simulations must be in [" + FEWEST + ", " + MOST + "], was " + simulations);
        }
        Distribution parent = parent(region.averageLMoments());
        SplittableRandom root = new SplittableRandom(seed);
        SplittableRandom[] sequences = new SplittableRandom[simulations];
        for (int i = 0; i < simulations; i++) {
            sequences[i] = root.split();
        }
        List<Group> groups = IntStream.range(0, simulations)
                .parallel()
                .mapToObj(i -> simulate(region, parent, sequences[i]))
                .flatMap(Optional::stream)
                .toList();
        if (groups.size() < simulations) {
            throw new IllegalArgumentException(
                    "average L-moments must be such that records with them have a mean above 0," + " were "
                            + region.averageLMoments());
        }
        double[][] drawn = groups.stream().map(Group::measures).toArray(double[][]::new);
        double[] observed = measures(region);
        double[] h = new double[3];
        for (int k = 0; k < 3; k++) {
            Statistics scatter = Statistics.of(column(drawn, k));
            h[k] = (observed[k] - scatter.mean()) / scatter.standardDeviation();
        }
        Statistics kurtosis = Statistics.of(column(drawn, 3));
        double bias = kurtosis.mean() - region.averageLMoments().tau4();
        Map<DistributionFamily, Double> z = new LinkedHashMap<>();
        for (DistributionFamily family : CANDIDATES) {
            lKurtosis(region, family)
                    .ifPresent(tau4 -> z.put(
                            family, (tau4 - region.averageLMoments().tau4() + bias) / kurtosis.standardDeviation()));
        }
        return new RegionSimulation(
                List.of(h[0], h[1], h[2]),
                java.util.Collections.unmodifiableMap(z),
                parent,
                simulations,
                groups.stream().mapToLong(Group::redrawn).sum());
    }

    private static OptionalDouble lKurtosis(Region region, DistributionFamily family) {
        try {
            return OptionalDouble.of(region.growthCurve(family).lMoments().tau4());
        } catch (NoFitException noMember) {
            return OptionalDouble.empty();
        }
    }

    private static Distribution parent(LMoments average) {
        try {
            return DistributionFamily.KAPPA.fromLMoments(average);
        } catch (NoFitException noKappa) {
            return DistributionFamily.GENERALIZED_LOGISTIC.fromLMoments(average);
        }
    }

    /** Returns nothing if a record keeps a mean not above 0: what is thrown here would lose its message on the way. */
    private static Optional<Group> simulate(Region region, Distribution parent, SplittableRandom random) {
        List<Region.Site> sites = new ArrayList<>();
        long redrawn = 0;
        for (Region.Site site : region.sites()) {
            int draws = 1;
            Optional<Region.Site> record = draw(site, parent, random);
            while (record.isEmpty()) {
                if (draws++ == MOST_DRAWS) {
                    return Optional.empty();
                }
                redrawn++;
                record = draw(site, parent, random);
            }
            sites.add(record.get());
        }
        return Optional.of(new Group(measures(Region.ofSites(sites)), redrawn));
    }

    private static Optional<Region.Site> draw(Region.Site site, Distribution parent, SplittableRandom random) {
        double[] x = new double[site.years()];
        for (int i = 0; i < x.length; i++) {
            x[i] = parent.quantile(random.nextDouble(Double.MIN_NORMAL, 1));
        }
        LMoments drawn = LMoments.ofSample(x);
        return drawn.lambda1() > 0 ? Optional.of(new Region.Site(site.name(), site.years(), drawn)) : Optional.empty();
    }

    /**
     * Returns the three scatters V between sites, weighted by record length, and the average &tau;<sub>4</sub>. Only their
     * distance from those drawn counts, in standard deviations of these, so that they need not be divided by all years.
     */
    private static double[] measures(Region region) {
        LMoments mean = region.averageLMoments();
        double[] v = new double[3];
        for (Region.Site site : region.sites()) {
            double t = site.moments().tau() - mean.lambda2();
            double t3 = site.moments().tau3() - mean.tau3();
            double t4 = site.moments().tau4() - mean.tau4();
            v[0] += site.years() * t * t;
            v[1] += site.years() * Math.hypot(t, t3);
            v[2] += site.years() * Math.hypot(t3, t4);
        }
        return new double[] {Math.sqrt(v[0]), v[1], v[2], mean.tau4()};
    }

    private static double[] column(double[][] rows, int at) {
        return java.util.Arrays.stream(rows).mapToDouble(row -> row[at]).toArray();
    }

    /**
     * Returns the heterogeneity of the group.
     *
     * @return H<sub>1</sub>, H<sub>2</sub>, H<sub>3</sub>
     */
    public List<Double> heterogeneity() {
        return heterogeneity;
    }

    /**
     * Returns how far each family's &tau;<sub>4</sub> lies from the regional one.
     *
     * @return Z by family, without a family of which no member has the average L-moments; unmodifiable
     */
    public Map<DistributionFamily, Double> z() {
        return z;
    }

    /**
     * Returns the distribution that the groups were drawn from.
     *
     * @return kappa, or generalised logistic where no kappa fits
     */
    public Distribution simulated() {
        return simulated;
    }

    /**
     * Returns the number of groups.
     *
     * @return number of simulations
     */
    public int simulations() {
        return simulations;
    }

    /**
     * Returns the number of simulated records that were drawn again, since their mean was not above 0 and so could not be
     * scaled by it; many of them, against sites times simulations, call the measures into question.
     *
     * @return number of records
     */
    public long redrawn() {
        return redrawn;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof RegionSimulation that
                && heterogeneity.equals(that.heterogeneity)
                && z.equals(that.z)
                && simulated.equals(that.simulated)
                && simulations == that.simulations
                && redrawn == that.redrawn;
    }

    @Override
    public int hashCode() {
        return Objects.hash(heterogeneity, z, simulated, simulations, redrawn);
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder("RegionSimulation[");
        for (int k = 0; k < 3; k++) {
            text.append("H")
                    .append(k + 1)
                    .append(" = ")
                    .append(Text.significant(heterogeneity.get(k), 3))
                    .append(", ");
        }
        z.forEach((family, value) -> text.append("Z ")
                .append(family)
                .append(" = ")
                .append(Text.significant(value, 3))
                .append(", "));
        return text.append(simulations)
                .append(" simulations")
                .append(redrawn > 0 ? ", " + redrawn + " records drawn again]" : "]")
                .toString();
    }
}
