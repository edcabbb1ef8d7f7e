package dev.runnel.verification.benchmark;

import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.alarm.AlarmEvent;
import dev.runnel.timeseries.alarm.ThresholdAlarm;
import java.time.Duration;
import java.util.List;
import java.util.SplittableRandom;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/**
 * A threshold alarm with deadband and delays over a year at two minutes.
 *
 * <pre>mvn -q package -Dbench=Alarm</pre>
 */
@State(Scope.Thread)
public class AlarmBenchmark extends TimedBenchmark {
    private static final int READINGS = 262_800;
    private static final long STEP = 120_000_000_000L;

    private final ThresholdAlarm rule = ThresholdAlarm.high(0.99)
            .withDeadband(0.1)
            .withOnDelay(Duration.ofMinutes(4))
            .withOffDelay(Duration.ofMinutes(4));
    private final double[] values = new double[READINGS];
    private Series series = Series.empty();

    /** A depth that goes up and down with the hours, and the check: alarms are raised, and few. */
    @Setup
    public void fill() {
        SplittableRandom random = new SplittableRandom(SEED);
        long[] times = new long[READINGS];
        for (int i = 0; i < READINGS; i++) {
            times[i] = i * STEP;
            values[i] = 0.6 + 0.35 * Math.sin(i / 114.6) + 0.1 * random.nextDouble();
        }
        series = Series.of(times, values);
        int count = events().size();
        if (count == 0 || count > READINGS / 100) {
            throw new IllegalStateException("alarms must be some and few, were " + count);
        }
    }

    /** All events of the year. */
    @Benchmark
    @OperationsPerInvocation(READINGS)
    @Against(row = "threshold alarm, a reading", rival = "compare", named = "floor: a loop of comparisons", goal = 0.2)
    public List<AlarmEvent> events() {
        return rule.events(series);
    }

    /** Floor. */
    @Benchmark
    @OperationsPerInvocation(READINGS)
    public int compare() {
        int above = 0;
        for (double value : values) {
            if (value > 0.99) {
                above++;
            }
        }
        return above;
    }
}
