package dev.runnel.verification.bite;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Collections;
import java.util.Deque;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Supplier;

/**
 * Called by patched code: which methods a calculation enters, and how often loops turn. One for each copy of the library,
 * in which one table runs after the other.
 *
 * <p>What is computed once and then kept (an answer in a map, what a class is made ready with) counts for everyone who uses
 * it, not only for who happened to ask first: so what a calculation reaches, and how
 * often loops turn for a table, does not depend on which tables ran before.
 */
public final class Hits {
    /** Methods entered by one calculation for one table: straight from the proof, and by other methods. */
    record Seen(BitSet direct, BitSet through) {
        Seen() {
            this(new BitSet(), new BitSet());
        }

        void add(Seen other) {
            direct.or(other.direct);
            through.or(other.through);
        }

        /** Where the library itself is who calls. */
        Seen byOthers() {
            Seen all = new Seen();
            all.through.or(direct);
            all.through.or(through);
            return all;
        }
    }

    /** What it took to compute something that is kept, or to make a class ready: methods entered, and turns of loops. */
    private record Cost(Seen seen, long turns) {}

    /** How often loops turned for a table, or for something kept, with all kept things that it used: each counts once. */
    private static final class Ledger {
        private final Set<Cost> counted = Collections.newSetFromMap(new IdentityHashMap<>());
        private long turns;

        void add(Cost cost) {
            if (counted.add(cost)) {
                turns += cost.turns();
            }
        }
    }

    /** What is being computed: a calculation, or inside it something to be kept. */
    private static final class Frame {
        final Object of;
        final Seen seen;
        final BitSet touched = new BitSet();
        final Ledger outer;

        /** Methods of the library that are entered and have not ended. */
        int depth;

        Frame(Object of, Seen seen, Ledger outer) {
            this.of = of;
            this.seen = seen;
            this.outer = outer;
        }

        /** Whether a class is made ready here: such frames are of its number. */
        boolean makesReady() {
            return of instanceof Integer;
        }

        /** Those that a method entered now belongs to: whichever thread makes it ready, what is kept calls the same straight. */
        BitSet entered() {
            return depth++ == 0 ? seen.direct() : seen.through();
        }
    }

    private static final Map<String, Seen> SEEN = new LinkedHashMap<>();

    /** By what is kept. */
    private static final IdentityHashMap<Object, Cost> KEPT = new IdentityHashMap<>();

    private static final Map<Integer, Cost> INITIALISED = new HashMap<>();

    private static final Cost NO_COST = new Cost(new Seen(), 0);

    /** What other threads are making ready; the main thread has its own below. */
    private static final ThreadLocal<Deque<Frame>> ASIDE = ThreadLocal.withInitial(ArrayDeque::new);

    /** The thread that asks the tables: another one may have been here first, since tables are read side by side. */
    private static volatile Thread main = Thread.currentThread();

    /** The innermost first; the last is the calculation. */
    private static final Deque<Frame> FRAMES = new ArrayDeque<>();

    private static Ledger ledger = new Ledger();
    private static volatile Frame current = new Frame("", new Seen(), ledger);
    private static String table = "";
    private static long mostTurns = Long.MAX_VALUE;

    private Hits() {}

    /** Begins a table, which may let loops turn so often. */
    static void begin(String name, long most) {
        main = Thread.currentThread();
        closeAll();
        table = name;
        ledger = new Ledger();
        mostTurns = most;
    }

    /** What a table would take if no other had run before. */
    static long turns() {
        return ledger.turns;
    }

    /** What was seen, by table and calculation joined by a tabulator. */
    static Map<String, Seen> seen() {
        return SEEN;
    }

    /** At the beginning of a calculation; an exception may have left methods without their end. */
    public static void calculation(String name) {
        synchronized (SEEN) {
            closeAll();
            current = new Frame("", SEEN.computeIfAbsent(table + "\t" + name, key -> new Seen()), ledger);
        }
    }

    private static void closeAll() {
        synchronized (SEEN) {
            while (!FRAMES.isEmpty()) {
                close(current.of, false);
            }
        }
    }

    /** At the beginning of a method of the library. */
    public static void enter(int method) {
        if (Thread.currentThread() != main) {
            synchronized (SEEN) {
                Deque<Frame> aside = ASIDE.get();
                (aside.isEmpty() ? shared().seen.through() : aside.getFirst().entered()).set(method);
            }
            return;
        }
        BitSet bits = current.entered();
        if (!bits.get(method)) {
            synchronized (SEEN) {
                bits.set(method);
            }
        }
    }

    /** At each end of a method of the library. */
    public static void leave() {
        Frame frame = Thread.currentThread() == main ? current : ASIDE.get().peekFirst();
        if (frame != null && frame.depth > 0) {
            frame.depth--;
        }
    }

    /** Where a method uses a class that is made ready by code of its own. */
    public static void touch(int type) {
        if (Thread.currentThread() == main && current.touched.get(type)) {
            return;
        }
        synchronized (SEEN) {
            Frame frame = innermost();
            Cost ready = INITIALISED.get(type);
            // Where another thread is just making it ready, a later touch counts.
            if (ready != null && !frame.touched.get(type)) {
                frame.touched.set(type);
                frame.seen.add(ready.seen());
                ledger.add(ready);
            }
        }
    }

    /** At the beginning of the code that makes a class ready. */
    public static void initialise(int type) {
        open(type);
    }

    /** At its end. */
    public static void initialised(int type, boolean ofLibrary) {
        synchronized (SEEN) {
            INITIALISED.put(type, close(type, ofLibrary));
        }
    }

    /** In the place of the method of {@link Map}: what it keeps counts for all that find it. */
    public static <K, V> V computeIfAbsent(Map<K, V> map, K key, Function<K, V> compute) {
        V found = map.get(key);
        return found == null ? map.computeIfAbsent(key, asked -> kept(() -> compute.apply(asked))) : again(found);
    }

    /** In the place of a call that computes what is kept. */
    public static <T> T kept(Supplier<T> compute) {
        Object mark = new Object();
        open(mark);
        T answer = compute.get();
        synchronized (SEEN) {
            KEPT.put(answer, close(mark, false));
        }
        return answer;
    }

    /** Where something is used that was kept. */
    public static <T> T again(T kept) {
        synchronized (SEEN) {
            Cost cost = KEPT.getOrDefault(kept, NO_COST);
            innermost().seen.add(cost.seen());
            ledger.add(cost);
        }
        return kept;
    }

    private static Frame innermost() {
        return Thread.currentThread() == main ? current : aside();
    }

    private static Frame aside() {
        Deque<Frame> frames = ASIDE.get();
        return frames.isEmpty() ? shared() : frames.getFirst();
    }

    /**
     * What a thread that makes nothing ready has a part in: the calculation, or what it computes to be kept, but not the
     * class that the main thread happens to make ready while the others go on.
     */
    private static Frame shared() {
        return current.makesReady()
                ? FRAMES.stream().filter(each -> !each.makesReady()).findFirst().orElse(current)
                : current;
    }

    private static void open(Object of) {
        synchronized (SEEN) {
            Frame frame = new Frame(of, new Seen(), ledger);
            if (Thread.currentThread() == main) {
                FRAMES.addFirst(current);
                current = frame;
                ledger = new Ledger();
            } else {
                ASIDE.get().addFirst(frame);
            }
        }
    }

    /** Closes the innermost of these, and those that an exception left open inside it. */
    private static Cost close(Object of, boolean ofLibrary) {
        while (true) {
            Frame closed =
                    Thread.currentThread() == main ? current : ASIDE.get().removeFirst();
            Cost cost = cost(closed, ofLibrary);
            innermost().seen.add(cost.seen());
            if (closed.of.equals(of)) {
                return cost;
            }
        }
    }

    /** Turns in another thread are those of what the main thread waits for. */
    private static Cost cost(Frame closed, boolean ofLibrary) {
        Seen entered = ofLibrary ? closed.seen.byOthers() : closed.seen;
        if (Thread.currentThread() != main) {
            return new Cost(entered, 0);
        }
        Cost cost = new Cost(entered, ledger.turns);
        current = FRAMES.removeFirst();
        ledger = closed.outer;
        ledger.add(cost);
        return cost;
    }

    /** At each jump back. */
    public static void turn() {
        if (++ledger.turns > mostTurns) {
            throw new StackOverflowError("a loop does not end");
        }
    }

    /** Numbers as they stand in an answer. */
    static String text(BitSet bits) {
        return Arrays.toString(bits.stream().toArray()).replaceAll("[\\[\\] ]", "");
    }
}
