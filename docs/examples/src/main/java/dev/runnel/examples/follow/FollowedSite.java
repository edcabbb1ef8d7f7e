package dev.runnel.examples.follow;

import dev.runnel.examples.review.ColumnFiles;
import dev.runnel.examples.review.Header;
import dev.runnel.examples.review.RainUnit;
import dev.runnel.examples.review.ReadingChecks;
import dev.runnel.examples.review.ReadingFile;
import dev.runnel.examples.review.Site;
import dev.runnel.examples.review.SiteFile;
import dev.runnel.examples.review.TipCounts;
import dev.runnel.hydraulics.evidence.SiteReading;
import dev.runnel.hydraulics.monitoring.SurchargePeriod;
import dev.runnel.hydraulics.monitoring.SurchargeRule;
import dev.runnel.internal.StateText;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.alarm.Alarm;
import dev.runnel.timeseries.alarm.AlarmChange;
import dev.runnel.timeseries.alarm.AlarmInput;
import dev.runnel.timeseries.alarm.AlarmSignal;
import dev.runnel.timeseries.alarm.ThresholdAlarm;
import dev.runnel.timeseries.csv.CsvLayout;
import dev.runnel.timeseries.csv.CsvUnit;
import dev.runnel.timeseries.quality.CheckedReading;
import dev.runnel.timeseries.quality.QualityCheck;
import dev.runnel.timeseries.quality.QualityChecks;
import dev.runnel.timeseries.quality.QualityFlag;
import dev.runnel.timeseries.quality.Verdict;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;

/** One site: its files, its machines, and what they write. */
final class FollowedSite {
    private static final String STATE = "followed-site";
    private static final List<String> FLAG = List.of("time_utc", "test", "verdict", "reason");
    private static final List<String> STALE = List.of("last_reading_utc", "what");

    /** Chosen here: after so many readings the logging interval is known. */
    private static final int FIRST_READINGS = 10;

    private static final Duration USUAL_INTERVAL = Duration.ofMinutes(2);

    /** Chosen here: a depth sensor that gives nothing usable for so long needs a visit. */
    private static final Duration BAD_FOR = Duration.ofHours(1);

    /** Where the velocities are. */
    private enum Velocity {
        NONE,
        BESIDE,
        OWN_FILE
    }

    private record Early(Instant time, double depth, double velocity) {}

    private final Site site;
    private final OutputFiles outputs;
    private final Consumer<String> print;
    private final FileStream depths;
    private final Optional<FileStream> velocities;
    private final Optional<FileStream> rain;
    private final Velocity where;
    private final Joiner joiner;
    private final WatchFeed feed;
    private final Map<String, Slot<AlarmInput, AlarmChange>> alarms = new LinkedHashMap<>();
    private final Map<String, Slot<Reading, SurchargePeriod>> periods = new LinkedHashMap<>();
    private final Deque<Early> early = new ArrayDeque<>();
    private final Deque<Early> earlyVelocities = new ArrayDeque<>();
    private final boolean hasTips;
    private final boolean hasSteps;
    private final Optional<String> counts;
    private final Map<String, String> begun;
    private Optional<Slot<Reading, CheckedReading>> depthTests = Optional.empty();
    private Optional<Slot<Reading, CheckedReading>> velocityTests = Optional.empty();
    private Optional<Duration> interval;
    private Optional<RainUnit> rainUnit = Optional.empty();
    private boolean isStale;
    private boolean isToldOfClocks;

    FollowedSite(Path folder, OutputFiles outputs, Map<String, String> state, Consumer<String> print) {
        this.site = SiteFile.read(folder);
        this.outputs = outputs;
        this.print = print;
        this.begun = state;
        String key = key("site");
        Optional<StateText> kept = Optional.ofNullable(state.get(key)).map(text -> StateText.parse(STATE, 1, text));
        where = kept.map(text -> text.constant("velocity", Velocity.class)).orElseGet(this::whereVelocityIs);
        hasTips = kept.map(text -> text.flag("tips"))
                .orElseGet(() -> isThere(site.inputs().tips()));
        hasSteps = !hasTips
                && kept.map(text -> text.flag("steps"))
                        .orElseGet(() -> isThere(site.inputs().rain()));
        counts = !hasTips
                ? Optional.empty()
                : kept.isPresent()
                        ? kept.map(text -> text.text("counts")).filter(name -> !name.isEmpty())
                        : TipCounts.nameIn(site.inputs().tips());
        refuseMany();
        depths = stream("depth", site.inputs().depth(), this::depthColumns, false);
        velocities = where == Velocity.OWN_FILE
                ? Optional.of(stream(
                        "velocity",
                        site.inputs().velocity(),
                        (layout, header) -> with(layout, site.inputs().velocity(), header),
                        false))
                : Optional.empty();
        rain = hasTips
                ? Optional.of(stream(
                        "tips",
                        site.inputs().tips(),
                        (layout, header) -> counts.map(name -> layout.withColumn("tips", name, CsvUnit.AS_WRITTEN))
                                .orElse(layout),
                        true))
                : hasSteps
                        ? Optional.of(stream("rain", site.inputs().rain(), this::rainColumns, true))
                        : Optional.empty();
        boolean hasOwn = velocities.isPresent();
        joiner = kept.map(text -> Joiner.from(text.text("joiner"), hasOwn, rain.isPresent()))
                .orElseGet(() -> new Joiner(hasOwn, rain.isPresent()));
        feed = new WatchFeed(site, outputs, state, print);
        interval = site.checks().interval();
        kept.ifPresent(text -> {
            isStale = text.flag("stale");
            isToldOfClocks = text.flag("toldofclocks");
            text.list("early", FollowedSite::early).forEach(early::add);
            text.list("earlyvelocities", FollowedSite::early).forEach(earlyVelocities::add);
            if (text.has("interval")) {
                interval = Optional.of(Duration.ofNanos(text.count("interval")));
            }
        });
        interval.ifPresent(this::begin);
    }

    private void refuseMany() {
        for (Site.Column column : List.of(
                site.inputs().depth(),
                site.inputs().velocity(),
                site.inputs().tips(),
                site.inputs().rain())) {
            if (ColumnFiles.isMany(column)) {
                throw new IllegalArgumentException(
                        column.file() + ": must be one file that grows, several files in one are for the review only");
            }
        }
    }

    private String key(String what) {
        return site.id() + "/" + what;
    }

    private static boolean isThere(Site.Column column) {
        return column.isNamed() || Files.exists(column.file());
    }

    private Velocity whereVelocityIs() {
        if (isThere(site.inputs().velocity())) {
            return Velocity.OWN_FILE;
        }
        Site.Column depth = site.inputs().depth();
        if (!Files.exists(depth.file())) {
            throw new IllegalArgumentException(depth.file() + ": file must be there when the following begins");
        }
        return site.inputs().velocity().header().isPresent() || ReadingFile.alsoHolds(depth, "velocity")
                ? Velocity.BESIDE
                : Velocity.NONE;
    }

    private FileStream stream(String what, Site.Column column, FileStream.Columns columns, boolean mayRepeat) {
        String output = key(what + "-rejected.csv");
        String kept = begun.getOrDefault(key("stream-" + what), "");
        return kept.isEmpty()
                ? new FileStream(column, columns, mayRepeat, output)
                : FileStream.from(column, columns, mayRepeat, output, kept);
    }

    private static CsvLayout with(CsvLayout layout, Site.Column column, Header header) {
        String name = ReadingFile.name(column, header);
        return layout.withColumn(column.what(), name, ReadingFile.unit(column, header, name));
    }

    private CsvLayout depthColumns(CsvLayout layout, Header header) {
        CsvLayout depth = with(layout, site.inputs().depth(), header);
        return where == Velocity.BESIDE ? with(depth, site.inputs().velocity(), header) : depth;
    }

    private CsvLayout rainColumns(CsvLayout layout, Header header) {
        Site.Column column = site.inputs().rain();
        String name = ReadingFile.name(column, header);
        rainUnit = Optional.of(RainUnit.of(site, name));
        return layout.withColumn(column.what(), name, CsvUnit.AS_WRITTEN);
    }

    /** Starts the machines that must know the logging interval. */
    private void begin(Duration step) {
        Duration gap = ReadingChecks.longestGap(site, step);
        depthTests = Optional.of(slot("depth-tests", ReadingChecks.depth(site)));
        if (where != Velocity.NONE) {
            velocityTests = Optional.of(slot("velocity-tests", ReadingChecks.velocity(site, step)));
        }
        site.alarm()
                .ifPresent(rule -> alarm(
                        "depth high",
                        AlarmSignal.value(),
                        ThresholdAlarm.high(rule.level())
                                .withDeadband(rule.deadband())
                                .withOnDelay(rule.onDelay())
                                .withOffDelay(rule.offDelay())
                                .withMaximumGap(gap)));
        level("above the soffit", "surcharge.csv", site.monitor().soffit(), gap);
        site.crestLevel().ifPresent(crest -> level("above the crest", "spills.csv", crest, gap));
        alarm(
                "no usable depth",
                AlarmSignal.badQuality(),
                ThresholdAlarm.high(0.5).withOnDelay(BAD_FOR).withMaximumGap(gap));
        while (!early.isEmpty()) {
            give(early.remove());
        }
        while (!earlyVelocities.isEmpty()) {
            testVelocity(earlyVelocities.remove());
        }
    }

    private void alarm(String name, AlarmSignal signal, ThresholdAlarm limit) {
        alarms.put(name, Slot.of(key("alarm-" + name.replace(' ', '-')), Alarm.of(name, signal, limit), begun, print));
    }

    /** An alarm tells when the water passes a level, a period how long and how high it stood above it. */
    private void level(String name, String file, double level, Duration gap) {
        alarm(name, AlarmSignal.value(), ThresholdAlarm.high(level).withMaximumGap(gap));
        periods.put(
                file, Slot.of(key("periods-" + file), SurchargeRule.above(level).withMaximumGap(gap), begun, print));
    }

    private Slot<Reading, CheckedReading> slot(String name, QualityChecks checks) {
        return Slot.of(key(name), checks, begun, print);
    }

    String name() {
        return site.name();
    }

    void save(Map<String, String> state) {
        StateText text = StateText.of(STATE, 1)
                .with("velocity", where.name())
                .with("tips", hasTips)
                .with("steps", hasSteps)
                .with("counts", counts.orElse(""))
                .with("joiner", joiner.toState())
                .with("stale", isStale)
                .with("toldofclocks", isToldOfClocks)
                .with("early", early.stream().map(FollowedSite::text).toList())
                .with(
                        "earlyvelocities",
                        earlyVelocities.stream().map(FollowedSite::text).toList());
        state.put(
                key("site"),
                interval.map(step -> text.with("interval", step.toNanos()))
                        .orElse(text)
                        .toString());
        state.put(key("stream-depth"), depths.toState());
        velocities.ifPresent(stream -> state.put(key("stream-velocity"), stream.toState()));
        rain.ifPresent(stream -> state.put(key("stream-" + rainWhat()), stream.toState()));
        depthTests.ifPresent(slot -> slot.save(state));
        velocityTests.ifPresent(slot -> slot.save(state));
        alarms.values().forEach(slot -> slot.save(state));
        periods.values().forEach(slot -> slot.save(state));
        feed.save(state);
    }

    private String rainWhat() {
        return hasTips ? "tips" : "rain";
    }

    private static String text(Early each) {
        return each.time() + " " + each.depth() + " " + each.velocity();
    }

    private static Early early(String text) {
        String[] parts = text.split(" ");
        return new Early(Instant.parse(parts[0]), Double.parseDouble(parts[1]), Double.parseDouble(parts[2]));
    }

    /** Looks how far the files reach. The depths first: what belongs to them is then in the other files already. */
    void look() {
        depths.look(outputs);
        velocities.ifPresent(stream -> stream.look(outputs));
        rain.ifPresent(stream -> stream.look(outputs));
    }

    /** Reads the next part of the file that is furthest behind; false if nothing is left to read. */
    boolean step(int longest, boolean isAll) {
        List<FileStream> streams = new ArrayList<>(List.of(depths));
        velocities.ifPresent(streams::add);
        rain.ifPresent(streams::add);
        streams.removeIf(FileStream::isDrained);
        if (streams.isEmpty()) {
            advance();
            return false;
        }
        FileStream behind = streams.get(0);
        for (FileStream stream : streams) {
            behind = stream.last().isBefore(behind.last()) ? stream : behind;
        }
        behind.take(takerOf(behind), outputs, longest, isAll);
        advance();
        return true;
    }

    private FileStream.Taker takerOf(FileStream stream) {
        if (stream == depths) {
            return this::depth;
        }
        if (velocities.filter(each -> each == stream).isPresent()) {
            return this::velocity;
        }
        return hasTips
                ? (time, values) ->
                        joiner.rain(time, site.rain().bucket().tipMm() * (values.length > 0 ? values[0] : 1))
                : this::rainOfStep;
    }

    private void rainOfStep(Instant time, double[] values) {
        Site.StepRules rules = site.rain().steps();
        Duration step = rules.interval().orElse(Duration.ZERO);
        RainUnit unit = rainUnit.orElseThrow();
        if (unit.isIntensity() && step.isZero()) {
            throw new IllegalArgumentException(site.inputs().rain().file()
                    + ": intensities need \"rain interval = ...\" in " + SiteFile.NAME + " to be followed");
        }
        double mm = values[0] * unit.mm() * (unit.isIntensity() ? step.toSeconds() / 3600.0 : 1);
        if (mm > 0) {
            joiner.rain(rules.isStampAtEnd() ? time : time.plus(step), mm);
        }
    }

    private void depth(Instant time, double[] values) {
        if (isStale) {
            isStale = false;
            outputs.add(key("stale.csv"), STALE, List.of(time, "readings again"));
            print.accept(site.name() + ": readings again, from " + time);
        }
        Early reading = new Early(time, values[0], values.length > 1 ? values[1] : Double.NaN);
        if (interval.isPresent()) {
            give(reading);
            return;
        }
        early.add(reading);
        if (early.size() == FIRST_READINGS) {
            learnInterval();
        }
    }

    private void learnInterval() {
        List<Duration> steps = new ArrayList<>();
        Instant before = Instant.MIN;
        for (Early each : early) {
            if (!before.equals(Instant.MIN)) {
                steps.add(Duration.between(before, each.time()));
            }
            before = each.time();
        }
        steps.sort(Duration::compareTo);
        interval = Optional.of(steps.isEmpty() ? USUAL_INTERVAL : steps.get(steps.size() / 2));
        begin(interval.get());
    }

    private void give(Early each) {
        Instant time = each.time();
        joiner.depth(time, each.depth());
        if (where == Velocity.BESIDE) {
            joiner.velocity(time, each.velocity());
            testVelocity(each);
        }
        flags(depthTests, reading(time, each.depth()), key("depth-flags.csv"));
        // An alarm waits for no later reading, as the test for spikes must: a site may fall silent at its highest
        // level.
        boolean isPossible = each.depth() >= 0 && each.depth() <= site.checks().highestDepth();
        Reading level = Double.isNaN(each.depth())
                ? reading(time, each.depth())
                : new Reading(
                        time,
                        each.depth() + site.monitor().sensorOffset(),
                        isPossible ? Quality.UNCHECKED : Quality.SUSPECT);
        alarms.forEach((name, slot) -> slot.next(AlarmInput.of(level)).forEach(change -> tell(name, change)));
        periods.forEach((file, slot) -> slot.next(level).forEach(period -> tell(file, period)));
    }

    private static Reading reading(Instant time, double value) {
        return Double.isNaN(value)
                ? new Reading(time, value, Quality.MISSING)
                : new Reading(time, value, Quality.UNCHECKED);
    }

    /** Velocities that come before the interval is known are tested from then on. */
    private void velocity(Instant time, double[] values) {
        joiner.velocity(time, values[0]);
        Early reading = new Early(time, Double.NaN, values[0]);
        if (velocityTests.isPresent()) {
            testVelocity(reading);
        } else {
            earlyVelocities.add(reading);
        }
    }

    private void testVelocity(Early each) {
        flags(velocityTests, reading(each.time(), each.velocity()), key("velocity-flags.csv"));
    }

    private void flags(Optional<Slot<Reading, CheckedReading>> tests, Reading reading, String output) {
        tests.ifPresent(slot -> slot.next(reading).forEach(checked -> flag(checked, output)));
    }

    private void flag(CheckedReading checked, String output) {
        List<QualityFlag> flags = checked.flags();
        List<QualityCheck> tests = output.endsWith("depth-flags.csv")
                ? ReadingChecks.depth(site).checks()
                : ReadingChecks.velocity(site, interval.orElseThrow()).checks();
        for (int i = 0; i < flags.size(); i++) {
            Verdict verdict = flags.get(i).verdict();
            if (verdict == Verdict.FAIL || verdict == Verdict.UNUSUAL) {
                outputs.add(
                        output,
                        FLAG,
                        List.of(
                                flags.get(i).time(),
                                tests.get(i).name(),
                                verdict.toText(),
                                flags.get(i).reason()));
            }
        }
    }

    private void tell(String alarm, AlarmChange change) {
        outputs.add(key("alarms.csv"), Words.ALARM, Words.row(alarm, change));
        print.accept(Words.line(site.name(), alarm, change));
    }

    private void tell(String file, SurchargePeriod period) {
        String level = file.equals("spills.csv") ? "crest" : "soffit";
        outputs.add(
                key(file),
                List.of("start_utc", "end_utc", "duration_h", "peak_above_" + level + "_m", "peak_utc", "complete"),
                List.of(
                        period.interval().start(),
                        period.interval().end(),
                        Text.significant(period.duration().toSeconds() / 3600.0, 6),
                        Text.significant(period.peakAbove(), 4),
                        period.peakTime(),
                        period.isComplete() ? "yes" : "no"));
    }

    private void advance() {
        Optional<SiteReading> reading = nextWhole();
        while (reading.isPresent()) {
            feed.next(reading.get());
            reading = nextWhole();
        }
        if (!isToldOfClocks && joiner.velocityAlone() > 1000) {
            isToldOfClocks = true;
            print.accept(
                    site.name() + ": velocities are read at other times than depths; the watch sees the depths alone");
        }
    }

    private Optional<SiteReading> nextWhole() {
        return joiner.next(
                velocities.map(FileStream::last).orElse(Instant.MAX),
                rain.map(FileStream::last).orElse(Instant.MAX),
                velocities.map(FileStream::isDrained).orElse(true),
                rain.map(FileStream::isDrained).orElse(true));
    }

    /** Ends the record: nothing more will come. */
    void finish() {
        depths.finish(this::depth);
        velocities.ifPresent(stream -> stream.finish(this::velocity));
        rain.ifPresent(stream -> stream.finish(takerOf(stream)));
        if (interval.isEmpty()) {
            learnInterval();
        }
        for (Optional<SiteReading> rest = joiner.rest(); rest.isPresent(); rest = joiner.rest()) {
            feed.next(rest.get());
        }
        depthTests.ifPresent(slot -> slot.finish().forEach(each -> flag(each, key("depth-flags.csv"))));
        velocityTests.ifPresent(slot -> slot.finish().forEach(each -> flag(each, key("velocity-flags.csv"))));
        periods.forEach((file, slot) -> slot.finish().forEach(period -> tell(file, period)));
        feed.finish();
    }

    /** Says once when a site has been silent for too long, by the clock on the wall. */
    void judgeSilence(Instant now, Duration longest) {
        Instant last = depths.last();
        if (!isStale && last.isAfter(Instant.MIN) && Duration.between(last, now).compareTo(longest) > 0) {
            isStale = true;
            outputs.add(key("stale.csv"), STALE, List.of(last, "silent for more than " + Text.duration(longest)));
            print.accept(site.name() + ": no reading for " + Text.duration(longest) + ", the last is of " + last);
        }
    }
}
