package dev.runnel.timeseries;

import java.time.Duration;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.apiguardian.api.API;

/**
 * A half-open interval of time: the start belongs to it, the end does not. Immutable and thread-safe.
 *
 * @param start first instant inside
 * @param end first instant no longer inside; not before {@code start}
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record Interval(Instant start, Instant end) {
    /**
     * Checks the order.
     *
     * @param start first instant inside
     * @param end first instant no longer inside; not before {@code start}
     * @throws IllegalArgumentException if {@code end} is before {@code start}
     */
    public Interval {
        Objects.requireNonNull(start, "start");
        Objects.requireNonNull(end, "end");
        if (end.isBefore(start)) {
            throw new IllegalArgumentException("end must not be before start " + start + ", was " + end);
        }
    }

    /**
     * Returns the interval between two instants.
     *
     * @param startInclusive first instant inside
     * @param endExclusive first instant no longer inside
     * @return the interval
     * @throws IllegalArgumentException if the end is before the start
     */
    public static Interval of(Instant startInclusive, Instant endExclusive) {
        Objects.requireNonNull(startInclusive, "startInclusive");
        Objects.requireNonNull(endExclusive, "endExclusive");
        return new Interval(startInclusive, endExclusive);
    }

    /**
     * Returns the interval that begins at an instant and lasts for a duration.
     *
     * @param startInclusive first instant inside
     * @param duration length, 0 or more
     * @return the interval
     * @throws IllegalArgumentException if the duration is negative
     */
    public static Interval of(Instant startInclusive, Duration duration) {
        Objects.requireNonNull(duration, "duration");
        return new Interval(startInclusive, startInclusive.plus(duration));
    }

    /**
     * Reads the form that {@link #toString} writes.
     *
     * @param text two ISO-8601 instants with a slash between, such as
     *     {@code 2026-01-01T00:00:00Z/2026-01-02T00:00:00Z}
     * @return the interval
     * @throws IllegalArgumentException if the text has another form
     */
    public static Interval parse(CharSequence text) {
        String[] parts = text.toString().split("/", -1);
        if (parts.length != 2) {
            throw new IllegalArgumentException("text must be two ISO-8601 instants with a slash between, was " + text);
        }
        try {
            return new Interval(Instant.parse(parts[0]), Instant.parse(parts[1]));
        } catch (DateTimeParseException e) {
            throw new IllegalArgumentException(
                    "text must be two ISO-8601 instants with a slash between, was " + text, e);
        }
    }

    /**
     * Returns intervals in order, those that overlap or touch joined.
     *
     * @param intervals intervals in any order
     * @return intervals by start, no two with a common instant and none that begins where another ends
     */
    public static List<Interval> joined(Collection<Interval> intervals) {
        List<Interval> joined = new ArrayList<>();
        for (Interval next : intervals.stream()
                .sorted(Comparator.comparing(Interval::start).thenComparing(Interval::end))
                .toList()) {
            int last = joined.size() - 1;
            if (last >= 0 && !next.start().isAfter(joined.get(last).end())) {
                Interval before = joined.get(last);
                joined.set(last, of(before.start(), next.end().isAfter(before.end()) ? next.end() : before.end()));
            } else {
                joined.add(next);
            }
        }
        return List.copyOf(joined);
    }

    /**
     * Returns the length.
     *
     * @return end minus start
     */
    public Duration duration() {
        return Duration.between(start, end);
    }

    /**
     * Returns the length in hours, fractions included.
     *
     * @return length, h
     */
    public double hours() {
        // Not in nanoseconds: 292 years of them overflow a long.
        Duration length = duration();
        return length.getSeconds() / 3600.0 + length.getNano() / 3.6e12;
    }

    /**
     * Tells whether nothing lies inside.
     *
     * @return true if start and end are equal
     */
    public boolean isEmpty() {
        return start.equals(end);
    }

    /**
     * Tells whether an instant lies inside.
     *
     * @param time the instant
     * @return true if it is neither before the start nor at or after the end
     */
    public boolean contains(Instant time) {
        return !time.isBefore(start) && time.isBefore(end);
    }

    /**
     * Tells whether two intervals share any time.
     *
     * @param other the other interval
     * @return true if they do; two that only touch do not
     */
    public boolean overlaps(Interval other) {
        return start.isBefore(other.end) && other.start.isBefore(end);
    }

    /**
     * Returns what two intervals share.
     *
     * @param other the other interval
     * @return the common part, empty if there is none
     */
    public Optional<Interval> intersection(Interval other) {
        if (!overlaps(other)) {
            return Optional.empty();
        }
        Instant from = start.isAfter(other.start) ? start : other.start;
        Instant to = end.isBefore(other.end) ? end : other.end;
        return Optional.of(new Interval(from, to));
    }

    /**
     * Returns which share of this interval another one covers.
     *
     * @param other the other interval
     * @return share of the time of this interval, in [0, 1]; 0 if this interval is empty, such as a day that a zone left out
     */
    public double shareCoveredBy(Interval other) {
        Objects.requireNonNull(other, "other");
        return isEmpty()
                ? 0
                : intersection(other).map(common -> common.hours() / hours()).orElse(0.0);
    }

    @Override
    public String toString() {
        return start + "/" + end;
    }
}
