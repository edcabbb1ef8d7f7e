package dev.runnel.hydraulics.watch;

import java.util.List;

/**
 * Names a change by its direction in the plane of ln depth and ln velocity of dry hours: the ray that is least far away,
 * measured with the scatter of the baseline, in which the flow moves both together.
 */
final class Naming {
    /** Of the covariance of single hours; a median of some days is surer. */
    private static final double COVARIANCE_SHARE = 0.5;

    /** Error of the median ln depth that no count of hours takes away; chosen here. */
    private static final double LEAST_DEPTH_ERROR = 0.03;

    /** The same of ln velocity; chosen here. */
    private static final double LEAST_VELOCITY_ERROR = 0.04;

    /** A name whose squared distance is larger by less than this cannot be told from the best. */
    private static final double LIKE = 2;

    /** The same of medians over weeks, whose scatter is less: what remains is a law that wanders; chosen here. */
    private static final double SETTLED_SHARE = 0.1;

    private static final double SETTLED_DEPTH_ERROR = 0.02;

    private static final double SETTLED_VELOCITY_ERROR = 0.03;

    private static final FindingName[] NAMES = {
        FindingName.HELD_UP,
        FindingName.RELEASED,
        FindingName.MORE_WATER,
        FindingName.LESS_WATER,
        FindingName.DEPTH_DRIFT,
        FindingName.DEPTH_STEP,
        FindingName.VELOCITY_LOSS,
        FindingName.VELOCITY_GAIN
    };

    /** Squared distance by which another name is then farther that is told no more; chosen here. */
    static final double CLEARLY = 4;

    static final int HELD_UP = 0;

    static final int MORE_WATER = 2;

    static final int LESS_WATER = 3;

    /** Depth up and depth down stand for step or drift alike; which it is the shape decides. */
    static final int DEPTH_UP = 4;

    static final int DEPTH_DOWN = 5;

    private final double[][] rays;
    private final double dd;
    private final double du;
    private final double uu;
    private final double inverseDd;
    private final double inverseDu;
    private final double inverseUu;

    /** For the last days. */
    static Naming of(SiteBaseline baseline) {
        return of(baseline, COVARIANCE_SHARE, LEAST_DEPTH_ERROR, LEAST_VELOCITY_ERROR);
    }

    private Naming(SiteBaseline baseline, double share, double depthError, double velocityError) {
        this(
                rays(baseline),
                share * baseline.covariance[0] + depthError * depthError,
                share * baseline.covariance[1],
                share * baseline.covariance[2] + velocityError * velocityError);
    }

    /** For where a site stands over weeks. */
    static Naming settled(SiteBaseline baseline) {
        return of(baseline, SETTLED_SHARE, SETTLED_DEPTH_ERROR, SETTLED_VELOCITY_ERROR);
    }

    /** Where there is a tide, a season that is too small to be told goes on unseen beside all else. */
    private static Naming of(SiteBaseline baseline, double share, double depthError, double velocityError) {
        Naming naming = new Naming(baseline, share, depthError, velocityError);
        double unseen = ChangeSums.SLACK * baseline.scale[Quantity.DEPTH.ordinal()];
        return baseline.isTidal() ? naming.widened(unseen, naming.exponent() * unseen) : naming;
    }

    private Naming(double[][] rays, double dd, double du, double uu) {
        this.rays = rays;
        this.dd = dd;
        this.du = du;
        this.uu = uu;
        double determinant = dd * uu - du * du;
        inverseDd = uu / determinant;
        inverseDu = -du / determinant;
        inverseUu = dd / determinant;
    }

    private static double[][] rays(SiteBaseline baseline) {
        double[] heldUp = {1, -baseline.kappa};
        double[] moreWater = {1, baseline.usualVelocity().orElseThrow().exponent()};
        double[] deep = {1, 0};
        double[] slow = {0, -1};
        return new double[][] {heldUp, back(heldUp), moreWater, back(moreWater), deep, back(deep), slow, back(slow)};
    }

    private static double[] back(double[] ray) {
        return new double[] {-ray[0], -ray[1]};
    }

    /** How fast the velocity grows with the depth. */
    double exponent() {
        return rays[MORE_WATER][1];
    }

    /** How the velocity falls with the depth where water is held up. */
    double heldUp() {
        return rays[HELD_UP][1];
    }

    /** By how much a ray moves the velocity at its depth; the rays of water not at all. */
    double parts(int ray) {
        return ray == MORE_WATER || ray == LESS_WATER ? 0 : rays[ray][1] - exponent() * rays[ray][0];
    }

    /** This with a way from usual as a further error, of which any share may have come or gone. */
    Naming widened(double d, double u) {
        return new Naming(rays, dd + d * d, du + d * u, uu + u * u);
    }

    private double product(double d1, double u1, double d2, double u2) {
        return d1 * (inverseDd * d2 + inverseDu * u2) + u1 * (inverseDu * d2 + inverseUu * u2);
    }

    /** Squared distance of a change from each of the rays. */
    double[] distances(double d, double u) {
        double[] found = new double[rays.length];
        for (int i = 0; i < rays.length; i++) {
            double[] g = rays[i];
            double t = Math.max(0, product(g[0], g[1], d, u) / product(g[0], g[1], g[0], g[1]));
            double restD = d - t * g[0];
            double restU = u - t * g[1];
            found[i] = product(restD, restU, restD, restU);
        }
        return found;
    }

    /** Whether a change lies clearly farther from more and from less water than from something else; not if it is not known. */
    boolean isNoWater(double d, double u) {
        double[] far = distances(d, u);
        return Math.min(far[MORE_WATER], far[LESS_WATER]) - far[least(far)] > CLEARLY;
    }

    /** Whether a place in the plane is farther from usual than names are told apart; not if it is not known. */
    boolean isAway(double d, double u) {
        return product(d, u, d, u) > LIKE;
    }

    static int least(double[] distances) {
        int best = 0;
        for (int i = 1; i < distances.length; i++) {
            best = distances[i] < distances[best] ? i : best;
        }
        return best;
    }

    /** The ray that is hardly farther than a given one; -1 if there is none. */
    static int alike(double[] distances, int best) {
        int second = -1;
        for (int i = 0; i < distances.length; i++) {
            if (i != best && (second < 0 || distances[i] < distances[second])) {
                second = i;
            }
        }
        return distances[second] - distances[best] < LIKE ? second : -1;
    }

    /** The names of a ray for a change of a shape. */
    static List<FindingName> names(int ray, ChangeShape shape) {
        if (ray == DEPTH_UP) {
            return switch (shape) {
                case STEP -> List.of(FindingName.DEPTH_STEP);
                case RAMP -> List.of(FindingName.DEPTH_DRIFT, FindingName.SEDIMENT);
                case UNCERTAIN -> List.of(FindingName.DEPTH_STEP, FindingName.DEPTH_DRIFT, FindingName.SEDIMENT);
            };
        }
        if (ray == DEPTH_DOWN) {
            return switch (shape) {
                case STEP -> List.of(FindingName.DEPTH_STEP);
                case RAMP -> List.of(FindingName.DEPTH_DRIFT);
                case UNCERTAIN -> List.of(FindingName.DEPTH_STEP, FindingName.DEPTH_DRIFT);
            };
        }
        return List.of(NAMES[ray]);
    }
}
