package dev.runnel.hydraulics.structure;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.List;
import java.util.OptionalDouble;

/** A structure where g is not the standard one. Every velocity head Q²/2gA² stays what it was if Q grows with √g. */
class AtGravity<S extends HeadDischarge> extends OfParts implements HeadDischarge {
    /** Gravity of the places on earth, with room, m/s²: 9.76 to 9.83, from memory. */
    private static final double LEAST = 9.7;

    private static final double GREATEST = 9.9;

    final S structure;
    final double factor;
    private final double gravity;

    AtGravity(S structure, double gravity) {
        super(structure, Require.inRange("gravity", gravity, LEAST, GREATEST, "m/s2"));
        this.structure = structure;
        this.gravity = gravity;
        factor = Math.sqrt(gravity / GravityFactors.G);
    }

    @Override
    public double formula(double head) {
        return factor * structure.formula(head);
    }

    @Override
    public List<ApplicationLimit> limits() {
        return structure.limits();
    }

    @Override
    public double highestHead() {
        return structure.highestHead();
    }

    @Override
    public OptionalDouble coefficientUncertainty(double head) {
        return structure.coefficientUncertainty(head);
    }

    @Override
    public OptionalDouble modularLimit(double head) {
        return structure.modularLimit(head);
    }

    @Override
    public String toString() {
        return getClass().getSimpleName() + "[" + structure + ", g = " + Text.significant(gravity, 6) + " m/s2]";
    }

    /** The same for a structure with two heads. */
    static final class Drownable extends AtGravity<TailwaterDischarge> implements TailwaterDischarge {
        Drownable(TailwaterDischarge structure, double gravity) {
            super(structure, gravity);
        }

        @Override
        public double formula(double head, double tailwater) {
            return factor * structure.formula(head, tailwater);
        }

        @Override
        public ApplicationLimit drownedLimit(double tailwater) {
            return structure.drownedLimit(tailwater);
        }
    }
}
