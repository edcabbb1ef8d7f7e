package dev.runnel.timeseries.quality;

import dev.runnel.internal.Require;
import dev.runnel.internal.SeriesArrays;
import dev.runnel.internal.StateText;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Series;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/** Readings in a row, and what a check of spikes says of each by those around it: a whole record, or the end of one. */
final class SpikeWindow {
    /** Who else is asked of a spike. */
    private enum Witness {
        /** The readings stand by themselves. */
        NONE,
        /** A companion that moved as well excuses a spike. */
        SHARING,
        /** Only beside a companion that stood still does a reading stand alone. */
        STILL
    }

    /** Chosen here: a state stays small, and over more than ten lost readings there is no neighbour to speak of. */
    private static final int MOST_BRIDGED = 10;

    /** No usable reading in reach. */
    private static final int NONE = -1;

    /** The end of what is held was reached before the reach was. */
    private static final int BEYOND = -2;

    private static final byte SUSPECT = Quality.SUSPECT.toCode();

    /** A companion that moved, as a share of the larger of it and its neighbours' mean, at least; chosen here. */
    private static final double LEAST_MOVED = 0.15;

    /** The same as a share of what the reading moved; chosen here: in a pipe velocity moves by about half of what depth does. */
    private static final double MOVED = 0.4;

    /** A companion that stood still, alike; chosen here. */
    private static final double STILL = 0.2;

    /** A lone reading must stand out by so much of itself; chosen here. */
    private static final double LONE = 0.5;

    /** And its neighbours be alike to so much of that; chosen here. */
    private static final double ALIKE = 0.25;

    private final double unusualAbove;
    private final double failAbove;
    private final long maximumGap;
    private final boolean sparing;
    private final Witness witness;

    private long[] times;
    private double[] values;

    /** Of the same times as the values, NaN where not known; empty without a witness. */
    private double[] companions;

    private byte[] qualities;
    private int size;

    /** How many of the last readings have no verdict yet. */
    private int owed;

    private SpikeWindow(
            SpikeCheck check,
            Witness witness,
            long[] times,
            double[] values,
            byte[] qualities,
            double[] companions,
            int size) {
        this.unusualAbove = check.unusualAbove();
        this.failAbove = check.failAbove();
        this.maximumGap = check.maximumGap().toNanos();
        this.sparing = check.sparing();
        this.witness = witness;
        this.times = times;
        this.values = values;
        this.qualities = qualities;
        this.companions = companions;
        this.size = size;
    }

    /** Holds no reading yet. */
    static SpikeWindow of(SpikeCheck check) {
        return empty(check, Witness.NONE);
    }

    /** The same with companions, which excuse a spike. */
    static SpikeWindow of(SharedSpikeCheck check) {
        return empty(check.spike(), Witness.SHARING);
    }

    /** The same with companions, beside which a reading stands alone. */
    static SpikeWindow of(LoneReadingCheck check) {
        return empty(check.spike(), Witness.STILL);
    }

    private static SpikeWindow empty(SpikeCheck check, Witness witness) {
        int room = 4 * MOST_BRIDGED;
        return new SpikeWindow(
                check,
                witness,
                new long[room],
                new double[room],
                new byte[room],
                new double[witness == Witness.NONE ? 0 : room],
                0);
    }

    /** Holds all readings of a record; nothing is to be added. */
    static SpikeWindow of(SpikeCheck check, Series series) {
        return whole(check, Witness.NONE, series, new double[0]);
    }

    /** The same with companions, in a series of the same times. */
    static SpikeWindow of(SharedSpikeCheck check, Series series, Series companions) {
        return whole(
                check.spike(), Witness.SHARING, series, SeriesArrays.keeper().usableValues(companions));
    }

    /** The same with companions, in a series of the same times. */
    static SpikeWindow of(LoneReadingCheck check, Series series, Series companions) {
        return whole(check.spike(), Witness.STILL, series, SeriesArrays.keeper().usableValues(companions));
    }

    private static SpikeWindow whole(SpikeCheck check, Witness witness, Series series, double[] companions) {
        SeriesArrays.Keeper keeper = SeriesArrays.keeper();
        return new SpikeWindow(
                check,
                witness,
                keeper.times(series),
                keeper.values(series),
                keeper.qualities(series),
                companions,
                series.size());
    }

    void add(Reading reading) {
        if (size == times.length) {
            times = Arrays.copyOf(times, 2 * size);
            values = Arrays.copyOf(values, 2 * size);
            qualities = Arrays.copyOf(qualities, 2 * size);
            companions = Arrays.copyOf(companions, 2 * companions.length);
        }
        times[size] = EpochNanos.of(reading.time());
        values[size] = reading.value();
        qualities[size++] = reading.quality().toCode();
        owed++;
    }

    void add(ReadingPair pair) {
        add(pair.reading());
        companions[size - 1] =
                pair.companion().quality().isUsable() ? pair.companion().value() : Double.NaN;
    }

    /** Judges the readings whose neighbours are known, and forgets what matters to none any more. */
    List<QualityFlag> judgeWhatIsKnown(boolean ended) {
        List<QualityFlag> flags = new ArrayList<>(1);
        while (owed > 0 && (ended || isKnown(size - owed))) {
            flags.add(flag(size - owed, outcome(size - owed)));
            owed--;
            forget();
        }
        return flags;
    }

    /** Judges all readings held; no object is made of those that raise no flag, which are most. */
    QualityFlags judgeAll(String check) {
        byte[] verdicts = new byte[size];
        List<QualityFlag> raised = new ArrayList<>();
        for (int i = 0; i < size; i++) {
            // Nearly all readings: no more is asked of them than this.
            Outcome outcome = isLittleOff(i) ? Outcome.LITTLE_OFF : outcome(i);
            verdicts[i] = (byte) outcome.verdict.ordinal();
            if (QualityFlags.isRaised(outcome.verdict)) {
                raised.add(flag(i, outcome));
            }
        }
        return QualityFlags.of(check, verdicts, raised);
    }

    /** Forgets what is too far before the readings without a verdict to matter to them. */
    private void forget() {
        int over = size - owed - 2 * reach();
        if (over > 0) {
            size -= over;
            System.arraycopy(times, over, times, 0, size);
            System.arraycopy(values, over, values, 0, size);
            System.arraycopy(qualities, over, qualities, 0, size);
            if (witness != Witness.NONE) {
                System.arraycopy(companions, over, companions, 0, size);
            }
        }
    }

    private boolean isUsable(int at) {
        return qualities[at] < SUSPECT;
    }

    /** Whether the readings held are enough to judge one of them. */
    private boolean isKnown(int at) {
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

    private boolean isWithinGap(int earlier, int later) {
        // Unsigned: two readings centuries apart overflow a long, and are apart all the same.
        return Long.compareUnsigned(times[later] - times[earlier], maximumGap) <= 0;
    }

    private boolean isNear(int before, int at, int after) {
        return isWithinGap(before, at) && isWithinGap(at, after);
    }

    /** Not where it is 0 itself, as a sensor that saw nothing writes. */
    private boolean isCompanionKnown(int before, int at, int after) {
        return witness != Witness.NONE
                && companions[at] != 0
                && !Double.isNaN(companions[at])
                && !Double.isNaN(companions[before])
                && !Double.isNaN(companions[after]);
    }

    /** How far a value is from that of its neighbours, as a share of the larger: from 0 to 1 for values of one sign. */
    private static double share(double value, double mean) {
        double larger = Math.max(Math.abs(value), Math.abs(mean));
        // Two that are 0 are equal.
        return Math.abs(value - mean) / Math.max(larger, Double.MIN_NORMAL);
    }

    /** How far the companion moved from the nearer of its neighbours, of which one may have dropped out; NaN where not known. */
    private double companionMoved(int before, int at, int after) {
        return isCompanionKnown(before, at, after)
                ? Math.min(share(companions[at], companions[before]), share(companions[at], companions[after]))
                : Double.NaN;
    }

    /** The deviation from the mean of the neighbours; NaN where it cannot be told. */
    private double deviation(int at) {
        return at < 0 ? Double.NaN : deviation(neighbour(at, -1), at, neighbour(at, 1));
    }

    private double deviation(int before, int at, int after) {
        boolean near = before >= 0 && after >= 0 && isNear(before, at, after);
        return near ? Math.abs(values[at] - mean(before, after)) : Double.NaN;
    }

    private double mean(int before, int after) {
        return (values[before] + values[after]) / 2;
    }

    /** What can be said of a reading. */
    private enum Outcome {
        NO_VALUE(Verdict.MISSING, "no value"),
        SUSPECT_BEFORE(Verdict.NOT_EVALUATED, "suspect before"),
        NO_NEIGHBOURS(Verdict.NOT_EVALUATED, "no near neighbours with values"),
        LITTLE_OFF(Verdict.PASS, ""),
        BESIDE_LARGER(Verdict.NOT_EVALUATED, "beside a larger spike"),
        NO_COMPANION(Verdict.NOT_EVALUATED, "no companion beside it"),
        NOT_ALONE(Verdict.PASS, ""),
        OFF(Verdict.UNUSUAL, ""),
        SPIKE(Verdict.FAIL, "");

        private final Verdict verdict;
        private final String reason;

        Outcome(Verdict verdict, String reason) {
            this.verdict = verdict;
            this.reason = reason;
        }
    }

    private Outcome outcome(int at) {
        if (!isUsable(at)) {
            return Double.isNaN(values[at]) ? Outcome.NO_VALUE : Outcome.SUSPECT_BEFORE;
        }
        int before = neighbour(at, -1);
        int after = neighbour(at, 1);
        double deviation = deviation(before, at, after);
        if (Double.isNaN(deviation)) {
            return Outcome.NO_NEIGHBOURS;
        }
        return deviation > unusualAbove ? outcome(before, at, after, deviation) : Outcome.LITTLE_OFF;
    }

    /** Whether a reading is little off the readings right before and after it, all three of them usable. */
    private boolean isLittleOff(int at) {
        return at > 0
                && at + 1 < size
                && isUsable(at - 1)
                && isUsable(at)
                && isUsable(at + 1)
                && isNear(at - 1, at, at + 1)
                && Math.abs(values[at] - mean(at - 1, at + 1)) <= unusualAbove;
    }

    /** Of a reading that is off its neighbours. */
    private Outcome outcome(int before, int at, int after, double deviation) {
        if (sparing && (deviation(before) > deviation || deviation(after) > deviation)) {
            return Outcome.BESIDE_LARGER;
        }
        if (witness == Witness.STILL) {
            return !isCompanionKnown(before, at, after)
                    ? Outcome.NO_COMPANION
                    : isAlone(before, at, after, deviation) ? Outcome.SPIKE : Outcome.NOT_ALONE;
        }
        return deviation > failAbove && !isShared(before, at, after) ? Outcome.SPIKE : Outcome.OFF;
    }

    private QualityFlag flag(int at, Outcome outcome) {
        String reason = QualityFlags.isRaised(outcome.verdict) ? off(at) : outcome.reason;
        return new QualityFlag(EpochNanos.toInstant(times[at]), outcome.verdict, reason);
    }

    /** How far a reading is off its neighbours, in words. */
    private String off(int at) {
        int before = neighbour(at, -1);
        int after = neighbour(at, 1);
        return Text.number(values[at]) + " is " + Text.significant(deviation(at), 4) + " off its neighbours "
                + Text.number(values[before]) + " and " + Text.number(values[after])
                + (witness == Witness.STILL
                        ? ", and the companion stood still"
                        : isShared(before, at, after) ? ", and the companion moved as well" : "");
    }

    /** How far a reading moved from the mean of its neighbours, as a share of the larger. */
    private double moved(int before, int at, int after) {
        return share(values[at], mean(before, after));
    }

    private boolean isShared(int before, int at, int after) {
        return companionMoved(before, at, after) > Math.max(LEAST_MOVED, MOVED * moved(before, at, after));
    }

    /** Whether a reading stands alone: it leapt and came back, and its companion stood still. */
    private boolean isAlone(int before, int at, int after, double deviation) {
        double moved = moved(before, at, after);
        return moved > LONE
                && companionMoved(before, at, after) < STILL * moved
                && Math.abs(values[after] - values[before]) <= ALIKE * deviation;
    }

    StateText into(StateText state) {
        if (witness != Witness.NONE) {
            state.with("companions", Arrays.copyOf(companions, size));
        }
        return state.with("times", Arrays.copyOf(times, size))
                .with("values", Arrays.copyOf(values, size))
                .with(
                        "qualities",
                        IntStream.range(0, size)
                                .mapToObj(at -> Quality.ofCode(qualities[at]).name())
                                .toList())
                .with("owed", owed);
    }

    /** Takes back what was written into a state. */
    void read(StateText state, String name) {
        long[] heldTimes = state.counts("times");
        double[] heldValues = state.numbers("values");
        List<Quality> heldQualities = state.list("qualities", each -> Quality.valueOf(each));
        Require.sameLength("state " + name + ": values", heldTimes.length, heldValues.length);
        Require.sameLength("state " + name + ": qualities", heldTimes.length, heldQualities.size());
        double[] heldCompanions = witness == Witness.NONE ? companions : state.numbers("companions", heldTimes.length);
        for (int i = 0; i < heldTimes.length; i++) {
            add(new Reading(EpochNanos.toInstant(heldTimes[i]), heldValues[i], heldQualities.get(i)));
            if (witness != Witness.NONE) {
                companions[i] = heldCompanions[i];
            }
        }
        owed = state.index("owed");
        Require.inRange("state " + name + ": owed", owed, 0, size, "");
    }
}
