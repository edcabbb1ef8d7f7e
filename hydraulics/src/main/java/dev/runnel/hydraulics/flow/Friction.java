package dev.runnel.hydraulics.flow;

/**
 * 1/√f of the larger of the laminar and the Colebrook-White friction factor, as a function of the gradient (through
 * K = Re √f, explicit) or of the velocity (through Re, one implicit equation). The two are inverse to each other.
 */
final class Friction {
    /**
     * Below this K (Re = 4) flow is laminar whatever the wall; without this limit the Colebrook-White curve, which turns
     * meaningless near K = 2.51, would come back.
     */
    static final double LAMINAR_KARMAN = 16;

    /** From here on flow is turbulent whatever the wall: smooth walls change over at K = 257. */
    static final double TURBULENT_KARMAN = 300;

    private static final double LAMINAR_REYNOLDS = LAMINAR_KARMAN * LAMINAR_KARMAN / 64;

    private Friction() {}

    /** 1/√f from K = Re √f &gt; 0 and the relative roughness in [0, 1]. */
    static double inverseRootFromKarman(double karman, double relativeRoughness) {
        double laminar = karman / 64;
        if (karman < LAMINAR_KARMAN) {
            return laminar;
        }
        return Math.min(laminar, turbulent(karman, relativeRoughness));
    }

    private static double turbulent(double karman, double relativeRoughness) {
        return -2 * Math.log10(relativeRoughness / 3.7 + 2.51 / karman);
    }

    /** Negative where flow is laminar, positive where it is turbulent. */
    static double transition(double karman, double relativeRoughness) {
        return karman / 64 - turbulent(karman, relativeRoughness);
    }

    /** 1/√f from Re &gt; 0 and the relative roughness in [0, 1]. */
    static double inverseRootFromReynolds(double reynolds, double relativeRoughness) {
        double laminar = Math.sqrt(reynolds / 64);
        if (reynolds < LAMINAR_REYNOLDS) {
            return laminar;
        }
        return Math.min(laminar, colebrookWhite(reynolds, relativeRoughness));
    }

    /**
     * The root x of x + 2 lg(k/3.7 + 2.51 x/Re) = 0. The left side rises and is concave, so Newton's method converges
     * from every start on the low side of the root after at most one step across; 5 steps do from the start used.
     */
    static double colebrookWhite(double reynolds, double relativeRoughness) {
        double a = relativeRoughness / 3.7;
        double b = 2.51 / reynolds;
        double perLog = 2 / Math.log(10);
        double x = 4;
        for (int i = 0; i < 60; i++) {
            double inner = a + b * x;
            double step = (x + 2 * Math.log10(inner)) / (1 + perLog * b / inner);
            // A long step from far above could leave the domain; a tenth of the way is still progress.
            x = Math.max(x - step, 0.1 * x);
            if (Math.abs(step) <= 2e-16 * x) {
                break;
            }
        }
        return x;
    }
}
