package dev.runnel.rainfall.distribution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The moments found against their own definition: by quadrature inside intervals, by hand where no probability is left there. */
class ExpectedMomentsTest {
    private static final double[] TEN = {12, 15, 18, 30, 14, 22, 26, 19, 17, 25};

    private record Years(double lower, double upper, int count) {}

    private static ExpectedMoments fit(double[] known, Years... intervals) {
        ExpectedMoments.Builder builder = ExpectedMoments.builder().known(known);
        for (Years each : intervals) {
            builder.between(each.lower, each.upper, each.count);
        }
        return builder.fit();
    }

    private static double[] parameters(ExpectedMoments fit) {
        return fit.distribution().parameters().values().stream()
                .mapToDouble(Double::doubleValue)
                .toArray();
    }

    /** E[(X - M)^k] in (lower, upper], k = 1 to 3, by Simpson's rule on the density, closest where it may begin as a root. */
    private static double[] inside(PearsonIII distribution, double mean, double deviation, Years years) {
        double low = Math.max(Math.max(Math.log10(years.lower), distribution.lowerBound()), mean - 12 * deviation);
        double high = Math.min(Math.min(Math.log10(years.upper), distribution.upperBound()), mean + 25 * deviation);
        int parts = 20_000;
        double[] sums = new double[4];
        for (int i = 0; i <= parts; i++) {
            double t = (double) i / parts;
            double x = low + (high - low) * t * t * t;
            double weight = (i == 0 || i == parts ? 1 : i % 2 == 1 ? 4 : 2) * t * t * distribution.density(x);
            for (int k = 0; k < 4; k++) {
                sums[k] += weight * Math.pow(x - mean, k);
            }
        }
        return new double[] {sums[1] / sums[0], sums[2] / sums[0], sums[3] / sums[0]};
    }

    /** The three equations of the class, with what they take from the distribution found. */
    private static void assertSolves(double[] known, Years... intervals) {
        double[] found = parameters(fit(known, intervals));
        PearsonIII distribution = PearsonIII.of(found[0], found[1], found[2]);
        double n = known.length;
        double total = n;
        double[] sums = new double[3];
        for (double value : known) {
            double d = Math.log10(value) - found[0];
            sums[0] += d;
            sums[1] += n / (n - 1) * d * d;
            sums[2] += n * n / ((n - 1) * (n - 2)) * d * d * d;
        }
        for (Years each : intervals) {
            double[] expected = inside(distribution, found[0], found[1], each);
            for (int k = 0; k < 3; k++) {
                sums[k] += each.count * expected[k];
            }
            total += each.count;
        }
        assertThat(sums[0] / total).isCloseTo(0, within(2e-8));
        assertThat(sums[1] / total).isCloseTo(found[1] * found[1], within(1e-7));
        assertThat(sums[2] / total / Math.pow(found[1], 3)).isCloseTo(found[2], within(1e-6));
    }

    @Test
    void theEquationsHold() {
        Years low = new Years(0, 16, 20);
        Years middle = new Years(20, 40, 7);
        Years high = new Years(28, Double.POSITIVE_INFINITY, 3);
        assertSolves(TEN, low);
        assertSolves(TEN, middle);
        assertSolves(TEN, high);
        assertSolves(TEN, low, high);
        assertSolves(TEN, middle, new Years(13, 21, 2), high, low);
        assertSolves(new double[] {3, 5, 8, 16}, new Years(0, 4, 2), new Years(6, 7, 1));
    }

    /** A year of which nothing is known takes the moments of the others. */
    @Test
    void yearsOfWhichNothingIsKnown() {
        assertThat(parameters(fit(TEN, new Years(0, Double.POSITIVE_INFINITY, 30))))
                .containsExactly(parameters(fit(TEN)), within(1e-8));
    }

    /** Years given in two parts are years all the same. */
    @Test
    void yearsOfOneKindAddUp() {
        ExpectedMoments parts = fit(TEN, new Years(0, 16, 5), new Years(20, 40, 1), new Years(0, 16, 15));
        assertThat(parts.years()).isEqualTo(31);
        assertThat(parameters(parts))
                .containsExactly(parameters(fit(TEN, new Years(0, 16, 20), new Years(20, 40, 1))), within(1e-8));
        assertThat(parts.toString())
                .startsWith("ExpectedMoments[LogPearsonIII")
                .endsWith(" of 10 known values and 21 intervals]");
    }

    /**
     * One value of 100 (or 1/100) among nineteen near 1 makes a skew whose distribution ends beyond them: an interval on the
     * other side of that end has no probability left, and counts with its bound nearest to it.
     */
    @ParameterizedTest
    @CsvSource({"1, 0, 0.6, 0.6", "1, 0.5, 0.6, 0.6", "-1, 1.7, Infinity, 1.7", "-1, 1.7, 2, 1.7"})
    void intervalsBesideTheDistribution(int sign, double lower, double upper, double bound) {
        double[] known = new double[20];
        Arrays.setAll(known, i -> i == 0 ? Math.pow(10, 2 * sign) : Math.pow(10, 0.001 * i));
        ExpectedMoments fit = fit(known, new Years(lower, upper, 1));
        double[] found = parameters(fit);
        double[] all = Arrays.copyOf(Logarithms.decimal(known), 21);
        all[20] = Math.log10(bound);
        double mean = Arrays.stream(all).sum() / 21;
        double second = 0;
        double third = 0;
        for (int i = 0; i < 21; i++) {
            double d = all[i] - mean;
            second += (i < 20 ? 20 / 19.0 : 1) * d * d;
            third += (i < 20 ? 400 / (19.0 * 18) : 1) * d * d * d;
        }
        double deviation = Math.sqrt(second / 21);
        assertThat(found[0]).isCloseTo(mean, within(1e-9));
        assertThat(found[1]).isCloseTo(deviation, within(1e-9));
        assertThat(found[2]).isCloseTo(third / 21 / Math.pow(deviation, 3), within(1e-8));
        assertThat(Math.abs(found[2])).isLessThan(5);
    }

    @Test
    void refusesBadYears() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ExpectedMoments.builder().known(1, 2, 3).fit())
                .withMessage("sample must have at least 4 values, had 3");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ExpectedMoments.builder().known(2, 2, 2, 2, 2).fit())
                .withMessageStartingWith("sample must not be all equal, was 5 times 0.3");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ExpectedMoments.builder().known(1, 0))
                .withMessageStartingWith("value must be greater than 0");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ExpectedMoments.builder().between(5, 5, 1))
                .withMessage("levels must be 0 or greater and rise, were 5 and 5");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ExpectedMoments.builder().between(-1, 5, 1))
                .withMessage("levels must be 0 or greater and rise, were -1 and 5");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ExpectedMoments.builder().below(5, 0))
                .withMessage("years must be in [1, 10000], was 0");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ExpectedMoments.builder().below(5, 10_001))
                .withMessage("years must be in [1, 10000], was 10001");
    }

    /** Limits without an interval are those of a fit by moments of the logarithms, replicate by replicate. */
    @Test
    void limitsWithoutIntervals() {
        Bootstrap bootstrap = Bootstrap.of(50, 3);
        ExpectedMoments fit = fit(TEN);
        double[] p = parameters(fit);
        Bootstrap.Interval byHand = bootstrap.interval(fit.returnLevel(50), random -> {
            double[] logs = new double[10];
            Arrays.setAll(logs, i -> PearsonIII.of(p[0], p[1], p[2]).quantile(random.nextDouble(Double.MIN_NORMAL, 1)));
            SampleMoments moments = SampleMoments.of(logs);
            return Math.pow(
                    10,
                    PearsonIII.of(moments.mean(), moments.standardDeviation(), moments.skew())
                            .returnLevel(50));
        });
        Bootstrap.Interval limits = fit.returnLevel(50, bootstrap);
        assertThat(limits.lower()).isCloseTo(byHand.lower(), within(1e-6 * byHand.lower()));
        assertThat(limits.upper()).isCloseTo(byHand.upper(), within(1e-6 * byHand.upper()));
        assertThat(limits.failed()).isZero();
    }

    /** Years drawn outside a narrow interval are known: a hundred times the years, a tenth of the error. */
    @Test
    void limitsOfYearsDrawnOutsideTheirInterval() {
        Bootstrap bootstrap = Bootstrap.of(200, 5);
        double[] many = new double[1000];
        Arrays.setAll(many, i -> TEN[i % 10]);
        double ofMany = width(fit(many).returnLevel(5, bootstrap));
        double[] few = Arrays.copyOf(TEN, 10);
        Years[] narrow = Arrays.stream(TEN)
                .mapToObj(x -> new Years(x - 1e-4, x + 1e-4, 99))
                .toArray(Years[]::new);
        Bootstrap.Interval limits = fit(few, narrow).returnLevel(5, bootstrap);
        assertThat(limits.failed()).isZero();
        assertThat(width(limits)).isBetween(0.7 * ofMany, 1.4 * ofMany);
    }

    /** What is known only as below a level says little of what lies far under it. */
    @Test
    void limitsFarUnderALevel() {
        Bootstrap bootstrap = Bootstrap.of(200, 5);
        double[] years = new double[60];
        for (int i = 0; i < 60; i++) {
            years[i] = Math.pow(10, 1 + 0.3 * StandardNormal.quantile((i + 0.5) / 60));
        }
        double[] above = Arrays.copyOfRange(years, 30, 60);
        double all = width(fit(years).returnLevel(1.01, bootstrap));
        double half = width(fit(above, new Years(0, 10, 30)).returnLevel(1.01, bootstrap));
        assertThat(half).isGreaterThan(1.3 * all);
    }

    /** Of a sample with low outliers a year drawn below their threshold is one more of which only that is known. */
    @Test
    void limitsWithLowOutliers() {
        Bootstrap bootstrap = Bootstrap.of(400, 5);
        LowOutliers low = LowOutliers.of(0, 0, 0, 12, 30, 14, 22, 26, 19, 17, 25, 18, 21);
        assertThat(low.count()).isEqualTo(3);
        ExpectedMoments fit = ExpectedMoments.of(low);
        ExpectedMoments marks = fit(low.kept(), new Years(0, 12, 3));
        assertThat(fit.years()).isEqualTo(13);
        assertThat(parameters(fit)).containsExactly(parameters(marks), within(1e-8));
        assertThat(width(fit.returnLevel(1.01, bootstrap))).isGreaterThan(width(marks.returnLevel(1.01, bootstrap)));
    }

    private static double width(Bootstrap.Interval limits) {
        return limits.upper() - limits.lower();
    }
}
