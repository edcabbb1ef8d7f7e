package dev.runnel.timeseries.quality;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Reading;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.apiguardian.api.API;

/**
 * Calls unusual a reading that has changed faster than a limit since the last one with a value. It is not evaluated at
 * the first value, or where the last one is further back than the maximum gap. Immutable and thread-safe.
 *
 * @param perSecond fastest usual change, unit of the readings per second; greater than 0
 * @param maximumGap longest time over which a change is judged; greater than 0
 * @serial exclude
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public record RateOfChangeTest(double perSecond, Duration maximumGap) implements QualityTest {
    /**
     * Checks the limits.
     *
     * @param perSecond fastest usual change
     * @param maximumGap longest time over which a change is judged
     * @throws IllegalArgumentException if one of them is not greater than 0
     */
    public RateOfChangeTest {
        Require.positive("perSecond", perSecond, "1/s");
        EpochNanos.positive("maximumGap", maximumGap);
    }

    /**
     * Returns the test for a change over a time, judged at any distance.
     *
     * @param change greatest usual change, in the unit of the readings; greater than 0
     * @param over the time it takes; greater than 0
     * @return the test
     * @throws IllegalArgumentException if one of them is not greater than 0
     */
    public static RateOfChangeTest of(double change, Duration over) {
        Require.positive("change", change, "");
        double seconds = EpochNanos.positive("over", over) / 1e9;
        return new RateOfChangeTest(change / seconds, Duration.ofNanos(Long.MAX_VALUE));
    }

    /**
     * Returns the test with a longest time over which a change is judged.
     *
     * @param maximumGap greater than 0
     * @return the new test
     * @throws IllegalArgumentException if it is not greater than 0
     */
    public RateOfChangeTest withMaximumGap(Duration maximumGap) {
        return new RateOfChangeTest(perSecond, maximumGap);
    }

    @Override
    public String name() {
        return "rate of change";
    }

    @Override
    public QualityMachine start() {
        return new Machine(this);
    }

    private static final class Machine implements QualityMachine {
        private static final long serialVersionUID = 1;
        private final RateOfChangeTest test;
        private Instant lastTime = Instant.EPOCH;
        private double lastValue = Double.NaN;

        Machine(RateOfChangeTest test) {
            this.test = test;
        }

        @Override
        public Optional<QualityFlag> next(Reading reading) {
            if (reading.isMissing()) {
                return Optional.of(QualityFlag.missing(reading.time()));
            }
            QualityFlag flag = flag(reading);
            lastTime = reading.time();
            lastValue = reading.value();
            return Optional.of(flag);
        }

        private QualityFlag flag(Reading reading) {
            Duration time = Duration.between(lastTime, reading.time());
            if (Double.isNaN(lastValue) || time.compareTo(test.maximumGap) > 0) {
                return QualityFlag.notEvaluated(reading.time(), "no value before it near enough");
            }
            double seconds = time.getSeconds() + time.getNano() / 1e9;
            double change = reading.value() - lastValue;
            if (Math.abs(change) <= test.perSecond * seconds) {
                return QualityFlag.pass(reading.time());
            }
            return new QualityFlag(
                    reading.time(),
                    Verdict.UNUSUAL,
                    "from " + Text.number(lastValue) + " to " + Text.number(reading.value()) + " in " + time
                            + ", at most " + Text.significant(test.perSecond * seconds, 4) + " is usual");
        }

        @Override
        public Optional<QualityFlag> finish() {
            return Optional.empty();
        }
    }
}
