package dev.runnel.hydraulics.watch;

import dev.runnel.hydraulics.evidence.Direction;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.Interval;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apiguardian.api.API;

/**
 * One change at a site: what moved, which way, since when, and what that is consistent with. Immutable and thread-safe.
 *
 * <p>A finding is evidence for a person to weigh. Its names say what the readings look like, never what is the case; more
 * than one name means that the readings cannot tell them apart.
 *
 * @param number number of the finding at this site, from 1; 0 for a remark beside the findings
 * @param names what it is consistent with, the most likely first; at least one
 * @param direction whether what moved first went up or down; none where neither makes sense
 * @param shape how it came about
 * @param since when it began, as good as the readings tell
 * @param sinceRange the interval in which it began, 95 % where a fit gave it
 * @param found when it was found
 * @param closed when things were as usual again, if they are
 * @param returns how often it had closed and come back
 * @param falls how often what moved fell back to usual and rose again, returns included
 * @param recurrence the usual time between two falls, if they come regularly
 * @param moved how far the quantities stand from usual
 * @param alarm when the alarm level would be reached, if the rise goes on
 * @param soffit when the soffit would be reached, if the rise goes on
 * @param detail what was seen, in figures; instants in it are ISO 8601 in UTC, to the hour or closer
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record Finding(
        int number,
        List<FindingName> names,
        Direction direction,
        ChangeShape shape,
        Instant since,
        Interval sinceRange,
        Instant found,
        Optional<Instant> closed,
        int returns,
        int falls,
        Optional<Duration> recurrence,
        List<Moved> moved,
        Optional<LevelForecast> alarm,
        Optional<LevelForecast> soffit,
        String detail) {
    /**
     * Copies the lists.
     *
     * @param number number of the finding, from 1; 0 for a remark
     * @param names what it is consistent with; at least one
     * @param direction which way it went
     * @param shape how it came about
     * @param since when it began
     * @param sinceRange the interval in which it began
     * @param found when it was found
     * @param closed when things were as usual again, if they are
     * @param returns how often it had come back
     * @param falls how often it fell back and rose again
     * @param recurrence the usual time between two falls, if they come regularly
     * @param moved how far the quantities stand from usual
     * @param alarm when the alarm level would be reached
     * @param soffit when the soffit would be reached
     * @param detail what was seen, in figures; instants in it are ISO 8601 in UTC, to the hour or closer
     * @throws IllegalArgumentException if there is no name
     */
    public Finding {
        Objects.requireNonNull(names, "names");
        Objects.requireNonNull(moved, "moved");
        names = List.copyOf(names);
        moved = List.copyOf(moved);
        if (names.isEmpty()) {
            throw new IllegalArgumentException("names must not be empty");
        }
        Objects.requireNonNull(direction, "direction");
        Objects.requireNonNull(shape, "shape");
        Objects.requireNonNull(since, "since");
        Objects.requireNonNull(sinceRange, "sinceRange");
        Objects.requireNonNull(found, "found");
        Objects.requireNonNull(closed, "closed");
        Objects.requireNonNull(recurrence, "recurrence");
        Objects.requireNonNull(alarm, "alarm");
        Objects.requireNonNull(soffit, "soffit");
        Objects.requireNonNull(detail, "detail");
    }

    /**
     * Returns the first name.
     *
     * @return the most likely name
     */
    public FindingName name() {
        return names.get(0);
    }

    /**
     * Returns whether the finding has a name among its names.
     *
     * @param name the name
     * @return whether it is one of them
     */
    public boolean isConsistentWith(FindingName name) {
        Objects.requireNonNull(name, "name");
        return names.contains(name);
    }

    /**
     * Returns what else it could be: the alternatives of its names that are not among its names.
     *
     * @return phrases; empty where each name is the only alternative of another
     */
    public List<String> alternatives() {
        List<String> named = names.stream().map(FindingName::words).toList();
        return names.stream()
                .flatMap(name -> name.alternatives().stream())
                .distinct()
                .filter(other -> !named.contains(other))
                .toList();
    }

    /**
     * Returns in words what else it could be, and what tells.
     *
     * @return such as {@code it could also be a depth sensor that drifts; only a visit tells the two apart}
     */
    public String otherwise() {
        List<String> others = alternatives();
        return Stream.concat(
                        others.isEmpty() ? Stream.empty() : Stream.of("it could also be " + either(others)),
                        names.stream()
                                .flatMap(name -> name.howToTell().stream())
                                .distinct())
                .collect(Collectors.joining("; "));
    }

    /** One of several, in words. */
    private static String either(List<String> several) {
        int last = several.size() - 1;
        if (last == 0) {
            return several.get(0);
        }
        return String.join(", ", several.subList(0, last)) + (last == 1 ? " or " : ", or ") + several.get(last);
    }

    /**
     * Returns whether the finding comes and goes regularly.
     *
     * @return whether there is a {@link #recurrence}
     */
    public boolean isRecurring() {
        return recurrence.isPresent();
    }

    /**
     * Returns whether the finding has not closed.
     *
     * @return whether it is open
     */
    public boolean isOpen() {
        return closed.isEmpty();
    }

    /**
     * Returns the time it lasts or lasted.
     *
     * @param end the end of what is known, for a finding that is open
     * @return from its beginning to its closing or that end
     */
    public Interval interval(Instant end) {
        Objects.requireNonNull(end, "end");
        Instant last = closed.orElse(end);
        return Interval.of(since, last.isBefore(since) ? since : last);
    }

    /**
     * Returns the finding in words, a statement a line.
     *
     * @return the text
     */
    public String describe() {
        StringBuilder text = new StringBuilder();
        text.append(number == 0 ? "Remark" : "Finding " + number)
                .append(": ")
                .append(detail)
                .append('\n');
        if (number == 0) {
            return text.append("this says: ")
                    .append(name().words())
                    .append("\n")
                    .append(otherwise())
                    .toString();
        }
        text.append("since ").append(minute(since));
        text.append(" (between ")
                .append(minute(sinceRange.start()))
                .append(" and ")
                .append(minute(sinceRange.end()))
                .append("), ")
                .append(shape)
                .append('\n');
        text.append("found ").append(minute(found));
        text.append(closed.map(end -> ", as usual again " + minute(end)).orElse(", open"))
                .append('\n');
        if (!moved.isEmpty()) {
            text.append("against the baseline: ");
            text.append(String.join("; ", moved.stream().map(Moved::toString).toList()))
                    .append('\n');
        }
        recurrence.ifPresentOrElse(
                every -> text.append("recurring: fell back ")
                        .append(falls)
                        .append(" times, about every ")
                        .append(Text.fixed(every.toMinutes() / 1440.0, 1))
                        .append(" days\n"),
                () -> {
                    if (returns > 0) {
                        text.append("came back ").append(returns).append(returns == 1 ? " time\n" : " times\n");
                    }
                });
        text.append(isLevelOnly() ? "this says: " : "consistent with: ");
        text.append(String.join("; or ", names.stream().map(FindingName::words).toList()));
        text.append('\n').append(otherwise()).append('\n');
        alarm.ifPresent(level -> text.append("if it goes on, the highest level of a dry day reaches the alarm at ")
                .append(level)
                .append('\n'));
        soffit.ifPresent(level -> text.append("if it goes on, the highest level of a dry day reaches the soffit at ")
                .append(level)
                .append("; rain fills the pipe before that\n"));
        return text.append("evidence to weigh, not a diagnosis").toString();
    }

    /** This finding, seen in other words. */
    Finding withDetail(String other) {
        return new Finding(
                number,
                names,
                direction,
                shape,
                since,
                sinceRange,
                found,
                closed,
                returns,
                falls,
                recurrence,
                moved,
                alarm,
                soffit,
                other);
    }

    boolean isLevelOnly() {
        return name() == FindingName.LEVEL_UP || name() == FindingName.LEVEL_DOWN;
    }

    private static String minute(Instant time) {
        return time.truncatedTo(ChronoUnit.MINUTES).toString();
    }

    @Override
    public String toString() {
        return "Finding[" + number + ", "
                + String.join(" or ", names.stream().map(FindingName::words).toList()) + ", "
                + shape + ", since " + minute(since) + ", found " + minute(found)
                + closed.map(end -> ", closed " + minute(end)).orElse(", open")
                + recurrence
                        .map(every -> ", recurring every " + Text.fixed(every.toMinutes() / 1440.0, 1) + " days")
                        .orElse("")
                + "]";
    }
}
