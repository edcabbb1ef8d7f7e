package dev.runnel.hydraulics.flow;

import dev.runnel.internal.Require;
import org.apiguardian.api.API;

/**
 * How one Manning's n is made of several along the wetted perimeter P = Σ P<sub>i</sub>.
 *
 * <p>Source: Ven Te Chow, Open-Channel Hydraulics, 1959, section 6-5, after the authors named. No method is right in
 * general; they differ most where the roughnesses differ most.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public enum Compounding {
    /** Horton 1933, Einstein 1934: each part has the mean velocity; n = (Σ P_i n_i^1.5 / P)^(2/3). */
    HORTON_EINSTEIN {
        @Override
        double sum(double n, double perimeter, double radius) {
            return perimeter * n * Math.sqrt(n);
        }

        @Override
        double result(double sum, double perimeter, double radius) {
            double root = Math.cbrt(sum / perimeter);
            return root * root;
        }
    },
    /** Pavlovskij 1931: the resisting forces add up; n = √(Σ P_i n_i² / P). */
    PAVLOVSKIJ {
        @Override
        double sum(double n, double perimeter, double radius) {
            return perimeter * n * n;
        }

        @Override
        double result(double sum, double perimeter, double radius) {
            return Math.sqrt(sum / perimeter);
        }
    },
    /** Lotter 1933: the discharges add up; n = P R^(5/3) / Σ (P_i R_i^(5/3) / n_i). */
    LOTTER {
        @Override
        double sum(double n, double perimeter, double radius) {
            return perimeter * fiveThirds(radius) / n;
        }

        @Override
        double result(double sum, double perimeter, double radius) {
            return perimeter * fiveThirds(radius) / sum;
        }
    };

    abstract double sum(double n, double perimeter, double radius);

    abstract double result(double sum, double perimeter, double radius);

    private static double fiveThirds(double radius) {
        double root = Math.cbrt(radius);
        return radius * root * root;
    }

    /**
     * Returns the n of the whole, each part with the hydraulic radius of the whole (which matters to Lotter only).
     *
     * @param n roughness of each part, s/m^(1/3); greater than 0; not modified
     * @param perimeter wetted perimeter of each part, m; 0 or greater, not all 0; same length; not modified
     * @return n, s/m^(1/3)
     * @throws IllegalArgumentException if an argument is not as said; names the index
     */
    public double n(double[] n, double[] perimeter) {
        double[] radius = new double[n.length];
        java.util.Arrays.fill(radius, 1);
        return n(n, perimeter, radius, 1);
    }

    /**
     * Returns the n of the whole.
     *
     * @param n roughness of each part, s/m^(1/3); greater than 0; not modified
     * @param perimeter wetted perimeter of each part, m; 0 or greater, not all 0; same length; not modified
     * @param radius hydraulic radius of each part, m; greater than 0; used by Lotter only; same length; not modified
     * @param wholeRadius hydraulic radius of the whole, m; greater than 0; used by Lotter only
     * @return n, s/m^(1/3)
     * @throws IllegalArgumentException if an argument is not as said; names the index
     */
    public double n(double[] n, double[] perimeter, double[] radius, double wholeRadius) {
        Require.sameLength("perimeter", n.length, perimeter.length);
        Require.sameLength("radius", n.length, radius.length);
        double sum = 0;
        double whole = 0;
        for (int i = 0; i < n.length; i++) {
            Require.positive("n[" + i + "]", n[i], "s/m^(1/3)");
            Require.nonNegative("perimeter[" + i + "]", perimeter[i], "m");
            Require.positive("radius[" + i + "]", radius[i], "m");
            sum += sum(n[i], perimeter[i], radius[i]);
            whole += perimeter[i];
        }
        Require.positive("sum of perimeter", whole, "m");
        return result(sum, whole, Require.positive("wholeRadius", wholeRadius, "m"));
    }
}
