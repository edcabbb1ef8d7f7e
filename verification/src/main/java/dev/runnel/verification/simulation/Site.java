package dev.runnel.verification.simulation;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Set;

/**
 * A site as the watch gets it, and the truth behind it.
 *
 * @param order what was asked for
 * @param grid times of the true steps
 * @param pipe the section
 * @param gradient what the drawings say of the slope, m/m; not the whole truth, as drawings are
 * @param holidays public holidays that are known
 * @param stamp time of each reading as delivered, in the order of delivery; an hour off where a clock is, and once far off
 *     where a stamp is false
 * @param depth reading, m; NaN where there is none
 * @param velocity reading, m/s; NaN where there is none
 * @param gaugeMinutes length of a step of the gauge
 * @param gauge reading of each step of the gauge, mm, from the start of the record; NaN where there is none
 * @param water the truth
 */
record Site(
        SiteOrder order,
        Grid grid,
        Pipe pipe,
        double gradient,
        Set<LocalDate> holidays,
        Instant[] stamp,
        double[] depth,
        double[] velocity,
        int gaugeMinutes,
        double[] gauge,
        Water water) {
    Fault fault() {
        return order.fault();
    }

    Instant faultBegins() {
        return grid.start().plusSeconds(Math.round(Math.min(fault().begin(), order.days()) * 86400));
    }
}
