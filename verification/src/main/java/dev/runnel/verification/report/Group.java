package dev.runnel.verification.report;

import dev.runnel.verification.Check;
import dev.runnel.verification.Provenance;
import dev.runnel.verification.Results;
import dev.runnel.verification.Status;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/** Some checks that belong together, with their counts. */
record Group(String name, List<Check> checks) {
    /** Returns the checks grouped by a text, in the order of first appearance. */
    static List<Group> by(List<Check> checks, Function<Check, String> key) {
        Map<String, List<Check>> groups = new LinkedHashMap<>();
        for (Check check : checks) {
            groups.computeIfAbsent(key.apply(check), name -> new ArrayList<>()).add(check);
        }
        return groups.entrySet().stream()
                .map(entry -> new Group(entry.getKey(), entry.getValue()))
                .toList();
    }

    /** Returns the checks grouped by module, in alphabetical order. */
    static List<Group> byModule(Results results) {
        return by(results.checks(), Check::module).stream()
                .sorted((a, b) -> a.name.compareTo(b.name))
                .toList();
    }

    long count(Status status) {
        return checks.stream().filter(check -> check.status() == status).count();
    }

    /** Returns how many checks of a provenance pass. */
    long passing(Provenance provenance) {
        return checks.stream()
                .filter(check -> check.status() == Status.PASS && check.source().provenance() == provenance)
                .count();
    }

    /** Returns the largest share of the tolerance that a passing check uses. */
    double worstShare() {
        return checks.stream()
                .filter(check -> check.status() == Status.PASS)
                .mapToDouble(Check::share)
                .max()
                .orElse(0);
    }
}
