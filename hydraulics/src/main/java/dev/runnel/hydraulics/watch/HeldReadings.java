package dev.runnel.hydraulics.watch;

import dev.runnel.internal.StateText;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;

/**
 * Readings whose stamps leap ahead, held until more of them say the same: a single false stamp must not make the watch deaf
 * until that time comes.
 */
final class HeldReadings {
    /** A stamp so far ahead of the last is held; chosen here, as are all limits of this class. */
    private static final long LEAP = 3 * SiteHour.NANOS;

    /** Readings, and the time they span, that confirm a leap. */
    private static final int LEAST = 4;

    private static final long LEAST_SPAN = SiteHour.NANOS;

    /** So many are enough whatever they span. */
    private static final int MOST = 3600;

    private record Held(long time, double depth, double velocity, double rain) {}

    private final List<Held> held = new ArrayList<>();

    /** Takes a held reading. */
    interface Taker {
        void take(long time, double depth, double velocity, double rain);
    }

    static boolean leaps(long last, long time) {
        return time - last > LEAP;
    }

    /** Whether a stamp goes so far back behind the first of those held that they cannot have been the begin of a record. */
    boolean leapsBack(long time) {
        return first() - time > LEAP;
    }

    boolean isEmpty() {
        return held.isEmpty();
    }

    int count() {
        return held.size();
    }

    long first() {
        return held.get(0).time();
    }

    long last() {
        return held.get(held.size() - 1).time();
    }

    void add(long time, double depth, double velocity, double rain) {
        held.add(new Held(time, depth, velocity, rain));
    }

    boolean isConfirmed() {
        return count() >= MOST || count() >= LEAST && last() - first() >= LEAST_SPAN;
    }

    /** Gives all that is held, in order, and holds nothing any more. */
    void give(Taker taker) {
        for (Held each : held) {
            taker.take(each.time(), each.depth(), each.velocity(), each.rain());
        }
        held.clear();
    }

    void drop() {
        held.clear();
    }

    void write(StateText text) {
        text.with("heldTimes", held.stream().mapToLong(Held::time).toArray())
                .with(
                        "heldValues",
                        held.stream()
                                .flatMapToDouble(each -> DoubleStream.of(each.depth(), each.velocity(), each.rain()))
                                .toArray());
    }

    void read(StateText text) {
        long[] found = text.counts("heldTimes");
        double[] with = text.numbers("heldValues");
        if (with.length != 3 * found.length) {
            throw new IllegalArgumentException(
                    "state heldValues must hold " + 3 * found.length + " values, was " + with.length + " values");
        }
        for (int i = 0; i < found.length; i++) {
            add(found[i], with[3 * i], with[3 * i + 1], with[3 * i + 2]);
        }
    }
}
