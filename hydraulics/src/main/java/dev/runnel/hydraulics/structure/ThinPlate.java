package dev.runnel.hydraulics.structure;

import java.util.OptionalDouble;

/** A thin-plate weir: any tailwater above the crest counts, by {@link Villemonte}. */
abstract class ThinPlate extends OfParts implements TailwaterDischarge {
    private final double exponent;

    ThinPlate(double exponent, Object... parts) {
        super(parts);
        this.exponent = exponent;
    }

    @Override
    public double formula(double head, double tailwater) {
        return formula(head) * Villemonte.reduction(tailwater / head, exponent);
    }

    @Override
    public OptionalDouble modularLimit(double head) {
        return OptionalDouble.of(0);
    }

    @Override
    public ApplicationLimit drownedLimit(double tailwater) {
        return ApplicationLimit.atMost("h2/h1", "", 1, Villemonte.SOURCE, h -> tailwater / h);
    }
}
