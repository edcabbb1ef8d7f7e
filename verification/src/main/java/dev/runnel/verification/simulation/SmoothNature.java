package dev.runnel.verification.simulation;

import java.time.LocalDate;
import java.util.Set;
import org.apache.commons.math3.util.FastMath;

/**
 * The first generator: daily shapes of smooth peaks, showers as a Poisson process, linear reservoirs, autoregressive
 * scatter. All parameters invented, within what the trade would call usual.
 */
final class SmoothNature implements Nature {
    private static final double DAY = Grid.MINUTES_OF_DAY;

    private final long seed;
    private final double wetClimate;

    /** {@code wetClimate} in (0, 2]: how often it rains, 1 being usual. */
    SmoothNature(long seed, double wetClimate) {
        this.seed = seed;
        this.wetClimate = wetClimate;
    }

    private static double epochDays(Grid grid, double minute) {
        return grid.start().getEpochSecond() / 86400.0 + minute / DAY;
    }

    @Override
    public Rain rain(Grid grid) {
        Draws draws = Draws.of(seed, "rain");
        Calendar calendar = new Calendar(grid, Draws.of(seed, "calendar"));
        Rain rain = new Rain();
        double swing = draws.uniform(0.3, 0.7);
        double perDay = wetClimate * draws.uniform(0.2, 0.45);
        double mostPerDay = perDay * (1 + swing);
        double length = (double) grid.size() * grid.minutes();
        for (double minute = draws.exponential(DAY / mostPerDay);
                minute < length;
                minute += draws.exponential(DAY / mostPerDay)) {
            double wetness = calendar.wetness(epochDays(grid, minute));
            if (!draws.chance((1 + swing * wetness) / (1 + swing))) {
                continue;
            }
            // Dry seasons bring short and heavy showers, wet ones long and gentle rain.
            double duration = draws.logNormal(60 * (3.5 + 2.5 * wetness), 0.6);
            double depth = FastMath.min(70, draws.logNormal(3.2, 1.0));
            int cells = 1 + (int) (duration / 45);
            double[] share = new double[cells];
            double sum = 0;
            for (int k = 0; k < cells; k++) {
                share[k] = draws.gamma(0.9, 1);
                sum += share[k];
            }
            for (int k = 0; k < cells; k++) {
                rain.add(minute + k * duration / cells, duration / cells, depth * share[k] / sum);
            }
        }
        return rain;
    }

    @Override
    public Law law(Pipe pipe) {
        Draws draws = Draws.of(seed, "law");
        double depth = FastMath.max(0.05, pipe.height() * draws.uniform(0.12, 0.4));
        return new Law(pipe, depth, draws.uniform(0.35, 1.1), draws.uniform(-0.12, 0.15), depth, 0);
    }

    @Override
    public Set<LocalDate> holidays(Grid grid) {
        return new Calendar(grid, Draws.of(seed, "calendar")).holidays();
    }

    @Override
    public double[] dryFlow(Grid grid, double usual) {
        Draws draws = Draws.of(seed, "people");
        Calendar calendar = new Calendar(grid, Draws.of(seed, "calendar"));
        double[] workday = shape(draws, draws.chance(0.4));
        double[] home = workday.clone();
        // At home the morning comes later and the day is fuller.
        Draws habits = Draws.of(seed, "habits");
        double later = habits.uniform(0.8, 2.3);
        double level = habits.uniform(0.85, 1.15);
        for (int m = 0; m < home.length; m++) {
            double clock = m / 60.0;
            double shift = clock > 4 && clock < 13 ? later * FastMath.sin(FastMath.PI * (clock - 4) / 9) : 0;
            int source = (int) FastMath.round((clock - 0.8 * shift) * 60);
            home[m] = level * workday[Math.floorMod(source, home.length)];
        }
        double infiltration = habits.uniform(0.1, 0.5);
        double wetSwing = habits.uniform(0.05, 0.35);
        double summer = habits.uniform(0, 0.08);
        double[] days = Wanders.autoregressive(grid, draws, DAY, 0.3, habits.uniform(0.015, 0.04));
        double[] hours = Wanders.autoregressive(grid, draws, 60, 0.5, habits.uniform(0.02, 0.06));
        double[] minutes = Wanders.autoregressive(grid, draws, 12, 0.2, habits.uniform(0.02, 0.08));
        long[] civil = grid.civilMinutes();
        double[] flow = new double[grid.size()];
        for (int i = 0; i < flow.length; i++) {
            double wetness = calendar.wetness(epochDays(grid, (double) i * grid.minutes()));
            int minute = (int) Math.floorMod(civil[i], (long) Grid.MINUTES_OF_DAY);
            boolean atHome = calendar.isAtHome(Math.floorDiv(civil[i], (long) Grid.MINUTES_OF_DAY));
            double people = (atHome ? home : workday)[minute]
                    * (1 + summer * wetness)
                    * FastMath.exp(days[i] + hours[i] + minutes[i]);
            flow[i] = usual * ((1 - infiltration) * people + infiltration * (1 + wetSwing * wetness));
        }
        return flow;
    }

    /** Two or three peaks on a low night; mean 1 over the day. */
    private static double[] shape(Draws draws, boolean midday) {
        double[] shape = new double[Grid.MINUTES_OF_DAY];
        double night = draws.uniform(0.15, 0.45);
        double[][] peaks = {
            {draws.uniform(6.5, 9), draws.uniform(0.9, 1.8), draws.uniform(0.9, 1.6)},
            {draws.uniform(18, 21), draws.uniform(1.5, 2.8), draws.uniform(0.7, 1.4)},
            {draws.uniform(12, 14), draws.uniform(1, 2), midday ? draws.uniform(0.5, 0.9) : 0}
        };
        double day = draws.uniform(0.3, 0.7);
        double sum = 0;
        for (int m = 0; m < shape.length; m++) {
            double hour = m / 60.0;
            double value = night + day / (1 + FastMath.exp(-(hour - 6) * 2)) / (1 + FastMath.exp((hour - 23) * 2));
            for (double[] peak : peaks) {
                double away = FastMath.abs(hour - peak[0]);
                away = FastMath.min(away, 24 - away) / peak[1];
                value += peak[2] * FastMath.exp(-away * away / 2);
            }
            shape[m] = value;
            sum += value;
        }
        for (int m = 0; m < shape.length; m++) {
            shape[m] *= shape.length / sum;
        }
        return shape;
    }

    @Override
    public double[] stormFlow(Grid grid, double[] rain, double usual) {
        Draws draws = Draws.of(seed, "catchment");
        double stepHours = grid.minutes() / 60.0;
        // The peak that 10 mm in an hour would bring, in usual flows, gives the area that drains to the pipe.
        double fastHours = draws.logUniform(0.15, 0.7);
        double fastArea = draws.logUniform(0.4, 4) * usual / 10 * (1 + 2 * fastHours);
        double slowHours = draws.logUniform(12, 40);
        double slowArea = draws.logUniform(0.03, 0.3) * usual / 10 * slowHours;
        double loss = draws.uniform(0.2, 0.8);
        double[] effective = new double[rain.length];
        double[] soaking = new double[rain.length];
        double room = loss;
        for (int i = 0; i < rain.length; i++) {
            room = FastMath.min(loss, room + 0.04 * stepHours);
            double runs = FastMath.max(0, rain[i] - room);
            room -= rain[i] - runs;
            effective[i] = fastArea * runs / stepHours;
            soaking[i] = slowArea * runs / stepHours;
        }
        double[] flow = Wanders.routed(effective, stepHours, fastHours, 2);
        double[] slow = Wanders.routed(soaking, stepHours, slowHours, 1);
        for (int i = 0; i < flow.length; i++) {
            flow[i] += slow[i];
        }
        return flow;
    }

    @Override
    public double[] scatter(Grid grid, double sd, double[] dry, double[] storm) {
        Draws draws = Draws.of(seed, "scatter");
        double[] days = Wanders.autoregressive(grid, draws, DAY, draws.uniform(0.1, 0.5), sd);
        double[] hours = Wanders.autoregressive(grid, draws, 60, draws.uniform(0.3, 0.6), sd * draws.uniform(0.9, 1.4));
        double[] months = Wanders.autoregressive(grid, draws, 20 * DAY, 0.7, sd * draws.uniform(0, 0.5));
        double loop = draws.chance(0.5) ? draws.uniform(0, 0.1) : 0;
        double flush = draws.chance(0.3) ? draws.uniform(0, 0.08) : 0;
        double keepHour = FastMath.exp(-grid.minutes() / 60.0);
        double keepDays = FastMath.exp(-grid.minutes() / (60.0 * 48));
        double smooth = 0;
        double flushed = 0;
        double[] scatter = new double[grid.size()];
        for (int i = 0; i < scatter.length; i++) {
            double share = storm[i] / (dry[i] + storm[i]);
            // Faster on the rising limb than on the falling one.
            double rising = FastMath.tanh((storm[i] - smooth) / dry[i]);
            smooth = keepHour * smooth + (1 - keepHour) * storm[i];
            flushed = FastMath.max(keepDays * flushed, storm[i] > 2 * dry[i] ? flush : 0);
            scatter[i] = days[i] + hours[i] + months[i] + loop * rising + flushed * (1 - 0.5 * share);
        }
        return scatter;
    }

    @Override
    public double error(Draws draws) {
        return draws.normal();
    }
}
