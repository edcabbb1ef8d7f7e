package dev.runnel.verification.simulation;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;

/** Makes sites. The same order makes the same site, everywhere and at any time. */
final class Simulator {
    /** The first days of 2018. */
    private static final long FIRST_DAY = 17532;

    private static final List<String> ZONES =
            List.of("UTC", "Asia/Tokyo", "Europe/London", "Europe/Berlin", "America/Denver", "Australia/Sydney");

    private Simulator() {}

    static Site site(SiteOrder order) {
        Grid grid = grid(order);
        Nature nature = nature(order);
        Law law = law(order, nature);
        Water water = new Hydraulics(order, grid, nature, law).water();
        Sensors sensors = new Sensors(order, grid, nature, water, law.pipe().height());
        boolean[] away = sensors.away();
        int gaugeMinutes = (int) Draws.of(order.seed(), "gauge step").pick(2, 5, 5, 15, 15);
        double[] depth = sensors.depth(away);
        double[] velocity = sensors.velocity(away);
        sensors.exchange(depth, velocity);
        return sensors.delivered(law, depth, velocity, gaugeMinutes, sensors.gauge(nature.rain(grid), gaugeMinutes));
    }

    /** The water alone, as it would be with another fault or none. */
    static Water water(SiteOrder order) {
        Nature nature = nature(order);
        return new Hydraulics(order, grid(order), nature, law(order, nature)).water();
    }

    static Grid grid(SiteOrder order) {
        Draws draws = Draws.of(order.seed(), "grid");
        int minutes = (int)
                (order.make() == Make.THIRD ? draws.pick(3, 6, 6, 10, 30, 30) : draws.pick(2, 5, 5, 5, 10, 15, 15, 15));
        Instant start = Instant.ofEpochSecond(86400 * (FIRST_DAY + draws.below(2400)) + 3600L * draws.below(24));
        ZoneId zone = ZoneId.of(ZONES.get(draws.below(ZONES.size())));
        return new Grid(start, minutes, order.days() * Grid.MINUTES_OF_DAY / minutes, zone);
    }

    static Law law(SiteOrder order, Nature nature) {
        return nature.law(Pipe.drawn(Draws.of(order.seed(), "pipe")));
    }

    static Nature nature(SiteOrder order) {
        Draws draws = Draws.of(order.seed(), "climate");
        double wet = order.wet() ? 1.6 : draws.uniform(0.4, 1.2);
        return order.make().nature(order.seed(), wet);
    }
}
