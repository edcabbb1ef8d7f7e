package dev.runnel.verification.simulation;

import dev.runnel.internal.Text;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;

/** The score as tables in Markdown, which a person can read as they stand and a page can hold. */
final class ScoreTable {
    private static final String NONE = "";
    private static final int MOST_BROKEN = 10;

    private ScoreTable() {}

    static String text(String title, Tally all) {
        Tally outside = all.where(result ->
                !result.of().cell().isInSeason() && !result.of().cell().isSmall());
        Tally small = all.where(result -> result.of().cell().isSmall());
        Tally within = all.where(result -> result.of().cell().isInSeason());
        return "# " + title + "\n\n" + broken(all) + "## Goals\n\n" + goals(all) + "\n## Sound sites\n\n" + sound(all)
                + "\n## Faults\n\n"
                + faults(outside, false) + "\n## Small faults\n\n" + faults(small, false)
                + "\n## Faults, level only\n\n" + faults(outside, true)
                + "\n## Faults within a wet season\n\n" + faults(within, false)
                + "\n## Faults within a wet season, level only\n\n" + faults(within, true)
                + "\n## Findings that nothing at the monitor is the cause of\n\n" + quiet(all)
                + "\n## Names at the end\n\nFirst finding after the beginning of the fault, its likeliest name; with velocity.\n\n"
                + confusion(outside);
    }

    /** Sites on which the watch broke: nothing on a sound run. */
    private static String broken(Tally all) {
        Tally broken = all.where(result -> result.heard().broken());
        StringBuilder text = new StringBuilder();
        if (broken.sites() > 0) {
            text.append("**The watch ended with an exception on ")
                    .append(broken.sites())
                    .append(" sites:**\n\n");
            broken.results().stream()
                    .limit(MOST_BROKEN)
                    .forEach(result -> text.append("- seed ")
                            .append(result.of().order().seed())
                            .append(", ")
                            .append(result.of().cell().what())
                            .append(": ")
                            .append(result.heard().note())
                            .append('\n'));
            text.append('\n');
        }
        return text.toString();
    }

    static String goals(Tally all) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("goal", "measured (95 %)", "verdict"));
        for (Goal goal : Goals.of(all)) {
            rows.add(List.of(goal.text(), goal.measured(), goal.verdict().toString()));
        }
        return table(rows);
    }

    /** Results by cell, in the order of the cells. */
    private static Map<Cell, Tally> byCell(Tally all) {
        Map<Cell, List<CaseResult>> grouped = new LinkedHashMap<>();
        for (CaseResult result : all.results()) {
            grouped.computeIfAbsent(result.of().cell(), cell -> new ArrayList<>())
                    .add(result);
        }
        Map<Cell, Tally> tallies = new LinkedHashMap<>();
        grouped.forEach((cell, results) -> tallies.put(cell, new Tally(results)));
        return tallies;
    }

    private static String sound(Tally all) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of(
                "sites",
                "count",
                "years",
                "findings",
                "a year (95 %)",
                "sites with any (95 %)",
                "true seasons",
                "no baseline"));
        byCell(all).forEach((cell, tally) -> {
            if (cell.isSound()) {
                rows.add(soundRow(cell.how() + (cell.levelOnly() ? ", level only" : NONE), tally));
            }
        });
        Tally before = all.where(result -> !result.of().cell().isQuiet()
                && !result.of().cell().isInSeason()
                && result.of().cell().kind() != FaultKind.FROM_FIRST_DAY);
        rows.add(soundRow("before the fault, all sites with one", before));
        return table(rows);
    }

    private static List<String> soundRow(String name, Tally tally) {
        double years = tally.soundYears();
        int findings = tally.falseFindings();
        String rate = years > 0
                ? Text.fixed(findings / years, 2) + " (" + Goals.limits(Limits.ofRate(findings, years), 1, 2) + ")"
                : NONE;
        return List.of(
                name,
                Integer.toString(tally.sites()),
                Text.fixed(years, 1),
                Integer.toString(findings),
                rate,
                Goals.share(tally.count(result -> result.before() > 0), tally.sites()),
                Integer.toString(
                        tally.results().stream().mapToInt(CaseResult::seasons).sum()),
                Integer.toString(tally.count(result -> !result.heard().learned())));
    }

    private static String faults(Tally all, boolean levelOnly) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of(
                "fault",
                "severity",
                "found (95 %)",
                "named at once",
                "named at end",
                "delay d",
                "since, d off",
                "alarms",
                "found before",
                "lead h",
                "findings each",
                "recurring"));
        byCell(all).forEach((cell, tally) -> {
            if (!cell.isQuiet() && cell.levelOnly() == levelOnly) {
                Tally found = tally.where(CaseResult::isFound);
                Tally alarmed = tally.where(CaseResult::hasAlarm);
                rows.add(List.of(
                        cell.kind().toString(),
                        cell.how(),
                        Goals.share(tally.found(), tally.sites()),
                        found.count(CaseResult::isRightAtOnce) + "/" + found.sites(),
                        found.count(CaseResult::isRightAtEnd) + "/" + found.sites(),
                        number(found.median(CaseResult::delay), 1),
                        number(found.median(CaseResult::sinceOff), 1),
                        Integer.toString(alarmed.sites()),
                        Integer.toString(alarmed.count(CaseResult::isFoundBeforeAlarm)),
                        number(alarmed.where(CaseResult::isFound).median(CaseResult::leadHours), 0),
                        number(tally.findingsEach(), 2),
                        Integer.toString(tally.count(CaseResult::isCalledRecurring))));
            }
        });
        return table(rows);
    }

    private static String quiet(Tally all) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("what", "how", "sites", "sites with a finding", "readings refused, median"));
        byCell(all).forEach((cell, tally) -> {
            if (cell.isQuiet() && !cell.isSound()) {
                rows.add(List.of(
                        cell.kind().toString(),
                        cell.how(),
                        Integer.toString(tally.sites()),
                        Goals.share(tally.count(result -> result.before() + result.after() > 0), tally.sites()),
                        number(tally.median(result -> result.heard().refused()), 0)));
            }
        });
        return table(rows);
    }

    private static String confusion(Tally all) {
        Tally seen = all.where(result -> !result.of().cell().levelOnly());
        Map<FaultKind, Map<Called, Integer>> counts = new EnumMap<>(FaultKind.class);
        Map<FaultKind, Integer> none = new EnumMap<>(FaultKind.class);
        TreeSet<Called> used = new TreeSet<>();
        for (CaseResult result : seen.results()) {
            FaultKind kind = result.of().cell().kind();
            if (kind == FaultKind.NONE) {
                continue;
            }
            none.merge(kind, result.isFound() ? 0 : 1, Integer::sum);
            Map<Called, Integer> row = counts.computeIfAbsent(kind, any -> new EnumMap<>(Called.class));
            result.first().ifPresent(said -> {
                Called name = said.atEnd().get(0);
                used.add(name);
                row.merge(name, 1, Integer::sum);
            });
        }
        List<List<String>> rows = new ArrayList<>();
        List<String> head = new ArrayList<>(List.of("true"));
        used.forEach(name -> head.add(name.toString()));
        head.add("none");
        rows.add(head);
        counts.forEach((kind, row) -> {
            List<String> cells = new ArrayList<>(List.of(kind.toString()));
            used.forEach(name -> cells.add(row.containsKey(name) ? Integer.toString(row.get(name)) : NONE));
            cells.add(Integer.toString(none.getOrDefault(kind, 0)));
            rows.add(cells);
        });
        return table(rows);
    }

    private static String number(double value, int decimals) {
        return Double.isNaN(value) ? NONE : Text.fixed(value, decimals);
    }

    /** Columns as wide as their widest cell. */
    static String table(List<List<String>> rows) {
        int columns = rows.get(0).size();
        StringBuilder text = new StringBuilder();
        for (int r = 0; r < rows.size(); r++) {
            for (int c = 0; c < columns; c++) {
                int column = c;
                int width = rows.stream()
                        .mapToInt(row -> row.get(column).length())
                        .max()
                        .orElse(0);
                String cell = rows.get(r).get(c);
                text.append("| ").append(cell).append(" ".repeat(width - cell.length() + 1));
            }
            text.append("|\n");
            if (r == 0) {
                text.append("| --- ".repeat(columns)).append("|\n");
            }
        }
        return text.toString();
    }
}
