package dev.runnel.timeseries.quality;

import dev.runnel.timeseries.Series;
import java.io.Serializable;
import org.apiguardian.api.API;

/**
 * A test that gives a verdict on each reading. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public interface QualityTest extends Serializable {
    /**
     * Returns what the test is called.
     *
     * @return for example {@code spike}
     */
    String name();

    /**
     * Starts a machine that takes one reading after another.
     *
     * @return a new machine
     */
    QualityMachine start();

    /**
     * Tests a record: the fold of the machine over its readings.
     *
     * @param series the readings
     * @return one verdict for each
     */
    default QualityFlags apply(Series series) {
        return QualityFlags.of(this, series);
    }
}
