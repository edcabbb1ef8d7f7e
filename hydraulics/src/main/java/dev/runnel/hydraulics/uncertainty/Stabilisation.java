package dev.runnel.hydraulics.uncertainty;

import dev.runnel.internal.Moments;
import java.util.ArrayList;
import java.util.List;

/** The adaptive procedure of JCGM 101, 7.9: blocks of trials until the averages over the blocks are known well enough. */
final class Stabilisation {
    /** Least trials of a block, 7.9.4 b. */
    private static final int LEAST_BLOCK = 10_000;

    /** Keeps the rounding of 1 − p from adding a trial. */
    private static final double ROUNDING = 1e-9;

    private final double probability;
    private final int digits;
    private final List<double[]> blocks = new ArrayList<>();
    /** Mean, standard deviation, lower and upper end of each block. */
    private final List<double[]> figures = new ArrayList<>();

    Stabilisation(double probability, int digits) {
        this.probability = probability;
        this.digits = digits;
    }

    /** Trials of a block, max(J, 10⁴) with J the least whole number that is not below 100/(1 − p). */
    int blockSize() {
        return (int) Math.max(Math.ceil(100 / (1 - probability) * (1 - ROUNDING)), LEAST_BLOCK);
    }

    /** Takes the array over. */
    void add(double[] block) {
        Simulation part = Simulation.of(block);
        double[] ends = part.interval(probability);
        figures.add(new double[] {part.mean(), part.standardUncertainty(), ends[0], ends[1]});
        blocks.add(block);
    }

    /** All trials so far, and how well their figures are known. */
    StabilisedSimulation result() {
        int size = blocks.get(0).length;
        double[] all = new double[blocks.size() * size];
        for (int i = 0; i < blocks.size(); i++) {
            System.arraycopy(blocks.get(i), 0, all, i * size, size);
        }
        return new StabilisedSimulation(
                Simulation.of(all),
                probability,
                blocks.size(),
                Validation.tolerance(uncertainty(), digits),
                twiceError(0),
                twiceError(1),
                twiceError(2),
                twiceError(3));
    }

    boolean isStable() {
        if (blocks.size() < 2) {
            return false;
        }
        double tolerance = Validation.tolerance(uncertainty(), digits);
        boolean stable = true;
        for (int figure = 0; figure < 4; figure++) {
            stable &= twiceError(figure) <= tolerance;
        }
        return stable;
    }

    /** Standard deviation of all trials, put together from the blocks. */
    private double uncertainty() {
        double size = blocks.get(0).length;
        double within = figures.stream().mapToDouble(f -> f[1] * f[1]).sum() * (size - 1);
        double between = size * Moments.squares(column(0));
        return Math.sqrt((within + between) / (size * blocks.size() - 1));
    }

    /** Twice the standard deviation of the average of a figure over the blocks. */
    private double twiceError(int figure) {
        double h = blocks.size();
        return 2 * Math.sqrt(Moments.squares(column(figure)) / (h * (h - 1)));
    }

    private double[] column(int figure) {
        return figures.stream().mapToDouble(f -> f[figure]).toArray();
    }
}
