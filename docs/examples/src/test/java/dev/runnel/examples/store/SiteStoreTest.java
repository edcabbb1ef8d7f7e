package dev.runnel.examples.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A process that is killed at random leaves no reading, alarm or finding out, and none in twice. {@code -Dkills=100}. */
class SiteStoreTest {
    private static final int KILLS = Integer.getInteger("kills", 4);
    private static final long SEED = Long.getLong("kills.seed", 20261129);

    @TempDir
    Path folder;

    /** All rows of the tables, in order. */
    private static List<String> rows(Connection connection) throws SQLException {
        List<String> rows = new ArrayList<>();
        for (String query : List.of(
                "SELECT 'reading', site, at, depth, velocity FROM reading ORDER BY site, at",
                "SELECT 'told', site, detector, number, text FROM told ORDER BY site, detector, number",
                "SELECT 'machine', site, detector, told, state FROM machine ORDER BY site, detector",
                "SELECT 'refused', site, at, depth, velocity FROM refused ORDER BY site, at")) {
            try (Statement statement = connection.createStatement();
                    ResultSet result = statement.executeQuery(query)) {
                while (result.next()) {
                    StringBuilder row = new StringBuilder();
                    for (int i = 1; i <= 5; i++) {
                        row.append(result.getString(i)).append('|');
                    }
                    rows.add(row.toString());
                }
            }
        }
        return rows;
    }

    /** What the machines tell over the whole record, without any database. */
    private static List<String> alone() {
        List<StoredReading> readings = StoreChild.readings();
        List<String> told = new ArrayList<>();
        for (Detector<?, ?, ?> detector : StoreChild.detectors(readings)) {
            int number = 0;
            for (String text : detector.step(Optional.empty(), readings).told()) {
                told.add("told|" + StoreChild.SITE + "|" + detector.name() + "|" + ++number + "|" + text + "|");
            }
        }
        return told;
    }

    @Test
    void losesAndDoublesNothingIfTheProcessIsKilled() throws Exception {
        Random random = new Random(SEED);
        String file = folder.resolve("killed").toString();
        int atWork = 0;
        for (int i = 0; i < KILLS; i++) {
            atWork += live(file, random) ? 1 : 0;
        }
        List<String> killed;
        try (Connection connection = StoreChild.connect(file)) {
            StoreChild.send(connection, 33);
            killed = rows(connection);
        }
        try (Connection connection = StoreChild.connect(folder.resolve("whole").toString())) {
            StoreChild.send(connection, 1000);
            assertThat(killed).isEqualTo(rows(connection));
        }
        assertThat(killed.stream().filter(row -> row.startsWith("told|"))).isEqualTo(alone());
        assertThat(alone()).anyMatch(row -> row.contains("|depth-high|")).anyMatch(row -> row.contains("|watch|"));
        assertThat(killed.stream().filter(row -> row.startsWith("reading|")))
                .hasSize(StoreChild.readings().size());
        assertThat(killed).noneMatch(row -> row.startsWith("refused|"));
        assertThat(atWork).as("kills between the first reading and the last").isPositive();
    }

    /** Starts a process and kills it after a random time; true if it had begun to send and had not ended. */
    private boolean live(String file, Random random) throws IOException, InterruptedException {
        Path said = folder.resolve("said.txt");
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:TieredStopAtLevel=1",
                        "-cp",
                        System.getProperty("java.class.path"),
                        StoreChild.class.getName(),
                        file)
                .redirectErrorStream(true)
                .redirectOutput(said.toFile())
                .start();
        while (process.isAlive() && !Files.readString(said).contains("sending")) {
            Thread.sleep(1);
        }
        Thread.sleep(random.nextInt(150));
        process.destroyForcibly();
        assertThat(process.waitFor(20, TimeUnit.SECONDS)).isTrue();
        String all = Files.readString(said);
        assertThat(all).startsWith("sending");
        return !all.contains("done");
    }

    @Test
    void aReadingThatComesTooLateIsKeptApart() throws Exception {
        List<StoredReading> all = StoreChild.readings();
        try (Connection connection = StoreChild.connect(folder.resolve("late").toString())) {
            SiteStore store = SiteStore.on(connection, List.of());
            store.take("a", List.of(all.get(0), all.get(2)));
            store.take("a", List.of(all.get(2), all.get(1), all.get(3)));
            assertThat(rows(connection))
                    .filteredOn(row -> row.startsWith("refused|"))
                    .hasSize(1);
            assertThat(rows(connection))
                    .filteredOn(row -> row.startsWith("reading|"))
                    .hasSize(3);
        }
    }

    @Test
    void aStateOfAVersionThatIsNotKnownIsRefusedAndNothingIsWritten() throws Exception {
        List<StoredReading> all = StoreChild.readings();
        try (Connection connection =
                StoreChild.connect(folder.resolve("version").toString())) {
            SiteStore store = SiteStore.on(connection, StoreChild.detectors(all).subList(0, 1));
            store.take("a", all.subList(0, 10));
            try (Statement statement = connection.createStatement()) {
                statement.execute("UPDATE machine SET state = REPLACE(state, '/1 ', '/99 ')");
            }
            connection.commit();
            List<String> before = rows(connection);
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> store.take("a", all.subList(10, 20)))
                    .withMessageContaining("must be in [1, 1], was 99");
            assertThat(rows(connection)).isEqualTo(before);
        }
    }
}
