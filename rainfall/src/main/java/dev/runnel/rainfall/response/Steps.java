package dev.runnel.rainfall.response;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.RegularSeries;

/** Checks that two records have the same steps. */
final class Steps {
    private Steps() {}

    static void requireSame(String name, RegularSeries first, RegularSeries second) {
        if (!first.step().equals(second.step()) || !first.interval().equals(second.interval())) {
            throw new IllegalArgumentException(
                    name + " must have the steps " + first.interval() + " by " + Text.exactDuration(first.step())
                            + ", had " + second.interval() + " by " + Text.exactDuration(second.step()));
        }
    }
}
