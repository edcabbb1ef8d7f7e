package dev.runnel.rainfall.areal;

import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Checks of where gauges stand. */
final class Places {
    private Places() {}

    static void requireApart(List<Location> gauges) {
        if (gauges.isEmpty()) {
            throw new IllegalArgumentException("gauges must be at least one, were none");
        }
        Set<Location> taken = new HashSet<>();
        for (Location each : gauges) {
            if (!taken.add(each)) {
                throw new IllegalArgumentException("gauges must be at different places, two are at " + each);
            }
        }
    }
}
