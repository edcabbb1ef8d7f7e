package dev.runnel.examples.marrambay;

import java.time.DayOfWeek;
import java.time.ZonedDateTime;
import java.util.Random;

/**
 * Makes the flow that a catchment sends to its sewer: a daily pattern of use, the fast answer of roofs and roads to
 * rain, and a slow seepage after it.
 *
 * @param meanDryFlow mean flow in dry weather, m3/s
 * @param pavedArea area that drains fast, m2
 * @param reservoirMinutes storage constant of each of the two reservoirs in series behind the paved area, min
 */
record Catchment(double meanDryFlow, double pavedArea, double reservoirMinutes) {
    private static final double WETTING_LOSS_MM = 0.6;
    private static final double DRYING_MM_PER_HOUR = 0.1;
    private static final double SEEPAGE_SHARE = 0.10;
    private static final double SEEPAGE_HOURS = 9;

    /** Returns the flow, m3/s, in the steps of the rain. */
    double[] flow(double[] rainMm, Random random) {
        int step = RainField.STEP_SECONDS;
        double[] flow = new double[rainMm.length];
        double wetting = 0;
        double first = 0;
        double second = 0;
        double seepage = 0;
        double wander = 0;
        double dayFactor = 1;
        for (int i = 0; i < flow.length; i++) {
            ZonedDateTime now = Scenario.START.plusSeconds((long) i * step).atZone(Scenario.ZONE);
            if (i % (24 * 3600 / step) == 0) {
                dayFactor = 1 + 0.025 * random.nextGaussian();
            }
            if (i % (120 / step) == 0) {
                wander = 0.9 * wander + 0.022 * random.nextGaussian();
            }
            double lost = Math.min(rainMm[i], WETTING_LOSS_MM - wetting);
            wetting = Math.max(0, wetting + lost - DRYING_MM_PER_HOUR * step / 3600);
            double volume = (rainMm[i] - lost) / 1000 * pavedArea;
            first += volume * (1 - SEEPAGE_SHARE);
            seepage += volume * SEEPAGE_SHARE;
            double passed = first * step / (reservoirMinutes * 60);
            first -= passed;
            second += passed;
            double fast = second / (reservoirMinutes * 60);
            second -= fast * step;
            double slow = seepage / (SEEPAGE_HOURS * 3600);
            seepage -= slow * step;
            flow[i] = meanDryFlow * dayFactor * pattern(now) * (1 + wander) + fast + slow;
        }
        return flow;
    }

    /** Use of water over the day, mean about 1; people get up later at the weekend. */
    private static double pattern(ZonedDateTime now) {
        boolean weekend = now.getDayOfWeek() == DayOfWeek.SATURDAY || now.getDayOfWeek() == DayOfWeek.SUNDAY;
        double hour = now.getHour() + now.getMinute() / 60.0 + now.getSecond() / 3600.0;
        double morning = weekend ? 0.85 * hump(hour, 10.3, 2.2) : 0.95 * hump(hour, 7.9, 1.5);
        double evening = 0.62 * hump(hour, 19.3, 2.4);
        double midday = (weekend ? 0.34 : 0.30) * hump(hour, 13.5, 3.0);
        return 0.42 + morning + evening + midday;
    }

    private static double hump(double hour, double centre, double width) {
        double distance = Math.abs(hour - centre);
        double around = Math.min(distance, 24 - distance) / width;
        return Math.exp(-0.5 * around * around);
    }
}
