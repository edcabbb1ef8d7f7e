package dev.runnel.verification.bite;

import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.objectweb.asm.Opcodes;
import org.objectweb.asm.tree.ClassNode;

/**
 * The command: changes a seeded sample of constants and operators of the calculation classes, one at a time, and asks the
 * proof each time. Prints how many it noticed and lists the rest.
 *
 * <p>{@code mvn verify -P bite}; the sample's size, its seed and part of a class name may follow, by
 * {@code -Dbite.sample=300 -Dbite.seed=1 -Dbite.in=hydraulics.structure -Dbite.tests=true}.
 */
public final class Bite {
    /** Readers and writers of files, and helpers whose answers are texts, calculate nothing. */
    private static final List<String> NOT_CALCULATING =
            List.of("dev.runnel.internal.", "dev.runnel.timeseries.csv.", "dev.runnel.timeseries.waterml.");

    private record Outcome(Mutation mutation, String noticedBy, boolean reached) {
        boolean noticed() {
            return !noticedBy.equals(Inside.SURVIVED);
        }

        String reason() {
            return EqualInEffect.reason(mutation);
        }

        boolean isMissed() {
            return !noticed() && reason().isEmpty();
        }
    }

    private final Library library;
    private final Reach reach;

    /** Tables that noticed something and pass by themselves where nothing is changed. */
    private final Map<String, Boolean> sound = new ConcurrentHashMap<>();

    Bite(Library library, Reach reach) {
        this.library = library;
        this.reach = reach;
    }

    /**
     * Runs the sample.
     *
     * @param arguments size of the sample, seed, part of a class name, file for the CSV, whether to ask the unit tests too
     */
    public static void main(String[] arguments) {
        PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
        int size = Integer.parseInt(arguments[0]);
        long seed = Long.parseLong(arguments[1]);
        Library library = Library.read();
        Reach reach = Reach.of(library, module(arguments[2]));
        if (!reach.failing().isEmpty()) {
            throw new IllegalStateException("these tables fail before anything is changed: " + reach.failing());
        }
        List<Mutation> sample = sample(library, arguments[2], size, seed);
        out.println("Changing one constant or operator at a time: " + sample.size() + " changes, seed " + seed);
        Bite bite = new Bite(library, reach);
        List<Outcome> outcomes = sample.parallelStream().map(bite::outcome).toList();
        report(outcomes, out);
        // Written at once: asking the unit tests takes as long again.
        write(outcomes, Map.of(), Path.of(arguments[3]));
        if (arguments.length > 4 && Boolean.parseBoolean(arguments[4])) {
            write(outcomes, besideTests(outcomes, out), Path.of(arguments[3]));
        }
    }

    /** The module that alone can reach the classes, if the part of the name says so. */
    private static String module(String part) {
        return Stream.of("hydraulics", "rainfall")
                .filter(name -> part.startsWith(name + ".") || part.startsWith("dev.runnel." + name + "."))
                .findFirst()
                .orElse("");
    }

    private static List<Mutation> sample(Library library, String part, int size, long seed) {
        List<Mutation> all = new ArrayList<>();
        library.classes().forEach((name, node) -> {
            if (name.contains(part) && NOT_CALCULATING.stream().noneMatch(name::startsWith)) {
                all.addAll(Mutation.of(name, node));
            }
        });
        Collections.shuffle(all, new Random(seed));
        return List.copyOf(all.subList(0, Math.min(size, all.size())));
    }

    private Outcome outcome(Mutation mutation) {
        var method = library.classOf(mutation.className()).methods.get(mutation.method());
        int number = library.number(mutation.className(), method);
        List<String> tables =
                number >= 0 ? reach.tables(number) : reach.tables(library.numbersOf(mutation.className()));
        if (tables.isEmpty() && (method.access & Opcodes.ACC_STATIC) != 0) {
            // What fills a constant runs when its class is made ready, which may be before the first table.
            tables = reach.tables(library.numbersOf(mutation.className()));
            if (tables.isEmpty()) {
                tables = reach.tables(library.readersOf(mutation.className()));
            }
        }
        if (tables.isEmpty()) {
            return new Outcome(mutation, Inside.SURVIVED, false);
        }
        String noticedBy = ask(tables, (name, bytes) -> patched(mutation, name, bytes));
        if (!noticedBy.equals(Inside.SURVIVED)) {
            sound.computeIfAbsent(noticedBy, this::passesByItself);
        }
        return new Outcome(mutation, noticedBy, true);
    }

    /** Which of these tables notices something in a copy of the library, each with twenty times the turns that it took. */
    private String ask(List<String> tables, Copy.Patch patch) {
        String turns = tables.stream()
                .map(table -> Long.toString(1_000_000 + 20 * reach.turns(table)))
                .collect(Collectors.joining(","));
        return new Copy(patch).ask(String.join(",", tables), turns);
    }

    /** A table that breaks in the library as it is, asked by itself, would notice whatever reaches it. */
    boolean passesByItself(String table) {
        String answer = ask(
                List.of(table),
                (name, bytes) -> Library.isCalculated(name) ? Tracing.turns(name, Library.node(bytes)) : bytes);
        if (!answer.equals(Inside.SURVIVED)) {
            throw new IllegalStateException(table + " breaks by itself before anything is changed");
        }
        return true;
    }

    /** Asks the unit tests that reach the class about what the proof did not notice. */
    private static Map<Mutation, UnitTests.Answer> besideTests(List<Outcome> outcomes, PrintStream out) {
        List<Outcome> survivors =
                outcomes.stream().filter(each -> !each.noticed()).toList();
        Map<Mutation, UnitTests.Answer> answers = new ConcurrentHashMap<>();
        survivors.parallelStream()
                .map(Outcome::mutation)
                .forEach(each -> answers.put(each, UnitTests.ask(each.className(), Library.changed(each))));
        List<Outcome> unnoticed = survivors.stream()
                .filter(each -> answers.get(each.mutation()) != UnitTests.Answer.NOTICED)
                .toList();
        int noticed = outcomes.size() - unnoticed.size();
        int equal = (int) unnoticed.stream().filter(each -> !each.isMissed()).count();
        out.println("Noticed by the proof or by the unit tests: " + noticed + " of " + outcomes.size() + " ("
                + percent(noticed, outcomes.size()) + " %); of all not equal in effect "
                + percent(noticed, outcomes.size() - equal) + " %; by neither:");
        unnoticed.forEach(each -> out.println("  " + each.mutation()
                + (answers.get(each.mutation()) == UnitTests.Answer.TOO_LONG
                        ? " (the tests did not come to an end in their time)"
                        : "")
                + (each.isMissed() ? "" : ": " + each.reason())));
        UnitTests.unsound()
                .forEach(each -> out.println("Not asked, since it fails before anything is changed: " + each));
        return answers;
    }

    private static double percent(long part, long whole) {
        return Math.round(1000.0 * part / Math.max(1, whole)) / 10.0;
    }

    private static byte[] patched(Mutation mutation, String name, byte[] bytes) {
        if (!Library.isCalculated(name)) {
            return bytes;
        }
        ClassNode node = Library.node(bytes);
        if (name.equals(mutation.className())) {
            mutation.apply(node);
        }
        return Tracing.turns(name, node);
    }

    private static void report(List<Outcome> outcomes, PrintStream out) {
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

    private static void write(List<Outcome> outcomes, Map<Mutation, UnitTests.Answer> answers, Path file) {
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
}
