package dev.runnel.hydraulics.flow;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;
import org.jspecify.annotations.Nullable;

/** The ratings of a conduit, found on first need. Two threads may both find one; they find the same. */
final class Ratings {
    private final Conduit conduit;
    private volatile @Nullable Rating discharge;
    private volatile @Nullable Rating velocity;
    private volatile @Nullable Rating critical;

    Ratings(Conduit conduit) {
        this.conduit = conduit;
    }

    Rating discharge() {
        Rating rating = discharge;
        if (rating == null) {
            rating = of(conduit::discharge);
            discharge = rating;
        }
        return rating;
    }

    Rating velocity() {
        Rating rating = velocity;
        if (rating == null) {
            rating = of(conduit::velocity);
            velocity = rating;
        }
        return rating;
    }

    Rating critical() {
        Rating rating = critical;
        if (rating == null) {
            // Critical flow knows no resistance: only the corners of the section count.
            rating = Rating.of(conduit.section(), conduit.section().breakDepths(), conduit::criticalDischarge);
            critical = rating;
        }
        return rating;
    }

    /** A rating of anything that the uniform flow of the conduit has at a depth. */
    Rating of(DoubleUnaryOperator quantity) {
        return Rating.of(conduit.section(), breakDepths(), quantity);
    }

    /** A law that changes its course at some depths adds its corners to those of the section. */
    private double[] breakDepths() {
        double[] ofLaw = conduit.resistance()
                .breakDepths(conduit.section(), conduit.gradient().value(), conduit.gravity());
        return DoubleStream.concat(Arrays.stream(conduit.section().breakDepths()), Arrays.stream(ofLaw))
                .sorted()
                .distinct()
                .toArray();
    }
}
