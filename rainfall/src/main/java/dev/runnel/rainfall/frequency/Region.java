package dev.runnel.rainfall.frequency;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.distribution.Distribution;
import dev.runnel.rainfall.distribution.DistributionFamily;
import dev.runnel.rainfall.distribution.LMoments;
import dev.runnel.rainfall.distribution.NoFitException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.linear.SingularMatrixException;
import org.apiguardian.api.API;

/**
 * A pool of sites whose records differ by a factor only (index flood): the quantile of a site is its own mean times a
 * growth curve common to all. Immutable and thread-safe.
 *
 * <p>Source: Hosking and Wallis (1997), Regional Frequency Analysis, chapters 3 to 6.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class Region {
    private static final int FEWEST_FOR_DISCORDANCY = 5;

    /** Critical values for 5 to 14 sites, then 3; Hosking and Wallis (1997), table 3.1 (from memory). */
    private static final double[] CRITICAL = {1.333, 1.648, 1.917, 2.140, 2.329, 2.491, 2.632, 2.757, 2.869, 2.971};

    /**
     * One site of a region.
     *
     * @param name name of the site
     * @param years length of its record, the weight of its ratios
     * @param moments L-moments of its record
     * @since 0.1
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public record Site(String name, int years, LMoments moments) {
        /**
         * Checks the arguments.
         *
         * @param name name of the site
         * @param years length of its record; at least 4
         * @param moments L-moments of its record; with a mean above 0
         */
        public Site {
            Objects.requireNonNull(name, "name");
            Require.atLeast("years", years, 4);
            Require.positive("mean of " + name, moments.lambda1(), "");
        }
    }

    private final List<Site> sites;
    private final LMoments average;

    private Region(List<Site> sites, LMoments average) {
        this.sites = sites;
        this.average = average;
    }

    /**
     * Returns the region of sites given by their records.
     *
     * @param records values of each site by name, in the order of the map; at least 2 sites
     * @return the region
     * @throws IllegalArgumentException if there are fewer than 2 sites or a record is too small or all equal
     */
    public static Region ofRecords(Map<String, double[]> records) {
        List<Site> sites = new ArrayList<>();
        records.forEach((name, values) -> sites.add(new Site(name, values.length, lMoments(name, values))));
        return ofSites(sites);
    }

    private static LMoments lMoments(String name, double[] values) {
        try {
            return LMoments.ofSample(values);
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException("site " + name + ": " + e.getMessage(), e);
        }
    }

    /**
     * Returns the region of sites given by their L-moments.
     *
     * @param sites the sites; at least 2
     * @return the region
     * @throws IllegalArgumentException if there are fewer than 2 sites
     */
    public static Region ofSites(List<Site> sites) {
        Require.atLeast("number of sites", sites.size(), 2);
        double total = sites.stream().mapToDouble(Site::years).sum();
        double tau = 0;
        double tau3 = 0;
        double tau4 = 0;
        for (Site site : sites) {
            double weight = site.years() / total;
            tau += weight * site.moments().tau();
            tau3 += weight * site.moments().tau3();
            tau4 += weight * site.moments().tau4();
        }
        return new Region(List.copyOf(sites), LMoments.of(1, tau, tau3, tau4));
    }

    /**
     * Returns the sites.
     *
     * @return sites, in the order given
     */
    public List<Site> sites() {
        return sites;
    }

    /**
     * Returns the average L-moments of the scaled records, weighted by their length.
     *
     * @return L-moments with mean 1
     */
    public LMoments averageLMoments() {
        return average;
    }

    /**
     * Returns how far each site lies from the centre of the group, D = n/3 (u - &#363;)&#7488; A&#8315;&sup1; (u -
     * &#363;) with u = (&tau;, &tau;<sub>3</sub>, &tau;<sub>4</sub>) and A the sum of their squares and products.
     *
     * @return discordancy by name of the site; its mean is 1
     * @throws IllegalArgumentException if there are fewer than 5 sites, or their ratios all lie in one plane
     */
    public Map<String, Double> discordancy() {
        int n = sites.size();
        Require.atLeast("number of sites", n, FEWEST_FOR_DISCORDANCY);
        RealVector mean = new ArrayRealVector(3);
        for (Site site : sites) {
            mean = mean.add(ratios(site).mapMultiply(1.0 / n));
        }
        RealMatrix products = MatrixUtils.createRealMatrix(3, 3);
        for (Site site : sites) {
            RealVector u = ratios(site).subtract(mean);
            products = products.add(u.outerProduct(u));
        }
        RealMatrix inverse;
        try {
            inverse = new LUDecomposition(products).getSolver().getInverse();
        } catch (SingularMatrixException e) {
            throw new IllegalArgumentException("sites must differ in all of tau, tau3 and tau4", e);
        }
        Map<String, Double> discordancy = new LinkedHashMap<>();
        for (Site site : sites) {
            RealVector u = ratios(site).subtract(mean);
            discordancy.put(site.name(), n / 3.0 * u.dotProduct(inverse.operate(u)));
        }
        return java.util.Collections.unmodifiableMap(discordancy);
    }

    /**
     * Returns the discordancy at which a site calls for a second look.
     *
     * @return critical value for this number of sites
     * @throws IllegalArgumentException if there are fewer than 5 sites
     */
    public double criticalDiscordancy() {
        int over = Require.atLeast("number of sites", sites.size(), FEWEST_FOR_DISCORDANCY) - FEWEST_FOR_DISCORDANCY;
        return over < CRITICAL.length ? CRITICAL[over] : 3;
    }

    private static RealVector ratios(Site site) {
        LMoments m = site.moments();
        return new ArrayRealVector(new double[] {m.tau(), m.tau3(), m.tau4()});
    }

    /**
     * Returns the heterogeneity of the group and the fit of families to it, by simulating homogeneous groups of the same
     * record lengths from a kappa distribution.
     *
     * @param simulations number of groups; in [20, 100,000], 500 are usual
     * @param seed start of the random sequence
     * @return the measures
     * @throws IllegalArgumentException if {@code simulations} is out of range, or if records with the average L-moments
     *     would hardly ever have a mean above 0
     */
    public RegionSimulation test(int simulations, long seed) {
        return RegionSimulation.of(this, simulations, seed);
    }

    /**
     * Returns the growth curve: the distribution of a value divided by the mean of its site.
     *
     * @param family a family that is fitted by L-moments of the value itself
     * @return the distribution with the average L-moments
     * @throws IllegalArgumentException for the families of the logarithm
     * @throws NoFitException if no member of the family fits
     */
    public Distribution growthCurve(DistributionFamily family) {
        if (family.isOfLogarithms()) {
            throw new IllegalArgumentException("family must not be one of the logarithm, was " + family);
        }
        return family.fromLMoments(average);
    }

    /**
     * Returns the return level at a site with the given mean.
     *
     * @param mean index of the site, the mean of its annual maxima; greater than 0
     * @param family family of the growth curve
     * @param years return period among annual maxima, years; greater than 1
     * @return mean times growth factor
     * @throws IllegalArgumentException if an argument is out of range
     */
    public double returnLevel(double mean, DistributionFamily family, double years) {
        return Require.positive("mean", mean, "") * growthCurve(family).returnLevel(years);
    }

    @Override
    public String toString() {
        return "Region[" + sites.size() + " sites, t = " + Text.significant(average.lambda2(), 4) + ", t3 = "
                + Text.significant(average.tau3(), 4) + ", t4 = " + Text.significant(average.tau4(), 4) + "]";
    }
}
