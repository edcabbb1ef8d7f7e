package dev.runnel.verification.bite;

import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;

/** What a run found, for people and as a CSV. */
final class BiteReport {
    private BiteReport() {}

    /** Prints how many were noticed, and lists the rest. */
    static void print(List<Outcome> outcomes, PrintStream out) {
        long noticed = outcomes.stream().filter(Outcome::noticed).count();
        out.println("Noticed by the proof: " + noticed + " of " + outcomes.size() + " ("
                + percent(noticed, outcomes.size()) + " %)");
        long equal = outcomes.stream()
                .filter(each -> !each.noticed() && !each.isMissed())
                .count();
        out.println("Equal in effect, by the list with reasons: " + equal + "; noticed of all others: "
                + percent(noticed, outcomes.size() - equal) + " %");
        out.println("Not noticed, in no table's way:");
        outcomes.stream()
                .filter(each -> each.isMissed() && !each.reached())
                .forEach(each -> out.println("  " + each.mutation()));
        out.println("Not noticed, though tables pass here:");
        outcomes.stream()
                .filter(each -> each.isMissed() && each.reached())
                .forEach(each -> out.println("  " + each.mutation()));
        out.println("Equal in effect:");
        outcomes.stream()
                .filter(each -> !each.noticed() && !each.isMissed())
                .forEach(each -> out.println("  " + each.mutation() + ": " + each.reason()));
    }

    /** Writes a line for each change, with what the unit tests say of it where they were asked. */
    static void write(List<Outcome> outcomes, Map<Mutation, UnitTests.Answer> answers, Path file) {
        StringBuilder text = new StringBuilder("class,line,change,reached,noticed_by,equal_in_effect,unit_tests\n");
        for (Outcome each : outcomes) {
            Mutation mutation = each.mutation();
            text.append(mutation.className())
                    .append(',')
                    .append(mutation.line())
                    .append(",\"");
            text.append(mutation.text()).append("\",").append(each.reached()).append(',');
            text.append(each.noticed() ? each.noticedBy() : "").append(",\"");
            text.append(each.noticed() ? "" : each.reason()).append("\",");
            UnitTests.Answer answer = answers.get(mutation);
            text.append(answer == null ? "" : answer.text()).append('\n');
        }
        try {
            Files.createDirectories(file.toAbsolutePath().getParent());
            Files.writeString(file, text);
        } catch (IOException e) {
            throw new UncheckedIOException("cannot write " + file, e);
        }
    }

    /** A share in per cent, with one decimal. */
    static double percent(long part, long whole) {
        return Math.round(1000.0 * part / Math.max(1, whole)) / 10.0;
    }
}
