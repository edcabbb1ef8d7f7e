package dev.runnel.examples.review;

import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * Proves an earlier review: are its files the ones it wrote, are those it read still the same, and does this program make the
 * same bytes of them today?
 */
final class ProvedAgain {
    private ProvedAgain() {}

    /** Says what differs; returns 0 if nothing does. */
    static int run(Path sites, Path earlier, PrintStream out, PrintStream err) {
        Path manifest = earlier.resolve(Manifest.NAME);
        if (!Files.isRegularFile(manifest)) {
            throw new IllegalArgumentException(
                    "prove must name the folder of an earlier review, with its " + Manifest.NAME + ", was " + earlier);
        }
        try {
            List<String> differences = new ArrayList<>(Manifest.differences(manifest, sites, earlier));
            Path again = Files.createTempDirectory("runnel-review");
            try {
                Main.review(
                        new ReviewFiles(again.resolve("review")),
                        sites,
                        Manifest.period(manifest),
                        new ArrayList<>(),
                        err);
                for (String difference : Manifest.differences(manifest, sites, again.resolve("review"))) {
                    if (difference.startsWith("written") && !differences.contains(difference)) {
                        differences.add("made anew, " + difference);
                    }
                }
            } finally {
                ReviewFiles.discard(again);
            }
            if (differences.isEmpty()) {
                out.println("proved again: " + Manifest.counts(manifest) + ", every byte the same");
                return 0;
            }
            out.println("not proved again: " + Manifest.counts(manifest) + ", of which differ:");
            differences.forEach(difference -> out.println("  " + difference));
            return 1;
        } catch (IOException e) {
            throw new UncheckedIOException("cannot prove " + earlier, e);
        }
    }
}
