package dev.runnel.verification.table;

import dev.runnel.internal.Settings;
import dev.runnel.verification.Provenance;
import dev.runnel.verification.Source;
import dev.runnel.verification.Version;
import dev.runnel.verification.calculation.Calculation;
import dev.runnel.verification.calculation.Calculations;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;

/** A descriptor file, read and checked for itself; whether it fits its CSV file is the table's business. */
record Descriptor(
        String file,
        Source source,
        String locator,
        String note,
        String program,
        Version since,
        int values,
        Map<String, String> units,
        List<CheckRule> checks) {
    private static final Set<String> PLAIN =
            Set.of("author", "year", "work", "edition", "locator", "provenance", "note", "program", "since", "values");
    private static final Set<String> PER_CHECK = Set.of("calculation", "expected", "result", "tolerance", "reason");
    private static final String INPUT = "input.";
    private static final String COLUMN = "column.";
    private static final String CHECK = "check.";
    private static final String ONLY = "value";
    private static final Version FIRST_VERSION = Version.parse("0.1");

    static Descriptor read(Path path) {
        try {
            return from(Settings.read(path), path.resolveSibling("").toAbsolutePath());
        } catch (TableException e) {
            throw e;
        } catch (IllegalArgumentException e) {
            throw new TableException(String.valueOf(e.getMessage()));
        }
    }

    private static Descriptor from(Settings settings, Path folder) {
        allowKnownKeys(settings);
        Set<String> ids = new TreeSet<>();
        settings.keys().stream().filter(key -> key.startsWith(CHECK)).forEach(key -> ids.add(key.split("\\.")[1]));
        if (ids.isEmpty()) {
            ids.add(ONLY);
        }
        List<CheckRule> checks = new ArrayList<>();
        for (String id : ids) {
            checks.add(check(settings, id, folder));
        }
        refuseUnusedInputs(settings, checks);
        double values = settings.number("values");
        if (!(values >= 1 && values == Math.rint(values))) {
            throw settings.refused("values", "must be a whole number of 1 or more");
        }
        Source source = Source.of(
                settings.text("author"),
                settings.text("year"),
                settings.text("work"),
                settings.optionalText("edition").orElse(""),
                provenance(settings));
        return new Descriptor(
                settings.file(),
                source,
                settings.text("locator"),
                settings.optionalText("note").orElse(""),
                settings.optionalText("program").orElse(""),
                optional(settings, "since", Version::parse).orElse(FIRST_VERSION),
                (int) values,
                units(settings),
                List.copyOf(checks));
    }

    private static void allowKnownKeys(Settings settings) {
        Set<String> known = new LinkedHashSet<>(PLAIN);
        known.addAll(PER_CHECK);
        for (String key : settings.keys()) {
            String[] parts = key.split("\\.", 3);
            boolean ofCheck = key.startsWith(CHECK)
                    && parts.length == 3
                    && (PER_CHECK.contains(parts[2]) || isNamed(parts[2], INPUT));
            if (ofCheck || isNamed(key, INPUT) || isNamed(key, COLUMN)) {
                known.add(key);
            }
        }
        settings.allowOnly(known);
    }

    private static boolean isNamed(String key, String prefix) {
        return key.startsWith(prefix) && key.substring(prefix.length()).matches("[A-Za-z_][A-Za-z0-9_]*");
    }

    private static Provenance provenance(Settings settings) {
        String text = settings.text("provenance");
        try {
            return Provenance.parse(text);
        } catch (IllegalArgumentException e) {
            throw settings.refused("provenance", String.valueOf(e.getMessage()));
        }
    }

    private static Map<String, String> units(Settings settings) {
        Map<String, String> units = new LinkedHashMap<>();
        for (String key : settings.keys()) {
            if (key.startsWith(COLUMN)) {
                String[] parts = settings.text(key).split(",", 2);
                if (parts.length < 2) {
                    throw settings.refused(key, "must be unit, meaning; was \"" + settings.text(key) + "\"");
                }
                units.put(key.substring(COLUMN.length()), parts[0].strip());
            }
        }
        return Map.copyOf(units);
    }

    private static CheckRule check(Settings settings, String id, Path folder) {
        String calculationKey = key(settings, id, "calculation");
        String name = settings.text(calculationKey);
        Calculation calculation = Calculations.find(name)
                .orElseThrow(() -> settings.refused(
                        calculationKey,
                        "must be a known calculation, was \"" + name + "\"; known are "
                                + Calculations.all().stream()
                                        .map(Calculation::name)
                                        .sorted()
                                        .toList()));
        String resultKey = key(settings, id, "result");
        Formula result = optional(settings, resultKey, Formula::parse).orElseGet(() -> Formula.parse(CheckRule.RESULT));
        String toleranceKey = key(settings, id, "tolerance");
        Tolerance tolerance = optional(settings, toleranceKey, Tolerance::parse)
                .orElseThrow(() -> new TableException(settings.file() + ": key \"" + toleranceKey + "\" is missing"));
        return new CheckRule(
                id,
                calculation,
                settings.text(key(settings, id, "expected")),
                result,
                inputs(settings, id, calculation, folder),
                tolerance,
                settings.text(key(settings, id, "reason")));
    }

    private static Map<String, InputRule> inputs(Settings settings, String id, Calculation calculation, Path folder) {
        String own = CHECK + id + "." + INPUT;
        for (String key : settings.keys()) {
            if (key.startsWith(own) && !calculation.takes(key.substring(own.length()))) {
                throw settings.refused(
                        key,
                        "is no input of " + calculation.name() + ", which takes " + calculation.required()
                                + " and, if wanted, " + calculation.optional());
            }
        }
        Map<String, InputRule> inputs = new LinkedHashMap<>();
        for (String name : calculation.inputs()) {
            String key = key(settings, id, INPUT + name);
            optional(settings, key, text -> InputRule.parse(text, folder)).ifPresent(rule -> inputs.put(name, rule));
            if (!inputs.containsKey(name) && calculation.required().contains(name)) {
                throw new TableException(
                        settings.file() + ": key \"" + key + "\" is missing, " + calculation.name() + " needs it");
            }
        }
        return inputs;
    }

    /** Refuses an input that no check takes: it may be a typing error. */
    private static void refuseUnusedInputs(Settings settings, List<CheckRule> checks) {
        for (String key : settings.keys()) {
            if (key.startsWith(INPUT)
                    && checks.stream().noneMatch(check -> check.calculation().takes(key.substring(INPUT.length())))) {
                throw settings.refused(
                        key,
                        "is no input of "
                                + checks.stream()
                                        .map(check -> check.calculation().name() + " "
                                                + check.calculation().inputs())
                                        .distinct()
                                        .toList());
            }
        }
    }

    /** Returns the key of this check if the file has it, else the key without prefix, the default of all checks. */
    private static String key(Settings settings, String id, String name) {
        String own = CHECK + id + "." + name;
        return settings.keys().contains(own) ? own : name;
    }

    private static <T> Optional<T> optional(Settings settings, String key, Function<String, T> parser) {
        return settings.optionalText(key).map(text -> {
            try {
                return parser.apply(text);
            } catch (IllegalArgumentException e) {
                throw settings.refused(key, String.valueOf(e.getMessage()));
            }
        });
    }
}
