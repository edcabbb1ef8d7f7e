package dev.runnel.hydraulics.structure;

import dev.runnel.hydraulics.internal.Bulk;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import org.apiguardian.api.API;

/**
 * A structure whose discharge follows from one head. A new structure is one small file: implement {@link #formula} and
 * {@link #limits}; checks, inverse, bulk forms, flags and uncertainty come with the interface.
 *
 * <p>Strict questions ({@code discharge}, {@code head}) refuse what lies outside the limits of application; flagged
 * questions ({@code evaluate}, {@code evaluateDischarge}) answer and name the limits broken. A head of 0 is a dry
 * structure: discharge 0, no limit broken.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public interface HeadDischarge {
    /**
     * Returns the bare formula without any check; for implementers. Callers use {@link #discharge(double)} or
     * {@link #evaluate(double)}.
     *
     * @param head head, m; greater than 0 and finite
     * @return discharge, m³/s; finite, greater than 0 and increasing with the head
     */
    double formula(double head);

    /**
     * Returns the limits of application, those of the head and those of the geometry.
     *
     * @return the limits, unmodifiable
     */
    List<ApplicationLimit> limits();

    /**
     * Returns the greatest head that the formula can take at all, inside its limits or not. Up to it the discharge rises
     * with the head, so that every discharge has one head.
     *
     * @return head, m; 10,000 m where nothing but reason bounds it
     */
    default double highestHead() {
        return Heads.HIGHEST;
    }

    /**
     * Returns the modular limit: the greatest ratio of the head downstream to the head upstream, both above the crest, at
     * which the discharge follows from the head upstream alone.
     *
     * @param head head upstream, m; greater than 0
     * @return h₂/h₁; 0 where any tailwater above the crest counts; empty where the source gives none
     */
    default OptionalDouble modularLimit(double head) {
        return OptionalDouble.empty();
    }

    /**
     * Returns the structure under another acceleration of gravity than the standard 9.80665 m/s²: discharges grow with its
     * square root, as in every law of Froude.
     *
     * @param gravity g, m/s²; in [9.7, 9.9], the range on Earth
     * @return the structure at that place
     * @throws IllegalArgumentException if {@code gravity} is outside its range
     */
    default HeadDischarge atGravity(double gravity) {
        return new AtGravity<>(this, gravity);
    }

    /**
     * Returns the relative uncertainty of the coefficient at 95 % confidence, where the source gives one.
     *
     * @param head head, m
     * @return for example 0.015 for 1.5 %; empty where the source gives none
     */
    default OptionalDouble coefficientUncertainty(double head) {
        return OptionalDouble.empty();
    }

    /**
     * Returns the discharge at a head.
     *
     * @param head head, m; 0 (dry) or within the limits of application
     * @return discharge, m³/s
     * @throws IllegalArgumentException if {@code head} is negative, above {@link #highestHead()} or NaN, or breaks a
     *     limit of application
     */
    default double discharge(double head) {
        LimitCheck.possible(this, head);
        if (head == 0) {
            return 0;
        }
        LimitCheck.check(this, head);
        return formula(head);
    }

    /**
     * Returns the head that gives a discharge, the inverse of {@link #discharge(double)} to within 1e-12 relative.
     *
     * @param discharge discharge, m³/s; 0 or reached at a head within the limits of application
     * @return head, m
     * @throws IllegalArgumentException if {@code discharge} is negative, infinite or NaN, or its head breaks a limit of
     *     application
     */
    default double head(double discharge) {
        Require.nonNegative("discharge", discharge, "m3/s");
        if (discharge == 0) {
            return 0;
        }
        double head = Inverse.head(this, discharge);
        LimitCheck.check(this, head);
        return head;
    }

    /**
     * Returns the discharges at many heads, each bit-equal to {@link #discharge(double)}.
     *
     * @param head heads, m; NaN for missing, which stays NaN; not modified
     * @param discharge discharges, m³/s; same length, overwritten
     * @throws IllegalArgumentException if the lengths differ or a head is refused; the message names its index
     */
    default void discharge(double[] head, double[] discharge) {
        Objects.requireNonNull(head, "head");
        Objects.requireNonNull(discharge, "discharge");
        Bulk.apply("head", head, "discharge", discharge, this::discharge);
    }

    /**
     * Returns the heads of many discharges, each bit-equal to {@link #head(double)}.
     *
     * @param discharge discharges, m³/s; NaN for missing, which stays NaN; not modified
     * @param head heads, m; same length, overwritten
     * @throws IllegalArgumentException if the lengths differ or a discharge is refused; the message names its index
     */
    default void head(double[] discharge, double[] head) {
        Objects.requireNonNull(discharge, "discharge");
        Objects.requireNonNull(head, "head");
        Bulk.apply("discharge", discharge, "head", head, this::head);
    }

    /**
     * Returns the discharge at a head, inside the limits or not, and the limits it breaks.
     *
     * @param head head, m; in [0, {@link #highestHead()}]
     * @return discharge with its flags
     * @throws IllegalArgumentException if {@code head} is outside or NaN
     */
    default RatedDischarge evaluate(double head) {
        LimitCheck.possible(this, head);
        if (head == 0) {
            return new RatedDischarge(0, 0, OptionalDouble.empty(), List.of(), false);
        }
        List<LimitBreach> breaches = new ArrayList<>();
        for (ApplicationLimit limit : limits()) {
            if (!limit.isMet(head)) {
                breaches.add(new LimitBreach(limit, limit.value(head)));
            }
        }
        OptionalDouble uncertainty = breaches.isEmpty() ? coefficientUncertainty(head) : OptionalDouble.empty();
        return new RatedDischarge(head, formula(head), uncertainty, breaches, false);
    }

    /**
     * Returns the head of a discharge, inside the limits or not, and the limits it breaks.
     *
     * @param discharge discharge, m³/s; 0 or greater, finite
     * @return head with its flags
     * @throws IllegalArgumentException if {@code discharge} is negative, infinite or NaN, or no head gives it
     */
    default RatedDischarge evaluateDischarge(double discharge) {
        Require.nonNegative("discharge", discharge, "m3/s");
        return evaluate(discharge == 0 ? 0 : Inverse.head(this, discharge));
    }

    /**
     * Returns the discharges at many heads, inside the limits or not, for a loop over a record. Heads that are NaN
     * (missing) or above {@link #highestHead()} give NaN and are flagged. A negative head, a level below the crest, which
     * {@link #evaluate(double)} refuses, gives 0 and is flagged; where it means a dry crest, pass 0 in its place.
     *
     * @param head heads, m; not modified
     * @param discharge discharges, m³/s; same length, overwritten; bit-equal to {@link #evaluate(double)}
     *     where that answers
     * @param outside true where a limit is broken or the head is missing or negative; same length, overwritten
     * @return count of flagged entries
     * @throws IllegalArgumentException if the lengths differ
     */
    default int evaluate(double[] head, double[] discharge, boolean[] outside) {
        Require.sameLength("discharge", head.length, discharge.length);
        Require.sameLength("outside", head.length, outside.length);
        List<ApplicationLimit> limits = limits();
        double highest = highestHead();
        int flagged = 0;
        for (int i = 0; i < head.length; i++) {
            double h = head[i];
            boolean out = false;
            if (!(h <= highest)) {
                discharge[i] = Double.NaN;
                out = true;
            } else if (h <= 0) {
                discharge[i] = 0;
                out = h < 0;
            } else {
                discharge[i] = formula(h);
                for (ApplicationLimit limit : limits) {
                    out |= !limit.isMet(h);
                }
            }
            outside[i] = out;
            if (out) {
                flagged++;
            }
        }
        return flagged;
    }

    /**
     * Returns the local exponent of the relation, n = d ln Q / d ln h: by how many percent the discharge changes when
     * the head changes by one percent. Central difference, relative error below 1e-7.
     *
     * @param head head, m; greater than 0 and finite
     * @return exponent, for example near 1.5 for a crest and near 2.5 for a V-notch
     * @throws IllegalArgumentException if {@code head} is not
     */
    default double exponent(double head) {
        Require.positive("head", head, "m");
        double step = 1e-5;
        return (Math.log(formula(head * (1 + step))) - Math.log(formula(head * (1 - step))))
                / (Math.log1p(step) - Math.log1p(-step));
    }

    /**
     * Returns the relative uncertainty of the discharge from that of the coefficient and that of the measured head,
     * u(Q)/Q = √(u_C² + (n · u_h/h)²), the form of ISO 5168 and of the weir standards; both at 95 % confidence. The
     * uncertainty of lengths (crest, angle) is not in it.
     *
     * @param head head, m; greater than 0 and within the limits of application
     * @param headUncertainty uncertainty of the head u_h at 95 % confidence, m; 0 or greater, finite
     * @return relative uncertainty, 0.02 for 2 %
     * @throws IllegalArgumentException if a parameter is outside its range, a limit of application is broken or the
     *     source gives no uncertainty of the coefficient
     */
    default double relativeUncertainty(double head, double headUncertainty) {
        Require.positive("head", head, "m");
        Require.nonNegative("headUncertainty", headUncertainty, "m");
        LimitCheck.check(this, head);
        double coefficient = coefficientUncertainty(head)
                .orElseThrow(() -> new IllegalArgumentException("head " + Text.number(head)
                        + " m: the source of this structure gives no uncertainty of the coefficient;"
                        + " use the form that takes one"));
        return relativeUncertainty(head, headUncertainty, coefficient);
    }

    /**
     * Returns the relative uncertainty of the discharge with the caller's own figure for the coefficient.
     *
     * @param head head, m; greater than 0, finite
     * @param headUncertainty uncertainty of the head at 95 % confidence, m; 0 or greater, finite
     * @param coefficientUncertainty relative uncertainty of the coefficient at 95 % confidence; 0 or greater, finite
     * @return relative uncertainty, 0.02 for 2 %
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    default double relativeUncertainty(double head, double headUncertainty, double coefficientUncertainty) {
        Require.positive("head", head, "m");
        Require.nonNegative("headUncertainty", headUncertainty, "m");
        Require.nonNegative("coefficientUncertainty", coefficientUncertainty, "");
        return Math.hypot(coefficientUncertainty, exponent(head) * headUncertainty / head);
    }
}
