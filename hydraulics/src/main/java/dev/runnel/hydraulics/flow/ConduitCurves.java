package dev.runnel.hydraulics.flow;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;
import org.jspecify.annotations.Nullable;

/** The curves of a conduit over its depths, found on first need. Two threads may both find one; they find the same. */
final class ConduitCurves {
    private final Conduit conduit;
    private volatile @Nullable InvertibleCurve discharge;
    private volatile @Nullable InvertibleCurve velocity;

    ConduitCurves(Conduit conduit) {
        this.conduit = conduit;
    }

    InvertibleCurve discharge() {
        InvertibleCurve curve = discharge;
        if (curve == null) {
            curve = of(conduit::discharge).forManyValues();
            discharge = curve;
        }
        return curve;
    }

    InvertibleCurve velocity() {
        InvertibleCurve curve = velocity;
        if (curve == null) {
            curve = of(conduit::velocity);
            velocity = curve;
        }
        return curve;
    }

    /** The curve of anything that the uniform flow of the conduit has at a depth. */
    InvertibleCurve of(DoubleUnaryOperator quantity) {
        return InvertibleCurve.of(conduit.section(), breakDepths(), quantity);
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
