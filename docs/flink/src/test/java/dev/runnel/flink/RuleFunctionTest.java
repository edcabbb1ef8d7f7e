package dev.runnel.flink;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.apache.flink.api.common.RuntimeExecutionMode;
import org.apache.flink.configuration.Configuration;
import org.apache.flink.core.execution.JobClient;
import org.apache.flink.streaming.api.datastream.DataStream;
import org.apache.flink.streaming.api.environment.StreamExecutionEnvironment;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every test: the job tells what the machines tell in a plain loop, value for value, no line lost or doubled. */
class RuleFunctionTest {
    private static final Duration BOUND = Duration.ofHours(2);
    private static final AllRules RULES = new AllRules();
    private static final Feed FEED = Feed.of(6, 50, BOUND, 0.004, 1);
    private static final List<String> EXPECTED = FEED.expected(RULES, BOUND);

    @TempDir
    Path folder;

    private Path told() {
        return folder.resolve("told");
    }

    private Path refused() {
        return folder.resolve("refused");
    }

    private Configuration configuration() {
        return Jobs.configuration(folder.resolve("checkpoints"));
    }

    private void build(StreamExecutionEnvironment job, Path readings, int pace) {
        DataStream<SiteEvent> events = SiteFiles.read(job, readings);
        RULES.build(
                pace == 0 ? events : events.map(new Hazard(pace, 7)).returns(SiteFiles.EVENTS),
                BOUND,
                told(),
                refused());
    }

    private void assertAsAlone() {
        assertThat(Jobs.lines(told())).isEqualTo(EXPECTED);
    }

    @Test
    void theFeedShowsSomethingOfEveryRule() {
        assertThat(EXPECTED.stream()
                        .map(line -> line.substring(0, line.indexOf('|')))
                        .distinct())
                .containsExactlyInAnyOrder(
                        "alarm", "surcharge", "rain-events", "cusum", "wild", "checks", "watch", "spill");
        assertThat(FEED.refused(BOUND)).isGreaterThan(100);
    }

    @Test
    void streamsAsOneMachineWould() throws Exception {
        StreamExecutionEnvironment job = Jobs.local(2, configuration());
        build(job, FEED.write(folder.resolve("readings"), 3), 0);
        job.execute();
        assertAsAlone();
        List<String> lines = Jobs.lines(refused());
        assertThat(lines).hasSize((int) FEED.refused(BOUND) * RULES.size()).doesNotHaveDuplicates();
        assertThat(lines).anyMatch(line -> line.contains(",LATE,")).anyMatch(line -> line.contains(",SAME_TIME,"));
    }

    @Test
    void readsFilesInBatchInWhateverOrderTheyLie() throws Exception {
        Feed inOrder = Feed.of(3, 40, Duration.ZERO, 0, 1);
        StreamExecutionEnvironment job = Jobs.local(2, new Configuration());
        job.setRuntimeMode(RuntimeExecutionMode.BATCH);
        RULES.build(SiteFiles.read(job, inOrder.writeByDay(folder.resolve("days"))), Duration.ZERO, told(), refused());
        job.execute();
        assertThat(Jobs.lines(told())).isEqualTo(inOrder.expected(RULES, Duration.ZERO));
        assertThat(Jobs.lines(refused())).isEmpty();
    }

    @Test
    void losesAndDoublesNothingIfItIsKilledAgainAndAgain() throws Exception {
        Hazard.reset(4);
        StreamExecutionEnvironment job = Jobs.local(2, configuration());
        build(job, FEED.write(folder.resolve("readings"), 3), 20);
        job.execute();
        assertThat(Hazard.KILLS_LEFT).hasValue(0);
        assertThat(Hazard.RESTORED.get()).isGreaterThanOrEqualTo(4);
        assertAsAlone();
        assertThat(Jobs.lines(refused())).hasSize((int) FEED.refused(BOUND) * RULES.size());
    }

    @Test
    void goesOnFromTheLastCheckpointOfACancelledJobWithFewerWorkers() throws Exception {
        Path readings = FEED.write(folder.resolve("readings"), 3);
        Hazard.reset(0);
        StreamExecutionEnvironment first = Jobs.local(3, configuration());
        build(first, readings, 5);
        JobClient running = first.executeAsync();
        waitForCheckpoints(9);
        running.cancel().get();
        assertThat(Jobs.lines(told()).size()).isLessThan(EXPECTED.size());

        Hazard.reset(0);
        StreamExecutionEnvironment second = Jobs.local(1, Jobs.from(configuration(), lastCheckpoint()));
        build(second, readings, 1000);
        second.execute();
        assertThat(Hazard.RESTORED).hasPositiveValue();
        assertAsAlone();
    }

    @Test
    void goesOnFromASavepointWithMoreWorkers() throws Exception {
        Path readings = FEED.write(folder.resolve("readings"), 3);
        Hazard.reset(0);
        StreamExecutionEnvironment first = Jobs.local(1, configuration());
        build(first, readings, 5);
        JobClient running = first.executeAsync();
        waitForCheckpoints(3);
        String savepoint = Jobs.stopped(running, folder.resolve("savepoints"));
        assertThat(Jobs.lines(told()).size()).isBetween(1, EXPECTED.size() - 1);

        Hazard.reset(0);
        StreamExecutionEnvironment second = Jobs.local(3, Jobs.from(configuration(), savepoint));
        build(second, readings, 1000);
        second.execute();
        assertThat(Hazard.RESTORED).hasPositiveValue();
        assertAsAlone();
    }

    private static void waitForCheckpoints(int count) throws InterruptedException {
        for (int i = 0; i < 2000 && Hazard.CHECKPOINTS.get() < count; i++) {
            Thread.sleep(20);
        }
        assertThat(Hazard.CHECKPOINTS).hasValueGreaterThanOrEqualTo(count);
    }

    private String lastCheckpoint() throws Exception {
        try (Stream<Path> files = Files.walk(folder.resolve("checkpoints"))) {
            return files.filter(file -> file.getFileName().toString().equals("_metadata"))
                    .map(Path::getParent)
                    .max(Comparator.comparingInt(each ->
                            Integer.parseInt(each.getFileName().toString().substring(4))))
                    .orElseThrow()
                    .toUri()
                    .toString();
        }
    }
}
