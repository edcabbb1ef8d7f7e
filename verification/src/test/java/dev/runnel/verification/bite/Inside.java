package dev.runnel.verification.bite;

import dev.runnel.verification.Check;
import dev.runnel.verification.Status;
import dev.runnel.verification.table.PublishedTable;
import dev.runnel.verification.table.TableFolder;
import java.util.List;
import java.util.Set;
import java.util.function.BinaryOperator;

/** The part of a run that stands inside a copy of the library: reached by reflection, answers in text. */
public final class Inside implements BinaryOperator<String> {
    static final String TRACE = "trace";
    static final String SURVIVED = "survived";

    /** Made by reflection. */
    public Inside() {}

    /**
     * Answers what is asked of the copy.
     *
     * @param tables {@link #TRACE} for all of them, or names joined by commas
     * @param turns how often loops may turn for each, joined by commas; for a trace the module whose tables run, or the
     *     beginning of their names, or a {@linkplain #share share} of all
     * @return for a trace a line for each table and calculation; else which table noticed something
     */
    @Override
    public String apply(String tables, String turns) {
        return tables.equals(TRACE) ? trace(turns) : run(List.of(tables.split(",")), turns.split(","));
    }

    /** What asks a trace for every so many-th table, from one of the first on. */
    static String share(int first, int every) {
        return first + "/" + every;
    }

    private static boolean isIn(String part, PublishedTable table, int place) {
        int slash = part.indexOf('/');
        if (slash > 0) {
            int every = Integer.parseInt(part.substring(slash + 1));
            return place % every == Integer.parseInt(part.substring(0, slash));
        }
        return table.name().startsWith(part) || table.modules().contains(part);
    }

    private static String trace(String part) {
        StringBuilder answer = new StringBuilder();
        List<PublishedTable> tables = TableFolder.shipped().tables();
        for (int i = 0; i < tables.size(); i++) {
            PublishedTable table = tables.get(i);
            if (!isIn(part, table, i)) {
                continue;
            }
            Hits.begin(table.name(), Long.MAX_VALUE);
            boolean passes = passes(table);
            answer.append("table\t").append(table.name()).append('\t').append(Hits.turns());
            answer.append('\t').append(passes).append('\n');
        }
        Hits.seen()
                .forEach((key, seen) -> answer.append("calculation\t")
                        .append(key)
                        .append('\t')
                        .append(Hits.text(seen.direct()))
                        .append('\t')
                        .append(Hits.text(seen.through()))
                        .append('\n'));
        return answer.toString();
    }

    private static String run(List<String> names, String[] turns) {
        List<PublishedTable> tables;
        try {
            tables = TableFolder.shipped(Set.copyOf(names)::contains).tables();
        } catch (RuntimeException | Error e) {
            // What the proof makes once for all tables broke off already.
            return names.get(0);
        }
        for (int i = 0; i < names.size(); i++) {
            String name = names.get(i);
            Hits.begin(name, Long.parseLong(turns[i]));
            PublishedTable table = tables.stream()
                    .filter(each -> each.name().equals(name))
                    .findFirst()
                    .orElseThrow();
            if (!passes(table)) {
                return name;
            }
        }
        return SURVIVED;
    }

    /** A run that breaks off does not pass: whatever went wrong, somebody would look. */
    static boolean passes(PublishedTable table) {
        try {
            List<Check> checks = table.checks();
            return checks.stream().noneMatch(check -> check.status() == Status.FAIL);
        } catch (RuntimeException | Error e) {
            return false;
        }
    }
}
