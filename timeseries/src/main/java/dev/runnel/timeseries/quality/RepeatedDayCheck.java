package dev.runnel.timeseries.quality;

import dev.runnel.internal.MachineClock;
import dev.runnel.internal.StateText;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.TextState;
import java.time.Duration;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * Finds stretches that repeat what stood so long before: a logger or an archive that wrote one day twice. A reading repeats
 * if the reading exactly the lag before had the same value. When that has gone on for the least time, and the values
 * have changed at least ten times on the way (chosen here: a flat line repeats itself too), the reading fails. The first
 * readings of a repeated stretch pass, since nothing was known yet. Immutable and thread-safe.
 *
 * @param lag how long before; greater than 0, at most 31 days
 * @param atLeast how long the repetition must last; greater than 0
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record RepeatedDayCheck(Duration lag, Duration atLeast) implements QualityCheck {
    private static final String STATE = "repeated-day-check";

    /** Chosen here: a flat line repeats itself too. */
    private static final int LEAST_CHANGES = 10;

    /**
     * Checks the limits.
     *
     * @param lag how long before
     * @param atLeast how long the repetition must last
     * @throws IllegalArgumentException if one is not greater than 0, or the lag longer than 31 days
     */
    public RepeatedDayCheck {
        Objects.requireNonNull(lag, "lag");
        Windows.require(lag);
        EpochNanos.positive("atLeast", atLeast);
    }

    /**
     * Returns the check for a day of 24 hours.
     *
     * @param atLeast how long the repetition must last; greater than 0
     * @return the check
     * @throws IllegalArgumentException if it is not greater than 0
     */
    public static RepeatedDayCheck of(Duration atLeast) {
        return new RepeatedDayCheck(Duration.ofDays(1), atLeast);
    }

    /**
     * Returns the check for another lag, for example of a week.
     *
     * @param lag how long before; greater than 0, at most 31 days
     * @return the new check
     * @throws IllegalArgumentException if it is out of its range
     */
    public RepeatedDayCheck withLag(Duration lag) {
        Objects.requireNonNull(lag, "lag");
        return new RepeatedDayCheck(lag, atLeast);
    }

    @Override
    public String name() {
        return "repeated day";
    }

    @Override
    public Machine<Reading, QualityFlag, TextState> start() {
        return new RepeatMachine(new MachineClock(), new Recent(), 0, 0, Double.NaN);
    }

    @Override
    public Machine<Reading, QualityFlag, TextState> start(TextState state) {
        StateText text = StateText.parse(STATE, 1, state.toText());
        return new RepeatMachine(
                MachineClock.from(text),
                Recent.from(text, ""),
                text.count("since"),
                text.index("changes"),
                text.number("repeated"));
    }

    @Override
    public String toString() {
        return "RepeatedDayCheck[" + "as " + Text.duration(lag) + " before, for at least " + Text.duration(atLeast)
                + "]";
    }

    private final class RepeatMachine extends PromptMachine {
        private final Recent recent;

        /** Beginning of the stretch that repeats; it runs while {@link #repeated} is a number. */
        private long since;

        private int changes;

        /** The last value that repeated; NaN if the last one did not. */
        private double repeated;

        RepeatMachine(MachineClock clock, Recent recent, long since, int changes, double repeated) {
            super(clock);
            this.recent = recent;
            this.since = since;
            this.changes = changes;
            this.repeated = repeated;
        }

        @Override
        QualityFlag judge(Reading reading) {
            long time = EpochNanos.of(reading.time());
            long then = Recent.before(time, lag.toNanos());
            recent.dropBefore(then);
            boolean again = recent.size() > 0 && recent.time(0) == then && recent.value(0) == reading.value();
            recent.add(time, reading.value());
            if (!again) {
                repeated = Double.NaN;
                return QualityFlag.pass(reading.time());
            }
            if (Double.isNaN(repeated)) {
                since = time;
                changes = 0;
            } else if (repeated != reading.value()) {
                changes++;
            }
            repeated = reading.value();
            Duration length = Duration.between(EpochNanos.toInstant(since), reading.time());
            if (length.compareTo(atLeast) < 0 || changes < LEAST_CHANGES) {
                return QualityFlag.pass(reading.time());
            }
            return new QualityFlag(
                    reading.time(),
                    Verdict.FAIL,
                    "the same as " + Text.duration(lag) + " before, for " + Text.duration(length));
        }

        @Override
        StateText keep() {
            return recent.into(
                    StateText.of(STATE, 1)
                            .with("since", since)
                            .with("changes", changes)
                            .with("repeated", repeated),
                    "");
        }
    }
}
