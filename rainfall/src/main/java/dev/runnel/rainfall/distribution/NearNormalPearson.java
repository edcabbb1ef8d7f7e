package dev.runnel.rainfall.distribution;

/**
 * The Pearson type III variate of a small skew by way of the normal variate of the same probability: F(k) =
 * &Phi;(z(k)). Nothing in it cancels, however small the skew, and it is the normal itself at skew 0.
 *
 * <p>With &delta; = skew/2 = 1/&radic;a, a the shape of the gamma distribution, and &mu; = k &delta;, the uniform
 * expansion of the incomplete gamma function goes through y = k &radic;(2 (&mu; - ln(1 + &mu;))/&mu;&sup2;), and
 *
 * <blockquote>z = y + &delta; &kappa;<sub>1</sub>(&delta; y) + &delta;&sup3; &kappa;<sub>2</sub>(&delta; y) +
 * &delta;<sup>5</sup> &kappa;<sub>3</sub>(&delta; y) + ...</blockquote>
 *
 * <p>Source: Temme (1992), Asymptotic inversion of incomplete gamma functions, Mathematics of Computation 58(198),
 * 755-764. The coefficients of the power series of &kappa;, for the direction from y to z, were derived in exact
 * fractions from the differential equation there. What is left out is below 1e-14 for a skew below
 * {@value #SMALL_SKEW} where |&delta; y| is up to a half (a tail of 1e-80 or more), and below 2e-12 as far as 0.95, where a tail of
 * 1e-290 is still good to 1e-10.
 */
final class NearNormalPearson {
    /** The expansion holds below it. */
    static final double SMALL_SKEW = 0.05;

    /** Beyond it in &delta; y, where the probability of either tail is below 1e-300, the series are not needed. */
    private static final double REACH = 1;

    /** Below it ln(1 + &mu;) is taken by a series, since the difference &mu; - ln(1 + &mu;) would cancel. */
    private static final double SERIES_BELOW = 0.3;

    /** A step whose square, what is left after it, is below rounding. */
    private static final double LAST_STEP = 1e-9;

    private static final double[] KAPPA_1 = {
        0.3333333333333333,
        -0.027777777777777776,
        -0.0006172839506172839,
        0.0010802469135802468,
        -0.0002755731922398589,
        2.8741263309164543e-05,
        6.185087203605722e-06,
        -3.776373375138807e-06,
        9.120511014991658e-07,
        -7.735470535130866e-08,
        -3.2400053233896885e-08,
        1.685720940069024e-08,
        -3.931682661516204e-09,
        2.8134289510434744e-10,
        1.6988818928842894e-10
    };

    private static final double[] KAPPA_2 = {
        0.008024691358024692,
        0.0030606995884773663,
        -0.0014795218498922203,
        0.00026538038626515995,
        2.0542110305484792e-05,
        -2.845151454119218e-05,
        9.042436525861308e-06,
        -1.1703086404741568e-06
    };

    private static final double[] KAPPA_3 = {
        -0.0037906623554771705, 0.0014685465521370872, -8.078717312256407e-05, -0.0001463616853920352
    };

    private static final int MOST_STEPS = 50;
    private static final double LOG_ROOT_TWO_PI = 0.5 * Math.log(2 * Math.PI);

    private NearNormalPearson() {}

    /** Returns the normal variate z with &Phi;(z) = F(k). */
    static double normalOf(double k, double skew) {
        double delta = 0.5 * skew;
        double mu = k * delta;
        if (mu <= -1) {
            return Double.NEGATIVE_INFINITY;
        }
        double y = rootOf(k, mu);
        double eta = Math.max(-REACH, Math.min(REACH, delta * y));
        double square = delta * delta;
        return y + delta * (series(KAPPA_1, eta) + square * (series(KAPPA_2, eta) + square * series(KAPPA_3, eta)));
    }

    /** Returns the variate k with F(k) = &Phi;(z), by Newton steps on z(k). */
    static double valueOf(double z, double skew) {
        double k = z;
        for (int i = 0; i < MOST_STEPS; i++) {
            double reached = normalOf(k, skew);
            double slope = Math.exp(logDensity(k, skew) + 0.5 * reached * reached + LOG_ROOT_TWO_PI);
            double step = (reached - z) / slope;
            k -= step;
            if (Math.abs(step) <= LAST_STEP) {
                // The next step would be about its square.
                return k;
            }
        }
        return k;
    }

    static double logDensity(double k, double skew) {
        double delta = 0.5 * skew;
        double mu = k * delta;
        if (mu <= -1) {
            return Double.NEGATIVE_INFINITY;
        }
        double y = rootOf(k, mu);
        // The last term is the correction of Stirling's formula for the Gamma function of a.
        double square = delta * delta;
        return -0.5 * y * y - Math.log1p(mu) - LOG_ROOT_TWO_PI - square * (1.0 / 12 - square * square / 360);
    }

    /** Returns y = k &radic;(2 (&mu; - ln(1 + &mu;))/&mu;&sup2;), by ln(1 + &mu;) = 2 artanh t, t = &mu;/(2 + &mu;). */
    private static double rootOf(double k, double mu) {
        if (Math.abs(mu) >= SERIES_BELOW) {
            return k / Math.abs(mu) * Math.sqrt(2 * (mu - Math.log1p(mu)));
        }
        double t = mu / (2 + mu);
        double square = t * t;
        double sum = 0;
        for (int n = 19; n >= 3; n -= 2) {
            sum = sum * square + 1.0 / n;
        }
        return k * Math.sqrt(2 / (2 + mu) * (1 - 2 * t * sum / (2 + mu)));
    }

    private static double series(double[] coefficients, double at) {
        double sum = 0;
        for (int i = coefficients.length - 1; i >= 0; i--) {
            sum = sum * at + coefficients[i];
        }
        return sum;
    }
}
