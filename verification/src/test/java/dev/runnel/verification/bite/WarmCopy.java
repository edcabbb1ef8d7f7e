package dev.runnel.verification.bite;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.BinaryOperator;
import java.util.stream.Collectors;
import org.objectweb.asm.tree.ClassNode;

/**
 * One copy of the library with a {@link Switch} for every change, which is asked of all of them one after the other: its
 * classes are loaded and translated once. A table is asked only where it runs the code of the change.
 *
 * <p>Something of one change may stay behind in the copy and answer for the next, so that not all that it says is believed:
 * see {@link Word}.
 */
final class WarmCopy {
    /** How much an answer is worth. */
    enum Word {
        /** A table noticed the change, and passed again when it was switched off. */
        NOTICED,
        /** No table noticed; one may in a copy of its own, where nothing was kept from the change before. */
        SURVIVED,
        /** None runs the code of the change. */
        NOT_REACHED,
        /** The code of the change runs only while a class is made ready, or the copy is spoiled. */
        UNKNOWN
    }

    /** What the copy says of a change, the table that noticed it, and those that may. */
    record Answer(Word word, String noticedBy, List<String> tables) {}

    /** So many changes are believed together: then the tables that noticed them are asked without a change. */
    private static final int TOGETHER = 20;

    private static final BitSet NOTHING = new BitSet();

    private final BinaryOperator<String> inside;
    private final BitSet everMet = new BitSet();
    /** By table. */
    private final Map<String, BitSet> met = new HashMap<>();

    /** The tables, the quickest first. */
    private final List<String> quickest = new ArrayList<>();

    private final BitSet once = new BitSet();

    private WarmCopy(List<Mutation> changes, Map<String, Long> turns) {
        Switches switches = new Switches(changes);
        inside = new Copy((name, bytes) -> {
                    if (!Library.isCalculated(name)) {
                        return bytes;
                    }
                    ClassNode node = Library.node(bytes);
                    switches.putIn(name, node);
                    return Tracing.turns(name, node);
                })
                .inside(InsideWarm.class);
        String tables = turns.entrySet().stream()
                .map(each -> each.getKey() + "=" + each.getValue())
                .collect(Collectors.joining(","));
        once.or(bits(inside.apply(InsideWarm.COUNT, changes.size() + ";" + tables)));
        everMet.or(once);
        watch(turns.keySet());
    }

    /**
     * Asks of all changes.
     *
     * @param changes the changes
     * @param turns the tables to ask, with how often loops may turn for each
     * @return an answer for each change, in their order
     */
    static List<Answer> ask(List<Mutation> changes, Map<String, Long> turns) {
        List<Answer> answers = new ArrayList<>();
        if (turns.isEmpty()) {
            changes.forEach(each -> answers.add(new Answer(Word.UNKNOWN, "", List.of())));
            return answers;
        }
        WarmCopy copy = new WarmCopy(changes, turns);
        for (int from = 0; from < changes.size(); from += TOGETHER) {
            List<Answer> some = new ArrayList<>();
            for (int i = from; i < Math.min(from + TOGETHER, changes.size()); i++) {
                some.add(copy.ask(i));
            }
            if (copy.isSpoiledFor(some)) {
                some.replaceAll(each -> new Answer(Word.UNKNOWN, "", each.tables()));
                copy = new WarmCopy(changes, turns);
            }
            answers.addAll(some);
        }
        return answers;
    }

    /** Sees which code each table runs, twice: what runs the first time only makes something ready that is then kept. */
    private void watch(Set<String> tables) {
        Map<String, Long> nanos = new HashMap<>();
        for (String table : tables) {
            met.put(table, run(table));
        }
        met.forEach((table, first) -> {
            long begin = System.nanoTime();
            BitSet onlyFirst = (BitSet) first.clone();
            onlyFirst.andNot(run(table));
            nanos.put(table, System.nanoTime() - begin);
            once.or(onlyFirst);
        });
        tables.stream().sorted(Comparator.comparing(nanos::get)).forEach(quickest::add);
    }

    private BitSet run(String table) {
        String answer = inside.apply(Integer.toString(Switch.NONE), table);
        if (!answer.equals(Inside.SURVIVED)) {
            throw new IllegalStateException(table + " fails before anything is changed");
        }
        BitSet ran = met();
        everMet.or(ran);
        return ran;
    }

    private BitSet met() {
        return bits(inside.apply(InsideWarm.MET, ""));
    }

    private static BitSet bits(String numbers) {
        BitSet bits = new BitSet();
        Arrays.stream(numbers.split(","))
                .filter(each -> !each.isEmpty())
                .mapToInt(Integer::parseInt)
                .forEach(bits::set);
        return bits;
    }

    private Answer ask(int change) {
        List<String> tables = quickest.stream()
                .filter(table -> met.getOrDefault(table, NOTHING).get(change))
                .toList();
        if (tables.isEmpty()) {
            return new Answer(everMet.get(change) ? Word.UNKNOWN : Word.NOT_REACHED, "", tables);
        }
        String noticedBy = inside.apply(Integer.toString(change), String.join(",", tables));
        if (!noticedBy.equals(Inside.SURVIVED)) {
            return new Answer(Word.NOTICED, noticedBy, tables);
        }
        return new Answer(once.get(change) ? Word.UNKNOWN : Word.SURVIVED, "", tables);
    }

    /** Whether a table that noticed something no longer passes without it. */
    private boolean isSpoiledFor(List<Answer> answers) {
        Set<String> noticing = new LinkedHashSet<>();
        answers.stream().filter(each -> each.word() == Word.NOTICED).forEach(each -> noticing.add(each.noticedBy()));
        return !noticing.isEmpty()
                && !inside.apply(Integer.toString(Switch.NONE), String.join(",", noticing))
                        .equals(Inside.SURVIVED);
    }
}
