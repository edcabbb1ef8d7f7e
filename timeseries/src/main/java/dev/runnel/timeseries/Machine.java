package dev.runnel.timeseries;

import java.util.List;
import org.apiguardian.api.API;

/**
 * A detector at work: takes one input after the other and says at each what has just become known. Made by a
 * {@link Rule}. Not thread-safe: one machine serves one record.
 *
 * <p>All machines behave alike where things go wrong. An input whose time does not come after the last one is refused
 * and changes nothing. After {@link #finish} a machine takes no more inputs.
 *
 * @param <I> what goes in, one at a time
 * @param <O> what becomes known
 * @param <S> its state
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public interface Machine<I, O, S extends MachineState> {
    /**
     * Takes the next input.
     *
     * @param input the input; its time after that of the input before
     * @return what it made known, in order; empty for most inputs
     * @throws IllegalArgumentException if its time is not after that of the input before; the machine stays as it was
     * @throws IllegalStateException after {@link #finish}
     */
    List<O> next(I input);

    /**
     * Ends the record.
     *
     * @return what was still open, in order
     * @throws IllegalStateException if called a second time
     */
    List<O> finish();

    /**
     * Returns all that the machine knows, from which {@link Rule#start(MachineState)} goes on.
     *
     * @return the state, which the machine does not change afterwards
     * @throws IllegalStateException after {@link #finish}
     */
    S state();
}
