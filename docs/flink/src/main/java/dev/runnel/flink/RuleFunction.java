package dev.runnel.flink;

import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.MachineState;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.apache.flink.api.common.functions.OpenContext;
import org.apache.flink.api.common.state.MapState;
import org.apache.flink.api.common.state.MapStateDescriptor;
import org.apache.flink.api.common.state.ValueState;
import org.apache.flink.api.common.state.ValueStateDescriptor;
import org.apache.flink.api.common.typeinfo.TypeInformation;
import org.apache.flink.api.common.typeinfo.Types;
import org.apache.flink.metrics.Counter;
import org.apache.flink.streaming.api.datastream.DataStream;
import org.apache.flink.streaming.api.datastream.SingleOutputStreamOperator;
import org.apache.flink.streaming.api.functions.KeyedProcessFunction;
import org.apache.flink.util.Collector;
import org.apache.flink.util.OutputTag;
import org.apiguardian.api.API;

/**
 * Runs one machine of a rule for each site of a stream.
 *
 * <p><b>Order.</b> An event waits until one of the same site has come that was taken at least the bound later; then it
 * goes to the machine, in the order of time. So what a site gives depends on the order of its own events alone, not on other
 * sites, workers or restarts: loggers that call in once a day and others that call each minute can share a job. With a
 * bound of zero nothing waits. Where the stream has watermarks, they release as well what is older than the watermark less
 * the bound, so that the last readings of a site that fell silent do not wait for ever; give them the longest silence that
 * is usual.
 *
 * <p><b>Nothing is lost silently.</b> What comes after a later event has been taken, or has the time of one that is
 * there, or is refused by the rule, goes to the {@linkplain #refusedTag side output} with its number, and to the counter
 * {@code refused}.
 *
 * <p><b>End.</b> When the stream ends (a bounded input, a stop with drain), what waits is taken, the machines are
 * finished and the states are gone. A stop with a savepoint without drain finishes nothing.
 *
 * <p><b>State.</b> For each site the text of its machine's state and five numbers, and the events that wait. Give
 * the operator a {@code uid}, as {@link #over} does, else no other build finds its states.
 *
 * @param <E> the events of the stream
 * @param <I> inputs of the rule
 * @param <O> what the rule tells
 * @param <S> the state of its machines
 * @param <R> the results of the stream
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class RuleFunction<E, I, O, S extends MachineState, R> extends KeyedProcessFunction<String, E, R> {
    private static final long serialVersionUID = 1;
    private static final long END = Long.MAX_VALUE;
    private static final long NANOS = 1_000_000;
    private static final Duration LONGEST = Duration.ofDays(366);

    /** The rule of each site. */
    private final SiteRules<E, I, O, S, R> rules;

    /** Type of the events. */
    private final TypeInformation<E> events;
    /** How long an event waits, ns. */
    private final long bound;
    /** Tag of the events refused. */
    private final OutputTag<Refused<E>> refusedTag;

    @SuppressWarnings("NullAway.Init")
    private transient ValueState<SiteState> sites;

    @SuppressWarnings("NullAway.Init")
    private transient MapState<Long, E> waiting;

    @SuppressWarnings("NullAway.Init")
    private transient Counter refused;

    private RuleFunction(SiteRules<E, I, O, S, R> rules, TypeInformation<E> events, long bound) {
        this.rules = rules;
        this.events = events;
        this.bound = bound;
        this.refusedTag = new OutputTag<>("refused", Refused.type(events));
    }

    /**
     * Returns the function for a rule.
     *
     * @param rules the rule of each site
     * @param events type of the events; those that wait are written to checkpoints by it
     * @param bound how much later than its successors an event may come; from 0 to 366 days
     * @param <E> the events of the stream
     * @param <I> inputs of the rule
     * @param <O> what the rule tells
     * @param <S> the state of its machines
     * @param <R> the results of the stream
     * @return the function, for a stream keyed by {@link SiteRules#site}
     * @throws IllegalArgumentException if the bound is out of range
     */
    public static <E, I, O, S extends MachineState, R> RuleFunction<E, I, O, S, R> of(
            SiteRules<E, I, O, S, R> rules, TypeInformation<E> events, Duration bound) {
        Objects.requireNonNull(rules, "rules");
        Objects.requireNonNull(events, "events");
        long nanos = EpochNanos.nonNegative("bound", bound);
        if (nanos > LONGEST.toNanos()) {
            throw new IllegalArgumentException("bound must be in [0, " + LONGEST.toDays() + "] d, was " + bound);
        }
        return new RuleFunction<>(rules, events, nanos);
    }

    /**
     * Runs a rule over a stream: the stream keyed by site, and this function on it.
     *
     * @param stream the events
     * @param uid name of the operator in checkpoints; never change it, else states are not found again
     * @param results type of the results
     * @return what the rule tells; its side output {@link #refusedTag} holds the events refused
     */
    public SingleOutputStreamOperator<R> over(DataStream<E> stream, String uid, TypeInformation<R> results) {
        SiteRules<E, I, O, S, R> all = rules;
        return stream.keyBy(all::site).process(this, results).uid(uid).name(uid);
    }

    /**
     * Returns the tag of the side output of refused events.
     *
     * @return the tag
     */
    public OutputTag<Refused<E>> refusedTag() {
        return refusedTag;
    }

    @Override
    public void open(OpenContext context) {
        sites = getRuntimeContext().getState(new ValueStateDescriptor<>("site", SiteStateSerializer.INSTANCE));
        waiting = getRuntimeContext().getMapState(new MapStateDescriptor<>("waiting", Types.LONG, events));
        refused = getRuntimeContext().getMetricGroup().counter("refused");
    }

    @Override
    public void processElement(E event, Context context, Collector<R> out) throws Exception {
        String site = context.getCurrentKey();
        SiteState state = sites.value();
        if (state == null) {
            state = SiteState.begin();
            context.timerService().registerEventTimeTimer(END);
        }
        long time = rules.epochNanos(event);
        if (state.taken != SiteState.NONE && time <= state.taken) {
            Refused.Reason reason = time == state.taken ? Refused.Reason.SAME_TIME : Refused.Reason.LATE;
            refuse(
                    state,
                    event,
                    reason,
                    "an event of " + EpochNanos.toInstant(state.taken) + " has been taken",
                    context);
        } else if (bound == 0) {
            take(state, site, event, time, context, out);
        } else if (waiting.contains(time)) {
            refuse(state, event, Refused.Reason.SAME_TIME, "another event of the same time waits", context);
        } else {
            waiting.put(time, event);
            if (state.earliest == SiteState.NONE || time < state.earliest) {
                state.earliest = time;
                wake(state, context);
            }
            state.newest = Math.max(state.newest, time);
            release(state, site, state.newest - bound, context, out);
        }
        sites.update(state);
    }

    @Override
    public void onTimer(long timestamp, OnTimerContext context, Collector<R> out) throws Exception {
        SiteState state = sites.value();
        if (state == null) {
            return;
        }
        String site = context.getCurrentKey();
        long watermark = context.timerService().currentWatermark();
        if (timestamp == END) {
            release(state, site, Long.MAX_VALUE, context, out);
            for (O told : state.machine(site, rules).finish()) {
                out.collect(rules.result(site, told));
            }
            sites.clear();
            waiting.clear();
        } else {
            state.timer = SiteState.NONE;
            boolean ended = watermark >= Long.MAX_VALUE / NANOS;
            release(state, site, ended ? Long.MAX_VALUE : watermark * NANOS - bound, context, out);
            if (state.earliest != SiteState.NONE) {
                wake(state, context);
            }
            sites.update(state);
        }
    }

    /** Gives the machine all that waits and is not after a time, in order. */
    private void release(SiteState state, String site, long until, Context context, Collector<R> out) throws Exception {
        if (state.earliest == SiteState.NONE || state.earliest > until) {
            return;
        }
        List<Long> due = new ArrayList<>();
        long next = Long.MAX_VALUE;
        for (Long time : waiting.keys()) {
            if (time <= until) {
                due.add(time);
            } else {
                next = Math.min(next, time);
            }
        }
        due.sort(null);
        for (Long time : due) {
            take(state, site, waiting.get(time), time, context, out);
            waiting.remove(time);
        }
        state.earliest = next == Long.MAX_VALUE ? SiteState.NONE : next;
        if (state.earliest != SiteState.NONE) {
            wake(state, context);
        }
    }

    /**
     * Asks to be called when the watermark says that the earliest need not wait longer. One timer suffices: where it comes
     * too early it is set anew, and in a stream without watermarks none ever comes.
     */
    private void wake(SiteState state, Context context) {
        long due = state.earliest > Long.MAX_VALUE - bound ? Long.MAX_VALUE : state.earliest + bound;
        long timer = Math.floorDiv(due, NANOS) + 1;
        if (state.timer == SiteState.NONE || timer < state.timer) {
            if (state.timer != SiteState.NONE) {
                context.timerService().deleteEventTimeTimer(state.timer);
            }
            state.timer = timer;
            context.timerService().registerEventTimeTimer(timer);
        }
    }

    private void take(SiteState state, String site, E event, long time, Context context, Collector<R> out) {
        Machine<I, O, S> machine = state.machine(site, rules);
        List<O> told;
        try {
            told = machine.next(rules.input(event));
        } catch (IllegalArgumentException e) {
            refuse(state, event, Refused.Reason.INVALID, String.valueOf(e.getMessage()), context);
            return;
        }
        state.taken = time;
        for (O each : told) {
            out.collect(rules.result(site, each));
        }
    }

    private void refuse(SiteState state, E event, Refused.Reason reason, String message, Context context) {
        state.refused++;
        refused.inc();
        context.output(refusedTag, new Refused<>(context.getCurrentKey(), event, reason, message, state.refused));
    }
}
