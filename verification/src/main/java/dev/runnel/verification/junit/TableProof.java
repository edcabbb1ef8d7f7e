package dev.runnel.verification.junit;

import dev.runnel.internal.Text;
import dev.runnel.verification.Check;
import dev.runnel.verification.Selection;
import dev.runnel.verification.Status;
import dev.runnel.verification.table.PublishedTable;
import dev.runnel.verification.table.TableException;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.apiguardian.api.API;

/**
 * One table to be verified. Immutable.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class TableProof {
    private static final int MOST_SHOWN = 10;

    private final String name;
    private final Optional<PublishedTable> table;
    private final Selection selection;

    private TableProof(String name, Optional<PublishedTable> table, Selection selection) {
        this.name = name;
        this.table = table;
        this.selection = selection;
    }

    static TableProof of(PublishedTable table, Selection selection) {
        return new TableProof(table.name() + ", " + table.source(), Optional.of(table), selection);
    }

    static TableProof broken(String problem) {
        return new TableProof(problem, Optional.empty(), Selection.all());
    }

    /**
     * Asks the library on the path for every wanted value.
     *
     * @return the checks, none of which fails
     * @throws AssertionError if a value lies outside its tolerance, or the table cannot be run; the message names them
     */
    public List<Check> verify() {
        List<Check> checks;
        try {
            checks = table.orElseThrow(() -> new AssertionError(name)).checks(selection);
        } catch (TableException e) {
            throw new AssertionError(e.getMessage(), e);
        }
        List<Check> failed =
                checks.stream().filter(check -> check.status() == Status.FAIL).toList();
        if (!failed.isEmpty()) {
            throw new AssertionError(failed.size() + " of " + checks.size() + " values fail in " + name
                    + failed.stream().limit(MOST_SHOWN).map(TableProof::shown).collect(Collectors.joining()));
        }
        return checks;
    }

    private static String shown(Check check) {
        String computed = check.computed().isEmpty()
                ? check.remark()
                : "computed " + Text.number(check.computed().getAsDouble());
        return "\n  " + check.name() + ": expected " + check.printed() + " " + check.unit() + ", " + computed
                + ", tolerance " + Text.significant(check.tolerance(), 3) + "; column " + check.column()
                + ", calculation "
                + check.calculation();
    }

    /**
     * Returns name and source, as a test should be shown.
     *
     * @return one line
     */
    @Override
    public String toString() {
        return name;
    }
}
