package dev.runnel.rainfall.distribution;

import dev.runnel.internal.Require;
import dev.runnel.internal.Roots;
import dev.runnel.internal.Text;
import java.util.Arrays;
import java.util.Map;
import org.apiguardian.api.API;

/**
 * The Wakeby distribution with five parameters, given by its quantiles:
 *
 * <blockquote>x(F) = &xi; + &alpha;/&beta; (1 - (1 - F)<sup>&beta;</sup>) - &gamma;/&delta; (1 - (1 - F)<sup>-&delta;</sup>)</blockquote>
 *
 * <p>It fits nearly any record, and so says little about the family a record is of; its use is as a parent of simulations. The
 * generalised Pareto distribution is in it with &alpha; = 0 or &gamma; = 0. Source: Hosking and Wallis (1997), Regional Frequency
 * Analysis, appendix A.11.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class Wakeby implements Distribution {
    /** A probability of exp(-s) is 0 in a double long before. */
    private static final double LARGEST_EXPONENT = 1024;

    private final double location;
    private final double alpha;
    private final double beta;
    private final double gamma;
    private final double delta;

    private Wakeby(double location, double alpha, double beta, double gamma, double delta) {
        this.location = location;
        this.alpha = alpha;
        this.beta = beta;
        this.gamma = gamma;
        this.delta = delta;
    }

    /**
     * Returns the distribution with the given parameters.
     *
     * @param location &xi;, the lower bound; finite
     * @param alpha &alpha;; with &alpha; + &gamma; of 0 or greater, not both 0
     * @param beta &beta;; &beta; + &delta; must be greater than 0 unless &alpha; or &gamma; is 0
     * @param gamma &gamma;; 0 or greater
     * @param delta &delta;; greater than 0: heavy upper tail
     * @return the distribution
     * @throws IllegalArgumentException if the parameters make no distribution
     */
    public static Wakeby of(double location, double alpha, double beta, double gamma, double delta) {
        Require.finite("location", location, "");
        Require.finite("alpha", alpha, "");
        Require.finite("beta", beta, "");
        Require.nonNegative("gamma", gamma, "");
        Require.finite("delta", delta, "");
        if (!(alpha + gamma > 0 || alpha + gamma == 0 && gamma > 0)) {
            throw new IllegalArgumentException(
                    "alpha + gamma must be 0 or greater, gamma greater than 0 where it is 0, were " + Text.number(alpha)
                            + " and " + Text.number(gamma));
        }
        if (!(beta + delta > 0 || alpha == 0 || gamma == 0)) {
            throw new IllegalArgumentException("beta + delta must be greater than 0, was " + Text.number(beta + delta));
        }
        return new Wakeby(location, alpha, beta, gamma, delta);
    }

    /** Returns the family with its fit, which takes the fifth L-moment too and so needs the sample itself. */
    static DistributionFamily family() {
        return DistributionFamily.of(
                        "WAKEBY",
                        p -> of(p[0], p[1], p[2], p[3], p[4]),
                        Parameter.location("xi"),
                        Parameter.location("alpha"),
                        Parameter.shape("beta"),
                        Parameter.location("gamma"),
                        Parameter.shape("delta"))
                .withLMomentsOfSample(sample -> ofLMoments(lambdas(sample)))
                .withoutMoments(", since five moments of so few values say too little")
                .withoutLikelihood(
                        ", whose five parameters have no dependable maximum in so small a sample; use L_MOMENTS");
    }

    /** Returns the first five L-moments of a sample, unbiased. */
    private static double[] lambdas(double[] sample) {
        double[] x = sample.clone();
        Arrays.sort(x);
        int n = x.length;
        double mean = Arrays.stream(x).average().orElseThrow();
        double[] b = new double[5];
        for (int j = 0; j < n; j++) {
            double weight = (x[j] - mean) / n;
            for (int r = 0; r < 5; r++) {
                b[r] += weight;
                weight *= (double) (j - r) / (n - 1 - r);
            }
        }
        return new double[] {
            mean + b[0],
            2 * b[1] - b[0],
            6 * b[2] - 6 * b[1] + b[0],
            20 * b[3] - 30 * b[2] + 12 * b[1] - b[0],
            70 * b[4] - 140 * b[3] + 90 * b[2] - 20 * b[1] + b[0]
        };
    }

    /**
     * Returns the distribution with five given L-moments.
     *
     * @param lambda &lambda;<sub>1</sub> to &lambda;<sub>5</sub>, not ratios
     * @return the distribution
     * @throws NoFitException if there is none
     * @throws IllegalArgumentException if there are not five
     */
    public static Wakeby ofLMoments(double... lambda) {
        if (lambda.length != 5) {
            throw new IllegalArgumentException("lambda must be five L-moments, were " + lambda.length);
        }
        double l2 = lambda[1];
        double l3 = lambda[2];
        double l4 = lambda[3];
        double l5 = lambda[4];
        double n1 = 3 * l2 - 25 * l3 + 32 * l4;
        double n2 = -3 * l2 + 5 * l3 + 8 * l4;
        double n3 = 3 * l2 + 5 * l3 + 2 * l4;
        double c1 = 7 * l2 - 85 * l3 + 203 * l4 - 125 * l5;
        double c2 = -7 * l2 + 25 * l3 + 7 * l4 - 25 * l5;
        double c3 = 7 * l2 + 5 * l3 - 7 * l4 - 5 * l5;
        double a = n2 * c3 - c2 * n3;
        double b = n1 * c3 - c1 * n3;
        double c = n1 * c2 - c1 * n2;
        double root = Math.sqrt(b * b - 4 * a * c);
        double one = (-b + root) / (2 * a);
        double other = (-b - root) / (2 * a);
        double beta = Math.max(one, other);
        double delta = -Math.min(one, other);
        double sum = 4 * (beta + delta);
        double alpha = (1 + beta) * (2 + beta) * (3 + beta) / sum * ((1 + delta) * l2 - (3 - delta) * l3);
        double gamma = -(1 - delta) * (2 - delta) * (3 - delta) / sum * ((1 - beta) * l2 - (3 + beta) * l3);
        boolean isOne = beta > -1 && delta < 1 && beta + delta > 0 && gamma >= 0 && alpha + gamma >= 0;
        if (!(isOne && Double.isFinite(alpha + gamma))) {
            throw new NoFitException(
                    "L-moments must be those of a Wakeby distribution, were " + Arrays.toString(lambda));
        }
        return of(lambda[0] - alpha / (1 + beta) - gamma / (1 - delta), alpha, beta, gamma, delta);
    }

    /** Returns x for s = -ln(1 - F). */
    private double valueOf(double s) {
        double first = beta == 0 ? s : -Math.expm1(-beta * s) / beta;
        double second = delta == 0 ? s : Math.expm1(delta * s) / delta;
        return location + (alpha == 0 ? 0 : alpha * first) + (gamma == 0 ? 0 : gamma * second);
    }

    private double slope(double s) {
        return (alpha == 0 ? 0 : alpha * Math.exp(-beta * s)) + (gamma == 0 ? 0 : gamma * Math.exp(delta * s));
    }

    /** Solves x(s) = x; infinite at or above the upper bound. */
    private double exponentOf(double x) {
        double above = Roots.doubled(s -> s < LARGEST_EXPONENT ? valueOf(s) - x : 0, 1);
        return Roots.between(s -> valueOf(s) - x, 0, above);
    }

    @Override
    public double cdf(double x) {
        return Require.finite("x", x, "") <= location ? 0 : x >= upperBound() ? 1 : -Math.expm1(-exponentOf(x));
    }

    @Override
    public double exceedance(double x) {
        return Require.finite("x", x, "") <= location ? 1 : x >= upperBound() ? 0 : Math.exp(-exponentOf(x));
    }

    @Override
    public double logDensity(double x) {
        if (Require.finite("x", x, "") < location || x > upperBound()) {
            return Double.NEGATIVE_INFINITY;
        }
        double s = x == location ? 0 : exponentOf(x);
        return -s - Math.log(slope(s));
    }

    @Override
    public double quantile(double probability) {
        return valueOf(-Math.log1p(-Probability.inside("probability", probability)));
    }

    @Override
    public double quantileOfExceedance(double exceedance) {
        return valueOf(-Math.log(Probability.inside("exceedance", exceedance)));
    }

    @Override
    public double lowerBound() {
        return location;
    }

    @Override
    public double upperBound() {
        boolean isBounded = (alpha == 0 || beta > 0) && (gamma == 0 || delta < 0);
        return isBounded
                ? location + (alpha == 0 ? 0 : alpha / beta) - (gamma == 0 ? 0 : gamma / delta)
                : Double.POSITIVE_INFINITY;
    }

    @Override
    public LMoments lMoments() {
        if (!hasMean()) {
            throw new IllegalStateException("L-moments exist for beta above -1 and delta below 1, were "
                    + Text.number(beta) + " and " + Text.number(delta));
        }
        double l2 = 0;
        double l3 = 0;
        double l4 = 0;
        for (double[] term : new double[][] {{alpha, beta}, {gamma, -delta}}) {
            double k = term[1];
            if (term[0] != 0) {
                double of2 = term[0] / ((1 + k) * (2 + k));
                l2 += of2;
                l3 += of2 * (1 - k) / (3 + k);
                l4 += of2 * (1 - k) * (2 - k) / ((3 + k) * (4 + k));
            }
        }
        return LMoments.of(mean(), l2, l3 / l2, l4 / l2);
    }

    private boolean hasMean() {
        return (alpha == 0 || beta > -1) && (gamma == 0 || delta < 1);
    }

    /** A quotient of 0 where there is nothing to divide: a term that is not there has no tail, whatever its exponent. */
    private static double share(double part, double divisor) {
        return part == 0 ? 0 : part / divisor;
    }

    @Override
    public double mean() {
        return hasMean() ? location + share(alpha, 1 + beta) + share(gamma, 1 - delta) : Double.POSITIVE_INFINITY;
    }

    @Override
    public double variance() {
        if (gamma > 0 && delta >= 0.5 || alpha != 0 && beta <= -0.5) {
            return Double.POSITIVE_INFINITY;
        }
        double first = share(alpha, 1 + beta);
        double second = share(gamma, 1 - delta);
        return share(first * first, 1 + 2 * beta)
                + share(2 * first * second, 1 + beta - delta)
                + share(second * second, 1 - 2 * delta);
    }

    @Override
    public Map<String, Double> parameters() {
        return ShapedDistribution.named("xi", location, "alpha", alpha, "beta", beta, "gamma", gamma, "delta", delta);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Wakeby that && parameters().equals(that.parameters());
    }

    @Override
    public int hashCode() {
        return parameters().hashCode();
    }

    @Override
    public String toString() {
        return ShapedDistribution.describe(this);
    }
}
