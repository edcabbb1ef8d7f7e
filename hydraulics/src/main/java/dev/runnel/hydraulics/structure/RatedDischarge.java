package dev.runnel.hydraulics.structure;

import dev.runnel.internal.Text;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import org.apiguardian.api.API;

/**
 * A discharge and how far to believe it.
 *
 * @param head head, m
 * @param discharge discharge, m³/s
 * @param coefficientUncertainty relative uncertainty of the coefficient at 95 % confidence where the source gives one
 *     and no limit is broken; 0.015 means 1.5 %
 * @param breaches the limits of application broken, empty if none is
 * @param isDrowned whether the level downstream takes part: the drowned law gave the discharge
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record RatedDischarge(
        double head,
        double discharge,
        OptionalDouble coefficientUncertainty,
        List<LimitBreach> breaches,
        boolean isDrowned) {
    /**
     * Keeps an unmodifiable copy of the list.
     *
     * @param head head, m
     * @param discharge discharge, m³/s
     * @param coefficientUncertainty relative uncertainty of the coefficient, if known
     * @param breaches the limits broken
     * @param isDrowned whether the drowned law gave the discharge
     */
    public RatedDischarge {
        Objects.requireNonNull(coefficientUncertainty, "coefficientUncertainty");
        Objects.requireNonNull(breaches, "breaches");
        breaches = List.copyOf(breaches);
    }

    /**
     * Tells whether every limit of application is kept.
     *
     * @return true if none is broken
     */
    public boolean isWithinLimits() {
        return breaches.isEmpty();
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder("RatedDischarge[head ")
                .append(Text.significant(head, 6))
                .append(" m, discharge ")
                .append(Text.significant(discharge, 6))
                .append(" m3/s");
        coefficientUncertainty.ifPresent(u -> text.append(", coefficient ±")
                .append(Text.significant(100 * u, 2))
                .append(" %"));
        if (isDrowned) {
            text.append(", drowned");
        } else if (breaches.isEmpty()) {
            text.append(", within limits");
        }
        breaches.forEach(breach -> text.append("; OUTSIDE: ").append(breach));
        return text.append("]").toString();
    }
}
