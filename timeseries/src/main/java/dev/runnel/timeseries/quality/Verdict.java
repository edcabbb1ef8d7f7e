package dev.runnel.timeseries.quality;

import dev.runnel.timeseries.Quality;
import java.util.Locale;
import org.apiguardian.api.API;

/**
 * What a check says of a reading. Codes as in QARTOD, Water Level, version 2.1, table 3-1.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public enum Verdict {
    /** Nothing found. */
    PASS(1, Quality.GOOD),
    /** The check needs readings that are not there. */
    NOT_EVALUATED(2, Quality.GOOD),
    /**
     * A fault or an event of interest; the quality-control manual calls this "suspect or of high interest". Not to be
     * taken for {@link Quality#SUSPECT}, which is the quality of what fails.
     */
    UNUSUAL(3, Quality.POOR),
    /** Not a measurement of what it should be. */
    FAIL(4, Quality.SUSPECT),
    /** There is no value. */
    MISSING(9, Quality.MISSING);

    private final int code;
    private final Quality quality;

    Verdict(int code, Quality quality) {
        this.code = code;
        this.quality = quality;
    }

    /**
     * Returns the published code.
     *
     * @return 1, 2, 3, 4 or 9
     */
    public int code() {
        return code;
    }

    /**
     * Returns the quality that the verdict gives a reading, to be joined with the one it has. What is merely unusual
     * becomes {@link Quality#POOR} and stays in use; what fails becomes {@link Quality#SUSPECT} and is left out of
     * calculations.
     *
     * @return the quality; {@link Quality#GOOD}, which leaves things as they are, for a pass and for no evaluation
     */
    public Quality toQuality() {
        return quality;
    }

    /**
     * Returns the verdict in words.
     *
     * @return for example {@code not evaluated}
     */
    public String toText() {
        return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
