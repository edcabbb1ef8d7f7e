package dev.runnel.timeseries;

import java.util.Locale;
import org.apiguardian.api.API;

/**
 * How far a reading can be relied on. The words are those of OGC WaterML 2.0 (10-126r4, section 9.15, quality codes);
 * here they stand from best to worst, so that {@link #worst} can join two readings into one.
 *
 * <p>What this is not: a verdict for ever. A test flags, a person decides.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public enum Quality {
    /** Examined and found to represent the measured quantity well. */
    GOOD,
    /** Nobody and nothing has examined it yet. */
    UNCHECKED,
    /** Not measured but estimated, for example interpolated. */
    ESTIMATE,
    /** Something is known to limit it, but it may still serve. */
    POOR,
    /** It should be treated with suspicion; calculations leave it out unless told otherwise. */
    SUSPECT,
    /** There is no value: the reading is NaN. */
    MISSING;

    private static final Quality[] BY_CODE = values();

    /**
     * Returns the worse of this and another quality.
     *
     * @param other the other quality
     * @return whichever stands later in this enum
     */
    public Quality worst(Quality other) {
        return compareTo(other) >= 0 ? this : other;
    }

    /**
     * Tells whether calculations use such a reading when nothing else is said: all but {@link #SUSPECT} and
     * {@link #MISSING}.
     *
     * @return true if it is used by default
     */
    public boolean isUsable() {
        return compareTo(SUSPECT) < 0;
    }

    /**
     * Returns the one-byte form that arrays of qualities hold.
     *
     * @return 0 for {@link #GOOD} to 5 for {@link #MISSING}
     */
    @SuppressWarnings("EnumOrdinal") // the order is the rank from best to worst, so the position is the code
    public byte toCode() {
        return (byte) ordinal();
    }

    /**
     * Returns the quality with the given one-byte form.
     *
     * @param code 0 to 5
     * @return the quality
     * @throws IllegalArgumentException if there is none with that code
     */
    public static Quality ofCode(byte code) {
        if (code < 0 || code >= BY_CODE.length) {
            throw new IllegalArgumentException("code must be in [0, " + (BY_CODE.length - 1) + "], was " + code);
        }
        return BY_CODE[code];
    }

    /**
     * Returns the lower-case word, as files hold it.
     *
     * @return for example {@code good}
     */
    public String toText() {
        return name().toLowerCase(Locale.ROOT);
    }
}
