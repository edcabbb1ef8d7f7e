package dev.runnel.examples.follow;

import dev.runnel.examples.review.ColumnFiles;
import dev.runnel.examples.review.Header;
import dev.runnel.examples.review.RainUnit;
import dev.runnel.examples.review.ReadingFile;
import dev.runnel.examples.review.Site;
import dev.runnel.examples.review.SiteBooks;
import dev.runnel.examples.review.SiteFile;
import dev.runnel.examples.review.TipCounts;
import dev.runnel.internal.StateText;
import dev.runnel.timeseries.csv.CsvLayout;
import dev.runnel.timeseries.csv.CsvUnit;
import java.nio.file.Files;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The files of a site: which there are, what their columns hold, and which of them is to be read next. What there is was
 * found when the following began, and stays so.
 */
final class SiteStreams {
    private static final String STATE = "site-streams";
    private static final double SECONDS_PER_HOUR = 3600;

    /** Where the velocities are. */
    enum Velocity {
        NONE,
        BESIDE,
        OWN_FILE
    }

    /** Takes what the files hold. */
    interface Taker {
        /** Takes a depth, the velocity beside it if it stands there, and the values of the columns for replacements. */
        void depth(Instant time, double[] values);

        /** Takes a velocity of a file of its own, and the values of the columns for replacements. */
        void velocity(Instant time, double[] values);

        /** Takes an amount of rain, mm, that had fallen by a time. */
        void rain(Instant time, double mm);
    }

    private final Site site;
    private final SiteBooks books;
    private final Taker taker;
    private final Velocity where;
    private final boolean hasTips;
    private final boolean hasSteps;
    private final Optional<String> counts;
    private final FileStream depths;
    private final Optional<FileStream> velocities;
    private final Optional<FileStream> rain;
    private Optional<RainUnit> rainUnit = Optional.empty();

    SiteStreams(Site site, SiteBooks books, Map<String, String> state, Taker taker) {
        this.site = site;
        this.books = books;
        this.taker = taker;
        Site.Inputs inputs = site.inputs();
        Optional<StateText> kept =
                Optional.ofNullable(state.get(key("streams"))).map(text -> StateText.parse(STATE, 1, text));
        where = kept.map(text -> text.constant("velocity", Velocity.class)).orElseGet(this::whereVelocityIs);
        hasTips = kept.map(text -> text.flag("tips")).orElseGet(() -> isThere(inputs.tips()));
        hasSteps = !hasTips && kept.map(text -> text.flag("steps")).orElseGet(() -> isThere(inputs.rain()));
        counts = !hasTips
                ? Optional.empty()
                : kept.isPresent()
                        ? kept.map(text -> text.text("counts")).filter(name -> !name.isEmpty())
                        : TipCounts.nameIn(inputs.tips());
        depths = stream("depth", inputs.depth(), depthColumns(), false, state);
        velocities = where == Velocity.OWN_FILE
                ? Optional.of(stream("velocity", inputs.velocity(), velocityColumns(), false, state))
                : Optional.empty();
        rain = hasTips
                ? Optional.of(stream("tips", inputs.tips(), tipColumns(), true, state))
                : hasSteps ? Optional.of(stream("rain", inputs.rain(), rainColumns(), true, state)) : Optional.empty();
    }

    private String key(String what) {
        return site.id() + "/" + what;
    }

    private static boolean isThere(Site.Column column) {
        boolean isThere = Files.exists(column.file());
        if (isThere && !ColumnFiles.isMany(column) && !Files.isRegularFile(column.file())) {
            throw new IllegalArgumentException(column.file() + ": must be a file, and is a folder or a device");
        }
        return column.isNamed() || isThere;
    }

    private Velocity whereVelocityIs() {
        if (isThere(site.inputs().velocity())) {
            return Velocity.OWN_FILE;
        }
        Site.Column depth = site.inputs().depth();
        if (!ColumnFiles.isMany(depth) && !Files.exists(depth.file())) {
            throw new IllegalArgumentException(depth.file() + ": file must be there when the following begins");
        }
        return site.inputs().velocity().header().isPresent() || ReadingFile.alsoHolds(depth, "velocity")
                ? Velocity.BESIDE
                : Velocity.NONE;
    }

    private FileStream stream(
            String what,
            Site.Column column,
            GrowingTable.Columns columns,
            boolean mayRepeat,
            Map<String, String> state) {
        String output = key(what + "-rejected.csv");
        String kept = state.getOrDefault(key("stream-" + what), "");
        return kept.isEmpty()
                ? new FileStream(column, columns, mayRepeat, output)
                : FileStream.from(column, columns, mayRepeat, output, kept);
    }

    private static CsvLayout with(CsvLayout layout, Site.Column column, Header header) {
        String name = ReadingFile.name(column, header);
        return layout.withColumn(column.what(), name, ReadingFile.unit(column, header, name));
    }

    /** The columns of replacements have the unit of what they replace. */
    private CsvLayout withSources(CsvLayout layout, Site.Column column, Header header) {
        CsvLayout with = layout;
        CsvUnit unit = ReadingFile.unit(column, header, ReadingFile.name(column, header));
        for (String source : books.sources(column.what())) {
            with = with.withColumn(source(column.what(), source), source, unit);
        }
        return with;
    }

    private static String source(String what, String name) {
        return what + " from " + name;
    }

    private List<String> sources(String what) {
        return books.sources(what).stream().map(name -> source(what, name)).toList();
    }

    private GrowingTable.Columns depthColumns() {
        List<String> names = new ArrayList<>(List.of("depth"));
        Site.Column depth = site.inputs().depth();
        Site.Column velocity = site.inputs().velocity();
        boolean isBeside = where == Velocity.BESIDE;
        if (isBeside) {
            names.add("velocity");
        }
        names.addAll(sources("depth"));
        if (isBeside) {
            names.addAll(sources("velocity"));
        }
        return columns(names, (layout, header) -> {
            CsvLayout one = with(layout, depth, header);
            CsvLayout both = isBeside ? with(one, velocity, header) : one;
            CsvLayout more = withSources(both, depth, header);
            return isBeside ? withSources(more, velocity, header) : more;
        });
    }

    private GrowingTable.Columns velocityColumns() {
        List<String> names = new ArrayList<>(List.of("velocity"));
        names.addAll(sources("velocity"));
        Site.Column velocity = site.inputs().velocity();
        return columns(names, (layout, header) -> withSources(with(layout, velocity, header), velocity, header));
    }

    private GrowingTable.Columns tipColumns() {
        return columns(
                counts.map(name -> List.of("tips")).orElse(List.of()),
                (layout, header) -> counts.map(name -> layout.withColumn("tips", name, CsvUnit.AS_WRITTEN))
                        .orElse(layout));
    }

    private GrowingTable.Columns rainColumns() {
        return columns(List.of("rain"), (layout, header) -> {
            Site.Column column = site.inputs().rain();
            String name = ReadingFile.name(column, header);
            rainUnit = Optional.of(RainUnit.of(site, name));
            return layout.withColumn(column.what(), name, CsvUnit.AS_WRITTEN);
        });
    }

    /** Adds columns to a layout, by a header. */
    private interface Adding {
        CsvLayout to(CsvLayout layout, Header header);
    }

    private static GrowingTable.Columns columns(List<String> names, Adding adding) {
        return new GrowingTable.Columns() {
            @Override
            public List<String> names() {
                return names;
            }

            @Override
            public CsvLayout in(CsvLayout layout, Header header) {
                return adding.to(layout, header);
            }
        };
    }

    void save(Map<String, String> state) {
        state.put(
                key("streams"),
                StateText.of(STATE, 1)
                        .with("velocity", where.name())
                        .with("tips", hasTips)
                        .with("steps", hasSteps)
                        .with("counts", counts.orElse(""))
                        .toString());
        state.put(key("stream-depth"), depths.toState());
        velocities.ifPresent(stream -> state.put(key("stream-velocity"), stream.toState()));
        rain.ifPresent(stream -> state.put(key(hasTips ? "stream-tips" : "stream-rain"), stream.toState()));
    }

    Velocity where() {
        return where;
    }

    boolean hasRain() {
        return rain.isPresent();
    }

    /** Names what is there now and was not when the following began. */
    List<String> unfollowed() {
        List<String> names = new ArrayList<>();
        if (where == Velocity.NONE && Files.exists(site.inputs().velocity().file())) {
            names.add("velocities");
        }
        if (!hasTips && Files.exists(site.inputs().tips().file())) {
            names.add("tips");
        }
        if (!hasTips && !hasSteps && Files.exists(site.inputs().rain().file())) {
            names.add("rain");
        }
        return names;
    }

    /** Looks how far the files reach. The depths first: what belongs to them is then in the other files already. */
    void look(OutputFiles outputs) {
        all().forEach(stream -> stream.look(outputs));
    }

    /** Says of each file of which nothing could be taken so far what is wrong with it, once. */
    List<String> troubles() {
        return all().stream().flatMap(stream -> stream.trouble().stream()).toList();
    }

    private List<FileStream> all() {
        List<FileStream> streams = new ArrayList<>(List.of(depths));
        velocities.ifPresent(streams::add);
        rain.ifPresent(streams::add);
        return streams;
    }

    /** Reads the next part of the file that is furthest behind; false if nothing is left to read. */
    boolean step(OutputFiles outputs, int longest, boolean isAll) {
        List<FileStream> streams = all();
        streams.removeIf(FileStream::isDrained);
        if (streams.isEmpty()) {
            return false;
        }
        FileStream behind = streams.get(0);
        for (FileStream stream : streams) {
            behind = stream.last().isBefore(behind.last()) ? stream : behind;
        }
        behind.take(takerOf(behind), outputs, longest, isAll);
        return true;
    }

    private FileStream.Taker takerOf(FileStream stream) {
        if (stream == depths) {
            return taker::depth;
        }
        if (velocities.filter(each -> each == stream).isPresent()) {
            return taker::velocity;
        }
        return hasTips
                ? (time, values) -> taker.rain(time, site.rain().bucket().tipMm() * (values.length > 0 ? values[0] : 1))
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
        double mm = values[0] * unit.mm() * (unit.isIntensity() ? step.toSeconds() / SECONDS_PER_HOUR : 1);
        if (mm > 0) {
            taker.rain(rules.isStampAtEnd() ? time : time.plus(step), mm);
        }
    }

    /** Gives out what was held back, since nothing more will come. */
    void finish(OutputFiles outputs) {
        all().forEach(stream -> stream.finish(takerOf(stream), outputs));
    }

    Instant rainReached() {
        return rain.map(FileStream::last).orElse(Instant.MAX);
    }

    /** Tells whether nothing more is there to read of the file of velocities, or that of the depths where they stand there. */
    boolean isVelocityDrained() {
        return velocities.orElse(depths).isDrained();
    }

    boolean isRainDrained() {
        return rain.map(FileStream::isDrained).orElse(true);
    }
}
