package dev.runnel.verification.simulation;

import java.time.LocalDate;
import java.util.Set;
import org.apache.commons.math3.util.FastMath;

/**
 * The second generator, of another make: days drawn from a small stock of ragged shapes, rain as days of a wet and dry
 * chain cut by a random cascade, an answer by a triangle and a store with a threshold, heavy-tailed scatter that stays and
 * jumps, a law with a bend. It shares nothing with the first but the interface.
 *
 * @param seed what all draws of a site come from
 * @param wetClimate how wet it is, about 1
 */
record RoughNature(long seed, double wetClimate) implements Nature {
    private static final int SLOTS = 96;
    private static final double DAY = Grid.MINUTES_OF_DAY;

    @Override
    public Rain rain(Grid grid) {
        Draws draws = Draws.of(seed, "chain");
        Rain rain = new Rain();
        double toWet = FastMath.min(0.5, wetClimate * draws.uniform(0.14, 0.26));
        double stayWet = draws.uniform(0.3, 0.5);
        double mean = draws.uniform(3.5, 7);
        boolean wet = false;
        int days = grid.size() * grid.minutes() / Grid.MINUTES_OF_DAY + 1;
        for (int day = 0; day < days; day++) {
            wet = draws.chance(wet ? stayWet : toWet);
            if (wet) {
                cascade(rain, draws, day * DAY, DAY, FastMath.min(80, draws.gamma(0.7, mean / 0.7)));
            }
        }
        return rain;
    }

    /** Halves the time again and again; each half gets a random share, and now and then one half gets all. */
    private static void cascade(Rain rain, Draws draws, double start, double minutes, double mm) {
        if (mm < 0.02) {
            return;
        }
        if (minutes < 12) {
            rain.add(start, minutes, mm);
            return;
        }
        double left = draws.chance(0.45) ? draws.below(2) : draws.uniform(0.1, 0.9);
        cascade(rain, draws, start, minutes / 2, mm * left);
        cascade(rain, draws, start + minutes / 2, minutes / 2, mm * (1 - left));
    }

    @Override
    public Law law(Pipe pipe) {
        Draws draws = Draws.of(seed, "relation");
        double depth = FastMath.max(0.05, pipe.height() * draws.uniform(0.1, 0.45));
        return new Law(
                pipe,
                depth,
                draws.logUniform(0.3, 1.3),
                draws.uniform(-0.2, 0.2),
                depth * draws.uniform(1.1, 1.8),
                draws.uniform(-0.3, 0.15));
    }

    @Override
    public Set<LocalDate> holidays(Grid grid) {
        return Set.of();
    }

    @Override
    public double[] dryFlow(Grid grid, double usual) {
        Draws draws = Draws.of(seed, "stock");
        double[] mother = new double[SLOTS];
        double night = draws.uniform(0.12, 0.5);
        double morning = draws.uniform(5.5, 8);
        double evening = draws.uniform(21, 23.5);
        for (int k = 0; k < SLOTS; k++) {
            double hour = k / 4.0;
            boolean awake = hour > morning && hour < evening;
            mother[k] = awake ? draws.uniform(0.9, 1.5) : night;
        }
        int peak = (int) (4 * morning) + 2 + draws.below(6);
        for (int k = 0; k < 6; k++) {
            mother[(peak + k) % SLOTS] *= draws.uniform(1.3, 1.9);
        }
        double[][] workdays = stock(draws, mother, 7, 0);
        double[][] home = stock(draws, mother, 4, 3 + draws.below(7));
        double growth = draws.uniform(-0.06, 0.06);
        double[] base = Wanders.autoregressive(grid, draws, 25 * DAY, 0.6, draws.uniform(0.02, 0.07));
        double[] drift = Wanders.autoregressive(grid, draws, 97, 0.6, draws.uniform(0.02, 0.07));
        long[] civil = grid.civilMinutes();
        double[] flow = new double[grid.size()];
        double[] today = workdays[0];
        double[] tomorrow = workdays[0];
        long day = Long.MIN_VALUE;
        for (int i = 0; i < flow.length; i++) {
            long now = Math.floorDiv(civil[i], (long) Grid.MINUTES_OF_DAY);
            if (now != day) {
                today = day == Long.MIN_VALUE ? drawn(draws, now, workdays, home) : tomorrow;
                tomorrow = drawn(draws, now + 1, workdays, home);
                day = now;
            }
            double position = (double) Math.floorMod(civil[i], (long) Grid.MINUTES_OF_DAY) / DAY * SLOTS;
            int slot = (int) position;
            double next = slot + 1 < SLOTS ? today[slot + 1] : tomorrow[0];
            double people = today[slot] + (position - slot) * (next - today[slot]);
            flow[i] = usual * people * (1 + growth * grid.days(i) / 365) * FastMath.exp(base[i] + drift[i]);
        }
        return flow;
    }

    /** A day of its kind; now and then people stay at home and nobody has told. */
    private static double[] drawn(Draws draws, long day, double[][] workdays, double[][] home) {
        boolean atHome = Math.floorMod(day + 3, 7) >= 5 || draws.chance(0.03);
        return atHome ? home[draws.below(home.length)] : workdays[draws.below(workdays.length)];
    }

    /** Ragged days after one mother, mean near 1. */
    private static double[][] stock(Draws draws, double[] mother, int count, int laterSlots) {
        double[][] days = new double[count][SLOTS];
        for (double[] day : days) {
            double level = draws.logNormal(1, 0.03);
            double walk = 0;
            double sum = 0;
            for (int k = 0; k < SLOTS; k++) {
                walk = 0.8 * walk + 0.06 * draws.normal();
                int from = k > 20 && k < 56 ? k - laterSlots : k;
                day[k] = level * FastMath.exp(walk) * mother[Math.floorMod(from, SLOTS)];
                sum += mother[k];
            }
            for (int k = 0; k < SLOTS; k++) {
                day[k] *= SLOTS / sum;
            }
        }
        return days;
    }

    @Override
    public double[] stormFlow(Grid grid, double[] rain, double usual) {
        Draws draws = Draws.of(seed, "unit");
        double hours = draws.uniform(0.5, 2.5);
        int length = FastMath.max(3, (int) FastMath.round(3 * hours * 60 / grid.minutes()));
        int rise = FastMath.max(1, length / 3);
        double[] triangle = new double[length];
        double sum = 0;
        for (int k = 0; k < length; k++) {
            triangle[k] = k < rise ? (k + 1.0) / rise : (double) (length - k) / (length - rise + 1);
            sum += triangle[k];
        }
        double stepHours = grid.minutes() / 60.0;
        double area = draws.logUniform(0.5, 4) * usual / 10 * 1.5 * hours;
        double soak = draws.logUniform(0.05, 0.5) * area;
        double threshold = draws.uniform(3, 12);
        double drain = draws.logUniform(15, 60);
        double[] flow = new double[rain.length];
        double store = 0;
        for (int i = 0; i < rain.length; i++) {
            if (rain[i] > 0) {
                double put = area * rain[i] / stepHours / sum;
                for (int k = 0; k < length && i + k < flow.length; k++) {
                    flow[i + k] += put * triangle[k];
                }
            }
            // The ground gives only what lies above its threshold.
            store += rain[i];
            double out = FastMath.max(0, store - threshold) * (1 - FastMath.exp(-stepHours / drain));
            store = (store - out) * FastMath.exp(-stepHours / 240);
            flow[i] += soak * out / stepHours;
        }
        return flow;
    }

    @Override
    public double[] scatter(Grid grid, double sd, double[] dry, double[] storm) {
        Draws draws = Draws.of(seed, "ragged");
        double dayLevel = sd * draws.heavy();
        double stay = draws.uniform(20, 34);
        double untilJump = draws.exponential(stay * 60);
        double hourly = draws.uniform(0.9, 1.4) * sd;
        double[] slow = Wanders.autoregressive(grid, draws, 11 * DAY, 0.8, draws.uniform(0, 0.4) * sd);
        double fine = 0;
        double bias = draws.uniform(-0.08, 0.08);
        double keep = FastMath.exp(-grid.minutes() / 70.0);
        double fresh = FastMath.sqrt(1 - keep * keep);
        double level = dayLevel;
        double keepLevel = FastMath.exp(-grid.minutes() / 180.0);
        double[] scatter = new double[grid.size()];
        for (int i = 0; i < scatter.length; i++) {
            untilJump -= grid.minutes();
            if (untilJump < 0) {
                untilJump = draws.exponential(stay * 60);
                dayLevel = 0.3 * dayLevel + 0.95 * sd * draws.heavy();
            }
            level = keepLevel * level + (1 - keepLevel) * dayLevel;
            fine = keep * fine + fresh * hourly * draws.heavy();
            scatter[i] = level + fine + slow[i] + bias * FastMath.min(1, storm[i] / (2 * dry[i]));
        }
        return scatter;
    }

    /** Two-sided exponential: more small errors and more large ones than a normal error has. */
    @Override
    public double error(Draws draws) {
        double size = draws.exponential(FastMath.sqrt(0.5));
        return draws.chance(0.5) ? size : -size;
    }
}
