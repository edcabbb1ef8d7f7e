package dev.runnel.hydraulics.flow;

/** Where among the {@linkplain CircleNodes nodes} the depth of a discharge lies, by halving: the law itself at the nodes tells. */
final class NodeSearch {
    private NodeSearch() {}

    /**
     * The number of the depth of a √ρ (−L) = q on the branch that rises, as {@link CircleNodes#depth} counts: by a straight
     * line between two nodes, so within a hundredth; NaN for more than the pipe carries.
     *
     * @param alpha α of {@link CircleColebrook}
     * @param beta its β
     * @param q greater than 0
     */
    static double number(double alpha, double beta, double q) {
        int low = 1;
        int high = CircleNodes.NODES - 1;
        while (low < high) {
            int middle = (low + high) / 2;
            double here = discharge(alpha, beta, middle);
            // Where a thin film has a logarithm above 0 the law gives less than nothing, and falls before it rises.
            boolean isBeyondCrest = here > 0 && discharge(alpha, beta, middle + 1) < here;
            if (here >= q || isBeyondCrest) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        double above = discharge(alpha, beta, low);
        double below = discharge(alpha, beta, low - 1);
        return above >= q ? low + 0.5 - (above - q) / (above - below) : Double.NaN;
    }

    /** a √ρ (−L) at a node, within some 1e-9 of itself. */
    private static double discharge(double alpha, double beta, int node) {
        double[] s = CircleNodes.SERIES;
        int at = CircleNodes.line(node);
        double inner = alpha * s[at + CircleNodes.INVERSE_RADIUS] + beta * s[at + CircleNodes.INVERSE_RADIUS_POWER];
        return -s[at + CircleNodes.CONVEYANCE] * ColebrookRoot.roughLogarithm(inner);
    }
}
