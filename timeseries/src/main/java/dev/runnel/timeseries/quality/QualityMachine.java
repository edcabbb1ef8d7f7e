package dev.runnel.timeseries.quality;

import dev.runnel.timeseries.Reading;
import java.io.Serializable;
import java.util.Optional;
import org.apiguardian.api.API;

/**
 * A {@link QualityTest} that takes one reading after another. Not thread-safe; serialisable, so that it can be kept and
 * gone on with.
 *
 * <p>Verdicts come in the order of the readings, each once; a test that needs the reading after gives the verdict one
 * reading late, and {@link #finish} gives the last one.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public interface QualityMachine extends Serializable {
    /**
     * Takes the next reading.
     *
     * @param reading at a time after that of the one before
     * @return the verdict that has just become known, if any
     */
    Optional<QualityFlag> next(Reading reading);

    /**
     * Ends the record.
     *
     * @return the verdict still owed, if any
     */
    Optional<QualityFlag> finish();
}
