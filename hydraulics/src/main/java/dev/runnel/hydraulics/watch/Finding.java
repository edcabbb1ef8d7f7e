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
 * @param sinceRange the interval in which it began, 95 % where a fit gave it
 * @param found when it was found
 * @param stretches the times in which it stood, in order; one, or more of what closed and came back; only the last may be
 *     open
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
        Interval sinceRange,
        Instant found,
        List<FindingStretch> stretches,
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
     * @param sinceRange the interval in which it began
     * @param found when it was found
     * @param stretches the times in which it stood, in order; at least one
     * @param falls how often it fell back and rose again
     * @param recurrence the usual time between two falls, if they come regularly
     * @param moved how far the quantities stand from usual
     * @param alarm when the alarm level would be reached
     * @param soffit when the soffit would be reached
     * @param detail what was seen, in figures; instants in it are ISO 8601 in UTC, to the hour or closer
     * @throws IllegalArgumentException if there is no name or no stretch, or if one begins before the last has ended
     */
    public Finding {
        Objects.requireNonNull(names, "names");
        Objects.requireNonNull(moved, "moved");
        Objects.requireNonNull(stretches, "stretches");
        names = List.copyOf(names);
        moved = List.copyOf(moved);
        stretches = List.copyOf(stretches);
        if (names.isEmpty()) {
            throw new IllegalArgumentException("names must not be empty");
        }
        requireInOrder(stretches);
        Objects.requireNonNull(direction, "direction");
        Objects.requireNonNull(shape, "shape");
        Objects.requireNonNull(sinceRange, "sinceRange");
        Objects.requireNonNull(found, "found");
        Objects.requireNonNull(recurrence, "recurrence");
        Objects.requireNonNull(alarm, "alarm");
        Objects.requireNonNull(soffit, "soffit");
        Objects.requireNonNull(detail, "detail");
    }

    private static void requireInOrder(List<FindingStretch> stretches) {
        if (stretches.isEmpty()) {
            throw new IllegalArgumentException("stretches must not be empty");
        }
        for (int i = 1; i < stretches.size(); i++) {
            Instant from = stretches.get(i).from();
            Optional<Instant> before = stretches.get(i - 1).to();
            if (before.map(from::isBefore).orElse(true)) {
                throw new IllegalArgumentException(
                        "stretches must each begin when the last has ended, was " + stretches);
            }
        }
    }

    /**
     * Returns when it began: the beginning of its first stretch.
     *
     * @return since when, as good as the readings tell
     */
    public Instant since() {
        return stretches.get(0).from();
    }

    /**
     * Returns when things were as usual again for good: the end of its last stretch.
     *
     * @return the closing, if it is not open
     */
    public Optional<Instant> closed() {
        return stretches.get(returns()).to();
    }

    /**
     * Returns how often it had closed and come back.
     *
     * @return one less than its stretches
     */
    public int returns() {
        return stretches.size() - 1;
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
        return closed().isEmpty();
    }

    /**
     * Returns the time from its beginning to its end, with what lies between its stretches.
     *
     * @param end the end of what is known, for a finding that is open
     * @return from its beginning to its closing or that end
     */
    public Interval interval(Instant end) {
        return Interval.of(since(), stretches.get(returns()).interval(end).end());
    }

    /**
     * Returns the times in which it stood.
     *
     * @param end the end of what is known, for a finding that is open
     * @return its stretches, in order
     */
    public List<Interval> intervals(Instant end) {
        return stretches.stream().map(stretch -> stretch.interval(end)).toList();
    }

    /**
     * Returns whether it stood at some time of an interval.
     *
     * @param time the interval
     * @param end the end of what is known, for a finding that is open
     * @return whether one of its stretches and the interval have some time in common
     */
    public boolean overlaps(Interval time, Instant end) {
        Objects.requireNonNull(time, "time");
        return stretches.stream().anyMatch(stretch -> stretch.interval(end).overlaps(time));
    }

    /**
     * Returns whether it stood at a time.
     *
     * @param time the time
     * @param end the end of what is known, for a finding that is open
     * @return whether one of its stretches contains it
     */
    public boolean contains(Instant time, Instant end) {
        Objects.requireNonNull(time, "time");
        return stretches.stream().anyMatch(stretch -> stretch.interval(end).contains(time));
    }

    /**
     * Returns how long it stood in all.
     *
     * @param end the end of what is known, for a finding that is open
     * @return the sum of its stretches
     */
    public Duration stood(Instant end) {
        return intervals(end).stream().map(Interval::duration).reduce(Duration.ZERO, Duration::plus);
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
        text.append("since ").append(minute(since()));
        text.append(" (between ")
                .append(minute(sinceRange.start()))
                .append(" and ")
                .append(minute(sinceRange.end()))
                .append("), ")
                .append(shape)
                .append('\n');
        text.append("found ").append(minute(found));
        text.append(closed().map(end -> ", as usual again " + minute(end)).orElse(", open"))
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
                    if (returns() > 0) {
                        text.append("came back ").append(returns()).append(returns() == 1 ? " time" : " times");
                        text.append(", last ")
                                .append(minute(stretches.get(returns()).from()));
                        text.append("; before that it stood for ")
                                .append(Text.fixed(earlier().toMinutes() / 60.0, 0))
                                .append(" h in all\n");
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
                sinceRange,
                found,
                stretches,
                falls,
                recurrence,
                moved,
                alarm,
                soffit,
                other);
    }

    /** How long it stood before it came back last. */
    private Duration earlier() {
        return stretches.subList(0, returns()).stream()
                .map(stretch -> Duration.between(stretch.from(), stretch.to().orElseThrow()))
                .reduce(Duration.ZERO, Duration::plus);
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
                + shape + ", since " + minute(since()) + ", found " + minute(found)
                + closed().map(end -> ", closed " + minute(end)).orElse(", open")
                + (returns() > 0 ? ", in " + stretches.size() + " stretches" : "")
                + recurrence
                        .map(every -> ", recurring every " + Text.fixed(every.toMinutes() / 1440.0, 1) + " days")
                        .orElse("")
                + "]";
    }
}
