package dev.runnel.timeseries.change;

import dev.runnel.internal.MachineClock;
import dev.runnel.internal.StateText;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.TextState;
import java.util.List;

/** What the machines of this package share: the clock, readings without value left out, and statistics with a beginning. */
abstract class Standardized implements Machine<Reading, ChangeSignal, TextState> {
    private final String name;
    private final MachineClock clock;
    final double[] statistics;
    final long[] starts;

    Standardized(String name, int size) {
        this.name = name;
        this.clock = new MachineClock();
        this.statistics = new double[size];
        this.starts = new long[size];
    }

    Standardized(String name, int size, StateText text) {
        this.name = name;
        this.clock = MachineClock.from(text);
        this.statistics = text.numbers("statistics");
        this.starts = text.counts("starts");
        if (statistics.length != size || starts.length != size) {
            throw new IllegalArgumentException("state " + name + " must hold " + size + " statistics and starts, was "
                    + statistics.length + " and " + starts.length);
        }
        for (double each : statistics) {
            if (!Double.isFinite(each)) {
                throw new IllegalArgumentException("state " + name + " must hold finite statistics, was " + each);
            }
        }
    }

    @Override
    public final List<ChangeSignal> next(Reading reading) {
        long time = EpochNanos.of(reading.time());
        clock.requireAfter(time);
        clock.moveTo(time);
        return Double.isNaN(reading.value()) ? List.of() : add(time, reading.value());
    }

    /** Takes a value. */
    abstract List<ChangeSignal> add(long time, double value);

    /** Sets a statistic that lies at 0 between changes, and remembers when it left. */
    final void set(int index, long time, double value) {
        starts[index] = statistics[index] == 0 || value == 0 ? time : starts[index];
        statistics[index] = value;
    }

    final ChangeSignal signal(int index, long time, ChangeSignal.Side side) {
        return new ChangeSignal(
                EpochNanos.toInstant(time), EpochNanos.toInstant(starts[index]), side, statistics[index]);
    }

    @Override
    public final List<ChangeSignal> finish() {
        clock.end();
        return List.of();
    }

    @Override
    public final String toString() {
        return name + "[" + clock + "]";
    }

    @Override
    public final TextState state() {
        return TextState.of(
                clock.into(StateText.of(name, 1).with("statistics", statistics).with("starts", starts))
                        .toString());
    }
}
