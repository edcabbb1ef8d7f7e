package dev.runnel.verification.simulation;

import dev.runnel.hydraulics.section.ClosedSection;
import dev.runnel.hydraulics.watch.SiteRecord;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.Set;

/**
 * What a watch gets of a site, invented or real: readings in the order of their delivery, and what is known of the pipe.
 *
 * @param section the section
 * @param gradient m/m
 * @param zone whose civil clock the people follow
 * @param holidays public holidays
 * @param stamp time of each reading
 * @param depth m, NaN for missing
 * @param velocity m/s, NaN for missing
 * @param rain mm since the reading before, NaN where it is not known
 * @param gauge the same rain by the steps of the gauge; without steps where there is no gauge
 */
record Feed(
        ClosedSection section,
        double gradient,
        ZoneId zone,
        Set<LocalDate> holidays,
        Instant[] stamp,
        double[] depth,
        double[] velocity,
        double[] rain,
        RegularSeries gauge) {
    static Feed of(Site site, boolean levelOnly) {
        double[] velocity = site.velocity();
        if (levelOnly) {
            velocity = new double[velocity.length];
            Arrays.fill(velocity, Double.NaN);
        }
        // By order of delivery, not by stamp: the gauge does not know that the monitor's clock is wrong.
        RegularSeries gauge =
                RegularSeries.of(site.grid().start(), Duration.ofMinutes(site.gaugeMinutes()), site.gauge());
        double[] rain = since(gauge, site.stamp());
        return new Feed(
                site.pipe().section(),
                site.gradient(),
                site.grid().zone(),
                site.holidays(),
                site.stamp(),
                site.depth(),
                velocity,
                rain,
                gauge);
    }

    /** Rain of the steps that have ended since the reading before; a stamp that leaps takes no more than a day with it. */
    static double[] since(RegularSeries gauge, Instant[] stamp) {
        double[] rain = new double[stamp.length];
        int next = 0;
        Instant latest = stamp.length == 0 ? gauge.start() : stamp[0];
        for (int i = 0; i < rain.length; i++) {
            Instant furthest = latest.plus(Duration.ofDays(1));
            Instant now = stamp[i].isAfter(furthest) ? furthest : stamp[i];
            latest = now.isAfter(latest) ? now : latest;
            while (next < gauge.size() && !gauge.time(next).plus(gauge.step()).isAfter(latest)) {
                rain[i] += gauge.value(next++);
            }
            if (next >= gauge.size() || Double.isNaN(gauge.value(next))) {
                rain[i] = Double.NaN;
            }
        }
        return rain;
    }

    /** Count of readings that come before so many days are over, by the stamps. */
    int within(int days) {
        if (stamp.length == 0) {
            return 0;
        }
        Instant until = stamp[0].plus(Duration.ofDays(days));
        int size = 0;
        while (size < stamp.length && stamp[size].isBefore(until)) {
            size++;
        }
        return size;
    }

    /** The first readings as a record; those whose stamp does not come after the one before are left out. */
    SiteRecord record(int size) {
        SeriesBuilder depths = Series.builder();
        SeriesBuilder velocities = Series.builder();
        Instant last = Instant.MIN;
        boolean flowing = false;
        for (int i = 0; i < size; i++) {
            if (stamp[i].isAfter(last)) {
                last = stamp[i];
                depths.add(last, depth[i]);
                velocities.add(last, velocity[i]);
                flowing |= !Double.isNaN(velocity[i]);
            }
        }
        SiteRecord record =
                flowing ? SiteRecord.of(depths.build(), velocities.build()) : SiteRecord.ofDepth(depths.build());
        if (gauge.size() == 0 || size == 0) {
            return record;
        }
        return record.withRain(
                gauge.slice(Interval.of(gauge.start(), last.isBefore(gauge.start()) ? gauge.start() : last)));
    }
}
