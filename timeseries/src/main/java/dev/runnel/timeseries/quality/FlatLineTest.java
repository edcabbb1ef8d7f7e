package dev.runnel.timeseries.quality;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.Reading;
import java.util.Optional;
import org.apiguardian.api.API;

/**
 * Counts equal values in a row: a reading is unusual when it and those just before it make so many, and fails when they
 * make more. The first readings of a run pass, since nothing was known yet. A missing reading ends a run. Immutable and
 * thread-safe.
 *
 * @param unusualCount values in a row that are unusual; at least 2
 * @param failCount values in a row that fail; not below {@code unusualCount}, at most 100 000
 * @param tolerance difference from this reading up to which one before it is equal, in the unit of the readings; 0 or
 *     greater
 * @serial exclude
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public record FlatLineTest(int unusualCount, int failCount, double tolerance) implements QualityTest {
    private static final int MOST = 100_000;

    /**
     * Checks the limits.
     *
     * @param unusualCount values in a row that are unusual
     * @param failCount values in a row that fail
     * @param tolerance difference up to which values are equal
     * @throws IllegalArgumentException if a count is out of its range or the tolerance negative or NaN
     */
    public FlatLineTest {
        Require.atLeast("unusualCount", unusualCount, 2);
        Require.inRange("failCount", failCount, unusualCount, MOST, "");
        Require.nonNegative("tolerance", tolerance, "");
    }

    /**
     * Returns the test.
     *
     * @param unusualCount values in a row that are unusual; at least 2
     * @param failCount values in a row that fail; not below {@code unusualCount}, at most 100 000
     * @param tolerance difference up to which values are equal, in the unit of the readings; 0 or greater
     * @return the test
     * @throws IllegalArgumentException if a count is out of its range or the tolerance negative or NaN
     */
    public static FlatLineTest of(int unusualCount, int failCount, double tolerance) {
        return new FlatLineTest(unusualCount, failCount, tolerance);
    }

    @Override
    public String name() {
        return "flat line";
    }

    @Override
    public QualityMachine start() {
        return new Machine(this);
    }

    private static final class Machine implements QualityMachine {
        private static final long serialVersionUID = 1;
        private final FlatLineTest test;
        private final double[] recent;
        private long taken;
        private int available;

        Machine(FlatLineTest test) {
            this.test = test;
            this.recent = new double[test.failCount];
        }

        @Override
        public Optional<QualityFlag> next(Reading reading) {
            if (reading.isMissing()) {
                available = 0;
                return Optional.of(QualityFlag.missing(reading.time()));
            }
            int equal = 1;
            while (equal <= Math.min(available, test.failCount - 1)
                    && Math.abs(reading.value() - before(equal)) <= test.tolerance) {
                equal++;
            }
            recent[(int) (taken++ % recent.length)] = reading.value();
            available = Math.min(available + 1, recent.length);
            if (equal < test.unusualCount) {
                return Optional.of(QualityFlag.pass(reading.time()));
            }
            boolean fails = equal >= test.failCount;
            return Optional.of(new QualityFlag(
                    reading.time(),
                    fails ? Verdict.FAIL : Verdict.UNUSUAL,
                    Text.number(reading.value()) + " for " + (fails ? "at least " : "") + equal
                            + " readings in a row"));
        }

        private double before(int back) {
            return recent[(int) ((taken - back) % recent.length)];
        }

        @Override
        public Optional<QualityFlag> finish() {
            return Optional.empty();
        }
    }
}
