package dev.runnel.hydraulics.structure;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * A thin-plate weir drowned from below, by Villemonte. Immutable and thread-safe.
 *
 * <p>Q/Q₁ = (1 − (h₂/h₁)ⁿ)^0.385, where Q₁ is the free discharge at the upstream head h₁ (m), h₂ the tailwater level
 * above the crest (m) and n the exponent of the free weir: 1.5 for a rectangular or Cipolletti weir, 2.5 for a V-notch.
 *
 * <p>Source: J. R. Villemonte (1947), Submerged-weir discharge studies, Engineering News-Record, 866-869; stated accuracy
 * about 5 % (from memory), worse as h₂/h₁ nears 1, where both levels must be known to the millimetre.
 *
 * <p>What it is not: a law for broad crests or flumes, which stay modular to a much higher tailwater.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class SubmergedWeir {
    private final HeadDischarge weir;
    private final double exponent;

    private SubmergedWeir(HeadDischarge weir, double exponent) {
        this.weir = weir;
        this.exponent = exponent;
    }

    /**
     * Returns the drowned form of a rectangular weir, n = 1.5.
     *
     * @param weir the free weir
     * @return the drowned weir
     */
    public static SubmergedWeir of(RectangularWeir weir) {
        return of(weir, 1.5);
    }

    /**
     * Returns the drowned form of a V-notch, n = 2.5.
     *
     * @param weir the free weir
     * @return the drowned weir
     */
    public static SubmergedWeir of(VNotchWeir weir) {
        return of(weir, 2.5);
    }

    /**
     * Returns the drowned form of a Cipolletti weir, n = 1.5.
     *
     * @param weir the free weir
     * @return the drowned weir
     */
    public static SubmergedWeir of(CipollettiWeir weir) {
        return of(weir, 1.5);
    }

    /**
     * Returns the drowned form of any thin-plate weir.
     *
     * @param weir the free weir
     * @param exponent exponent n of the free weir, Q₁ ∝ h₁ⁿ; greater than 0, finite
     * @return the drowned weir
     * @throws IllegalArgumentException if {@code exponent} is outside its range
     */
    public static SubmergedWeir of(HeadDischarge weir, double exponent) {
        return new SubmergedWeir(Objects.requireNonNull(weir, "weir"), Require.positive("exponent", exponent, ""));
    }

    /**
     * Returns Villemonte's reduction (1 − (h₂/h₁)ⁿ)^0.385.
     *
     * @param submergence h₂/h₁, in [0, 1]
     * @param exponent exponent n of the free weir; greater than 0, finite
     * @return share of the free discharge, 1 (free) to 0 (level)
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    public static double reduction(double submergence, double exponent) {
        Require.inRange("submergence", submergence, 0, 1, "");
        Require.positive("exponent", exponent, "");
        // 1 - r^n without loss where the two levels are nearly equal
        return submergence == 0 ? 1 : Math.pow(-Math.expm1(exponent * Math.log(submergence)), 0.385);
    }

    /**
     * Returns the weir under a given tailwater, as a relation of the upstream head alone.
     *
     * @param tailwaterHead tailwater level above the crest h₂, m; negative or 0 for a free weir; finite
     * @return the relation; its discharge is 0 up to a head equal to the tailwater, and its limits are those of the free
     *     weir and h₂/h₁ ≤ 1
     * @throws IllegalArgumentException if {@code tailwaterHead} is not finite
     */
    public HeadDischarge under(double tailwaterHead) {
        Require.finite("tailwaterHead", tailwaterHead, "m");
        return tailwaterHead <= 0 ? weir : new Drowned(weir, exponent, tailwaterHead);
    }

    /**
     * Returns the discharge.
     *
     * @param upstreamHead upstream head above the crest h₁, m; within the limits of the weir
     * @param tailwaterHead tailwater level above the crest h₂, m; negative or 0 for free, at most {@code upstreamHead}
     * @return discharge, m³/s
     * @throws IllegalArgumentException if a limit is broken, or the tailwater is above the head (flow back is not
     *     covered)
     */
    public double discharge(double upstreamHead, double tailwaterHead) {
        return under(tailwaterHead).discharge(upstreamHead);
    }

    /**
     * Returns the upstream head.
     *
     * @param discharge discharge, m³/s; 0 or greater, finite
     * @param tailwaterHead tailwater level above the crest h₂, m; finite
     * @return upstream head h₁, m; the tailwater itself if nothing flows over a drowned crest
     * @throws IllegalArgumentException if a parameter is outside its range or a limit is broken
     */
    public double head(double discharge, double tailwaterHead) {
        return under(tailwaterHead).head(discharge);
    }

    private List<Object> parts() {
        return List.of(weir, exponent);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof SubmergedWeir && parts().equals(((SubmergedWeir) other).parts());
    }

    @Override
    public int hashCode() {
        return parts().hashCode();
    }

    @Override
    public String toString() {
        return "SubmergedWeir[" + weir + ", n = " + Text.number(exponent) + "]";
    }

    private record Drowned(HeadDischarge weir, double exponent, double tailwater) implements HeadDischarge {
        @Override
        public double formula(double head) {
            return head <= tailwater ? 0 : weir.formula(head) * reduction(tailwater / head, exponent);
        }

        @Override
        public List<ApplicationLimit> limits() {
            List<ApplicationLimit> limits = new ArrayList<>(weir.limits());
            limits.add(submergence());
            return List.copyOf(limits);
        }

        private ApplicationLimit submergence() {
            return ApplicationLimit.atMost("h2/h1", "", 1, "Villemonte 1947", h -> tailwater / h);
        }

        @Override
        public double highestHead() {
            return weir.highestHead();
        }

        @Override
        public double discharge(double head) {
            Strict.possible(this, head);
            return Strict.discharge(this, head);
        }

        @Override
        public double head(double discharge) {
            double head = headOf(discharge);
            Strict.check(this, head);
            return head;
        }

        @Override
        public Evaluation evaluateDischarge(double discharge) {
            return evaluate(headOf(discharge));
        }

        // the excess over the tailwater is sought: it may be far smaller than the last bits of the head
        private double headOf(double discharge) {
            Require.nonNegative("discharge", discharge, "m3/s");
            return discharge == 0
                    ? tailwater
                    : tailwater
                            + Inverse.increasing(
                                    excess -> formula(tailwater + excess),
                                    weir.highestHead() - tailwater,
                                    "discharge",
                                    discharge,
                                    "m3/s");
        }

        @Override
        public Evaluation evaluate(double head) {
            Evaluation evaluation = HeadDischarge.super.evaluate(head);
            if (head > 0) {
                return evaluation;
            }
            ApplicationLimit limit = submergence();
            return new Evaluation(
                    0, 0, evaluation.coefficientUncertainty(), List.of(new LimitBreach(limit, limit.value(0))));
        }

        @Override
        public int evaluate(double[] head, double[] discharge, boolean[] outside) {
            int flagged = HeadDischarge.super.evaluate(head, discharge, outside);
            for (int i = 0; i < head.length; i++) {
                // upstream dry under a tailwater: water runs back, which no weir formula covers
                if (head[i] <= 0 && !outside[i]) {
                    outside[i] = true;
                    flagged++;
                }
            }
            return flagged;
        }

        @Override
        public String toString() {
            return weir + " under a tailwater of " + Text.number(tailwater) + " m";
        }
    }
}
