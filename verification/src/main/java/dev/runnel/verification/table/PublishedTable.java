package dev.runnel.verification.table;

import dev.runnel.verification.Check;
import dev.runnel.verification.Selection;
import dev.runnel.verification.Source;
import dev.runnel.verification.Status;
import dev.runnel.verification.calculation.Calculation;
import dev.runnel.verification.calculation.Inputs;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import org.apiguardian.api.API;

/**
 * A published table, read and fitted together: every column that is used exists, every printed value is a number.
 * Immutable.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class PublishedTable {
    private static final Set<String> SPECIAL = Set.of("exclude", "locator", "source", "note");
    private static final String EXCLUDE_ONE = "exclude_";

    private final String name;
    private final Descriptor descriptor;
    private final CsvFile csv;

    private PublishedTable(String name, Descriptor descriptor, CsvFile csv) {
        this.name = name;
        this.descriptor = descriptor;
        this.csv = csv;
    }

    /**
     * Reads a table.
     *
     * @param path its descriptor file, {@code NAME.table}, with {@code NAME.csv} beside it
     * @return the table
     * @throws TableException if one of the files cannot be read, or they do not fit together
     */
    public static PublishedTable read(Path path) {
        String name = name(path);
        Descriptor descriptor = Descriptor.read(path);
        PublishedTable table = new PublishedTable(name, descriptor, CsvFile.read(path.resolveSibling(name + ".csv")));
        table.requireColumns();
        table.requireCount();
        table.prepare();
        return table;
    }

    static String name(Path path) {
        String file = path.getFileName().toString();
        return file.substring(0, file.length() - TableFolder.SUFFIX.length());
    }

    /**
     * Returns the name.
     *
     * @return name of its files without the suffix
     */
    public String name() {
        return name;
    }

    /**
     * Returns the modules it checks.
     *
     * @return for example {@code hydraulics}
     */
    public Set<String> modules() {
        Set<String> modules = new TreeSet<>();
        descriptor.checks().forEach(check -> modules.add(check.calculation().module()));
        return modules;
    }

    /**
     * Returns the source the descriptor names.
     *
     * @return the source
     */
    public Source source() {
        return descriptor.source();
    }

    /**
     * Returns how many printed values the descriptor promises.
     *
     * @return count
     */
    public int values() {
        return descriptor.values();
    }

    /**
     * Returns how many cells of the expected columns are blank.
     *
     * @return count of cells that are not compared
     */
    public int blanks() {
        return csv.rows().size() * descriptor.checks().size() - values();
    }

    /**
     * Returns the program that made the expected values.
     *
     * @return its path in the repository; empty if none is named
     */
    public String program() {
        return descriptor.program();
    }

    /**
     * Asks the library for every printed value.
     *
     * @return the checks, in the order of the rows
     * @throws TableException if a cell or a data file cannot be read
     */
    public List<Check> checks() {
        return checks(Selection.all());
    }

    /**
     * Asks the library for some of the printed values.
     *
     * @param selection which; nothing else is computed
     * @return the checks, in the order of the rows
     * @throws TableException if a cell or a data file cannot be read
     */
    public List<Check> checks(Selection selection) {
        List<Check> checks = new ArrayList<>();
        Map<String, String> met = new HashMap<>();
        each(selection, (row, rule) -> checks.add(check(row, rule, met)));
        return checks;
    }

    /**
     * Returns how many values a selection would compare.
     *
     * @param selection which
     * @return count; nothing is computed
     */
    public int count(Selection selection) {
        int[] count = {0};
        each(selection, (row, rule) -> count[0]++);
        return count[0];
    }

    private void each(Selection selection, BiConsumer<Row, CheckRule> wanted) {
        for (Row row : csv.rows()) {
            Source source = source(row);
            for (CheckRule rule : descriptor.checks()) {
                Calculation asked = rule.calculation();
                if (!row.text(rule.expected()).isEmpty()
                        && selection.wants(asked.module(), asked.name(), source, descriptor.since())) {
                    wanted.accept(row, rule);
                }
            }
        }
    }

    private Check check(Row row, CheckRule rule, Map<String, String> met) {
        String check = name + ":" + row.number() + ":" + rule.id();
        String printed = row.text(rule.expected());
        double expected = row.number(rule.expected());
        Inputs inputs = Inputs.empty();
        rule.inputs().forEach((input, how) -> how.put(input, row, inputs));
        double tolerance = rule.tolerance().allowed(printed, row::number);
        OptionalDouble computed = OptionalDouble.empty();
        String remark = "";
        try {
            double answer = rule.calculation().answer(inputs);
            double result =
                    rule.result().value(column -> column.equals(CheckRule.RESULT) ? answer : row.number(column));
            computed = OptionalDouble.of(result);
        } catch (TableException e) {
            throw e;
        } catch (RuntimeException e) {
            // The library refused an input that the source prints: that is a failed check, not a failed run.
            remark = "refused: " + e.getMessage();
        }
        String exclusion = row.textOrBlank("exclude") + row.textOrBlank(EXCLUDE_ONE + rule.id());
        Status status = Status.EXCLUDED;
        if (exclusion.isEmpty()) {
            status = Check.judge(expected, computed.orElse(Double.NaN), tolerance);
        } else {
            remark = exclusion;
        }
        return new Check(
                check,
                name,
                rule.expected(),
                descriptor.program(),
                rule.calculation().module(),
                rule.calculation().name(),
                source(row),
                locator(row),
                inputs.toText(met, check),
                printed,
                descriptor
                        .units()
                        .getOrDefault(rule.expected(), rule.calculation().unit()),
                computed,
                tolerance,
                status,
                remark);
    }

    private Source source(Row row) {
        String own = row.textOrBlank("source");
        return own.isEmpty()
                ? descriptor.source()
                : new Source(own, descriptor.source().provenance());
    }

    private String locator(Row row) {
        String own = row.textOrBlank("locator");
        return own.isEmpty() ? descriptor.locator() : own;
    }

    private void requireColumns() {
        Set<String> known = new LinkedHashSet<>(descriptor.units().keySet());
        for (CheckRule rule : descriptor.checks()) {
            for (String column : rule.columns()) {
                if (!csv.columns().contains(column)) {
                    throw new TableException(descriptor.file() + ": column \"" + column + "\" of check \"" + rule.id()
                            + "\" is not in " + csv.name() + ", which has " + csv.columns());
                }
            }
            known.add(EXCLUDE_ONE + rule.id());
        }
        for (String column : descriptor.units().keySet()) {
            if (!csv.columns().contains(column)) {
                throw new TableException(descriptor.file() + ": key \"column." + column + "\" names no column of "
                        + csv.name() + ", which has " + csv.columns());
            }
        }
        known.addAll(SPECIAL);
        for (String column : csv.columns()) {
            if (!known.contains(column)) {
                throw new TableException(descriptor.file() + ": key \"column." + column + "\" is missing: " + csv.name()
                        + " has that column, its unit and meaning must be given");
            }
        }
    }

    private void requireCount() {
        long found = 0;
        for (CheckRule rule : descriptor.checks()) {
            found += csv.rows().stream()
                    .filter(row -> !row.text(rule.expected()).isEmpty())
                    .count();
        }
        if (found != descriptor.values()) {
            throw new TableException(descriptor.file() + ": values = " + descriptor.values()
                    + " must be the count of printed values in " + csv.name() + ", which is " + found);
        }
    }

    private void prepare() {
        for (CheckRule rule : descriptor.checks()) {
            csv.rows().stream()
                    .filter(row -> !row.text(rule.expected()).isEmpty())
                    .forEach(row -> rule.inputs().values().forEach(input -> input.prepare(row)));
        }
    }

    @Override
    public String toString() {
        return "PublishedTable[" + name + ", " + values() + " values, " + descriptor.source() + "]";
    }
}
