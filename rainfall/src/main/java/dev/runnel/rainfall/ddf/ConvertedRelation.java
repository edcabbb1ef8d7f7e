package dev.runnel.rainfall.ddf;

import dev.runnel.base.Require;
import java.time.Duration;

/** Another relation with its return periods in another basis. */
record ConvertedRelation(
        DepthDurationFrequency given, ReturnPeriodBasis basis, double smallestYears, double greatestYears)
        implements DepthDurationFrequency {
    static ConvertedRelation of(DepthDurationFrequency given, ReturnPeriodBasis basis) {
        return new ConvertedRelation(
                given,
                basis,
                basis.requireYears("smallest return period", given.basis().convert(given.smallestYears(), basis)),
                given.basis().convert(given.greatestYears(), basis));
    }

    @Override
    public double depthMm(Duration duration, double returnPeriodYears) {
        Require.inRange("returnPeriodYears", returnPeriodYears, smallestYears, greatestYears, "years");
        // The limits themselves may come back beside those of the given relation by a rounding.
        double years = basis.convert(returnPeriodYears, given.basis());
        return given.depthMm(duration, Math.max(given.smallestYears(), Math.min(given.greatestYears(), years)));
    }

    @Override
    public ReturnPeriod returnPeriod(Duration duration, double depthMm) {
        return given.returnPeriod(duration, depthMm).withBasis(basis);
    }

    @Override
    public boolean isDoubtful(Duration duration, double depthMm) {
        return given.isDoubtful(duration, depthMm);
    }

    @Override
    public Duration shortestDuration() {
        return given.shortestDuration();
    }

    @Override
    public Duration longestDuration() {
        return given.longestDuration();
    }

    @Override
    public String toString() {
        return given + " as " + basis.toText();
    }
}
