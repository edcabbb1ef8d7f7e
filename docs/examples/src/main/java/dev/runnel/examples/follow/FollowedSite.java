package dev.runnel.examples.follow;

import dev.runnel.examples.review.Site;
import dev.runnel.examples.review.SiteBooks;
import dev.runnel.examples.review.SiteFile;
import dev.runnel.hydraulics.watch.SiteReading;
import dev.runnel.internal.StateText;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.Reading;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;

/** One site: takes what its files give, corrects it by its books, and hands it to its machines and its watch. */
final class FollowedSite implements SiteStreams.Taker {
    private static final String STATE = "followed-site";
    private static final List<String> STALE = List.of("last_reading_utc", "what");

    /** Chosen here: after so many readings the logging interval is known. */
    private static final int FIRST_READINGS = 10;

    private static final Duration USUAL_INTERVAL = Duration.ofMinutes(2);

    /** Chosen here: so many velocities without a depth tell of two clocks. */
    private static final int MANY_ALONE = 1000;

    private final Site site;
    private final SiteBooks books;
    private final OutputFiles outputs;
    private final Consumer<String> print;
    private final Map<String, String> begun;
    private final SiteStreams streams;
    private final FollowedBooks followedBooks;
    private final Joiner joiner;
    private final WatchFeed feed;
    private final List<Reading> earlyDepths = new ArrayList<>();
    private final List<Reading> earlyVelocities = new ArrayList<>();
    private Optional<Duration> interval;
    private Optional<SiteMachines> machines = Optional.empty();
    private boolean isStale;
    private boolean isToldOfClocks;

    FollowedSite(Path folder, OutputFiles outputs, Map<String, String> state, Consumer<String> print) {
        this.site = SiteFile.read(folder);
        this.books = SiteBooks.of(site);
        this.outputs = outputs;
        this.print = print;
        this.begun = state;
        followedBooks = new FollowedBooks(site, books, outputs, state, print);
        streams = new SiteStreams(site, books, state, this);
        Optional<StateText> kept =
                Optional.ofNullable(state.get(key("site"))).map(text -> StateText.parse(STATE, 1, text));
        boolean hasVelocity = streams.where() != SiteStreams.Velocity.NONE;
        joiner = kept.map(text -> Joiner.from(text.text("joiner"), hasVelocity, streams.hasRain()))
                .orElseGet(() -> new Joiner(hasVelocity, streams.hasRain()));
        feed = new WatchFeed(site, books.monitors(), outputs, state, print);
        interval = site.checks().interval();
        kept.ifPresent(text -> {
            isStale = text.flag("stale");
            isToldOfClocks = text.flag("toldofclocks");
            earlyDepths.addAll(text.list("early", FollowedSite::early));
            earlyVelocities.addAll(text.list("earlyvelocities", FollowedSite::early));
            if (text.has("interval")) {
                interval = Optional.of(Duration.ofNanos(text.count("interval")));
            }
        });
        interval.ifPresent(this::begin);
    }

    private String key(String what) {
        return site.id() + "/" + what;
    }

    String name() {
        return site.name();
    }

    /** Starts the machines that must know the logging interval. */
    private void begin(Duration step) {
        SiteMachines started = new SiteMachines(
                site, books, streams.where() != SiteStreams.Velocity.NONE, step, outputs, begun, print);
        machines = Optional.of(started);
        earlyDepths.forEach(each -> started.depth(each.time(), each.value()));
        earlyVelocities.forEach(each -> started.velocity(each.time(), each.value()));
        earlyDepths.clear();
        earlyVelocities.clear();
    }

    void save(Map<String, String> state) {
        StateText text = StateText.of(STATE, 1)
                .with("joiner", joiner.toState())
                .with("stale", isStale)
                .with("toldofclocks", isToldOfClocks)
                .with("early", earlyDepths.stream().map(FollowedSite::text).toList())
                .with(
                        "earlyvelocities",
                        earlyVelocities.stream().map(FollowedSite::text).toList());
        state.put(
                key("site"),
                interval.map(step -> text.with("interval", step.toNanos()))
                        .orElse(text)
                        .toString());
        streams.save(state);
        followedBooks.save(state);
        machines.ifPresent(each -> each.save(state));
        feed.save(state);
    }

    private static String text(Reading each) {
        return each.time() + " " + each.value();
    }

    private static Reading early(String text) {
        String[] parts = text.split(" ");
        return Reading.of(Instant.parse(parts[0]), Double.parseDouble(parts[1]));
    }

    /** Tells whether a book has changed since it was read. */
    boolean hasOtherBooks() {
        return followedBooks.haveChanged();
    }

    /** Looks how far the files reach. */
    void look() {
        streams.look(outputs);
        followedBooks.sayUnfollowed(streams.unfollowed());
    }

    /** Reads the next part of the file that is furthest behind; false if nothing is left to read. */
    boolean step(int longest, boolean isAll) {
        boolean isMore = streams.step(outputs, longest, isAll);
        streams.troubles().forEach(text -> print.accept(site.name() + ": " + text));
        advance();
        if (!isMore) {
            followedBooks.compareVisits(WatchFeed.patience(), isAll);
        }
        return isMore;
    }

    @Override
    public void depth(Instant time, double[] values) {
        int sources = books.sources("depth").size();
        boolean isBeside = streams.where() == SiteStreams.Velocity.BESIDE;
        int from = isBeside ? 2 : 1;
        Reading depth = followedBooks.correct("depth", time, picked(values, 0, from, sources));
        if (isStale) {
            isStale = false;
            outputs.add(key("stale.csv"), STALE, List.of(depth.time(), "readings again"));
            print.accept(site.name() + ": readings again, from " + depth.time());
        }
        joiner.depth(depth.time(), depth.value());
        if (machines.isPresent()) {
            machines.orElseThrow().depth(depth.time(), depth.value());
        } else {
            earlyDepths.add(depth);
        }
        if (isBeside) {
            velocity(time, picked(values, 1, from + sources, values.length - from - sources));
        }
        if (earlyDepths.size() == FIRST_READINGS) {
            learnInterval();
        }
    }

    /** A value and those of the columns for its replacements. */
    private static double[] picked(double[] values, int at, int from, int count) {
        double[] picked = new double[1 + count];
        picked[0] = values[at];
        System.arraycopy(values, from, picked, 1, count);
        return picked;
    }

    @Override
    public void velocity(Instant time, double[] values) {
        Reading velocity = followedBooks.correct("velocity", time, values);
        joiner.velocity(velocity.time(), velocity.value());
        machines.ifPresentOrElse(
                each -> each.velocity(velocity.time(), velocity.value()), () -> earlyVelocities.add(velocity));
    }

    @Override
    public void rain(Instant time, double mm) {
        joiner.rain(time, mm);
    }

    private void learnInterval() {
        List<Duration> steps = new ArrayList<>();
        for (int i = 1; i < earlyDepths.size(); i++) {
            steps.add(Duration.between(
                    earlyDepths.get(i - 1).time(), earlyDepths.get(i).time()));
        }
        steps.sort(Duration::compareTo);
        interval = Optional.of(steps.isEmpty() ? USUAL_INTERVAL : steps.get(steps.size() / 2));
        begin(interval.get());
    }

    private void advance() {
        Optional<SiteReading> reading = nextWhole();
        while (reading.isPresent()) {
            feed.next(reading.get());
            reading = nextWhole();
        }
        if (!isToldOfClocks && joiner.velocityAlone() > MANY_ALONE) {
            isToldOfClocks = true;
            print.accept(
                    site.name() + ": velocities are read at other times than depths; the watch sees the depths alone");
        }
    }

    private Optional<SiteReading> nextWhole() {
        return joiner.next(
                followedBooks.reached("velocity"),
                streams.rainReached(),
                streams.isVelocityDrained(),
                streams.isRainDrained());
    }

    /** Ends the record: nothing more will come. */
    void finish() {
        streams.finish(outputs);
        if (followedBooks.reached("depth").equals(Instant.MIN)) {
            print.accept(site.name() + ": no depth was taken from "
                    + site.inputs().depth().file().getFileName());
        }
        if (interval.isEmpty()) {
            learnInterval();
        }
        for (Optional<SiteReading> rest = joiner.rest(); rest.isPresent(); rest = joiner.rest()) {
            feed.next(rest.get());
        }
        machines.ifPresent(SiteMachines::finish);
        feed.finish();
    }

    /** Says once when a site has been silent for too long, by the clock on the wall. */
    void judgeSilence(Instant now, Duration longest) {
        Instant last = followedBooks.reached("depth");
        if (!isStale && last.isAfter(Instant.MIN) && Duration.between(last, now).compareTo(longest) > 0) {
            isStale = true;
            outputs.add(key("stale.csv"), STALE, List.of(last, "silent for more than " + Text.duration(longest)));
            print.accept(site.name() + ": no reading for " + Text.duration(longest) + ", the last is of " + last);
        }
    }
}
