package dev.runnel.verification;

import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;
import org.apiguardian.api.API;

/**
 * Where the expected value of a check comes from.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public enum Provenance {
    /** Printed in the source and read there. */
    PUBLISHED("published"),
    /** Printed in the source but read in another document: a companion, a quotation, an unsigned sheet or a package. */
    SECOND_HAND("second-hand"),
    /**
     * Printed in the source, which does not print all inputs: a missing one was recovered from the printed values
     * themselves, so that a pass shows one law through them all and not each value for itself.
     */
    FITTED("fitted"),
    /** Known from memory and not read in the source: supports other evidence, never stands alone. */
    FROM_MEMORY("from memory"),
    /** Recomputed by an independent program from a published formula or data set. */
    DERIVED_ORACLE("derived oracle"),
    /** A rule of the trade without a single source. */
    COMMON_PRACTICE("common practice");

    private final String text;

    Provenance(String text) {
        this.text = text;
    }

    /**
     * Returns the constant a descriptor names.
     *
     * @param text for example {@code from memory}
     * @return the constant
     * @throws IllegalArgumentException if the text names none; the message lists what is allowed
     */
    public static Provenance parse(String text) {
        for (Provenance provenance : values()) {
            if (provenance.text.equals(text.strip().toLowerCase(Locale.ROOT))) {
                return provenance;
            }
        }
        throw new IllegalArgumentException("must be one of "
                + Arrays.stream(values()).map(Provenance::toString).collect(Collectors.joining(", ")) + ", was \""
                + text
                + "\"");
    }

    @Override
    public String toString() {
        return text;
    }
}
