package dev.runnel.hydraulics.structure;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.List;
import java.util.OptionalDouble;

/** A structure under a fixed tailwater above its crest: a relation of the upstream head alone. */
record UnderTailwater(TailwaterDischarge structure, double tailwater) implements HeadDischarge {
    @Override
    public double formula(double head) {
        return head <= tailwater ? 0 : structure.formula(head, tailwater);
    }

    @Override
    public List<ApplicationLimit> limits() {
        return structure.limits(tailwater);
    }

    @Override
    public double highestHead() {
        return structure.highestHead();
    }

    @Override
    public OptionalDouble modularLimit(double head) {
        return structure.modularLimit(head);
    }

    @Override
    public OptionalDouble coefficientUncertainty(double head) {
        // that of the free coefficient says nothing about a drowned discharge
        return structure.isDrowned(head, tailwater) ? OptionalDouble.empty() : structure.coefficientUncertainty(head);
    }

    @Override
    public double discharge(double head) {
        LimitCheck.possible(this, head);
        if (tailwater > head) {
            throw new IllegalArgumentException("tailwater must be at most the head " + Text.number(head)
                    + " m (flow back is not covered), was " + Text.number(tailwater));
        }
        LimitCheck.check(this, head);
        return formula(head);
    }

    @Override
    public double head(double discharge) {
        double head = headOf(discharge);
        LimitCheck.check(this, head);
        return head;
    }

    @Override
    public RatedDischarge evaluateDischarge(double discharge) {
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
                                structure.highestHead() - tailwater,
                                "discharge",
                                discharge,
                                "m3/s");
    }

    @Override
    public RatedDischarge evaluate(double head) {
        RatedDischarge rated = HeadDischarge.super.evaluate(head);
        if (head > 0) {
            return new RatedDischarge(
                    head,
                    rated.discharge(),
                    rated.coefficientUncertainty(),
                    rated.breaches(),
                    structure.isDrowned(head, tailwater));
        }
        // upstream dry under a tailwater: water runs back, which no formula here covers
        ApplicationLimit limit = structure.drownedLimit(tailwater);
        return new RatedDischarge(0, 0, OptionalDouble.empty(), List.of(new LimitBreach(limit, limit.value(0))), true);
    }

    @Override
    public int evaluate(double[] head, double[] discharge, boolean[] outside) {
        int flagged = HeadDischarge.super.evaluate(head, discharge, outside);
        for (int i = 0; i < head.length; i++) {
            if (head[i] <= 0 && !outside[i]) {
                outside[i] = true;
                flagged++;
            }
        }
        return flagged;
    }

    @Override
    public String toString() {
        return "UnderTailwater[" + structure + ", h2 = " + Text.significant(tailwater, 6) + " m]";
    }
}
