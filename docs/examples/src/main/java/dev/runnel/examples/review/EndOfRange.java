package dev.runnel.examples.review;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.TextState;
import dev.runnel.timeseries.quality.QualityCheck;
import dev.runnel.timeseries.quality.QualityFlag;
import dev.runnel.timeseries.quality.Verdict;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Tells the readings at which the range of a sensor or logger ends: the least that was there, so they stay in use and count as doubtful. In a week whose highest value stands for hours on three
 * days and holds far more readings than any of the ten values just below it, more was there than was written: water rises
 * through its highest level once, and seldom twice to the same millimetre. Limits chosen here.
 *
 * @param ends times and the value that was never exceeded in them
 */
record EndOfRange(List<End> ends) implements QualityCheck {
    static final String NAME = "end of range";

    /** Days of a week. */
    private static final int DAYS = 7;

    private static final Duration DAY = Duration.ofDays(1);

    /** Days of a week on which the value stands for long. */
    private static final int LEAST_DAYS = 3;

    /** Values below the highest that are looked at; a sensor of so coarse steps that there are fewer shows nothing. */
    private static final int BELOW = 10;

    /** Readings at the highest value over those at the most frequent one just below. */
    private static final double PILED = 5;

    /** Fewest readings in a row that stand. */
    private static final int LEAST_RUN = 4;

    private static final TextState NOTHING = TextState.of(NAME);

    /** A time in which no value exceeded one that was reached again and again. */
    record End(Interval time, double value) {}

    EndOfRange {
        ends = List.copyOf(ends);
    }

    /**
     * Looks for ends of range week by week, a day between their beginnings.
     *
     * @param series the readings
     * @param stay how long a value must stand on a day
     * @return a check that calls them unusual; nothing if there are none
     */
    static Optional<EndOfRange> in(Series series, Duration stay) {
        List<End> ends = new ArrayList<>();
        if (series.isEmpty()) {
            return Optional.empty();
        }
        double[] values = series.toUsableValues();
        int[] days = days(series);
        double[] highest = new double[days.length - 1];
        for (int d = 0; d < highest.length; d++) {
            highest[d] = highest(values, days[d], days[d + 1]);
        }
        for (int d = 0; d + DAYS <= highest.length; d++) {
            int from = days[d];
            int to = days[d + DAYS];
            double most = highest(highest, d, d + DAYS);
            // Few weeks pass the first questions, so the dear last one is asked of few.
            if (count(highest, d, d + DAYS, most) >= LEAST_DAYS
                    && standing(series, values, from, to, most, stay) >= LEAST_DAYS
                    && isPiled(values, from, to, most)) {
                add(ends, new End(notExceeded(series, values, from, to, most), most));
            }
        }
        return ends.isEmpty() ? Optional.empty() : Optional.of(new EndOfRange(ends));
    }

    /** Weeks of one value that nothing exceeded between them are one time. */
    private static void add(List<End> ends, End next) {
        if (ends.isEmpty() || !ends.get(ends.size() - 1).equals(next)) {
            ends.add(next);
        }
    }

    /** A time as far as no reading before it and after it exceeds a value. */
    private static Interval notExceeded(Series series, double[] values, int from, int to, double value) {
        int first = from;
        while (first > 0 && !(values[first - 1] > value)) {
            first--;
        }
        int last = to - 1;
        while (last < values.length - 1 && !(values[last + 1] > value)) {
            last++;
        }
        return Interval.of(series.time(first), series.time(last).plusNanos(1));
    }

    /** Where each day begins, counted from the first reading, and where the last one ends. */
    private static int[] days(Series series) {
        Instant last = series.time(series.size() - 1);
        List<Integer> days = new ArrayList<>();
        Instant day = series.time(0);
        for (; !day.isAfter(last); day = day.plus(DAY)) {
            days.add(series.firstIndexAtOrAfter(day));
        }
        days.add(series.size());
        return days.stream().mapToInt(Integer::intValue).toArray();
    }

    private static int count(double[] values, int from, int to, double value) {
        int count = 0;
        for (int i = from; i < to; i++) {
            count += values[i] == value ? 1 : 0;
        }
        return count;
    }

    private static double highest(double[] values, int from, int to) {
        double highest = Double.NEGATIVE_INFINITY;
        for (int i = from; i < to; i++) {
            highest = values[i] > highest ? values[i] : highest;
        }
        return highest;
    }

    /** Days, counted from the first reading, on which a value stands for long enough. */
    private static int standing(Series series, double[] values, int from, int to, double value, Duration stay) {
        long day = -1;
        int days = 0;
        int run = 0;
        for (int i = from; i < to; i++) {
            if (values[i] != value) {
                run = 0;
                continue;
            }
            run++;
            long begin = series.epochNanos(i - run + 1);
            if (run >= LEAST_RUN && series.epochNanos(i) - begin >= stay.toNanos()) {
                long today = (begin - series.epochNanos(from)) / DAY.toNanos();
                days += today > day ? 1 : 0;
                day = today;
            }
        }
        return days;
    }

    /** Whether far more readings are at the highest value than at any just below. */
    private static boolean isPiled(double[] values, int from, int to, double highest) {
        TreeMap<Double, Integer> counts = new TreeMap<>(Comparator.reverseOrder());
        for (int i = from; i < to; i++) {
            if (!Double.isNaN(values[i])) {
                counts.merge(values[i], 1, Integer::sum);
            }
        }
        int mostBelow = counts.tailMap(highest, false).values().stream()
                .limit(BELOW)
                .mapToInt(Integer::intValue)
                .max()
                .orElse(0);
        return counts.size() > BELOW && counts.getOrDefault(highest, 0) >= PILED * mostBelow;
    }

    @Override
    public String name() {
        return NAME;
    }

    @Override
    public Machine<Reading, QualityFlag, TextState> start() {
        return new Machine<>() {
            @Override
            public List<QualityFlag> next(Reading reading) {
                return List.of(judge(reading));
            }

            @Override
            public List<QualityFlag> finish() {
                return List.of();
            }

            @Override
            public TextState state() {
                return NOTHING;
            }
        };
    }

    @Override
    public Machine<Reading, QualityFlag, TextState> start(TextState state) {
        return start();
    }

    private QualityFlag judge(Reading reading) {
        if (reading.isMissing()) {
            return new QualityFlag(reading.time(), Verdict.MISSING, "no value");
        }
        if (reading.quality() == Quality.SUSPECT) {
            return new QualityFlag(reading.time(), Verdict.NOT_EVALUATED, "suspect before");
        }
        boolean stands =
                ends.stream().anyMatch(end -> end.value == reading.value() && end.time.contains(reading.time()));
        return stands
                ? new QualityFlag(
                        reading.time(),
                        Verdict.UNUSUAL,
                        Text.number(reading.value()) + " is the highest of its week, for hours on at least "
                                + LEAST_DAYS + " days")
                : new QualityFlag(reading.time(), Verdict.PASS, "");
    }
}
