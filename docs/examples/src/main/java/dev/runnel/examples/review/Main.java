package dev.runnel.examples.review;

import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

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
        List<SiteReview> reviews = new ArrayList<>();
        List<String> complaints = new ArrayList<>();
        try {
            for (Path site : SiteFolders.in(folder)) {
                try {
                    reviews.add(SiteReview.of(SiteData.read(site)));
                } catch (IllegalArgumentException | UncheckedIOException e) {
                    complaints.add(site.getFileName() + " cannot be reviewed. " + e.getMessage());
                }
            }
            reviews.sort(Comparator.comparing(SiteReview::isDownstream));
            if (!reviews.isEmpty()) {
                String text = ReviewText.of(folder, reviews, files.folder());
                out.print(text);
                out.flush();
                files.write(text, reviews);
            }
        } catch (IllegalArgumentException | UncheckedIOException e) {
            complaints.add(e.getMessage());
        }
        complaints.forEach(complaint -> err.println("Site review: " + complaint));
        return complaints.isEmpty() ? 0 : 1;
    }
}
