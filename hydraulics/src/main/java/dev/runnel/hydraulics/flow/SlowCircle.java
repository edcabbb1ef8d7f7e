package dev.runnel.hydraulics.flow;

/**
 * Uniform flow by the law of Colebrook and White in a circle that is not surely turbulent when full: laminar films, which are
 * most of what such a pipe is asked, without a search, and all else by the general one.
 */
final class SlowCircle implements UniformCurve {
    private final Conduit conduit;
    private final double diameter;
    private final double alpha;
    private final double beta;
    private final double perUnit;

    SlowCircle(Conduit conduit, ColebrookPipe pipe) {
        this.conduit = conduit;
        this.diameter = pipe.diameter;
        this.alpha = pipe.alpha;
        this.beta = pipe.beta;
        this.perUnit = pipe.perUnit;
    }

    @Override
    public double discharge(double depth) {
        return conduit.dischargeByLaw(depth);
    }

    @Override
    public double lowestDepth(double discharge) {
        double film = LaminarFilm.part(alpha, beta, discharge * perUnit);
        return film > 0 ? diameter * film : conduit.curves().discharge().lowestDepthFor(discharge);
    }

    @Override
    public double[] depths(double discharge) {
        double[] depths = conduit.curves().discharge().depthsFor(discharge);
        if (depths.length > 0) {
            depths[0] = lowestDepth(discharge);
        }
        return depths;
    }

    @Override
    public double depthOfMostDischarge() {
        return conduit.curves().discharge().depthOfMaximum();
    }

    @Override
    public double depthOfMostVelocity() {
        return conduit.curves().velocity().depthOfMaximum();
    }
}
