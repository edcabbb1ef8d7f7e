package dev.runnel.rainfall.distribution;

/** A distribution of the same family with other parameters, in the order of {@link Distribution#parameters}. */
final class Rebuilt {
    private Rebuilt() {}

    static Distribution of(Distribution like, double... p) {
        if (like instanceof Exponential) {
            return Exponential.of(p[0], p[1]);
        } else if (like instanceof Gumbel) {
            return Gumbel.of(p[0], p[1]);
        } else if (like instanceof Normal) {
            return Normal.of(p[0], p[1]);
        } else if (like instanceof LogNormal) {
            return LogNormal.of(p[0], p[1]);
        } else if (like instanceof Gev) {
            return Gev.of(p[0], p[1], p[2]);
        } else if (like instanceof GeneralizedLogistic) {
            return GeneralizedLogistic.of(p[0], p[1], p[2]);
        } else if (like instanceof GeneralizedNormal) {
            return GeneralizedNormal.of(p[0], p[1], p[2]);
        } else if (like instanceof GeneralizedPareto) {
            return GeneralizedPareto.of(p[0], p[1], p[2]);
        } else if (like instanceof PearsonIII) {
            return PearsonIII.of(p[0], p[1], p[2]);
        } else if (like instanceof LogPearsonIII) {
            return LogPearsonIII.of(p[0], p[1], p[2]);
        }
        throw new IllegalArgumentException("distribution must have a fit by maximum likelihood, was " + like);
    }
}
