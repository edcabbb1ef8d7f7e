package dev.runnel.verification;

import java.util.List;
import org.apiguardian.api.API;

/**
 * What a run found. Immutable.
 *
 * @param checks all checks, table by table
 * @param blanks count of cells without a printed value, which were not compared
 * @param problems what could not be run, each with file, line and column where there is one
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record Results(List<Check> checks, int blanks, List<String> problems) {
    /**
     * Copies the lists.
     *
     * @param checks all checks, table by table
     * @param blanks count of cells without a printed value
     * @param problems what could not be run
     */
    public Results {
        checks = List.copyOf(checks);
        problems = List.copyOf(problems);
    }

    /**
     * Returns how many checks have a status.
     *
     * @param status the status
     * @return count
     */
    public int count(Status status) {
        return (int) checks.stream().filter(check -> check.status() == status).count();
    }

    /**
     * Returns the exit code of a run.
     *
     * @return 2 if something could not be run or nothing was checked, else 1 if a check fails, else 0
     */
    public int exitCode() {
        if (!problems.isEmpty() || checks.isEmpty()) {
            return 2;
        }
        return count(Status.FAIL) > 0 ? 1 : 0;
    }
}
