package dev.runnel.verification.command;

import dev.runnel.verification.Check;
import dev.runnel.verification.Results;
import dev.runnel.verification.table.PublishedTable;
import dev.runnel.verification.table.TableException;
import dev.runnel.verification.table.TableFolder;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.apiguardian.api.API;

/**
 * Runs published tables.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class VerificationRun {
    private VerificationRun() {}

    /**
     * Runs all tables of some folders.
     *
     * @param folders the folders; what could not be read in them is among the problems of the results
     * @param wanted which checks to keep
     * @return the results
     */
    public static Results of(List<TableFolder> folders, Predicate<Check> wanted) {
        List<Check> checks = new ArrayList<>();
        List<String> problems = new ArrayList<>();
        int blanks = 0;
        for (TableFolder folder : folders) {
            problems.addAll(folder.problems());
            for (PublishedTable table : folder.tables()) {
                try {
                    List<Check> kept = table.checks().stream().filter(wanted).toList();
                    checks.addAll(kept);
                    blanks += kept.isEmpty() ? 0 : table.blanks();
                } catch (TableException e) {
                    problems.add(e.getMessage());
                }
            }
        }
        return new Results(checks, blanks, problems);
    }
}
