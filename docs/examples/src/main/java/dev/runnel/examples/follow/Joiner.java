package dev.runnel.examples.follow;

import dev.runnel.hydraulics.watch.SiteReading;
import dev.runnel.internal.StateText;
import dev.runnel.timeseries.EpochNanos;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;

/**
 * Puts depth, velocity and rain of one moment together, from files that grow each by itself. A depth waits until the file
 * of velocities has got as far, or nothing more is there to read of it and the depths are six hours on; and for tips, of which
 * there are none in dry weather, until nothing more is there to read of them and the depths are two hours on. All three are times of
 * the readings: the clock of the machine plays no part.
 */
final class Joiner {
    private static final String STATE = "joiner";

    /** Chosen here: a gauge whose tips come later than that is counted with the next reading. */
    private static final Duration RAIN_WAIT = Duration.ofHours(2);

    /** Chosen here: more than that wait for no depth. */
    private static final int MOST = 50_000;

    private record At(long time, double value) {}

    private final boolean hasOwnVelocity;
    private final boolean hasRain;
    private final Deque<At> depths = new ArrayDeque<>();
    private final Deque<At> velocities = new ArrayDeque<>();
    private final Deque<At> rain = new ArrayDeque<>();
    private long velocityAlone;

    Joiner(boolean hasOwnVelocity, boolean hasRain) {
        this.hasOwnVelocity = hasOwnVelocity;
        this.hasRain = hasRain;
    }

    static Joiner from(String state, boolean hasOwnVelocity, boolean hasRain) {
        StateText text = StateText.parse(STATE, 1, state);
        Joiner joiner = new Joiner(hasOwnVelocity, hasRain);
        fill(joiner.depths, text, "depth");
        fill(joiner.velocities, text, "velocity");
        fill(joiner.rain, text, "rain");
        joiner.velocityAlone = text.count("alone");
        return joiner;
    }

    private static void fill(Deque<At> queue, StateText text, String what) {
        long[] times = text.counts(what + "times");
        double[] values = text.numbers(what + "values");
        for (int i = 0; i < times.length; i++) {
            queue.add(new At(times[i], values[i]));
        }
    }

    String toState() {
        StateText text = StateText.of(STATE, 1).with("alone", velocityAlone);
        return with(with(with(text, "depth", depths), "velocity", velocities), "rain", rain)
                .toString();
    }

    private static StateText with(StateText text, String what, Deque<At> queue) {
        return text.with(what + "times", queue.stream().mapToLong(At::time).toArray())
                .with(what + "values", queue.stream().mapToDouble(At::value).toArray());
    }

    void depth(Instant time, double value) {
        depths.add(new At(EpochNanos.of(time), value));
    }

    void velocity(Instant time, double value) {
        velocities.add(new At(EpochNanos.of(time), value));
        if (velocities.size() > MOST) {
            velocities.remove();
            velocityAlone++;
        }
    }

    void rain(Instant time, double mm) {
        rain.add(new At(EpochNanos.of(time), mm));
        if (rain.size() > MOST) {
            At first = rain.remove();
            At second = rain.remove();
            rain.addFirst(new At(second.time(), first.value() + second.value()));
        }
    }

    /**
     * Returns the next reading that is whole.
     *
     * @param velocityReached how far the file of velocities has got
     * @param rainReached how far the file of rain has got
     * @param isVelocityDone whether nothing more is there to read of the velocities
     * @param isRainDone whether nothing more is there to read of the rain
     */
    Optional<SiteReading> next(
            Instant velocityReached, Instant rainReached, boolean isVelocityDone, boolean isRainDone) {
        if (depths.isEmpty()) {
            return Optional.empty();
        }
        long now = depths.peek().time();
        boolean isVelocityThere = !hasOwnVelocity
                || isReached(now, velocityReached)
                || isVelocityDone && isPast(now, WatchFeed.patience());
        boolean isRainThere = !hasRain || isReached(now, rainReached) || isRainDone && isPast(now, RAIN_WAIT);
        if (!isVelocityThere || !isRainThere) {
            return Optional.empty();
        }
        return Optional.of(join(depths.remove()));
    }

    /** Gives out the next reading, whatever it lacks. */
    Optional<SiteReading> rest() {
        return depths.isEmpty() ? Optional.empty() : Optional.of(join(depths.remove()));
    }

    /** Tells whether the depths are on by more than a time. */
    private boolean isPast(long now, Duration wait) {
        return EpochNanos.toInstant(depths.getLast().time())
                .isAfter(EpochNanos.toInstant(now).plus(wait));
    }

    private static boolean isReached(long now, Instant reached) {
        return !reached.isBefore(EpochNanos.toInstant(now));
    }

    private SiteReading join(At depth) {
        double velocity = Double.NaN;
        while (!velocities.isEmpty() && velocities.peek().time() <= depth.time()) {
            At at = velocities.remove();
            if (at.time() == depth.time()) {
                velocity = at.value();
            } else {
                velocityAlone++;
            }
        }
        double mm = hasRain ? 0 : Double.NaN;
        for (int i = rain.size(); i > 0; i--) {
            At at = rain.remove();
            if (at.time() <= depth.time()) {
                mm += at.value();
            } else {
                rain.add(at);
            }
        }
        return new SiteReading(EpochNanos.toInstant(depth.time()), depth.value(), velocity, mm);
    }

    /** Velocities without a depth of their time; none of them is seen by the watch. */
    long velocityAlone() {
        return velocityAlone;
    }
}
