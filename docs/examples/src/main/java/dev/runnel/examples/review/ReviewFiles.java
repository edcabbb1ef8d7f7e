package dev.runnel.examples.review;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Writes the review and its results. */
final class ReviewFiles {
    private final Path folder;

    ReviewFiles(Path folder) {
        this.folder = folder;
    }

    /** Returns the names of the files of a site, for people. */
    static String names() {
        return "flow.csv, daily.csv, dry-weather.csv, events.csv, alarms.csv, rejected.csv";
    }

    Path folder() {
        return folder;
    }

    void write(String text, List<SiteReview> reviews) {
        try {
            Files.createDirectories(folder);
            Files.writeString(folder.resolve("review.txt"), text, StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
