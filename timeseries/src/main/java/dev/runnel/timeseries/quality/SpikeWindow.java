package dev.runnel.timeseries.quality;

import dev.runnel.internal.SeriesArrays;
import dev.runnel.internal.StateText;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Series;
import java.util.Arrays;
import java.util.stream.IntStream;

/** Readings in a row, and what the check of spikes says of each by those around it: a whole record, or the end of one. */
final class SpikeWindow {
    /** Chosen here: a state stays small, and over more than ten lost readings there is no neighbour to speak of. */
    private static final int MOST_BRIDGED = 10;

    /** No usable reading in reach. */
    private static final int NONE = -1;

    /** The end of what is held was reached before the reach was. */
    private static final int BEYOND = -2;

    private static final byte SUSPECT = Quality.SUSPECT.toCode();

    private final double unusualAbove;
    private final double failAbove;
    private final long maximumGap;
    private final boolean sparing;

    private long[] times;
    private double[] values;
    private byte[] qualities;
    private int size;

    private SpikeWindow(SpikeCheck check, long[] times, double[] values, byte[] qualities, int size) {
        this.unusualAbove = check.unusualAbove();
        this.failAbove = check.failAbove();
        this.maximumGap = check.maximumGap().toNanos();
        this.sparing = check.sparing();
        this.times = times;
        this.values = values;
        this.qualities = qualities;
        this.size = size;
    }

    /** Holds no reading yet. */
    static SpikeWindow of(SpikeCheck check) {
        int room = 4 * MOST_BRIDGED;
        return new SpikeWindow(check, new long[room], new double[room], new byte[room], 0);
    }

    /** Holds all readings of a record; nothing is to be added. */
    static SpikeWindow of(SpikeCheck check, Series series) {
        SeriesArrays.Keeper keeper = SeriesArrays.keeper();
        return new SpikeWindow(
                check, keeper.times(series), keeper.values(series), keeper.qualities(series), series.size());
    }

    int size() {
        return size;
    }

    void add(Reading reading) {
        if (size == times.length) {
            times = Arrays.copyOf(times, 2 * size);
            values = Arrays.copyOf(values, 2 * size);
            qualities = Arrays.copyOf(qualities, 2 * size);
        }
        times[size] = EpochNanos.of(reading.time());
        values[size] = reading.value();
        qualities[size++] = reading.quality().toCode();
    }

    /** Forgets what is too far before the last readings to matter to them. */
    void keepBefore(int last) {
        int over = size - last - 2 * reach();
        if (over > 0) {
            size -= over;
            System.arraycopy(times, over, times, 0, size);
            System.arraycopy(values, over, values, 0, size);
            System.arraycopy(qualities, over, qualities, 0, size);
        }
    }

    private boolean isUsable(int at) {
        return qualities[at] < SUSPECT;
    }

    /** Whether the readings held are enough to judge one of them. */
    boolean isKnown(int at) {
        if (!isUsable(at)) {
            return true;
        }
        int after = neighbour(at, 1);
        return after != BEYOND && (!sparing || after == NONE || neighbour(after, 1) != BEYOND);
    }

    /** How far away in the record a neighbour is looked for. */
    private int reach() {
        return sparing ? MOST_BRIDGED + 1 : 1;
    }

    /** The place of the nearest usable reading before or after another, or why there is none. */
    private int neighbour(int at, int direction) {
        for (int i = 1; i <= reach(); i++) {
            int there = at + i * direction;
            if (there < 0 || there >= size) {
                return BEYOND;
            }
            if (isUsable(there)) {
                return there;
            }
        }
        return NONE;
    }

    private boolean isNear(int earlier, int later) {
        // Unsigned: two readings centuries apart overflow a long, and are apart all the same.
        return Long.compareUnsigned(times[later] - times[earlier], maximumGap) <= 0;
    }

    /** The deviation from the mean of the neighbours; NaN where it cannot be told. */
    private double deviation(int at) {
        int before = at < 0 ? NONE : neighbour(at, -1);
        int after = at < 0 ? NONE : neighbour(at, 1);
        if (before < 0 || after < 0) {
            return Double.NaN;
        }
        boolean near = isNear(before, at) && isNear(at, after);
        double mean = (values[before] + values[after]) / 2;
        return near ? Math.abs(values[at] - mean) : Double.NaN;
    }

    /** Whether a reading passes for sure: usable readings beside it on both sides, near enough, and little off them. */
    boolean passes(int at) {
        return at > 0
                && at + 1 < size
                && isUsable(at)
                && isUsable(at - 1)
                && isUsable(at + 1)
                && isNear(at - 1, at)
                && isNear(at, at + 1)
                && Math.abs(values[at] - (values[at - 1] + values[at + 1]) / 2) <= unusualAbove;
    }

    QualityFlag judge(int at) {
        Reading reading = reading(at);
        if (!isUsable(at)) {
            return QualityFlag.unusable(reading);
        }
        double deviation = deviation(at);
        if (Double.isNaN(deviation)) {
            return QualityFlag.notEvaluated(reading.time(), "no near neighbours with values");
        }
        if (!(deviation > unusualAbove)) {
            return QualityFlag.pass(reading.time());
        }
        int before = neighbour(at, -1);
        int after = neighbour(at, 1);
        if (sparing && (deviation(before) > deviation || deviation(after) > deviation)) {
            return QualityFlag.notEvaluated(reading.time(), "beside a larger spike");
        }
        return new QualityFlag(
                reading.time(),
                deviation > failAbove ? Verdict.FAIL : Verdict.UNUSUAL,
                Text.number(reading.value()) + " is " + Text.significant(deviation, 4) + " off its neighbours "
                        + Text.number(values[before]) + " and " + Text.number(values[after]));
    }

    private Reading reading(int at) {
        return new Reading(EpochNanos.toInstant(times[at]), values[at], Quality.ofCode(qualities[at]));
    }

    StateText into(StateText state) {
        return state.with("times", Arrays.copyOf(times, size))
                .with("values", Arrays.copyOf(values, size))
                .with(
                        "qualities",
                        IntStream.range(0, size)
                                .mapToObj(at -> Quality.ofCode(qualities[at]).name())
                                .toList());
    }
}
