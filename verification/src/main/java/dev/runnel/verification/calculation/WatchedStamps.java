package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.watch.FindingName;
import dev.runnel.hydraulics.watch.SiteReading;
import dev.runnel.hydraulics.watch.WatchNotice;
import dev.runnel.hydraulics.watch.WatchState;
import dev.runnel.internal.StateText;
import dev.runnel.timeseries.Machine;
import java.time.Instant;
import java.util.List;

/** What became of readings by their stamps: the last one taken, how many are held, and how many were left out. */
record WatchedStamps(double last, int held, int remarks, int leftOut, int leftOutAtEnd) {
    static WatchedStamps of(Inputs in) {
        Machine<SiteReading, WatchNotice, WatchState> machine =
                WatchedSites.rule(in).start();
        int remarks = 0;
        int leftOut = 0;
        for (double second : in.sample("stamps")) {
            Instant time = SiteRecipe.START.plusSeconds((long) second);
            List<WatchNotice> told = machine.next(new SiteReading(time, 0.12, 0.7, 0));
            remarks += (int) told.stream().filter(WatchedStamps::isOfStamps).count();
            leftOut += leftOut(told);
        }
        StateText state = StateParts.of(machine.state().toText()).whole();
        long last = state.count("lastTaken");
        return new WatchedStamps(
                last == Long.MIN_VALUE ? SiteCalculations.NONE : SiteCalculations.hours(Instant.ofEpochSecond(0, last)),
                state.counts("heldTimes").length,
                remarks,
                leftOut,
                leftOut + leftOut(machine.finish()));
    }

    private static boolean isOfStamps(WatchNotice notice) {
        return notice.finding().name() == FindingName.FALSE_STAMPS;
    }

    /** The detail of the remark begins with the count. */
    private static int leftOut(List<WatchNotice> told) {
        return told.stream()
                .filter(WatchedStamps::isOfStamps)
                .mapToInt(each -> Integer.parseInt(each.finding().detail().split(" ")[0]))
                .sum();
    }
}
