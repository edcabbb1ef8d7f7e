package dev.runnel.timeseries.quality;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Reading;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.apiguardian.api.API;

/**
 * Compares each reading with the mean of its two neighbours. It is not evaluated at the ends of the record, beside a
 * missing reading, or where a neighbour is further away than the maximum gap. Immutable and thread-safe.
 *
 * @param unusualAbove deviation above which a reading is unusual, in its unit; 0 or greater
 * @param failAbove deviation above which it fails; not below {@code unusualAbove}
 * @param maximumGap longest time to a neighbour; greater than 0
 * @serial exclude
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public record SpikeTest(double unusualAbove, double failAbove, Duration maximumGap) implements QualityTest {
    /**
     * Checks the limits.
     *
     * @param unusualAbove deviation above which a reading is unusual
     * @param failAbove deviation above which it fails
     * @param maximumGap longest time to a neighbour
     * @throws IllegalArgumentException if a deviation is negative or NaN, they are not in order, or the gap is not
     *     greater than 0
     */
    public SpikeTest {
        Require.nonNegative("unusualAbove", unusualAbove, "");
        Require.inRange("failAbove", failAbove, unusualAbove, Double.POSITIVE_INFINITY, "");
        EpochNanos.positive("maximumGap", maximumGap);
    }

    /**
     * Returns the test with neighbours at any distance.
     *
     * @param unusualAbove deviation above which a reading is unusual, in its unit; 0 or greater
     * @param failAbove deviation above which it fails; not below {@code unusualAbove}
     * @return the test
     * @throws IllegalArgumentException if a deviation is negative or NaN, or they are not in order
     */
    public static SpikeTest of(double unusualAbove, double failAbove) {
        return new SpikeTest(unusualAbove, failAbove, Duration.ofNanos(Long.MAX_VALUE));
    }

    /**
     * Returns the test with a longest time to a neighbour.
     *
     * @param maximumGap greater than 0
     * @return the new test
     * @throws IllegalArgumentException if it is not greater than 0
     */
    public SpikeTest withMaximumGap(Duration maximumGap) {
        return new SpikeTest(unusualAbove, failAbove, maximumGap);
    }

    @Override
    public String name() {
        return "spike";
    }

    @Override
    public QualityMachine start() {
        return new Machine(this);
    }

    private boolean isNear(Reading earlier, Reading later) {
        return Duration.between(earlier.time(), later.time()).compareTo(maximumGap) <= 0;
    }

    private QualityFlag flag(Reading before, Reading reading, Reading after) {
        if (reading.isMissing()) {
            return QualityFlag.missing(reading.time());
        }
        if (before.isMissing() || after.isMissing() || !isNear(before, reading) || !isNear(reading, after)) {
            return QualityFlag.notEvaluated(reading.time(), "no near neighbours with values");
        }
        double deviation = Math.abs(reading.value() - (before.value() + after.value()) / 2);
        if (!(deviation > unusualAbove)) {
            return QualityFlag.pass(reading.time());
        }
        return new QualityFlag(
                reading.time(),
                deviation > failAbove ? Verdict.FAIL : Verdict.UNUSUAL,
                Text.number(reading.value()) + " is " + Text.significant(deviation, 4) + " off its neighbours "
                        + Text.number(before.value()) + " and " + Text.number(after.value()));
    }

    private static final class Machine implements QualityMachine {
        private static final long serialVersionUID = 1;

        /** Stands before the first and after the last reading, as one that is missing. */
        private static final Reading NONE = new Reading(Instant.EPOCH, Double.NaN, Quality.MISSING);

        private final SpikeTest test;
        private Instant beforeTime = NONE.time();
        private double beforeValue = Double.NaN;
        private Instant time = NONE.time();
        private double value = Double.NaN;
        private boolean started;

        Machine(SpikeTest test) {
            this.test = test;
        }

        @Override
        public Optional<QualityFlag> next(Reading reading) {
            Optional<QualityFlag> flag = verdict(reading);
            beforeTime = time;
            beforeValue = value;
            time = reading.time();
            value = reading.value();
            started = true;
            return flag;
        }

        @Override
        public Optional<QualityFlag> finish() {
            Optional<QualityFlag> flag = verdict(NONE);
            started = false;
            return flag;
        }

        private Optional<QualityFlag> verdict(Reading after) {
            if (!started) {
                return Optional.empty();
            }
            return Optional.of(test.flag(Reading.of(beforeTime, beforeValue), Reading.of(time, value), after));
        }
    }
}
