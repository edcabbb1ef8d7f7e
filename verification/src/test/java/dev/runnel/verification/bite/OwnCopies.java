package dev.runnel.verification.bite;

import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import org.objectweb.asm.Opcodes;
import org.objectweb.asm.tree.ClassNode;

/** Asks the proof of one change at a time in a copy of the library in which nothing else ever happened. */
final class OwnCopies {
    private static final long LEAST_TURNS = 1_000_000;
    private static final int SLOWER = 20;

    private final Library library;
    private final Reach reach;

    /** Tables that noticed something and pass by themselves where nothing is changed. */
    private final Map<String, Boolean> sound = new ConcurrentHashMap<>();

    OwnCopies(Library library, Reach reach) {
        this.library = library;
        this.reach = reach;
    }

    /** The tables that reach a change, those first that let loops turn least. */
    List<String> tables(Mutation mutation) {
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
        return tables;
    }

    /** How often loops may turn for a table: twenty times as often as in the library as it is. */
    long turns(String table) {
        return LEAST_TURNS + SLOWER * reach.turns(table);
    }

    /** Asks these tables about a change. */
    Outcome ask(Mutation mutation, List<String> tables) {
        if (tables.isEmpty()) {
            return new Outcome(mutation, Inside.SURVIVED, false);
        }
        String noticedBy = ask(tables, (name, bytes) -> patched(mutation, name, bytes));
        if (!noticedBy.equals(Inside.SURVIVED)) {
            sound.computeIfAbsent(noticedBy, this::passesByItself);
        }
        return new Outcome(mutation, noticedBy, true);
    }

    private String ask(List<String> tables, Copy.Patch patch) {
        String turns = tables.stream().map(table -> Long.toString(turns(table))).collect(Collectors.joining(","));
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
}
