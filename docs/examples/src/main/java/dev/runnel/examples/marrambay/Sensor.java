package dev.runnel.examples.marrambay;

import java.time.Duration;
import java.util.Random;

/** What a sensor says of the truth: one value a logging step, with noise, in steps of its resolution, and with faults. */
final class Sensor {
    private static final int INNER_STEPS = (int) Scenario.STEP.toSeconds() / RainField.STEP_SECONDS;

    private Sensor() {}

    /** Returns the truth at the logging steps. */
    static double[] sampled(double[] truth) {
        double[] sampled = new double[Scenario.steps()];
        for (int i = 0; i < sampled.length; i++) {
            sampled[i] = truth[i * INNER_STEPS];
        }
        return sampled;
    }

    /** Returns depth readings in whole millimetres: normal noise of 1.2 mm, seen by a sensor above the invert. */
    static double[] depthMm(double[] depth, double offset, Random random) {
        double[] readings = sampled(depth);
        for (int i = 0; i < readings.length; i++) {
            double reading = (readings[i] - offset) * 1000 + 1.2 * random.nextGaussian();
            readings[i] = Math.max(0, Math.rint(reading));
        }
        return readings;
    }

    /** Returns velocity readings in whole mm/s: noise of 2.5 %, of a sensor that reads mean velocity over factor. */
    static double[] velocity(double[] velocity, double factor, Random random) {
        double[] readings = sampled(velocity);
        for (int i = 0; i < readings.length; i++) {
            double reading = readings[i] / factor * (1 + 0.025 * random.nextGaussian());
            readings[i] = Math.rint(reading * 1000) / 1000;
        }
        return readings;
    }

    /**
     * Fouls a velocity sensor in place: grease grows on its face, so that it reads less and less, at last the same value
     * again and again, until it is cleaned.
     */
    static void foul(double[] readings) {
        int from = Scenario.stepAt(Scenario.FOULING_START);
        int frozen = Scenario.stepAt(Scenario.FREEZE_START);
        int to = Scenario.stepAt(Scenario.CLEANED);
        for (int i = from; i < to; i++) {
            double days = (i - from) / (24.0 * 3600 / Scenario.STEP.toSeconds());
            double share = 0.40 + 0.60 * Math.exp(-days / 2.5);
            readings[i] = i < frozen ? Math.rint(readings[i] * share * 1000) / 1000 : readings[frozen - 1];
        }
    }

    /** Returns the height of the blockage in the steps of the rain: slow at first, then as fast as rags can catch. */
    static double[] blockageHeight(int steps) {
        double[] height = new double[steps];
        double whole =
                Duration.between(Scenario.BLOCKAGE_START, Scenario.JETTED).toSeconds();
        for (int i = 0; i < steps; i++) {
            double since =
                    Duration.between(Scenario.BLOCKAGE_START, Scenario.START).toSeconds()
                            + (double) i * RainField.STEP_SECONDS;
            if (since > 0 && since < whole) {
                height[i] = Scenario.BLOCKAGE_HEIGHT * Math.pow(since / whole, 0.9);
            }
        }
        return height;
    }
}
