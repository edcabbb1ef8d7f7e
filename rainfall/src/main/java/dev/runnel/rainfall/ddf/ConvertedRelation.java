package dev.runnel.rainfall.ddf;

import dev.runnel.internal.Require;
import java.time.Duration;

/** Another relation with its return periods in another basis. */
record ConvertedRelation(
        DepthDurationFrequency given, ReturnPeriodBasis basis, double smallestYears, double greatestYears)
        implements DepthDurationFrequency {
    static ConvertedRelation of(DepthDurationFrequency given, ReturnPeriodBasis basis) {
        return new ConvertedRelation(
                given,
                basis,
                given.basis().convertNamed("smallest return period", given.smallestYears(), basis),
                given.basis().convert(given.greatestYears(), basis));
    }

    @Override
    public double depthMm(Duration duration, double returnPeriodYears) {
        Require.inRange("returnPeriodYears", returnPeriodYears, smallestYears, greatestYears, "years");
        return given.depthMm(duration, givenYears(returnPeriodYears));
    }

    /** The limits are those of the given relation themselves: near one year of annual maxima hardly a digit comes back. */
    private double givenYears(double years) {
        if (years == smallestYears) {
            return given.smallestYears();
        }
        if (years == greatestYears) {
            return given.greatestYears();
        }
        double back = basis.convert(years, given.basis());
        return Math.max(given.smallestYears(), Math.min(given.greatestYears(), back));
    }

    @Override
    public ReturnPeriod returnPeriod(Duration duration, double depthMm) {
        ReturnPeriod back = given.returnPeriod(duration, depthMm).withBasis(basis);
        // A rounding of the conversion must not carry it beyond the limits.
        double years = Math.max(smallestYears, Math.min(greatestYears, back.years()));
        return new ReturnPeriod(back.standing(), years, basis);
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
