package dev.runnel.internal;

import java.util.Arrays;
import org.apiguardian.api.API;
import org.jspecify.annotations.Nullable;

/**
 * The qualities of the readings of a series, as codes of which the larger is the worse. In most records all readings with a
 * value have one quality, and those without are missing: then one code says it all, and the code of each is made when somebody
 * asks for them. Immutable and thread-safe. Qualities are plain codes here, since this package knows none.
 */
@API(status = API.Status.INTERNAL)
public final class QualityCodes {
    /** Of a reading without a value, and of no other. */
    public static final byte MISSING = 5;

    private static final byte DIFFERENT = -1;

    private final double[] values;

    /** Of all readings that have a value, or {@link #DIFFERENT}. */
    private final byte ofValues;

    /** Made on first need where one code says it all; two threads make the same. */
    private volatile byte @Nullable [] each;

    private QualityCodes(double[] values, byte ofValues, byte @Nullable [] each) {
        this.values = values;
        this.ofValues = ofValues;
        this.each = each;
    }

    /**
     * Returns one quality for all readings that have a value.
     *
     * @param code their code
     * @param values values, NaN for missing; kept and not to be modified any more
     * @return the qualities
     */
    public static QualityCodes same(byte code, double[] values) {
        return new QualityCodes(values, code, null);
    }

    /**
     * Returns the qualities of readings.
     *
     * @param codes codes, {@link #MISSING} where the value is NaN and nowhere else; kept and not to be modified any more
     * @param values values; as many, kept and not to be modified any more
     * @return the qualities
     */
    public static QualityCodes of(byte[] codes, double[] values) {
        byte found = MISSING;
        for (byte code : codes) {
            if (code != found && code != MISSING) {
                if (found != MISSING) {
                    return new QualityCodes(values, DIFFERENT, codes);
                }
                found = code;
            }
        }
        return new QualityCodes(values, found, codes);
    }

    /**
     * Tells whether all readings that have a value are of one quality.
     *
     * @return true if so, or if none has a value
     */
    public boolean isSame() {
        return ofValues != DIFFERENT;
    }

    /**
     * Returns the quality of one reading.
     *
     * @param index its place
     * @return code
     */
    public byte at(int index) {
        return isSame() ? ofValue(values[index]) : all()[index];
    }

    private byte ofValue(double value) {
        return Double.isNaN(value) ? MISSING : ofValues;
    }

    /**
     * Returns the quality of each reading.
     *
     * @return codes; not to be modified
     */
    public byte[] all() {
        byte[] known = each;
        if (known == null) {
            known = new byte[values.length];
            for (int i = 0; i < known.length; i++) {
                known[i] = ofValue(values[i]);
            }
            each = known;
        }
        return known;
    }

    /**
     * Tells whether some reading may have a quality, without looking at each.
     *
     * @param code its code
     * @return false if no reading has it
     */
    public boolean mayHold(byte code) {
        return !isSame() || code == ofValues || code == MISSING;
    }

    /**
     * Returns how many readings have a quality.
     *
     * @param code its code
     * @return count
     */
    public int count(byte code) {
        if (!mayHold(code)) {
            return 0;
        }
        int count = 0;
        for (byte one : all()) {
            count += one == code ? 1 : 0;
        }
        return count;
    }

    /**
     * Returns the qualities of the same readings with other values, in which those without a value are missing.
     *
     * @param newValues other values, NaN where these are and perhaps elsewhere; kept and not to be modified any more
     * @return the qualities
     */
    public QualityCodes withValues(double[] newValues) {
        if (isSame()) {
            return same(ofValues, newValues);
        }
        byte[] codes = all().clone();
        for (int i = 0; i < codes.length; i++) {
            codes[i] = Double.isNaN(newValues[i]) ? MISSING : codes[i];
        }
        return of(codes, newValues);
    }

    /**
     * Returns the qualities of readings that follow each other.
     *
     * @param from index of the first
     * @param to index after the last
     * @param some their values; kept and not to be modified any more
     * @return the qualities
     */
    public QualityCodes between(int from, int to, double[] some) {
        return isSame() ? same(ofValues, some) : of(Arrays.copyOfRange(all(), from, to), some);
    }

    /**
     * Returns the worse of two qualities for each reading.
     *
     * @param other the others; as many
     * @param newValues values that are NaN where either of the two is missing, and nowhere else; kept and not to be modified
     *     any more
     * @return the qualities
     */
    public QualityCodes worse(QualityCodes other, double[] newValues) {
        return isSame() && other.isSame()
                ? same(ofValues >= other.ofValues ? ofValues : other.ofValues, newValues)
                : of(WorseCodes.of(all(), other.all()), newValues);
    }

    /**
     * Tells whether the qualities of two equal rows of values are equal.
     *
     * @param other the others; of values that are equal to these
     * @return true if every reading has the same quality in both
     */
    public boolean agreesWith(QualityCodes other) {
        return isSame() && ofValues == other.ofValues || Arrays.equals(all(), other.all());
    }
}
