package dev.runnel.verification.bite;

import java.util.Arrays;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Called by patched code: which methods a calculation enters, and how often loops turn. One for each copy of the library,
 * in which one table runs after the other.
 */
public final class Hits {
    /** Methods entered by one calculation for one table: straight from the proof, and by other methods. */
    record Seen(BitSet direct, BitSet through) {}

    private static final Map<String, Seen> SEEN = new LinkedHashMap<>();

    /** The thread that asks the tables: another one may have been here first, since tables are read side by side. */
    private static volatile Thread main = Thread.currentThread();

    private static Seen current = new Seen(new BitSet(), new BitSet());
    private static String table = "";
    private static int depth;
    private static long turns;
    private static long mostTurns = Long.MAX_VALUE;

    private Hits() {}

    /** Begins a table, which may let loops turn so often. */
    static void begin(String name, long most) {
        main = Thread.currentThread();
        table = name;
        turns = 0;
        mostTurns = most;
    }

    static long turns() {
        return turns;
    }

    /** What was seen, by table and calculation joined by a tabulator. */
    static Map<String, Seen> seen() {
        return SEEN;
    }

    /** At the beginning of a calculation; an exception may have left methods without their end. */
    public static void calculation(String name) {
        depth = 0;
        current = SEEN.computeIfAbsent(table + "\t" + name, key -> new Seen(new BitSet(), new BitSet()));
    }

    /** At the beginning of a method of the library. */
    public static void enter(int method) {
        if (Thread.currentThread() != main) {
            synchronized (SEEN) {
                current.through.set(method);
            }
            return;
        }
        BitSet bits = depth++ == 0 ? current.direct : current.through;
        if (!bits.get(method)) {
            synchronized (SEEN) {
                bits.set(method);
            }
        }
    }

    /** At each end of a method of the library. */
    public static void leave() {
        if (Thread.currentThread() == main && depth > 0) {
            depth--;
        }
    }

    /** At each jump back. */
    public static void turn() {
        if (++turns > mostTurns) {
            throw new StackOverflowError("a loop does not end");
        }
    }

    /** Numbers as they stand in an answer. */
    static String text(BitSet bits) {
        return Arrays.toString(bits.stream().toArray()).replaceAll("[\\[\\] ]", "");
    }
}
