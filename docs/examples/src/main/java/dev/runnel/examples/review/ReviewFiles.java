package dev.runnel.examples.review;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Writes the review and, for each site, its results as CSV: SI units or those in the header, instants in UTC. */
final class ReviewFiles {
    private final Path folder;

    ReviewFiles(Path folder) {
        this.folder = folder;
    }

    Path folder() {
        return folder;
    }

    void write(String text, List<SiteReview> reviews) {
        try {
            Files.createDirectories(folder);
            Files.writeString(folder.resolve("review.txt"), text, StandardCharsets.UTF_8);
            for (SiteReview review : reviews) {
                Path site = Files.createDirectories(folder.resolve(review.site().id()));
                for (String name : SiteFiles.NAMES) {
                    Files.deleteIfExists(site.resolve(name));
                }
                new SiteFiles(site, review).write();
            }
        } catch (IOException e) {
            throw new UncheckedIOException("cannot write to " + folder, e);
        }
    }
}
