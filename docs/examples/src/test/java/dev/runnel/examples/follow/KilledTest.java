package dev.runnel.examples.follow;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A process that is killed at random loses nothing and doubles nothing. {@code -Dkills=200} kills it more often. */
class KilledTest {
    private static final int KILLS = Integer.getInteger("kills", 10);
    private static final long SEED = Long.getLong("kills.seed", 20261129);

    @TempDir
    Path temporary;

    @Test
    void whatIsWrittenIsTheSameAsUndisturbed() throws IOException, InterruptedException {
        kill(new Growth(temporary.resolve("sites"), KILLS > 50 ? 1 : 0.55));
    }

    /** The same with files that appear one after the other. */
    @Test
    void manyFilesAreOneRecord() throws IOException, InterruptedException {
        kill(Growth.ofManyFiles(temporary.resolve("sites"), KILLS > 50 ? 1 : 0.55));
        assertThat(Growth.written(temporary.resolve("whole")).get("saltings-lane/depth-rejected.csv"))
                .contains("4.csv,42,0,read before,40 lines before this one are not later than ");
    }

    private void kill(Growth growth) throws IOException, InterruptedException {
        Random random = new Random(SEED);
        Path output = temporary.resolve("killed");
        int atWork = 0;
        for (int i = 0; i < KILLS; i++) {
            growth.growTo((i + 0.5) / KILLS);
            double whole = (i + 1.0) / KILLS;
            atWork += live(growth.sites(), output, random, () -> growth.growTo(whole)) ? 1 : 0;
        }
        growth.growTo(1);

        Growth.Outcome last = Growth.follow(growth.sites(), output, "end");
        Path undisturbed = temporary.resolve("whole");
        Growth.Outcome once = Growth.follow(growth.sites(), undisturbed, "end");

        assertThat(last.err() + once.err()).isEmpty();
        Map<String, String> expected = Growth.written(undisturbed);
        assertThat(expected)
                .containsKeys("saltings-lane/alarms.csv", "saltings-lane/findings.csv", "saltings-lane/learning.csv");
        assertThat(Growth.difference(Growth.written(output), expected)).isEmpty();
        assertThat(atWork).as("kills after the process had begun to follow").isGreaterThan(KILLS / 2);
    }

    /** Starts a process and kills it after a random time; true if it had begun to follow. */
    private static boolean live(Path sites, Path output, Random random, Runnable meanwhile)
            throws IOException, InterruptedException {
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:TieredStopAtLevel=1",
                        "-XX:+UseSerialGC",
                        "-Xshare:auto",
                        "-cp",
                        System.getProperty("java.class.path"),
                        FollowChild.class.getName(),
                        sites.toString(),
                        output.toString(),
                        "1",
                        "off")
                .redirectErrorStream(true)
                .start();
        boolean isEarly = random.nextInt(5) == 0;
        boolean hasBegun = false;
        if (isEarly) {
            Thread.sleep(random.nextInt(250));
        } else {
            try (BufferedReader said =
                    new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
                String line = said.readLine();
                while (line != null && !line.startsWith("following 1 of 1")) {
                    line = said.readLine();
                }
                hasBegun = line != null;
                meanwhile.run();
                Thread.sleep(random.nextInt(400));
                process.destroyForcibly();
            }
        }
        process.destroyForcibly();
        assertThat(process.waitFor(20, TimeUnit.SECONDS)).isTrue();
        return hasBegun;
    }
}
