package dev.runnel.examples.follow;

import dev.runnel.examples.review.ColumnFiles;
import dev.runnel.examples.review.Site;
import dev.runnel.examples.review.SiteBooks;
import dev.runnel.examples.review.SiteFile;
import dev.runnel.examples.review.VisitTable;
import dev.runnel.internal.StateText;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.correction.Correction;
import dev.runnel.timeseries.correction.SiteVisit;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Consumer;

/**
 * The books of a site while its readings come: each reading is corrected by itself, as the review corrects them all; visits
 * are compared when the record has passed them; a change of the books is said, and what was written before it stands.
 */
final class FollowedBooks {
    private static final String STATE = "followed-books";
    private static final List<String> CHANGE = List.of("last_reading_utc", "file", "what");

    private final Site site;
    private final SiteBooks books;
    private final OutputFiles outputs;
    private final Consumer<String> print;
    private final Map<Path, String> sums;
    private final Map<String, Instant> reached = new TreeMap<>();
    private final List<String> compared = new ArrayList<>();
    private final List<String> told = new ArrayList<>();
    private String visitTrouble = "";

    FollowedBooks(Site site, SiteBooks books, OutputFiles outputs, Map<String, String> state, Consumer<String> print) {
        this.site = site;
        this.books = books;
        this.outputs = outputs;
        this.print = print;
        this.sums = sums(site);
        String kept = state.get(key("books"));
        if (kept != null) {
            StateText text = StateText.parse(STATE, 1, kept);
            List<String> series = text.list("series");
            List<Instant> times = text.list("reached", Instant::parse);
            for (int i = 0; i < series.size(); i++) {
                reached.put(series.get(i), times.get(i));
            }
            compared.addAll(text.list("compared"));
            told.addAll(text.list("told"));
            visitTrouble = text.text("visittrouble");
            changes(text.list("sums"), text.list("corrections"));
        }
    }

    private String key(String what) {
        return site.id() + "/" + what;
    }

    void save(Map<String, String> state) {
        state.put(
                key("books"),
                StateText.of(STATE, 1)
                        .with("sums", List.copyOf(sums.values()))
                        .with("corrections", corrections())
                        .with("series", List.copyOf(reached.keySet()))
                        .with(
                                "reached",
                                reached.values().stream().map(Instant::toString).toList())
                        .with("compared", compared)
                        .with("told", told)
                        .with("visittrouble", visitTrouble)
                        .toString());
    }

    /** What the files of the books are now; those that are not there too. */
    private static Map<Path, String> sums(Site site) {
        Map<Path, String> sums = new TreeMap<>();
        for (Path file : List.of(
                site.folder().resolve(SiteFile.NAME),
                site.books().corrections(),
                site.books().visits())) {
            try {
                sums.put(file, Files.exists(file) ? StateFile.sum(Files.readAllBytes(ColumnFiles.small(file))) : "");
            } catch (IOException e) {
                throw new UncheckedIOException("cannot read " + file, e);
            }
        }
        return sums;
    }

    private List<String> corrections() {
        return books.corrections().list().stream()
                .map(each -> StateFile.sum(each.toString()))
                .toList();
    }

    /** Tells whether a book is another one than when it was read: then the site begins anew from its state. */
    boolean haveChanged() {
        return !sums(site).equals(sums);
    }

    private void changes(List<String> before, List<String> correctionsBefore) {
        int at = 0;
        for (Map.Entry<Path, String> each : sums.entrySet()) {
            boolean isOther = at < before.size() && !before.get(at).equals(each.getValue());
            at++;
            if (isOther) {
                say(
                        each.getKey().getFileName().toString(),
                        each.getKey().equals(site.books().corrections())
                                ? corrected(correctionsBefore)
                                : each.getKey().equals(site.books().visits())
                                        ? "has changed: visits that are new or other are compared"
                                        : "has changed: what comes from now on is judged by the new settings");
            }
        }
    }

    /** What was told and learned cannot be told again: whoever wants it anew begins an empty folder. */
    private String corrected(List<String> before) {
        List<Correction> fresh = books.corrections().list().stream()
                .filter(each -> !before.contains(StateFile.sum(each.toString())))
                .toList();
        long gone = before.stream().filter(sum -> !corrections().contains(sum)).count();
        List<String> back = new ArrayList<>();
        for (Correction each : fresh) {
            Instant last = reached(each.series());
            if (each.interval().start().isBefore(last)
                    || each.interval().start().equals(last)) {
                back.add(each.series() + " " + each.kind().toText() + " from "
                        + each.interval().start());
            }
        }
        return "has changed: " + fresh.size() + " corrections are new, " + gone
                + " are gone; readings from now on are corrected by it"
                + (back.isEmpty() && gone == 0
                        ? ""
                        : ", and what was written and learned before stands as it is"
                                + (back.isEmpty() ? "" : " although it reaches back (" + String.join("; ", back) + ")")
                                + ": write into a new folder to have the record anew");
    }

    private void say(String file, String what) {
        Instant last = reached("depth");
        outputs.add(key("books.csv"), CHANGE, List.of(last.equals(Instant.MIN) ? "" : last, file, what));
        print.accept(site.name() + ": " + file + " " + what);
    }

    /** Says once what came when the following had begun, and is not followed. */
    void sayUnfollowed(List<String> quantities) {
        for (String each : quantities) {
            if (!told.contains(each)) {
                told.add(each);
                say(
                        each,
                        "have come since the following began and are not read: write into a new folder to follow them");
            }
        }
    }

    /** Time of the last reading of a series, by its corrected clock; {@link Instant#MIN} before the first. */
    Instant reached(String series) {
        return reached.getOrDefault(series, Instant.MIN);
    }

    /**
     * Corrects a reading.
     *
     * @param values its value, then those of the columns for replacements in their order
     */
    Reading correct(String series, Instant time, double... values) {
        Reading reading = Reading.of(time, values[0]);
        Series one = Series.builder().add(reading).build();
        List<String> names = books.sources(series);
        if (isCorrected(series)) {
            Map<String, Series> sources = new HashMap<>();
            for (int i = 0; i < names.size(); i++) {
                double value = i + 1 < values.length ? values[i + 1] : Double.NaN;
                sources.put(
                        names.get(i),
                        Series.builder().add(Reading.of(time, value)).build());
            }
            reading = corrected(series, one, sources);
        }
        reached.put(series, reading.time());
        return reading;
    }

    private boolean isCorrected(String series) {
        return books.corrections().list().stream()
                .anyMatch(each -> each.series().equals(series) && !each.kind().isSetting());
    }

    /** A clock shift that turns the order round is refused, as it is where all readings are at hand. */
    private Reading corrected(String series, Series one, Map<String, Series> sources) {
        Reading corrected = books.applied(site, series, one, sources).series().get(0);
        Instant last = reached(series);
        if (!corrected.time().isAfter(last)) {
            throw new IllegalArgumentException(site.books().corrections()
                    + ": a clock shift must not move a reading onto or past another one, was " + series + " of "
                    + one.time(0) + " to " + corrected.time() + " beside " + last);
        }
        return corrected;
    }

    /**
     * Compares the visits that the record has passed, once each; a visit that was changed in its book is one again.
     *
     * @param isEnd whether nothing more will come
     */
    void compareVisits(Duration wait, boolean isEnd) {
        Instant last = reached("depth");
        List<SiteVisit> ready = books.visits().stream()
                .filter(visit -> isEnd || !visit.time().plus(wait).isAfter(last))
                .filter(visit -> !compared.contains(StateFile.sum(visit.toString())))
                .toList();
        if (ready.isEmpty()) {
            return;
        }
        try {
            for (List<?> row : VisitTable.of(site.folder(), ready)) {
                outputs.add(key("visits.csv"), VisitTable.COLUMNS, row);
                print.accept(row.get(0) + "  " + site.name() + "  visit: " + row.get(2) + " " + row.get(3)
                        + " by hand, " + row.get(4) + " by the monitor, " + row.get(7) + " " + row.get(6));
            }
            ready.forEach(visit -> compared.add(StateFile.sum(visit.toString())));
            visitTrouble = "";
        } catch (IllegalArgumentException e) {
            String trouble = String.valueOf(e.getMessage());
            if (!trouble.equals(visitTrouble)) {
                visitTrouble = trouble;
                print.accept(site.name() + ": visits cannot be compared. " + trouble);
            }
        }
    }
}
