package dev.runnel.timeseries.quality;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.Reading;
import java.util.Optional;
import org.apiguardian.api.API;

/**
 * Fails readings outside the range of the sensor and calls unusual those outside the range of the site. The limits
 * themselves pass. Immutable and thread-safe.
 *
 * @param failBelow lowest value the sensor can give
 * @param failAbove highest value the sensor can give
 * @param unusualBelow lowest usual value; not below {@code failBelow}
 * @param unusualAbove highest usual value; not above {@code failAbove}
 * @serial exclude
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public record RangeTest(double failBelow, double failAbove, double unusualBelow, double unusualAbove)
        implements QualityTest {
    /**
     * Checks the order of the limits.
     *
     * @param failBelow lowest value the sensor can give
     * @param failAbove highest value the sensor can give
     * @param unusualBelow lowest usual value
     * @param unusualAbove highest usual value
     * @throws IllegalArgumentException if a limit is NaN, or the usual range is empty or not within that of the sensor
     */
    public RangeTest {
        Require.inRange("failAbove", failAbove, failBelow, Double.POSITIVE_INFINITY, "");
        Require.inRange("unusualBelow", unusualBelow, failBelow, failAbove, "");
        Require.inRange("unusualAbove", unusualAbove, unusualBelow, failAbove, "");
    }

    /**
     * Returns the test with a range of the sensor only.
     *
     * @param lowest lowest value the sensor can give
     * @param highest highest value the sensor can give
     * @return the test
     * @throws IllegalArgumentException if a limit is NaN or the range is empty
     */
    public static RangeTest of(double lowest, double highest) {
        return new RangeTest(lowest, highest, lowest, highest);
    }

    /**
     * Returns the test with a range of the site.
     *
     * @param lowest lowest usual value
     * @param highest highest usual value
     * @return the new test
     * @throws IllegalArgumentException if the range is empty or not within that of the sensor
     */
    public RangeTest withUsual(double lowest, double highest) {
        return new RangeTest(failBelow, failAbove, lowest, highest);
    }

    @Override
    public String name() {
        return "range";
    }

    @Override
    public QualityMachine start() {
        return new Machine(this);
    }

    private QualityFlag flag(Reading reading) {
        double value = reading.value();
        if (reading.isMissing()) {
            return QualityFlag.missing(reading.time());
        }
        if (value < failBelow || value > failAbove) {
            return new QualityFlag(reading.time(), Verdict.FAIL, outside(value, failBelow, failAbove));
        }
        if (value < unusualBelow || value > unusualAbove) {
            return new QualityFlag(reading.time(), Verdict.UNUSUAL, outside(value, unusualBelow, unusualAbove));
        }
        return QualityFlag.pass(reading.time());
    }

    private static String outside(double value, double from, double to) {
        return Text.number(value) + " is outside [" + Text.number(from) + ", " + Text.number(to) + "]";
    }

    private static final class Machine implements QualityMachine {
        private static final long serialVersionUID = 1;
        private final RangeTest test;

        Machine(RangeTest test) {
            this.test = test;
        }

        @Override
        public Optional<QualityFlag> next(Reading reading) {
            return Optional.of(test.flag(reading));
        }

        @Override
        public Optional<QualityFlag> finish() {
            return Optional.empty();
        }
    }
}
