package dev.runnel.rainfall.gauge;

import org.apiguardian.api.API;

/**
 * What may be wrong with a tip. A flag asks a person to look; it proves nothing.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public enum TipFlag {
    /** It follows the tip before faster than the highest intensity believed: a bounce of the bucket or the switch. */
    DOUBLE,
    /**
     * It follows the tip before within seconds, far sooner than that one followed and than the next follows. One alone is
     * chance; many are a switch that bounces slowly, or a record that was written twice with stamps moved by seconds.
     */
    PAIRED,
    /** It ends a long run of gaps of almost one length: water drips through a blocked funnel. */
    EVENLY_SPACED,
    /** It ends a long run of gaps each longer than the one before: a blocked funnel drains. */
    LENGTHENING,
    /** It was made while somebody worked on the gauge: not rain. */
    SERVICE,
    /** It is the first after a dry spell: when its rain fell is not known, and part of it is older. */
    FIRST,
    /** It had been freezing: melting snow, or rain that fell as snow earlier. */
    SNOW,
    /** The air temperature is not known, so that snow cannot be ruled out. */
    TEMPERATURE_UNKNOWN
}
