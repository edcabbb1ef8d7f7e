package dev.runnel.flink;

import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.MachineState;
import dev.runnel.timeseries.Rule;
import org.jspecify.annotations.Nullable;

/**
 * What is kept of one site: its machine, the time it has come to, and what waits.
 *
 * <p>The machine is alive while the job runs and is written as its text when the state is. So a state on the heap costs
 * nothing at each reading, and a checkpoint or savepoint holds nothing but the text and five numbers.
 */
final class SiteState {
    /** No time. */
    static final long NONE = Long.MIN_VALUE;

    private @Nullable Machine<?, ?, ?> machine;
    private String text;

    /** Time of the last event that the machine was given, ns. */
    long taken;

    /** Time of the latest event that came, ns. */
    long newest;

    /** Time of the earliest event that waits, ns. */
    long earliest;

    /** Time of the timer that is set, ms of the watermark. */
    long timer;

    /** Events refused so far. */
    long refused;

    /** Makes the state of a site of which nothing is known; the text is empty for a machine at its beginning. */
    SiteState(String text, long taken, long newest, long earliest, long timer, long refused) {
        this.text = text;
        this.taken = taken;
        this.newest = newest;
        this.earliest = earliest;
        this.timer = timer;
        this.refused = refused;
    }

    static SiteState begin() {
        return new SiteState("", NONE, NONE, NONE, NONE, 0);
    }

    /**
     * The machine, started if it is not alive. One state serves one rule function, so the types are those it was made
     * with.
     */
    @SuppressWarnings("unchecked")
    synchronized <I, O, S extends MachineState> Machine<I, O, S> machine(String site, SiteRules<?, I, O, S, ?> rules) {
        if (machine == null) {
            Rule<I, O, S> rule = rules.rule(site);
            try {
                machine = text.isEmpty() ? rule.start() : rule.start(rule.parseState(text));
            } catch (IllegalArgumentException e) {
                throw new IllegalStateException("site " + site + ": " + e.getMessage(), e);
            }
            text = "";
        }
        return (Machine<I, O, S>) machine;
    }

    /** The text of the machine's state. A checkpoint is written beside the stream, hence the lock. */
    synchronized String text() {
        return machine == null ? text : machine.state().toText();
    }

    SiteState copy() {
        return new SiteState(text(), taken, newest, earliest, timer, refused);
    }
}
