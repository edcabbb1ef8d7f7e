package dev.runnel.examples.review;

import dev.runnel.examples.terminal.Terminal;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;

/** The command: reviews every site of a folder, prints the review and writes it with its results. */
public final class Main {
    private Main() {}

    /**
     * Reviews a folder; ends the process with 1 if a site could not be reviewed.
     *
     * @param args the folder with the sites and the folder to write into; then {@code from=DATE} and {@code to=DATE}, or
     *     {@code prove=FOLDER} of an earlier review
     */
    public static void main(String[] args) {
        int status = run(args, Terminal.out(), Terminal.err());
        if (status != 0) {
            System.exit(status);
        }
    }

    /** Returns 0 if every site was reviewed and 1 if not. */
    static int run(String[] args, PrintStream out, PrintStream err) {
        List<String> complaints = Collections.synchronizedList(new ArrayList<>());
        try {
            Command command = Command.of(args);
            if (command.proved().isPresent()) {
                return ProvedAgain.run(command.sites(), command.proved().get(), out, err);
            }
            String text = review(new ReviewFiles(command.output()), command.sites(), command.period(), complaints, err);
            out.print(text);
            if (!text.isEmpty()) {
                out.println("written to " + command.output());
            }
            out.flush();
        } catch (IllegalArgumentException | UncheckedIOException e) {
            complaints.add(e.getMessage());
        }
        complaints.forEach(complaint -> err.println("Site review: " + complaint));
        return complaints.isEmpty() ? 0 : 1;
    }

    /** Reviews the sites of a folder, writes the review and returns it in words; empty if no site could be reviewed. */
    static String review(ReviewFiles files, Path folder, Period period, List<String> complaints, PrintStream err) {
        List<Path> sites = SiteFolders.in(folder);
        Path made = files.begin();
        try {
            Progress progress = Progress.of(sites.size(), err);
            List<SiteResult> reviewed = Collections.synchronizedList(new ArrayList<>());
            Turns.each(
                    sites,
                    site -> review(site, period, made, complaints, progress).ifPresent(reviewed::add));
            progress.end();
            if (reviewed.isEmpty()) {
                return "";
            }
            List<SiteResult> results = reviewed.stream()
                    .sorted(Comparator.comparing(SiteResult::isDownstream).thenComparing(SiteResult::id))
                    .toList();
            FileSums sums = new FileSums();
            BetweenSitesText.Between between = between(results, Manifest.soFar(made, results), sums);
            String text = ReviewText.of(folder, results, between);
            Collections.sort(complaints);
            files.end(made, folder, period, text, results, between, complaints, sums);
            return text;
        } finally {
            ReviewFiles.discard(made);
        }
    }

    /** Compares the sites, which is work for one, while the others sum up files. */
    private static BetweenSitesText.Between between(List<SiteResult> results, List<Path> files, FileSums sums) {
        AtomicReference<BetweenSitesText.Between> between = new AtomicReference<>();
        List<Runnable> pieces = new ArrayList<>();
        pieces.add(() -> between.set(BetweenSitesText.of(results)));
        files.forEach(file -> pieces.add(() -> sums.of(file)));
        Turns.each(pieces, Runnable::run);
        return Objects.requireNonNull(between.get());
    }

    /** Reviews one site and writes what was found; whatever goes wrong there stops no other site. */
    private static Optional<SiteResult> review(
            Path site, Period period, Path made, List<String> complaints, Progress progress) {
        try {
            return Optional.of(
                    GaugeReview.isGauge(site)
                            ? GaugePages.write(made, GaugeReview.read(site, period))
                            : ReviewFiles.write(made, SiteReview.of(SiteData.read(site), period)));
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
