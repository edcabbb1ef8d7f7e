package dev.runnel.examples.marrambay;

import dev.runnel.hydraulics.flow.Conduit;

/** Normal depth below full bore read from a fine table: a third of a million of them are wanted, to the millimetre. */
final class NormalDepths {
    private static final int ROWS = 4000;

    private final double[] depths = new double[ROWS + 1];
    private final double fullFlow;

    private NormalDepths(Conduit pipe) {
        fullFlow = pipe.fullBore().discharge();
        for (int i = 1; i <= ROWS; i++) {
            depths[i] = pipe.normalDepth(fullFlow * i / ROWS);
        }
    }

    static NormalDepths of(Conduit pipe) {
        return new NormalDepths(pipe);
    }

    double at(double flow) {
        double place = Math.min(flow / fullFlow, 1) * ROWS;
        int below = Math.min((int) place, ROWS - 1);
        return depths[below] + (place - below) * (depths[below + 1] - depths[below]);
    }
}
