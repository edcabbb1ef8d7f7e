package dev.runnel.hydraulics.structure;

import dev.runnel.internal.Require;
import java.util.List;
import java.util.stream.Stream;
import org.apiguardian.api.API;

/**
 * A structure that has a law for the time when the water behind it stands so high that it takes part: it is drowned. Heads
 * up- and downstream are both measured above the crest, sill or throat floor.
 *
 * <p>Up to the {@linkplain #modularLimit modular limit} the free law holds. A drowned discharge is less sure than a free one,
 * and near a ratio of 1 both levels must be known to the millimetre. Flow back, with the tailwater above the head, is
 * refused.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public interface TailwaterDischarge extends HeadDischarge {
    /**
     * Returns the bare formula of the discharge under a tailwater, free or drowned, without any check; for implementers.
     *
     * @param head head upstream, m; greater than 0 and finite
     * @param tailwater head downstream, m; greater than 0, at most {@code head}
     * @return discharge, m³/s; finite, at most the free one, rising with the head, 0 where the levels are equal
     */
    double formula(double head, double tailwater);

    /**
     * Returns the limit of the drowned law, as a function of the head upstream.
     *
     * @param tailwater head downstream, m; greater than 0
     * @return the limit of h₂/h₁
     */
    ApplicationLimit drownedLimit(double tailwater);

    /**
     * Tells whether the tailwater takes part.
     *
     * @param head head upstream, m; greater than 0
     * @param tailwater head downstream, m
     * @return true if it is above the crest and above the modular limit
     */
    default boolean isDrowned(double head, double tailwater) {
        return tailwater > 0 && tailwater > modularLimit(head).orElse(0) * head;
    }

    /**
     * Returns the structure under a given tailwater, as a relation of the upstream head alone.
     *
     * @param tailwater head downstream, m; negative or 0 for a tailwater below the crest; finite
     * @return the relation; its discharge is 0 up to a head equal to the tailwater
     * @throws IllegalArgumentException if {@code tailwater} is not finite or above {@link #highestHead()}
     */
    default HeadDischarge under(double tailwater) {
        Require.inRange("tailwater", tailwater, -Heads.HIGHEST, highestHead(), "m");
        return tailwater <= 0 ? this : new UnderTailwater(this, tailwater);
    }

    /**
     * Returns the discharge under a tailwater.
     *
     * @param head head upstream, m; within the limits of application
     * @param tailwater head downstream, m; negative or 0 for free, at most {@code head}
     * @return discharge, m³/s
     * @throws IllegalArgumentException if a limit is broken, or the tailwater is above the head
     */
    default double discharge(double head, double tailwater) {
        return under(tailwater).discharge(head);
    }

    /**
     * Returns the head upstream that drives a discharge against a tailwater. It is unique within the
     * {@linkplain #drownedLimit drowned limit}; deeper drowned, a structure with a strong approach velocity may have two.
     *
     * @param discharge discharge, m³/s; 0 or greater, finite
     * @param tailwater head downstream, m; negative or 0 for free
     * @return head upstream, m; the tailwater itself if nothing flows over a drowned crest
     * @throws IllegalArgumentException if a parameter is outside its range or a limit is broken
     */
    default double head(double discharge, double tailwater) {
        return under(tailwater).head(discharge);
    }

    /**
     * Returns the discharge under a tailwater, inside the limits or not, and says whether it is drowned.
     *
     * @param head head upstream, m; in [0, {@link #highestHead()}]
     * @param tailwater head downstream, m; negative or 0 for free
     * @return discharge with its flags
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    default RatedDischarge evaluate(double head, double tailwater) {
        return under(tailwater).evaluate(head);
    }

    /**
     * Returns the discharges at many pairs of heads, inside the limits or not, for a loop over two records. A missing
     * reading (NaN) or a head above {@link #highestHead()} gives NaN; a head below the crest gives 0, as does one below its
     * tailwater. All these are flagged.
     *
     * @param head heads upstream, m; not modified
     * @param tailwater heads downstream, m; same length; not modified
     * @param discharge discharges, m³/s; same length, overwritten; bit-equal to {@link #evaluate(double, double)} where that
     *     answers
     * @param drowned true where the tailwater takes part; same length, overwritten
     * @param outside true where a limit is broken or a reading is missing; same length, overwritten
     * @return count of entries flagged as outside
     * @throws IllegalArgumentException if the lengths differ
     */
    default int evaluate(double[] head, double[] tailwater, double[] discharge, boolean[] drowned, boolean[] outside) {
        Require.sameLength("tailwater", head.length, tailwater.length);
        Require.sameLength("discharge", head.length, discharge.length);
        Require.sameLength("drowned", head.length, drowned.length);
        Require.sameLength("outside", head.length, outside.length);
        int flagged = 0;
        for (int i = 0; i < head.length; i++) {
            drowned[i] = false;
            outside[i] = true;
            if (!(head[i] <= highestHead() && tailwater[i] <= highestHead() && tailwater[i] >= -Heads.HIGHEST)) {
                discharge[i] = Double.NaN;
            } else if (head[i] < 0) {
                discharge[i] = 0;
            } else {
                RatedDischarge rated = evaluate(head[i], tailwater[i]);
                discharge[i] = rated.discharge();
                drowned[i] = rated.isDrowned();
                outside[i] = !rated.isWithinLimits();
            }
            flagged += outside[i] ? 1 : 0;
        }
        return flagged;
    }

    @Override
    default TailwaterDischarge atGravity(double gravity) {
        return new AtGravity.Drownable(this, gravity);
    }

    /**
     * Returns the limits that hold under a tailwater.
     *
     * @param tailwater head downstream, m; greater than 0
     * @return those of the free structure and that of the drowned law, unmodifiable
     */
    default List<ApplicationLimit> limits(double tailwater) {
        return Stream.concat(limits().stream(), Stream.of(drownedLimit(tailwater)))
                .toList();
    }
}
