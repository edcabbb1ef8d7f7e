package dev.runnel.rainfall.distribution;

import dev.runnel.internal.Require;

/** Logarithms of a sample whose values must be greater than 0. */
final class Logarithms {
    private Logarithms() {}

    static double[] natural(double[] sample) {
        double[] logs = new double[sample.length];
        for (int i = 0; i < logs.length; i++) {
            logs[i] = Math.log(Require.positive("sample[" + i + "]", sample[i], ""));
        }
        return logs;
    }

    static double[] decimal(double[] sample) {
        double[] logs = new double[sample.length];
        for (int i = 0; i < logs.length; i++) {
            logs[i] = Math.log10(Require.positive("sample[" + i + "]", sample[i], ""));
        }
        return logs;
    }
}
