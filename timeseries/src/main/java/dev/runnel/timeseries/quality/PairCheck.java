package dev.runnel.timeseries.quality;

import dev.runnel.timeseries.Rule;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.TextState;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * A check that judges a reading by one of another quantity, or of a neighbouring site, at the same time. Immutable and
 * thread-safe.
 *
 * <p>Where one of the two is not usable nothing is judged. Bring the companion to the times of the readings first if its
 * clock is another one: {@link dev.runnel.timeseries.Alignment}.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public interface PairCheck extends Rule<ReadingPair, QualityFlag, TextState> {
    /**
     * Returns what the check is called.
     *
     * @return for example {@code neighbour}
     */
    String name();

    /**
     * Checks a record: the fold of the machine over its readings.
     *
     * @param checked the readings to be judged
     * @param companion the other record; only readings of the very same times count
     * @return one verdict for each reading of the first
     */
    default QualityFlags apply(Series checked, Series companion) {
        Objects.requireNonNull(checked, "checked");
        Objects.requireNonNull(companion, "companion");
        return QualityFlags.of(this, checked, companion);
    }

    @Override
    default TextState parseState(String text) {
        return TextState.readBy(text, this::start);
    }
}
