package dev.runnel.examples.review;

import dev.runnel.examples.site.MethodNotes;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Writes the review: pages to look at, the page of text, and for each site its results as CSV, in SI units or those in the
 * header, instants in UTC. All of it is written to a new folder first, which then takes the place of that of the last run:
 * nothing of an older survey stays.
 */
final class ReviewFiles {
    private static final String TEXT = "review.txt";

    private final Path folder;

    ReviewFiles(Path folder) {
        this.folder = folder;
    }

    Path folder() {
        return folder;
    }

    /** Makes the folder in which everything is written first. */
    Path begin() {
        try {
            Path parent = folder.toAbsolutePath().normalize().resolve("..").normalize();
            Files.createDirectories(parent);
            refuseForeign();
            Path made = parent.resolve(folder.getFileName() + "-new");
            deleteAll(made);
            return Files.createDirectory(made);
        } catch (IOException e) {
            throw new UncheckedIOException("cannot write to " + folder, e);
        }
    }

    /** Writes page and tables of one site, and returns what is kept of it. */
    static SiteResult write(Path made, SiteReview review) {
        try {
            Attention attention = Attention.of(review);
            SiteResult result = SiteResult.of(review, attention);
            new SiteFiles(Files.createDirectories(made.resolve(result.id())), review).write();
            Files.writeString(
                    made.resolve(result.id() + ".html"),
                    SitePages.of(review, attention, result.text()).toHtml(),
                    StandardCharsets.UTF_8);
            return result;
        } catch (IOException e) {
            throw new UncheckedIOException(
                    "cannot write the results of " + review.site().id(), e);
        }
    }

    /** Writes what belongs to all sites, and moves everything into its place. */
    void end(
            Path made,
            Path sites,
            Period period,
            String text,
            List<SiteResult> results,
            BetweenSitesText.Between between,
            List<String> complaints,
            FileSums sums) {
        try {
            Files.writeString(made.resolve(TEXT), text, StandardCharsets.UTF_8);
            Files.writeString(
                    made.resolve("index.html"),
                    SurveyLines.page(sites, results, between, complaints),
                    StandardCharsets.UTF_8);
            SurveySummary.write(made, results);
            MethodNotes.writeBeside(made);
            Files.writeString(
                    made.resolve("findings.json"),
                    results.stream().map(SiteResult::json).collect(Collectors.joining(",\n", "[\n", "\n]\n")),
                    StandardCharsets.UTF_8);
            Manifest.write(made, sites, period, results, sums);
            // The old review goes only when the new one stands in its place.
            Path old = made.resolveSibling(folder.getFileName() + "-old");
            deleteAll(old);
            if (Files.exists(folder)) {
                Files.move(folder, old);
            }
            Files.move(made, folder);
            deleteAll(old);
        } catch (IOException e) {
            throw new UncheckedIOException("cannot write to " + folder, e);
        }
    }

    /** Takes away what was begun and not ended. */
    static void discard(Path made) {
        try {
            deleteAll(made);
        } catch (IOException e) {
            throw new UncheckedIOException("cannot take away " + made, e);
        }
    }

    /** A folder with other things in it is not ours to empty. */
    private void refuseForeign() throws IOException {
        if (!Files.exists(folder)) {
            return;
        }
        try (Stream<Path> inside = Files.list(folder)) {
            if (!Files.exists(folder.resolve(TEXT)) && inside.findAny().isPresent()) {
                throw new IllegalArgumentException(
                        folder + ": folder to write into must be new, empty, or hold an earlier review");
            }
        }
    }

    private static void deleteAll(Path path) throws IOException {
        if (!Files.exists(path)) {
            return;
        }
        try (Stream<Path> inside = Files.walk(path)) {
            for (Path each : inside.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(each);
            }
        }
    }
}
