package dev.runnel.verification.command;

import dev.runnel.verification.Check;
import dev.runnel.verification.Results;
import dev.runnel.verification.Selection;
import dev.runnel.verification.table.PublishedTable;
import dev.runnel.verification.table.TableException;
import dev.runnel.verification.table.TableFolder;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ForkJoinPool;
import java.util.stream.IntStream;
import org.apiguardian.api.API;

/**
 * Runs published tables.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class VerificationRun {
    /** Its multiples, without their whole parts, are spread most evenly. */
    private static final double GOLDEN_RATIO = (Math.sqrt(5) - 1) / 2;

    private VerificationRun() {}

    /**
     * Runs the tables of some folders, as many at a time as there are processors.
     *
     * @param folders the folders; what could not be read in them is among the problems of the results
     * @param selection what to compare; nothing else is computed
     * @return the results, in the order of the folders and their tables, however many processors there are
     */
    public static Results of(List<TableFolder> folders, Selection selection) {
        List<String> problems = new ArrayList<>();
        List<PublishedTable> tables = new ArrayList<>();
        for (TableFolder folder : folders) {
            problems.addAll(folder.problems());
            tables.addAll(folder.tables());
        }
        List<Outcome> outcomes = outcomes(tables, selection);
        List<Check> checks = new ArrayList<>();
        int blanks = 0;
        for (Outcome outcome : outcomes) {
            checks.addAll(outcome.checks);
            problems.addAll(outcome.problems);
            blanks += outcome.blanks;
        }
        return new Results(checks, blanks, problems);
    }

    /**
     * One table after the other for each processor: some take a thousand times as long as others, and stand side by side. What the
     * library draws in parallel forks within the same pool: beside it, more threads would run than there are processors, and
     * wait for one another.
     */
    private static List<Outcome> outcomes(List<PublishedTable> tables, Selection selection) {
        ForkJoinPool workers = new ForkJoinPool();
        try {
            List<CompletableFuture<Outcome>> asked = new ArrayList<>(
                    Collections.nCopies(tables.size(), CompletableFuture.completedFuture(Outcome.NONE)));
            apart(tables.size())
                    .forEach(i -> asked.set(
                            i, CompletableFuture.supplyAsync(() -> Outcome.of(tables.get(i), selection), workers)));
            return asked.stream().map(CompletableFuture::join).toList();
        } finally {
            workers.shutdown();
        }
    }

    /** Tables of one subject, whose names make them neighbours, far from one another: beside each other they would wait for the record they share. */
    private static IntStream apart(int tables) {
        return IntStream.range(0, tables)
                .boxed()
                .sorted(Comparator.comparingDouble(i -> i * GOLDEN_RATIO % 1))
                .mapToInt(i -> i);
    }

    private record Outcome(List<Check> checks, int blanks, List<String> problems) {
        static final Outcome NONE = new Outcome(List.of(), 0, List.of());

        static Outcome of(PublishedTable table, Selection selection) {
            try {
                List<Check> checks = table.checks(selection);
                return new Outcome(checks, checks.isEmpty() ? 0 : table.blanks(), List.of());
            } catch (TableException e) {
                return new Outcome(List.of(), 0, List.of(e.getMessage()));
            }
        }
    }
}
