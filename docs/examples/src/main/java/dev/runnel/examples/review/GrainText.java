package dev.runnel.examples.review;

import dev.runnel.internal.Text;
import dev.runnel.rainfall.gauge.RainGrain;
import java.util.Optional;

/** What the smallest amount of a record by the step says of its unit. */
final class GrainText {
    private GrainText() {}

    /**
     * What is to be asked; empty if nothing.
     *
     * @param tipMm tip of the gauge, mm, by the site file
     */
    static Optional<String> doubt(RainGrain grain, double tipMm, Dates dates) {
        if (grain.change().isPresent()) {
            RainGrain.Change found = grain.change().get();
            return Optional.of(
                    "The smallest rain of a step is " + Text.significant(grain.depthMm(), 3) + " mm up to "
                            + dates.time(found.time())
                            + ", and " + Text.significant(found.depthMm(), 3) + " mm from then on, "
                            + Text.significant(found.depthMm() / grain.depthMm(), 3)
                            + " times as much: another unit, or another size of tip? Rain, storms and their shares of one of the two times are wrong by that.");
        }
        if (grain.isTipInInches(tipMm)) {
            return Optional.of("The rain comes in amounts of " + Text.significant(grain.depthMm(), 3) + " mm, a tip of "
                    + Text.significant(tipMm, 3)
                    + " mm in inches: is the unit right? Rain and storms would be 25.4 times as much.");
        }
        if (grain.isCountOf(tipMm)) {
            return Optional.of("The rain comes in whole mm, while a tip is " + Text.significant(tipMm, 3)
                    + " mm: is the column a count of tips? Rain and storms would be " + Text.significant(tipMm, 3)
                    + " times as much.");
        }
        return Optional.empty();
    }
}
