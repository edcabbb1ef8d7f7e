package dev.runnel.flink;

import dev.runnel.timeseries.MachineState;
import dev.runnel.timeseries.Rule;
import java.io.Serializable;
import org.apiguardian.api.API;

/**
 * What {@link RuleFunction} must be told of a job: the rule of each site, and how the events of the job become inputs of
 * the rule and what it tells becomes results of the job.
 *
 * <p>It travels to the workers by Java's serialisation, so an implementation holds what the rules are made from, such as
 * numbers, texts of baselines or the address of a store, and makes them there. Rules themselves need not be serialisable.
 *
 * @param <E> the events of the stream
 * @param <I> inputs of the rule
 * @param <O> what the rule tells
 * @param <S> the state of its machines
 * @param <R> the results of the stream
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public interface SiteRules<E, I, O, S extends MachineState, R> extends Serializable {
    /**
     * Returns the rule of a site. Called when a machine is started or started again, so once for each site and restart
     * where states live on the heap; it must give equal rules for one site as long as the state is to be gone on with.
     *
     * @param site the site
     * @return its rule
     */
    Rule<I, O, S> rule(String site);

    /**
     * Returns the site of an event.
     *
     * @param event the event
     * @return its site
     */
    String site(E event);

    /**
     * Returns the time of an event: when the reading was taken, not when it came.
     *
     * @param event the event
     * @return ns since 1970-01-01T00:00:00Z
     */
    long epochNanos(E event);

    /**
     * Returns the input that an event is.
     *
     * @param event the event
     * @return the input of the rule
     * @throws IllegalArgumentException if it cannot be one; the event is then refused and the site goes on
     */
    I input(E event);

    /**
     * Returns the result of the stream for something that became known.
     *
     * @param site the site
     * @param told what its machine told
     * @return the result
     */
    R result(String site, O told);
}
