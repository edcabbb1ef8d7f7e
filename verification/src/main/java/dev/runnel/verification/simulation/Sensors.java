package dev.runnel.verification.simulation;

import java.time.Instant;
import java.util.Arrays;
import org.apache.commons.math3.util.FastMath;

/**
 * How the sensors of a site read its water, sound or not.
 *
 * <p>Of a sound site, the share of equal readings in a row, the share that is missing and the longest gap spread about as
 * they do among 113 level sensors of sewers over a year (CC0 record at 5 min: equal 0.06, 0.28, 0.70; present 0.67, 0.95,
 * 0.98; longest gap 86, 129, 2320 h at 5, 50 and 95 %), and noise as on a survey of 75 days at 15 min (velocity 2.9 and
 * 4.9 % within the hour, depth 2.5 mm): all measured for this purpose.
 */
final class Sensors {
    private static final double LEAST_DEPTH = 0.02;

    private final SiteOrder order;
    private final Grid grid;
    private final Nature nature;
    private final Water water;
    private final double height;

    Sensors(SiteOrder order, Grid grid, Nature nature, Water water, double height) {
        this.order = order;
        this.grid = grid;
        this.nature = nature;
        this.water = water;
        this.height = height;
    }

    /** Depth readings by true step, m, gaps as NaN; before any clock is wrong. */
    double[] depth(boolean[] away) {
        Draws draws = Draws.of(order.seed(), "level sensor");
        boolean coarse = order.make() == Make.THIRD;
        double step = coarse ? draws.pick(1, 2, 5, 10) : draws.pick(0.25, 0.5, 1, 2, 3, 5);
        double quantum = FastMath.min(0.04 * water.usualDepth(), step / 1000);
        double noise = FastMath.min(0.003, quantum / draws.logUniform(0.4, 8));
        double alone = draws.uniform(0.004, 0.035);
        double spikes = draws.uniform(0, 0.003);
        Draws faulty = Draws.of(order.seed(), "faulty depths");
        Fault fault = order.fault();
        double[] depth = new double[grid.size()];
        double held = Double.NaN;
        for (int i = 0; i < depth.length; i++) {
            double strength = fault.strength(grid.days(i));
            double y = water.depth()[i] + noise * nature.error(draws);
            boolean spike = draws.chance(spikes);
            double jump = draws.exponential(0.4 * height);
            boolean missing = draws.chance(alone) || away[i];
            if (fault.kind() == FaultKind.DEPTH_OFFSET || fault.kind() == FaultKind.DEPTH_DRIFT) {
                y += fault.severity() * strength * water.usualDepth();
            }
            if (fault.kind() == FaultKind.FALSE_ECHO && faulty.chance(fault.severity() * strength)) {
                y *= faulty.uniform(1.5, 3.5);
            }
            double unit = fault.kind() == FaultKind.DEPTH_UNIT && strength > 0 ? fault.severity() : 1;
            y = unit * FastMath.max(0, quantum * FastMath.rint((spike ? y + jump : y) / quantum));
            boolean frozen =
                    strength > 0 && (fault.kind() == FaultKind.FROZEN_DEPTH || fault.kind() == FaultKind.FROZEN_LOGGER);
            if (!frozen && !missing) {
                held = FastMath.rint(y * 1e5) / 1e5;
            }
            depth[i] = missing ? Double.NaN : held;
        }
        return depth;
    }

    /** Velocity readings by true step, m/s. */
    double[] velocity(boolean[] away) {
        Draws draws = Draws.of(order.seed(), "velocity sensor");
        Draws faulty = Draws.of(order.seed(), "faulty velocities");
        double noise = draws.uniform(0.02, 0.05);
        double quantum = order.make() == Make.THIRD ? draws.pick(0.005, 0.01, 0.02) : draws.pick(0.001, 0.003, 0.01);
        double alone = draws.uniform(0.004, 0.035);
        double zeros = draws.uniform(0, 0.004);
        double echoes = draws.uniform(0, 0.012);
        Fault fault = order.fault();
        double[] velocity = new double[grid.size()];
        double held = Double.NaN;
        for (int i = 0; i < velocity.length; i++) {
            double strength = fault.strength(grid.days(i));
            double v = water.velocity()[i] * (1 + noise * nature.error(draws));
            boolean zero = draws.chance(zeros);
            boolean weak = draws.chance(echoes);
            double echo = draws.uniform(0.3, 0.8);
            boolean missing = draws.chance(alone) || away[i] || water.depth()[i] < LEAST_DEPTH;
            boolean hit = faulty.chance(fault.severity() * strength);
            double low = faulty.uniform(0.15, 0.6);
            switch (fault.kind()) {
                case VELOCITY_FOULING, VELOCITY_STEP -> v *= 1 - fault.severity() * strength;
                case VELOCITY_ZEROS -> zero |= hit;
                case WEAK_ECHO -> v *= hit ? low : 1;
                case SIGN_FLIPS -> v *= hit ? -1 : 1;
                case VELOCITY_UNIT -> v *= strength > 0 ? fault.severity() : 1;
                default -> {
                    // The sensor is sound.
                }
            }
            v = zero ? 0 : quantum * FastMath.rint((weak ? v * echo : v) / quantum);
            boolean frozen = strength > 0
                    && (fault.kind() == FaultKind.FROZEN_VELOCITY || fault.kind() == FaultKind.FROZEN_LOGGER);
            if (!frozen && !missing) {
                held = FastMath.rint(v * 1e5) / 1e5;
            }
            velocity[i] = missing ? Double.NaN : held;
        }
        return velocity;
    }

    /** Writes each into the column of the other where the order says so: its number stays, in the unit of its own column before. */
    void exchange(double[] depth, double[] velocity) {
        Fault fault = order.fault();
        if (fault.kind() != FaultKind.EXCHANGED_COLUMNS) {
            return;
        }
        for (int i = 0; i < depth.length; i++) {
            if (fault.strength(grid.days(i)) > 0) {
                double read = depth[i];
                depth[i] = velocity[i] / fault.severity();
                velocity[i] = read * fault.severity();
            }
        }
    }

    /** Steps in which nothing was logged: outages of hours, and now and then of days. */
    boolean[] away() {
        Draws draws = Draws.of(order.seed(), "outages");
        boolean[] away = new boolean[grid.size()];
        if (order.make() == Make.THIRD) {
            batches(away);
        }
        double perMonth = draws.logUniform(0.5, 9);
        double hours = draws.logUniform(1, 8);
        for (double day = draws.exponential(30 / perMonth);
                day < order.days();
                day += draws.exponential(30 / perMonth)) {
            fill(away, day, draws.exponential(hours) / 24);
        }
        for (double day = draws.exponential(220); day < order.days(); day += draws.exponential(220)) {
            fill(away, day, draws.logUniform(24, 130) / 24);
        }
        return away;
    }

    /** Telemetry that sends in batches of some hours, some of which are lost, on some days most of them. */
    private void batches(boolean[] away) {
        Draws draws = Draws.of(order.seed(), "batches");
        double hours = draws.pick(1, 4, 6, 12);
        double lost = draws.uniform(0.005, 0.05);
        double days = 24 / hours;
        for (int day = 0; day < order.days(); day++) {
            double share = draws.chance(0.03) ? 0.6 : lost;
            for (int k = 0; k < days; k++) {
                if (draws.chance(share)) {
                    fill(away, day + k / days, 1 / days);
                }
            }
        }
    }

    private void fill(boolean[] away, double day, double days) {
        Arrays.fill(away, grid.at(day), grid.at(day + days), true);
    }

    /** What the gauge says, mm a step of {@code minutes}, by true step of its own. */
    double[] gauge(Rain rain, int minutes) {
        Draws draws = Draws.of(order.seed(), "gauge");
        int steps = grid.size() * grid.minutes() / minutes;
        double[] there = rain.onto(minutes, steps);
        Grid own = new Grid(grid.start(), minutes, steps, grid.zone());
        // Rain at the gauge is not rain on the catchment.
        double[] apart = Wanders.autoregressive(own, draws, 180, 0.5, 0.2);
        for (int i = 0; i < steps; i++) {
            there[i] *= FastMath.exp(apart[i]);
        }
        Fault fault = order.fault();
        for (int i = 0; fault.kind() == FaultKind.CLOGGED_FUNNEL && i < steps; i++) {
            there[i] *= 1 - fault.severity() * fault.strength(own.days(i));
        }
        double[] tipped = Rain.tipped(there, draws.pick(0.1, 0.2, 0.2, 0.25), draws.uniform(0.9, 1.1));
        for (double day = draws.exponential(150); day < order.days(); day += draws.exponential(150)) {
            Arrays.fill(tipped, own.at(day), own.at(day + draws.exponential(0.8)), Double.NaN);
        }
        if (fault.kind() == FaultKind.DEAD_GAUGE) {
            for (int i = 0; i < steps; i++) {
                tipped[i] = fault.strength(own.days(i)) > 0 && !Double.isNaN(tipped[i]) ? 0 : tipped[i];
            }
        }
        return fault.kind() == FaultKind.CLOCK_OF_GAUGE ? shifted(own, tipped) : tipped;
    }

    private double[] shifted(Grid own, double[] values) {
        Fault fault = order.fault();
        int later = (int) FastMath.round(fault.severity() * 60 / own.minutes());
        double[] shifted = values.clone();
        for (int i = own.at(fault.begin()); i < shifted.length; i++) {
            int source = i - later;
            // A clock put forward leaves out what it jumps over.
            boolean jumped = source < own.at(fault.begin()) && later > 0;
            shifted[i] = jumped || source >= values.length ? Double.NaN : values[source];
        }
        return shifted;
    }

    /** Puts stamps to the readings in the order in which they are delivered. */
    Site delivered(Law law, double[] depth, double[] velocity, int gaugeMinutes, double[] gauge) {
        Fault fault = order.fault();
        int begin = grid.at(fault.isNone() ? order.days() : fault.begin());
        boolean clock = fault.kind() == FaultKind.CLOCK_OF_MONITOR;
        int later = clock ? (int) FastMath.round(fault.severity() * 60 / grid.minutes()) : 0;
        int size = grid.size();
        Instant[] stamp = new Instant[size];
        double[] y = new double[size];
        double[] v = new double[size];
        int n = 0;
        for (int i = 0; i < size; i++) {
            int source = i >= begin ? i - later : i;
            if (i >= begin && (source < begin && later > 0 || source >= size)) {
                continue;
            }
            boolean falsely = fault.kind() == FaultKind.FALSE_STAMP && i >= begin && i < begin + 3;
            stamp[n] = grid.time(i).plusSeconds(falsely ? Math.round(fault.severity() * 86400) : 0);
            y[n] = depth[source];
            v[n] = velocity[source];
            n++;
        }
        return new Site(
                order,
                grid,
                law.pipe(),
                law.gradient(Draws.of(order.seed(), "drawings").logUniform(0.8, 1.4)),
                nature.holidays(grid),
                Arrays.copyOf(stamp, n),
                Arrays.copyOf(y, n),
                Arrays.copyOf(v, n),
                gaugeMinutes,
                gauge,
                water);
    }
}
