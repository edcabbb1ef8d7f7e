package dev.runnel.verification.bite;

import dev.runnel.verification.calculation.KeptAnswers;
import dev.runnel.verification.table.PublishedTable;
import dev.runnel.verification.table.TableFolder;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.function.BinaryOperator;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** The part of a {@linkplain WarmCopy warm copy} that stands inside it: reached by reflection, answers in text. */
public final class InsideWarm implements BinaryOperator<String> {
    /** Asks for the numbers of the changes whose code ran since this was asked last, joined by commas. */
    static final String MET = "met";

    /** Makes ready for so many changes, and asks which of them the reading of the tables met. */
    static final String COUNT = "count";

    private final Map<String, PublishedTable> tables = new HashMap<>();
    private final Map<String, Long> turns = new HashMap<>();
    private int changes;

    /** Made by reflection. */
    public InsideWarm() {}

    /**
     * Answers what is asked of the copy.
     *
     * @param what {@link #COUNT}, {@link #MET}, or the number of the change that is switched on
     * @param which names of tables, joined by commas; to make ready, how many changes there are, {@code ;}, and the tables each
     *     with {@code =} and how often loops may turn for it
     * @return the numbers met, or which table noticed something
     */
    @Override
    public String apply(String what, String which) {
        return switch (what) {
            case COUNT -> count(which);
            case MET -> met();
            default -> run(Integer.parseInt(what), which.split(","));
        };
    }

    private String count(String text) {
        String[] parts = text.split(";");
        changes = Integer.parseInt(parts[0]);
        Switch.count(changes);
        for (String each : parts[1].split(",")) {
            String[] table = each.split("=");
            turns.put(table[0], Long.parseLong(table[1]));
        }
        TableFolder.shipped(turns::containsKey).tables().forEach(each -> tables.put(each.name(), each));
        return met();
    }

    private String met() {
        return IntStream.range(0, changes)
                .filter(Switch::met)
                .mapToObj(Integer::toString)
                .collect(Collectors.joining(","));
    }

    private String run(int change, String[] names) {
        KeptAnswers.drop();
        Switch.turn(change);
        String noticedBy =
                Arrays.stream(names).filter(name -> !passes(name)).findFirst().orElse(Inside.SURVIVED);
        Switch.turn(Switch.NONE);
        return noticedBy;
    }

    private boolean passes(String name) {
        PublishedTable table = tables.get(name);
        if (table == null) {
            throw new IllegalArgumentException("table must be one of those made ready, was " + name);
        }
        Hits.begin(name, turns.getOrDefault(name, 0L));
        return Inside.passes(table);
    }
}
