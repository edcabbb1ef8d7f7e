package dev.runnel.verification.simulation;

import java.time.LocalDate;
import java.util.Set;
import org.apache.commons.math3.util.FastMath;

/**
 * The third generator, of yet another make: the dry weather flow is the sum of what single households and a factory let go,
 * rain comes as clusters of cells about a storm, the answer is a basin that empties by the power of its store beside a slow
 * one, the law has a weir downstream that ponds low flows, the scatter is larger in the small hours and in low flow, and
 * holidays of the factory nobody has told. It shares nothing with the others but the interface.
 *
 * @param seed what all draws of a site come from
 * @param wetClimate how wet it is, about 1
 */
record HouseholdNature(long seed, double wetClimate) implements Nature {
    private static final double DAY = Grid.MINUTES_OF_DAY;

    /** Above this mean a count is drawn from a normal law. */
    private static final double MANY = 12;

    /** Storms at random, each with cells that begin some hours after it (Neyman and Scott's clusters). */
    @Override
    public Rain rain(Grid grid) {
        Draws draws = Draws.of(seed, "storms");
        Rain rain = new Rain();
        double everyDays = 1 / (wetClimate * draws.uniform(0.16, 0.34));
        double cells = draws.uniform(3, 6);
        double spread = draws.uniform(100, 330);
        double minutes = draws.uniform(18, 55);
        double intensity = draws.uniform(2.2, 4.2);
        double length = (double) grid.size() * grid.minutes();
        for (double storm = DAY * draws.exponential(everyDays);
                storm < length;
                storm += DAY * draws.exponential(everyDays)) {
            int count = 1 + count(draws, cells - 1);
            for (int k = 0; k < count; k++) {
                double lasts = FastMath.max(3, draws.exponential(minutes));
                double mm = FastMath.min(45, draws.exponential(intensity) * lasts / 60);
                rain.add(storm + draws.exponential(spread), lasts, mm);
            }
        }
        return rain;
    }

    @Override
    public Law law(Pipe pipe) {
        Draws draws = Draws.of(seed, "weir");
        double depth = FastMath.max(0.06, pipe.height() * draws.uniform(0.14, 0.42));
        Law open = new Law(pipe, depth, draws.logUniform(0.4, 1.1), draws.uniform(-0.12, 0.12), depth, 0);
        // A crest below the usual depth: what is ponded behind it runs slowly when little comes.
        return draws.chance(0.6) ? open.behindWeir(depth * draws.uniform(0.25, 0.6), draws.uniform(1.3, 3)) : open;
    }

    @Override
    public Set<LocalDate> holidays(Grid grid) {
        return Set.of();
    }

    @Override
    public double[] dryFlow(Grid grid, double usual) {
        Draws draws = Draws.of(seed, "households");
        int households = (int) draws.logUniform(60, 900);
        double[] workday = habits(draws, 0);
        double[] home = habits(Draws.of(seed, "households"), draws.uniform(1, 2.5));
        double perDay = draws.uniform(10, 22);
        double seep = draws.uniform(0.12, 0.4);
        double industry = draws.chance(0.4) ? draws.uniform(0.06, 0.2) : 0;
        double trend = draws.uniform(-0.09, 0.09);
        double[] ground = Wanders.autoregressive(grid, draws, 20 * DAY, 0.7, draws.uniform(0.02, 0.15));
        double[] busy = Wanders.autoregressive(grid, draws, DAY, 0.1, draws.uniform(0.01, 0.04));
        double[] batches = batches(grid, industry);
        long[] civil = grid.civilMinutes();
        double[] flow = new double[grid.size()];
        for (int i = 0; i < flow.length; i++) {
            int minute = (int) Math.floorMod(civil[i], (long) Grid.MINUTES_OF_DAY);
            boolean rest = Math.floorMod(Math.floorDiv(civil[i], (long) Grid.MINUTES_OF_DAY) + 3, 7) >= 5;
            double expected = households * perDay * (rest ? home : workday)[minute / 10] * grid.minutes() / DAY;
            double came = draws(draws, expected) / (households * perDay * grid.minutes() / DAY);
            flow[i] = usual * ((1 - seep - industry) * came * FastMath.exp(busy[i]) + seep * FastMath.exp(ground[i]));
        }
        // What leaves the houses within minutes reaches the monitor within a quarter of an hour or two.
        flow = Wanders.routed(flow, grid.minutes() / 60.0, draws.uniform(0.12, 0.35), 2);
        for (int i = 0; i < flow.length; i++) {
            flow[i] = (flow[i] + usual * batches[i]) * (1 + trend * grid.days(i) / 365);
        }
        return flow;
    }

    /** Each use of water is a little more or less than the mean. */
    private static double draws(Draws draws, double expected) {
        if (expected > MANY) {
            return FastMath.max(0, expected + FastMath.sqrt(2 * expected) * draws.normal());
        }
        int count = count(draws, expected);
        double sum = 0;
        for (int k = 0; k < count; k++) {
            sum += draws.exponential(1);
        }
        return sum;
    }

    /** A count by Poisson's law. */
    private static int count(Draws draws, double mean) {
        int count = 0;
        for (double at = draws.exponential(1); at < mean; at += draws.exponential(1)) {
            count++;
        }
        return count;
    }

    /** How often water is used in each ten minutes of the day; mean 1. */
    private static double[] habits(Draws draws, double later) {
        double[] habits = new double[144];
        double rise = draws.uniform(5.5, 7.5) + later;
        double steep = draws.uniform(1.2, 3.5);
        double morning = draws.uniform(1.2, 2.4);
        double noon = draws.uniform(0.6, 1);
        double evening = draws.uniform(1, 1.8);
        double dinner = draws.uniform(17.5, 20.5);
        double bed = draws.uniform(21.8, 23.6);
        double night = draws.uniform(0.06, 0.2);
        double sum = 0;
        for (int k = 0; k < habits.length; k++) {
            double hour = k / 6.0;
            double awake = 1 / (1 + FastMath.exp(-steep * (hour - rise))) / (1 + FastMath.exp(1.8 * (hour - bed)));
            double early = morning * FastMath.exp(-FastMath.abs(hour - rise - 0.8) / 1.1);
            double late = hour > dinner - 1.5 && hour < dinner + 1.5 ? evening - noon : 0;
            habits[k] = night + awake * (noon + late + early);
            sum += habits[k] / habits.length;
        }
        for (int k = 0; k < habits.length; k++) {
            habits[k] /= sum;
        }
        return habits;
    }

    /** A factory that empties its vats on working days, and stands still for some weeks of the year. */
    private double[] batches(Grid grid, double share) {
        double[] batches = new double[grid.size()];
        if (share == 0) {
            return batches;
        }
        Draws draws = Draws.of(seed, "factory");
        int aDay = 2 + draws.below(4);
        double minutes = draws.uniform(25, 80);
        double first = draws.uniform(6, 9);
        double closed = draws.uniform(40, 365);
        double weeks = 1 + draws.below(2);
        long[] civil = grid.civilMinutes();
        for (int i = 0; i < batches.length; ) {
            long day = Math.floorDiv(civil[i], (long) Grid.MINUTES_OF_DAY);
            int next = i;
            while (next < batches.length && Math.floorDiv(civil[next], (long) Grid.MINUTES_OF_DAY) == day) {
                next++;
            }
            double now = grid.days(i);
            boolean works = Math.floorMod(day + 3, 7) < 5 && !(now > closed && now < closed + 7 * weeks);
            for (int k = 0; k < aDay; k++) {
                double begin = 60 * (first + 8.0 * k / aDay) + draws.uniform(-25, 25);
                double lasts = minutes * draws.uniform(0.7, 1.3);
                double rate = share * DAY / (aDay * minutes) * draws.uniform(0.7, 1.3);
                for (int j = i; works && j < next; j++) {
                    double minute = (double) Math.floorMod(civil[j], (long) Grid.MINUTES_OF_DAY);
                    batches[j] += minute >= begin && minute < begin + lasts ? rate : 0;
                }
            }
            i = next;
        }
        return Wanders.routed(batches, grid.minutes() / 60.0, draws.uniform(0.15, 0.5), 1);
    }

    @Override
    public double[] stormFlow(Grid grid, double[] rain, double usual) {
        Draws draws = Draws.of(seed, "basin");
        double hours = grid.minutes() / 60.0;
        double area = draws.logUniform(0.05, 0.35) * usual;
        double loss = draws.uniform(0.3, 1.2);
        double empties = draws.logUniform(0.4, 1.6);
        double power = draws.uniform(1.2, 1.7);
        double slow = draws.uniform(0.05, 0.3);
        double drain = draws.logUniform(10, 50);
        double[] flow = new double[rain.length];
        double wetted = 0;
        double basin = 0;
        double ground = 0;
        for (int i = 0; i < rain.length; i++) {
            double kept = FastMath.min(rain[i], FastMath.max(0, loss - wetted));
            wetted = FastMath.max(0, wetted + kept - 0.08 * hours);
            basin += (1 - slow) * (rain[i] - kept);
            ground += slow * (rain[i] - kept);
            // mm; the basin empties the faster the fuller it is.
            double out = FastMath.min(basin, hours / empties * FastMath.pow(basin, power) / (1 + basin / 20));
            double seeps = ground * (1 - FastMath.exp(-hours / drain));
            basin -= out;
            ground -= seeps;
            flow[i] = area * (out + seeps) / hours * 3;
        }
        return Wanders.routed(flow, hours, draws.uniform(0.1, 0.6), 1);
    }

    @Override
    public double[] scatter(Grid grid, double sd, double[] dry, double[] storm) {
        Draws draws = Draws.of(seed, "low flow");
        double[] days = Wanders.autoregressive(grid, draws, 1.3 * DAY, 0.15, 1.15 * sd);
        double[] hours = Wanders.autoregressive(grid, draws, 95, 0.3, draws.uniform(0.9, 1.4) * sd);
        double[] months = Wanders.autoregressive(grid, draws, 30 * DAY, 0.5, draws.uniform(0, 0.5) * sd);
        double growth = draws.uniform(0.2, 0.8);
        double falling = draws.uniform(-0.07, 0.07);
        double usual = mean(dry);
        double[] scatter = new double[grid.size()];
        double before = 0;
        for (int i = 0; i < scatter.length; i++) {
            double low = FastMath.pow(FastMath.max(0.15, dry[i] / usual), -growth);
            double limb = storm[i] > 0.2 * dry[i] ? FastMath.tanh(20 * (storm[i] - before) / storm[i]) : 0;
            before = storm[i];
            scatter[i] = days[i] + months[i] + FastMath.min(2.5, low) * hours[i] + falling * limb;
        }
        return scatter;
    }

    private static double mean(double[] values) {
        double sum = 0;
        for (double each : values) {
            sum += each / values.length;
        }
        return sum;
    }

    /** Even within bounds: the error of a rounded mean of few pings. */
    @Override
    public double error(Draws draws) {
        return draws.uniform(-1, 1) * FastMath.sqrt(3);
    }
}
