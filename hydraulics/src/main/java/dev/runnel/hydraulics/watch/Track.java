package dev.runnel.hydraulics.watch;

import dev.runnel.hydraulics.evidence.Direction;
import dev.runnel.internal.StateText;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** A finding while it lives. */
final class Track {
    static final long DAY = 24 * SiteHour.NANOS;

    /** What comes back under the same name within this time is the same finding; chosen here. */
    private static final long HABIT = 30 * DAY;

    /** Falls from which one asks whether they recur; chosen here. */
    private static final int RECURRING_FALLS = 3;

    /** Falls closer together are the day itself; chosen here. */
    private static final double LEAST_SPACING_DAYS = 2;

    /** Relative distance from the usual spacing that is still regular; chosen here. */
    private static final double REGULAR = 0.4;

    /** Share of spacings that must be regular; chosen here. */
    private static final double LIKE_SHARE = 0.7;

    /** Spacings from which on one may be odd: one or the other of many falls may hide in a wet spell; chosen here. */
    private static final int MANY_SPACINGS = 4;

    private static final int MINUTES_PER_DAY = 1440;

    final int number;
    List<FindingName> names;
    Direction direction = Direction.NONE;
    ChangeShape shape = ChangeShape.UNCERTAIN;
    long since;
    long earliest;
    long latest;
    long found;
    boolean open = true;
    long closed;

    /** Beginnings and ends of the stretches before the last. */
    List<Long> stretches = new ArrayList<>();

    /** When it came back last. */
    long back;

    List<Long> falls = new ArrayList<>();
    List<Moved> moved = List.of();
    Optional<LevelForecast> alarm = Optional.empty();
    Optional<LevelForecast> soffit = Optional.empty();
    String detail = "";

    Track(int number, FindingName name, long since, long found) {
        this.number = number;
        this.names = List.of(name);
        this.since = since;
        this.earliest = since;
        this.latest = since;
        this.found = found;
    }

    /** Keeps the beginning from coming after the telling, whatever a fit to later readings says. */
    void beginByFound() {
        since = Math.min(since, found);
        earliest = Math.min(earliest, since);
        latest = Math.max(since, Math.min(latest, found));
    }

    /** Ends it, not before it was told or came back. */
    void close(long time) {
        open = false;
        closed = Math.max(found, Math.max(back, time));
    }

    /** It stands again since a time, not before it ended. */
    void comeBack(long time) {
        stretches.add(returns() == 0 ? since : back);
        stretches.add(closed);
        back = Math.max(closed, time);
        open = true;
    }

    /** Whether what begins under a name is this finding again: a habit comes back within a month. */
    boolean isBack(FindingName name, long time) {
        return !open && names.contains(name) && time - closed <= HABIT;
    }

    /** How often it came back. */
    int returns() {
        return stretches.size() / 2;
    }

    private List<FindingStretch> allStretches() {
        List<FindingStretch> all = new ArrayList<>();
        for (int i = 0; i < stretches.size(); i += 2) {
            // The beginning is told anew while it stands.
            long from = i == 0 ? since : stretches.get(i);
            all.add(stretch(from, Optional.of(stretches.get(i + 1))));
        }
        all.add(stretch(returns() == 0 ? since : back, open ? Optional.empty() : Optional.of(closed)));
        return all;
    }

    private static FindingStretch stretch(long from, Optional<Long> to) {
        return new FindingStretch(EpochNanos.toInstant(from), to.map(end -> EpochNanos.toInstant(Math.max(from, end))));
    }

    Finding finding() {
        return new Finding(
                number,
                names,
                direction,
                shape,
                Interval.of(EpochNanos.toInstant(earliest), EpochNanos.toInstant(latest)),
                EpochNanos.toInstant(found),
                allStretches(),
                falls.size(),
                recurrence(),
                moved,
                alarm,
                soffit,
                detail);
    }

    /** The median time between falls, if there are enough of them and they come regularly. */
    Optional<Duration> recurrence() {
        if (falls.size() < RECURRING_FALLS) {
            return Optional.empty();
        }
        double[] spacings = new double[falls.size() - 1];
        double sum = 0;
        for (int i = 0; i < spacings.length; i++) {
            spacings[i] = (double) (falls.get(i + 1) - falls.get(i)) / DAY;
            sum += spacings[i];
        }
        double mean = sum / spacings.length;
        double median = Medians.of(spacings);
        long like = Arrays.stream(spacings)
                .filter(each -> Math.abs(each - median) < REGULAR * median)
                .count();
        boolean regular = median >= LEAST_SPACING_DAYS
                && (spacings.length < MANY_SPACINGS
                        ? Math.sqrt(Medians.variance(spacings)) < REGULAR * mean
                        : like >= LIKE_SHARE * spacings.length);
        return regular ? Optional.of(Duration.ofMinutes(Math.round(median * MINUTES_PER_DAY))) : Optional.empty();
    }

    StateText write() {
        return StateText.of("finding", 2)
                .with("number", number)
                .with("names", names.stream().map(FindingName::name).toList())
                .with("direction", direction.name())
                .with("shape", shape.name())
                .with("times", new long[] {since, earliest, latest, found, closed, back})
                .with("open", open)
                .with("stretches", stretches.stream().mapToLong(Long::longValue).toArray())
                .with("falls", falls.stream().mapToLong(Long::longValue).toArray())
                .with(
                        "moved",
                        moved.stream()
                                .map(each -> each.quantity().name() + ":" + each.change() + ":" + each.scatter() + ":"
                                        + each.hours())
                                .toList())
                .with("alarm", alarm.map(Track::text).orElse(""))
                .with("soffit", soffit.map(Track::text).orElse(""))
                .with("detail", detail);
    }

    static Track read(String state) {
        StateText text = StateText.parse("finding", 2, state);
        long[] times = text.counts("times");
        List<FindingName> names = text.list("names", FindingName::valueOf);
        Track track = new Track(text.index("number"), names.get(0), times[0], times[3]);
        track.names = names;
        track.direction = text.constant("direction", Direction.class);
        track.shape = text.constant("shape", ChangeShape.class);
        track.earliest = times[1];
        track.latest = times[2];
        track.closed = times[4];
        track.back = times[5];
        track.open = text.flag("open");
        for (long time : text.counts("stretches")) {
            track.stretches.add(time);
        }
        for (long fall : text.counts("falls")) {
            track.falls.add(fall);
        }
        track.moved = text.list("moved", Track::moved);
        track.alarm = forecast(text.text("alarm"));
        track.soffit = forecast(text.text("soffit"));
        track.detail = text.text("detail");
        return track;
    }

    private static Moved moved(String text) {
        String[] parts = text.split(":");
        return new Moved(
                Quantity.valueOf(parts[0]),
                Double.parseDouble(parts[1]),
                Double.parseDouble(parts[2]),
                Integer.parseInt(parts[3]));
    }

    private static String text(LevelForecast forecast) {
        return forecast.level() + " " + forecast.time() + " " + forecast.earliest() + " " + forecast.latest();
    }

    private static Optional<LevelForecast> forecast(String text) {
        if (text.isEmpty()) {
            return Optional.empty();
        }
        String[] parts = text.split(" ");
        return Optional.of(new LevelForecast(
                Double.parseDouble(parts[0]),
                Instant.parse(parts[1]),
                Instant.parse(parts[2]),
                Instant.parse(parts[3])));
    }
}
