package dev.runnel.examples.review;

import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** The command: reviews every site of a folder, prints the review and writes it with its results. */
public final class Main {
    private Main() {}

    /**
     * Reviews a folder; ends the process with 1 if a site could not be reviewed.
     *
     * @param args the folder with the sites, and the folder to write into
     */
    public static void main(String[] args) {
        int status = run(args, System.out, System.err);
        if (status != 0) {
            System.exit(status);
        }
    }

    /** Returns 0 if every site was reviewed and 1 if not. */
    static int run(String[] args, PrintStream out, PrintStream err) {
        if (args.length != 2 || args[0].isBlank()) {
            err.println("Site review: two folders are wanted, one with the sites and one to write into.");
            return 1;
        }
        Path folder = Path.of(args[0]).toAbsolutePath().normalize();
        ReviewFiles files = new ReviewFiles(Path.of(args[1]));
        List<String> complaints = Collections.synchronizedList(new ArrayList<>());
        try {
            List<Path> sites = SiteFolders.in(folder);
            Path made = files.begin();
            try {
                Progress progress = Progress.of(sites.size(), err);
                List<SiteResult> results = sites.parallelStream()
                        .flatMap(site -> review(site, made, complaints, progress).stream())
                        .sorted(Comparator.comparing(SiteResult::isDownstream).thenComparing(SiteResult::id))
                        .toList();
                progress.end();
                if (!results.isEmpty()) {
                    String text = ReviewText.of(folder, results, files.folder());
                    out.print(text);
                    out.flush();
                    Collections.sort(complaints);
                    files.end(made, folder, text, results, complaints);
                }
            } finally {
                ReviewFiles.discard(made);
            }
        } catch (IllegalArgumentException | UncheckedIOException e) {
            complaints.add(e.getMessage());
        }
        complaints.forEach(complaint -> err.println("Site review: " + complaint));
        return complaints.isEmpty() ? 0 : 1;
    }

    /** Reviews one site and writes what was found; whatever goes wrong there stops no other site. */
    private static Optional<SiteResult> review(Path site, Path made, List<String> complaints, Progress progress) {
        try {
            return Optional.of(ReviewFiles.write(made, SiteReview.of(SiteData.read(site))));
        } catch (IllegalArgumentException | UncheckedIOException e) {
            complaints.add(site.getFileName() + " cannot be reviewed. " + e.getMessage());
        } catch (RuntimeException e) {
            complaints.add(site.getFileName() + " cannot be reviewed. A fault in the program: " + e);
        } catch (OutOfMemoryError e) {
            complaints.add(site.getFileName() + " cannot be reviewed. There is not enough memory for its readings.");
        } finally {
            progress.step();
        }
        return Optional.empty();
    }
}
