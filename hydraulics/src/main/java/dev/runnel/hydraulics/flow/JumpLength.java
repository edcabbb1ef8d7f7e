package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.internal.Text;

/**
 * Length over downstream depth of a jump on a level rectangular apron, by Froude's number in front: the curve of J. N. Bradley and
 * A. J. Peterka (1957), J. Hydraulics Div. ASCE 83(HY5), its points from memory, with straight lines between.
 */
final class JumpLength {
    private static final double[] FROUDE = {1.7, 2, 2.5, 3, 3.5, 4, 5, 6, 8, 10};
    private static final double[] OVER_DEPTH = {4, 4.35, 4.85, 5.28, 5.55, 5.8, 6, 6.1, 6.12, 6.1};

    private JumpLength() {}

    static double of(CrossSection section, double froude, double downstreamDepth) {
        double width = section.topWidth(0);
        boolean upright = downstreamDepth < section.height()
                && section.topWidth(downstreamDepth) == width
                && Math.abs(section.area(downstreamDepth) - width * downstreamDepth) <= 1e-9 * width * downstreamDepth;
        if (!upright) {
            throw new NoSolutionException("the length of a jump is known for a rectangular channel only, was " + section
                    + " to " + Text.significant(downstreamDepth, 4) + " m");
        }
        int last = FROUDE.length - 1;
        if (!(froude >= FROUDE[0] && froude <= FROUDE[last])) {
            throw new NoSolutionException(
                    "the length of a jump is known for Froude numbers in [" + Text.number(FROUDE[0])
                            + ", " + Text.number(FROUDE[last]) + "], was " + Text.significant(froude, 4)
                            + (froude < FROUDE[0] ? ": it is a train of waves" : ""));
        }
        int i = 1;
        while (froude > FROUDE[i]) {
            i++;
        }
        double share = (froude - FROUDE[i - 1]) / (FROUDE[i] - FROUDE[i - 1]);
        return downstreamDepth * (OVER_DEPTH[i - 1] + share * (OVER_DEPTH[i] - OVER_DEPTH[i - 1]));
    }
}
