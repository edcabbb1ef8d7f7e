package dev.runnel.rainfall.internal;

import dev.runnel.timeseries.Interval;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import org.apiguardian.api.API;

/** Times at which a gauge was out of work, and those at which it was not. */
@API(status = API.Status.INTERNAL)
public final class Outages {
    private Outages() {}

    /**
     * Returns outages as far as they lie in a record, in order, those that overlap or touch as one.
     *
     * @param record the record
     * @param outages outages in any order; empty ones count for nothing
     * @return outages, none empty, no two with a common instant
     */
    public static List<Interval> within(Interval record, Collection<Interval> outages) {
        return Interval.joined(outages.stream()
                .flatMap(outage -> outage.intersection(record).stream())
                .filter(outage -> !outage.isEmpty())
                .toList());
    }

    /**
     * Returns the stretches of a record between its outages.
     *
     * @param record the record
     * @param outages its outages, as from {@link #within}
     * @return stretches in order, none empty
     */
    public static List<Interval> between(Interval record, List<Interval> outages) {
        List<Interval> stretches = new ArrayList<>();
        Instant from = record.start();
        for (Interval outage : outages) {
            addUnlessEmpty(stretches, from, outage.start());
            from = outage.end();
        }
        addUnlessEmpty(stretches, from, record.end());
        return stretches;
    }

    private static void addUnlessEmpty(List<Interval> stretches, Instant from, Instant to) {
        if (from.isBefore(to)) {
            stretches.add(Interval.of(from, to));
        }
    }
}
