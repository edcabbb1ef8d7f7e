package dev.runnel.hydraulics.monitoring;

/**
 * What was done with each pair of a record.
 *
 * @param each a {@link FlowCounts#code} for each pair; not to be modified
 */
record PairCodes(byte[] each, FlowCounts counts) {
    static PairCodes of(MonitorHistory monitors, ReadingPairs pairs) {
        double[] depths = pairs.depths();
        double[] velocities = pairs.velocities();
        byte[] each = new byte[pairs.size()];
        int[] counts = FlowCounts.none();
        for (int from = 0; from < each.length; ) {
            PairConversion conversion =
                    monitors.at(pairs.clock().epochNanos(from)).conversion();
            int to = monitors.endOfSettings(pairs.clock(), from);
            for (int i = from; i < to; i++) {
                each[i] = conversion.code(depths[i], velocities[i]);
                counts[each[i]]++;
            }
            from = to;
        }
        return new PairCodes(each, FlowCounts.ofCounts(counts));
    }
}
