package dev.runnel.flink;

import dev.runnel.timeseries.MachineState;
import dev.runnel.timeseries.Rule;
import java.io.Serializable;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * {@link SiteRules} for events of the type {@link SiteEvent}, put together from functions.
 *
 * @param <I> inputs of the rule
 * @param <O> what the rule tells
 * @param <S> the state of its machines
 * @param <R> the results of the stream
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class SiteRule<I, O, S extends MachineState, R> implements SiteRules<SiteEvent, I, O, S, R> {
    private static final long serialVersionUID = 1;

    /** Gives the rule of a site. */
    private final RuleOf<I, O, S> rule;
    /** Makes an input of an event. */
    private final InputOf<I> input;
    /** Makes a result of what was told. */
    private final ResultOf<O, R> result;

    /**
     * Gives the rule of a site.
     *
     * @param <I> inputs of the rule
     * @param <O> what the rule tells
     * @param <S> the state of its machines
     */
    @FunctionalInterface
    public interface RuleOf<I, O, S extends MachineState> extends Serializable {
        /**
         * Returns the rule.
         *
         * @param site the site
         * @return its rule
         */
        Rule<I, O, S> rule(String site);
    }

    /**
     * Makes an input of a rule.
     *
     * @param <I> inputs of the rule
     */
    @FunctionalInterface
    public interface InputOf<I> extends Serializable {
        /**
         * Returns the input.
         *
         * @param event the event
         * @return the input
         * @throws IllegalArgumentException if it cannot be one
         */
        I input(SiteEvent event);
    }

    /**
     * Makes a result of a stream.
     *
     * @param <O> what the rule tells
     * @param <R> the results of the stream
     */
    @FunctionalInterface
    public interface ResultOf<O, R> extends Serializable {
        /**
         * Returns the result.
         *
         * @param site the site
         * @param told what its machine told
         * @return the result
         */
        R result(String site, O told);
    }

    private SiteRule(RuleOf<I, O, S> rule, InputOf<I> input, ResultOf<O, R> result) {
        this.rule = Objects.requireNonNull(rule, "rule");
        this.input = Objects.requireNonNull(input, "input");
        this.result = Objects.requireNonNull(result, "result");
    }

    /**
     * Puts the functions together.
     *
     * @param rule gives the rule of a site
     * @param input makes an input of an event
     * @param result makes a result of what the rule told
     * @param <I> inputs of the rule
     * @param <O> what the rule tells
     * @param <S> the state of its machines
     * @param <R> the results of the stream
     * @return the rules
     */
    public static <I, O, S extends MachineState, R> SiteRule<I, O, S, R> of(
            RuleOf<I, O, S> rule, InputOf<I> input, ResultOf<O, R> result) {
        return new SiteRule<>(rule, input, result);
    }

    @Override
    public Rule<I, O, S> rule(String site) {
        return rule.rule(site);
    }

    @Override
    public String site(SiteEvent event) {
        return event.site();
    }

    @Override
    public long epochNanos(SiteEvent event) {
        return event.epochNanos();
    }

    @Override
    public I input(SiteEvent event) {
        return input.input(event);
    }

    @Override
    public R result(String site, O told) {
        return result.result(site, told);
    }
}
