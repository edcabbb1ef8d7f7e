package dev.runnel.timeseries.quality;

import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Rule;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.TextState;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * A check that gives a verdict on each reading: one flag for every reading, in their order, some of them late. Immutable
 * and thread-safe.
 *
 * <p>A reading that is not {@linkplain dev.runnel.timeseries.Quality#isUsable() usable} when it comes in is not judged,
 * and serves no other one as a neighbour: it is {@link Verdict#MISSING} without a value, and
 * {@link Verdict#NOT_EVALUATED} if it was suspect already. That is how a check sees what an earlier one failed.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public interface QualityCheck extends Rule<Reading, QualityFlag, TextState> {
    /**
     * Returns what the check is called.
     *
     * @return for example {@code spike}
     */
    String name();

    /**
     * Checks a record: the fold of the machine over its readings.
     *
     * @param series the readings
     * @return one verdict for each
     */
    default QualityFlags apply(Series series) {
        Objects.requireNonNull(series, "series");
        return QualityFlags.of(this, series);
    }

    @Override
    default TextState parseState(String text) {
        return TextState.readBy(text, this::start);
    }
}
