package dev.runnel.timeseries;

import org.apiguardian.api.API;

/**
 * What a {@link Machine} knows at one moment: an immutable value with a text form that any store can hold.
 *
 * <p>The text begins with a name and a version. A later release reads the texts of the releases before it, or refuses
 * them with a message that names the version; it never reads them wrongly. Java's serialisation is not part of the
 * contract.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public interface MachineState {
    /**
     * Returns the state as one line of text in ASCII, which the rule's {@link Rule#parseState} reads back to an equal
     * state.
     *
     * @return the text, such as {@code threshold-alarm/1 phase=ACTIVE peak=0.41}
     */
    String toText();
}
