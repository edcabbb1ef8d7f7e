package dev.runnel.timeseries.change;

import java.util.Arrays;

/** The distribution of the rank sum statistic U without ties. */
final class RankSumChances {
    private RankSumChances() {}

    /**
     * P(U = u) for u from 0 to m n. The greatest of all values is one before with chance m/(m + n), and then beats none after; or one
     * after, and then beats all m before.
     */
    static double[] of(int m, int n) {
        // fewer[k] is the distribution for the values before counted so far and k after.
        double[][] fewer = new double[n + 1][];
        Arrays.setAll(fewer, k -> new double[] {1});
        for (int i = 1; i <= m; i++) {
            double[][] now = new double[n + 1][];
            now[0] = new double[] {1};
            for (int k = 1; k <= n; k++) {
                double[] chance = new double[i * k + 1];
                for (int u = 0; u < fewer[k].length; u++) {
                    chance[u] += fewer[k][u] * i / (i + k);
                }
                for (int u = 0; u < now[k - 1].length; u++) {
                    chance[u + i] += now[k - 1][u] * k / (i + k);
                }
                now[k] = chance;
            }
            fewer = now;
        }
        return fewer[n];
    }
}
