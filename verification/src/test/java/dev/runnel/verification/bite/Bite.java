package dev.runnel.verification.bite;

import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * The command: changes a seeded sample of constants and operators of the calculation classes, or every one, one at a time, and
 * asks the proof each time. Prints how many it noticed and lists the rest.
 *
 * <p>{@code mvn verify -P bite}; the sample's size, its seed and part of a class name may follow, by
 * {@code -Dbite.sample=300 -Dbite.seed=1 -Dbite.in=hydraulics.structure -Dbite.tests=true}.
 */
public final class Bite {
    /** Readers and writers of files, and helpers whose answers are texts, calculate nothing. */
    private static final List<String> NOT_CALCULATING =
            List.of("dev.runnel.internal.", "dev.runnel.timeseries.csv.", "dev.runnel.timeseries.waterml.");

    /** The size of a sample that leaves nothing out. */
    private static final String EVERY = "every";

    private static final int MOST_COPIES = 2;

    private final OwnCopies own;

    Bite(OwnCopies own) {
        this.own = own;
    }

    /**
     * Runs the sample.
     *
     * @param arguments size of the sample or {@code every}, seed, part of a class name, file for the CSV, whether to ask the
     *     unit tests too
     */
    public static void main(String[] arguments) {
        PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
        int size = arguments[0].equals(EVERY) ? Integer.MAX_VALUE : Integer.parseInt(arguments[0]);
        long seed = Long.parseLong(arguments[1]);
        Library library = Library.read();
        Reach reach = Reach.of(library, module(arguments[2]));
        if (!reach.failing().isEmpty()) {
            throw new IllegalStateException("these tables fail before anything is changed: " + reach.failing());
        }
        List<Mutation> sample = sample(library, arguments[2], size, seed);
        out.println("Changing one constant or operator at a time: " + sample.size() + " changes, seed " + seed);
        List<Outcome> outcomes = new Bite(new OwnCopies(library, reach)).outcomes(sample);
        BiteReport.print(outcomes, out);
        // Written at once: asking the unit tests takes as long again.
        BiteReport.write(outcomes, Map.of(), Path.of(arguments[3]));
        if (arguments.length > 4 && Boolean.parseBoolean(arguments[4])) {
            BiteReport.write(outcomes, besideTests(outcomes, out), Path.of(arguments[3]));
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

    /** Asks of all changes, in some warm copies side by side, and where their word is not enough in copies of their own. */
    List<Outcome> outcomes(List<Mutation> changes) {
        int copies = Math.min(MOST_COPIES, Runtime.getRuntime().availableProcessors());
        List<List<Outcome>> shares = IntStream.range(0, copies)
                .parallel()
                .mapToObj(share -> IntStream.range(0, changes.size())
                        .filter(i -> i % copies == share)
                        .mapToObj(changes::get)
                        .toList())
                .map(this::ofOneCopy)
                .toList();
        return IntStream.range(0, changes.size())
                .mapToObj(i -> shares.get(i % copies).get(i / copies))
                .toList();
    }

    private List<Outcome> ofOneCopy(List<Mutation> changes) {
        List<WarmCopy.Answer> answers = WarmCopy.ask(changes, turns(changes));
        return IntStream.range(0, changes.size())
                .mapToObj(i -> outcome(changes.get(i), answers.get(i)))
                .toList();
    }

    /** The tables that reach one of these changes. */
    private Map<String, Long> turns(List<Mutation> changes) {
        Map<String, Long> turns = new TreeMap<>();
        changes.stream()
                .flatMap(each -> own.tables(each).stream())
                .forEach(table -> turns.computeIfAbsent(table, own::turns));
        return turns;
    }

    private Outcome outcome(Mutation change, WarmCopy.Answer warm) {
        return switch (warm.word()) {
            case NOTICED -> new Outcome(change, warm.noticedBy(), true);
            case NOT_REACHED -> new Outcome(change, Inside.SURVIVED, false);
            case SURVIVED ->
                EqualInEffect.reason(change).isEmpty()
                        ? own.ask(change, warm.tables())
                        : new Outcome(change, Inside.SURVIVED, true);
            case UNKNOWN -> own.ask(change, own.tables(change));
        };
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
                + BiteReport.percent(noticed, outcomes.size()) + " %); of all not equal in effect "
                + BiteReport.percent(noticed, outcomes.size() - equal) + " %; by neither:");
        unnoticed.forEach(each -> out.println("  " + each.mutation()
                + (answers.get(each.mutation()) == UnitTests.Answer.TOO_LONG
                        ? " (the tests did not come to an end in their time)"
                        : "")
                + (each.isMissed() ? "" : ": " + each.reason())));
        UnitTests.unsound()
                .forEach(each -> out.println("Not asked, since it fails before anything is changed: " + each));
        return answers;
    }
}
