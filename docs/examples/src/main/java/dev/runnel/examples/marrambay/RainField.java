package dev.runnel.examples.marrambay;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Rain over the two catchments in steps of 10 s, and the tips that a bucket makes of it. */
final class RainField {
    /** Length of a step, s. */
    static final int STEP_SECONDS = 10;

    private static final Duration TRAVEL = Duration.ofMinutes(9);

    private final double[] atSaltingsLane;
    private final double[] atQuayStreet;

    private RainField(double[] atSaltingsLane, double[] atQuayStreet) {
        this.atSaltingsLane = atSaltingsLane;
        this.atQuayStreet = atQuayStreet;
    }

    static RainField of(Random random) {
        int steps = (int) Duration.between(Scenario.START, Scenario.END).toSeconds() / STEP_SECONDS;
        double[] upstream = new double[steps];
        double[] downstream = new double[steps];
        for (Storm storm : Scenario.STORMS) {
            double[] shape = storm.isConvective() ? convective(storm, random) : frontal(storm, random);
            double share = 0.92 + 0.12 * random.nextDouble();
            place(shape, storm.start(), storm.depthMm(), upstream);
            place(shape, storm.start().plus(TRAVEL), storm.depthMm() * share, downstream);
        }
        return new RainField(upstream, downstream);
    }

    /** Returns the rain at Saltings Lane, mm in each step. */
    double[] atSaltingsLane() {
        return atSaltingsLane;
    }

    /** Returns the rain at Quay Street, mm in each step. */
    double[] atQuayStreet() {
        return atQuayStreet;
    }

    /**
     * Returns what a funnel lets through that is blocked during a storm: its water leaves through a linear reservoir of
     * three hours, and a third of it spills over the rim.
     */
    static double[] throughBlockedFunnel(double[] rainMm, Storm storm) {
        double[] out = rainMm.clone();
        int from = (int) Duration.between(Scenario.START, storm.start()).toSeconds() / STEP_SECONDS;
        int to = from + 24 * 3600 / STEP_SECONDS;
        double held = 0;
        for (int i = from; i < to; i++) {
            held += rainMm[i] * 2 / 3;
            out[i] = held * STEP_SECONDS / (3.0 * 3600);
            held -= out[i];
        }
        return out;
    }

    /**
     * Returns the tips of a bucket. While it moves, rain goes on running into the side that is already full: that rain
     * is lost, so that hard rain is under-recorded.
     */
    static List<Instant> tips(double[] rainMm) {
        List<Instant> tips = new ArrayList<>();
        double held = 0;
        double movingUntil = 0;
        for (int i = 0; i < rainMm.length; i++) {
            double rate = rainMm[i] / STEP_SECONDS;
            double now = (double) i * STEP_SECONDS;
            double stepEnd = now + STEP_SECONDS;
            while (rate > 0) {
                double from = Math.max(now, movingUntil);
                double full = from + (Scenario.TIP_MM - held) / rate;
                if (full >= stepEnd) {
                    held += rate * Math.max(0, stepEnd - from);
                    break;
                }
                tips.add(Scenario.START.plusSeconds((long) full));
                held = 0;
                movingUntil = full + Scenario.LOST_SECONDS;
                now = full;
            }
        }
        return tips;
    }

    /** Many soft cells, more of them in the middle of the storm. */
    private static double[] frontal(Storm storm, Random random) {
        double[] shape = new double[(int) (storm.hours() * 3600 / STEP_SECONDS)];
        int cells = Math.max(4, (int) Math.round(storm.hours() * 4));
        for (int c = 0; c < cells; c++) {
            double centre = 0.5 * (random.nextDouble() + random.nextDouble());
            int length = 60 + random.nextInt(180);
            addCell(shape, (int) (centre * shape.length) - length / 2, length, -Math.log(1 - random.nextDouble()));
        }
        return shape;
    }

    /** A soft start, a hard middle with a burst of five minutes, a soft end. */
    private static double[] convective(Storm storm, Random random) {
        double[] shape = new double[(int) (storm.hours() * 3600 / STEP_SECONDS)];
        addCell(shape, 0, shape.length, 0.9);
        addCell(shape, shape.length / 5, shape.length / 2, 3.2);
        addCell(shape, (int) (shape.length * 0.38), 45, 6.0);
        for (int c = 0; c < 6; c++) {
            addCell(shape, random.nextInt(shape.length), 12 + random.nextInt(48), 1.2 * random.nextDouble());
        }
        return shape;
    }

    private static void addCell(double[] shape, int from, int length, double height) {
        for (int i = Math.max(0, from); i < Math.min(shape.length, from + length); i++) {
            shape[i] += height * Math.sin(Math.PI * (i - from + 0.5) / length);
        }
    }

    private static void place(double[] shape, Instant start, double depthMm, double[] into) {
        double sum = 0;
        for (double value : shape) {
            sum += value;
        }
        int from = (int) Duration.between(Scenario.START, start).toSeconds() / STEP_SECONDS;
        for (int i = 0; i < shape.length; i++) {
            into[from + i] += shape[i] / sum * depthMm;
        }
    }
}
