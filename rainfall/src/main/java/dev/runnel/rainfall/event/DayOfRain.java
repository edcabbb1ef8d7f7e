package dev.runnel.rainfall.event;

import dev.runnel.internal.CompensatedSum;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;

/** The rain recorded on one local day, and whether enough of the day was recorded. */
record DayOfRain(LocalDate date, double depthMm, boolean known) {
    static List<DayOfRain> of(RegularSeries rain, ZoneId zone, Duration missingAllowed) {
        List<DayOfRain> days = new ArrayList<>();
        if (rain.size() == 0) {
            return days;
        }
        double[] depths = rain.toValues();
        LocalDate last = LocalDate.ofInstant(rain.end().minusNanos(1), zone);
        for (LocalDate date = LocalDate.ofInstant(rain.start(), zone); !date.isAfter(last); date = date.plusDays(1)) {
            days.add(day(rain, depths, date, zone, missingAllowed.toNanos()));
        }
        return days;
    }

    private static DayOfRain day(
            RegularSeries rain, double[] depths, LocalDate date, ZoneId zone, long missingAllowed) {
        long from = EpochNanos.of(date.atStartOfDay(zone).toInstant());
        long to = EpochNanos.of(date.plusDays(1).atStartOfDay(zone).toInstant());
        long start = EpochNanos.of(rain.start());
        long step = rain.step().toNanos();
        int end = index(to - start, step, depths.length);
        double depth = CompensatedSum.of(depths, index(from - start, step, depths.length), end);
        long missing = Math.max(0, start - from) + Math.max(0, to - (start + step * depths.length));
        for (int i = Math.max(0, (int) Math.floorDiv(from - start, step)); i < end; i++) {
            if (Double.isNaN(depths[i])) {
                missing += Math.min(to, start + step * (i + 1L)) - Math.max(from, start + step * i);
            }
        }
        return new DayOfRain(date, depth, missing <= missingAllowed);
    }

    /** The first step that starts at or after an offset from the start of the record. */
    private static int index(long offset, long step, int size) {
        return (int) Math.max(0, Math.min(size, -Math.floorDiv(-offset, step)));
    }

    DryDays.Verdict verdict(double maximumMm) {
        if (!Rain.reaches(maximumMm, depthMm)) {
            return DryDays.Verdict.WET;
        }
        return known ? DryDays.Verdict.DRY : DryDays.Verdict.UNKNOWN;
    }
}
