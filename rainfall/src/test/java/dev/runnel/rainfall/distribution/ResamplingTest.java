package dev.runnel.rainfall.distribution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class ResamplingTest {
    /** The L-moments by counts are those of the values written out, for odd and even sizes, near and far from 0. */
    @Test
    void countsGiveTheLMomentsOfTheValues() {
        SplittableRandom random = new SplittableRandom(5);
        for (int n = 4; n <= 101; n += 13) {
            for (double offset : new double[] {0, 1000}) {
                double[] sample = Gev.of(30 + offset, 8, -0.1).sample(n, n);
                Resampling resampling = new Resampling(sample);
                double[] sorted = sample.clone();
                Arrays.sort(sorted);
                for (int i = 0; i < 50; i++) {
                    int[] counts = resampling.draw(random);
                    assertThat(Arrays.stream(counts).sum()).isEqualTo(n);
                    double[] values = new double[n];
                    int at = 0;
                    for (int j = 0; j < n; j++) {
                        for (int c = 0; c < counts[j]; c++) {
                            values[at++] = sorted[j];
                        }
                    }
                    if (Samples.areAllEqual(values)) {
                        continue;
                    }
                    LMoments expected = LMoments.ofSample(values);
                    LMoments got = resampling.lMoments(counts);
                    assertThat(got.lambda1()).isCloseTo(expected.lambda1(), within(1e-10));
                    assertThat(got.lambda2()).isCloseTo(expected.lambda2(), within(1e-11));
                    assertThat(got.tau3()).isCloseTo(expected.tau3(), within(1e-11));
                    assertThat(got.tau4()).isCloseTo(expected.tau4(), within(1e-10));
                }
            }
        }
    }

    @Test
    void allEqualIsNoFit() {
        Resampling resampling = new Resampling(new double[] {0.1, 0.2, 0.4, 0.7});
        for (int j = 0; j < 4; j++) {
            int[] counts = new int[4];
            counts[j] = 4;
            assertThatExceptionOfType(NoFitException.class).isThrownBy(() -> resampling.lMoments(counts));
        }
    }

    /** Every index comes up about as often: 200,000 draws of 7, four standard errors. */
    @Test
    void indicesAreUniform() {
        Resampling resampling = new Resampling(new double[] {1, 2, 3, 4, 5, 6, 7});
        SplittableRandom random = new SplittableRandom(9);
        long[] all = new long[7];
        for (int i = 0; i < 200_000; i++) {
            int[] counts = resampling.draw(random);
            for (int j = 0; j < 7; j++) {
                all[j] += counts[j];
            }
        }
        for (long count : all) {
            assertThat((double) count).isCloseTo(200_000, within(4 * Math.sqrt(200_000 * 6 / 7.0)));
        }
    }

    /** The shape by Newton steps meets the exact relation, over the whole range and across the switches. */
    @Test
    void theShapeOfTheGevIsExact() {
        for (double tau3 = -0.95; tau3 < 0.97; tau3 += 0.0117) {
            Gev gev = (Gev) DistributionFamily.GEV.fromLMoments(LMoments.of(30, 5, tau3, 0.1));
            assertThat(gev.lMoments().tau3()).isCloseTo(tau3, within(2e-13));
        }
        for (double near : new double[] {0.169, 0.1699, 0.16992, 0.169925001442, 0.17, 0.1705}) {
            Gev gev = (Gev) DistributionFamily.GEV.fromLMoments(LMoments.of(30, 5, near, 0.1));
            assertThat(gev.lMoments().tau3()).isCloseTo(near, within(2e-13));
        }
    }
}
