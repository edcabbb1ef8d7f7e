package dev.runnel.verification.bite;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.stream.IntStream;

/** Which tables and calculations reach which methods, as seen in one run of the whole proof. */
final class Reach {
    /** A calculation asked for one table: the methods it enters itself, and those that others enter for it. */
    record Asked(String table, String calculation, BitSet direct, BitSet through) {
        boolean calls(int[] methods) {
            for (int each : methods) {
                if (direct.get(each)) {
                    return true;
                }
            }
            return false;
        }

        boolean touches(int[] methods) {
            for (int each : methods) {
                if (direct.get(each) || through.get(each)) {
                    return true;
                }
            }
            return false;
        }
    }

    private static final int SHARES = 2;

    private final Map<String, Long> turns = new LinkedHashMap<>();
    private final List<String> failing = new ArrayList<>();
    private final List<Asked> asked = new ArrayList<>();

    private Reach() {}

    /** Watches all tables, in some copies of the library side by side. */
    static Reach of(Library library) {
        List<CompletableFuture<String>> answers = IntStream.range(0, SHARES)
                .mapToObj(share -> CompletableFuture.supplyAsync(
                        () -> traced(library, Inside.share(share, SHARES)), task -> new Thread(task).start()))
                .toList();
        Reach reach = new Reach();
        answers.forEach(answer -> reach.addAll(answer.join()));
        return reach;
    }

    /**
     * Watches some tables only: those of a module, since between hydraulics and rainfall stands a wall so that no other
     * reaches them, or those whose names begin so.
     */
    static Reach of(Library library, String part) {
        Reach reach = new Reach();
        reach.addAll(traced(library, part));
        return reach;
    }

    private static String traced(Library library, String part) {
        return new Copy((name, bytes) -> Tracing.all(library, name, bytes)).ask(Inside.TRACE, part);
    }

    private void addAll(String answer) {
        answer.lines().map(line -> line.split("\t", -1)).forEach(this::add);
    }

    private void add(String[] parts) {
        if (parts[0].equals("table")) {
            turns.put(parts[1], Long.parseLong(parts[2]));
            if (!parts[3].equals("true")) {
                failing.add(parts[1]);
            }
        } else {
            asked.add(new Asked(parts[1], parts[2], bits(parts[3]), bits(parts[4])));
        }
    }

    private static BitSet bits(String text) {
        BitSet bits = new BitSet();
        for (String each : text.isEmpty() ? new String[0] : text.split(",")) {
            bits.set(Integer.parseInt(each));
        }
        return bits;
    }

    /** Tables that fail in the library as it is: there must be none. */
    List<String> failing() {
        return failing;
    }

    List<Asked> asked() {
        return asked;
    }

    /** The tables that reach one of these methods, those first that let loops turn least. */
    List<String> tables(int... methods) {
        return asked.stream()
                .filter(each -> each.touches(methods))
                .map(Asked::table)
                .distinct()
                .sorted((a, b) -> Long.compare(turns(a), turns(b)))
                .toList();
    }

    long turns(String table) {
        return turns.getOrDefault(table, 0L);
    }
}
