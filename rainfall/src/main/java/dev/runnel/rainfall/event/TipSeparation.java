package dev.runnel.rainfall.event;

import dev.runnel.internal.StateText;
import dev.runnel.rainfall.gauge.TippingBucket;
import dev.runnel.timeseries.Rule;
import dev.runnel.timeseries.TextState;
import org.apiguardian.api.API;

/**
 * An {@link EventSeparation} for the tips of a gauge that arrive one by one. Immutable and thread-safe.
 *
 * <p>An input says how often the bucket tipped at an instant; none means that the gauge is at work and dry, which lets an
 * event end before the next tip.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class TipSeparation implements Rule<TipCount, RainfallEvent, TextState> {
    static final String NAME = "rain-events-of-tips";

    private final EventSeparation rule;
    private final TippingBucket bucket;

    TipSeparation(EventSeparation rule, TippingBucket bucket) {
        this.rule = rule;
        this.bucket = bucket;
    }

    /**
     * Returns the rule.
     *
     * @return what makes an event
     */
    public EventSeparation separation() {
        return rule;
    }

    /**
     * Returns the gauge.
     *
     * @return the gauge
     */
    public TippingBucket bucket() {
        return bucket;
    }

    @Override
    public TipEventDetector start() {
        return new TipEventDetector(this);
    }

    @Override
    public TipEventDetector start(TextState state) {
        return new TipEventDetector(this, StateText.parse(NAME, 1, state.toText()));
    }

    @Override
    public TextState parseState(String text) {
        return TextState.readBy(text, this::start);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof TipSeparation that && rule.equals(that.rule) && bucket.equals(that.bucket);
    }

    @Override
    public int hashCode() {
        return 31 * rule.hashCode() + bucket.hashCode();
    }

    @Override
    public String toString() {
        return "TipSeparation[" + rule + ", " + bucket + "]";
    }
}
