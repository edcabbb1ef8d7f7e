package dev.runnel.rainfall.areal;

import dev.runnel.internal.Text;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.timeseries.RegularSeries;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;

/** Records of several gauges with the same steps. */
final class GaugeRecords {
    private GaugeRecords() {}

    /** The records in the order of the names, after checking that they are those and agree in their steps. */
    static List<RegularSeries> of(List<String> gauges, Map<String, RegularSeries> rainByGauge) {
        if (!rainByGauge.keySet().equals(Set.copyOf(gauges))) {
            throw new IllegalArgumentException(
                    "rainByGauge must hold " + gauges + ", held " + new TreeSet<>(rainByGauge.keySet()));
        }
        List<RegularSeries> records = new ArrayList<>();
        for (String gauge : gauges) {
            RegularSeries rain = Objects.requireNonNull(rainByGauge.get(gauge), "rainByGauge");
            Rain.requireNonNegative("rain of " + gauge, rain, "mm");
            if (!records.isEmpty()) {
                RegularSeries first = records.get(0);
                if (!rain.interval().equals(first.interval()) || !rain.step().equals(first.step())) {
                    throw new IllegalArgumentException("rain of " + gauge + " must have the steps of " + gauges.get(0)
                            + ", " + first.interval() + " by " + Text.exactDuration(first.step()) + ", had "
                            + rain.interval() + " by "
                            + Text.exactDuration(rain.step()));
                }
            }
            records.add(rain);
        }
        return records;
    }

    static double[] at(List<RegularSeries> records, int step) {
        double[] depths = new double[records.size()];
        for (int i = 0; i < depths.length; i++) {
            depths[i] = records.get(i).value(step);
        }
        return depths;
    }

    static boolean isAnyWet(double[] depths) {
        for (double depth : depths) {
            if (depth > 0) {
                return true;
            }
        }
        return false;
    }
}
