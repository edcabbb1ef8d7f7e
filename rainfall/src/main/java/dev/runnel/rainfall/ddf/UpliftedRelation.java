package dev.runnel.rainfall.ddf;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.time.Duration;

/** Another relation with every depth multiplied. */
record UpliftedRelation(DepthDurationFrequency present, ClimateUplift uplift) implements DepthDurationFrequency {
    @Override
    public double depthMm(Duration duration, double returnPeriodYears) {
        return uplift.factor() * present.depthMm(duration, returnPeriodYears);
    }

    @Override
    public ReturnPeriod returnPeriod(Duration duration, double depthMm) {
        Require.nonNegative("depthMm", depthMm, "mm");
        return present.returnPeriod(duration, depthMm / uplift.factor());
    }

    @Override
    public boolean isDoubtful(Duration duration, double depthMm) {
        return present.isDoubtful(duration, depthMm / uplift.factor());
    }

    @Override
    public ReturnPeriodBasis basis() {
        return present.basis();
    }

    @Override
    public Duration shortestDuration() {
        return present.shortestDuration();
    }

    @Override
    public Duration longestDuration() {
        return present.longestDuration();
    }

    @Override
    public double smallestYears() {
        return present.smallestYears();
    }

    @Override
    public double greatestYears() {
        return present.greatestYears();
    }

    @Override
    public String toString() {
        return present + " raised by " + Text.significant(uplift.percent(), 6) + " % (" + uplift.name() + ")";
    }
}
