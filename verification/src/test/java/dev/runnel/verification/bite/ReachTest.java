package dev.runnel.verification.bite;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.verification.House;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Every public calculation is reached by a table, or stands on the list that says why not. With {@code -Dreach=record} the
 * file of what reaches what is written first; reasons are written by people.
 */
@Tag("gate")
class ReachTest {
    private static final boolean RECORD = "record".equals(System.getProperty("reach"));
    private static final Path FOLDER = House.root().resolve("verification/src/main/resources/dev/runnel/verification");
    private static final int SHORTEST_REASON = 20;

    private static final Library LIBRARY = Library.read();
    private static final Reach WHOLE = Reach.of(LIBRARY);
    private static final Map<String, String> LINES = new TreeMap<>();
    private static final TreeSet<String> WITHOUT = new TreeSet<>();

    @BeforeAll
    static void watchAWholeRun() throws IOException {
        assertThat(WHOLE.failing()).isEmpty();
        Calculating.methods(LIBRARY).forEach((name, numbers) -> {
            TreeSet<String> straight = new TreeSet<>();
            TreeSet<String> through = new TreeSet<>();
            for (Reach.Asked asked : WHOLE.asked()) {
                if (asked.touches(numbers)) {
                    (asked.calls(numbers) ? straight : through).add(asked.calculation());
                }
            }
            through.removeAll(straight);
            LINES.put(name, name + "," + String.join(" ", straight) + "," + String.join(" ", through));
            if (straight.isEmpty() && through.isEmpty()) {
                WITHOUT.add(name);
            }
        });
        if (RECORD) {
            List<String> lines = new ArrayList<>(List.of("method,straight,through"));
            lines.addAll(LINES.values());
            Files.writeString(FOLDER.resolve("reach.csv"), String.join("\n", lines) + "\n");
        }
    }

    @Test
    void theFileSaysWhatReachesWhat() throws IOException {
        List<String> approved = Files.readAllLines(FOLDER.resolve("reach.csv"));
        assertThat(approved.subList(1, approved.size()))
                .as("mvn verify -Dreach=record writes the file anew")
                .containsExactlyElementsOf(LINES.values());
    }

    /** Tables of simulations, which are kept and serve many, and of laws that others have asked before. */
    @Test
    void whatATableReachesDoesNotDependOnWhatRanBefore() {
        Reach alone = Reach.of(LIBRARY, "critical");
        List<Reach.Asked> among = WHOLE.asked().stream()
                .filter(each -> each.table().startsWith("critical"))
                .toList();
        assertThat(alone.asked()).hasSizeGreaterThan(10);
        assertThat(among).containsExactlyInAnyOrderElementsOf(alone.asked());
    }

    /** Tables of what is computed once and kept: others had computed it before their turns were counted. */
    @Test
    void aTableAskedByItselfEndsWithinItsTurns() {
        OwnCopies own = new OwnCopies(LIBRARY, WHOLE);
        assertThat(List.of(
                        "region-z-cascades",
                        "long-record-parameters",
                        "plot-correlation-looney-gulledge",
                        "watch-findings"))
                .allMatch(own::passesByItself);
    }

    @Test
    void whatNoTableReachesHasAReason() throws IOException {
        List<String> listed = Files.readAllLines(FOLDER.resolve("without-table.csv"));
        TreeSet<String> names = new TreeSet<>();
        for (String line : listed.subList(1, listed.size())) {
            int comma = line.indexOf(',');
            names.add(line.substring(0, comma));
            assertThat(line.substring(comma + 1)).as(line).hasSizeGreaterThan(SHORTEST_REASON);
        }
        assertThat(WITHOUT)
                .as("public calculations that no table reaches, without a reason")
                .isSubsetOf(names);
        assertThat(names).as("reasons for what a table reaches, or is gone").isSubsetOf(WITHOUT);
    }
}
