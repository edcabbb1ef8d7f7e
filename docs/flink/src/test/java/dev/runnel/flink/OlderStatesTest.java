package dev.runnel.flink;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import dev.runnel.internal.MachineClock;
import dev.runnel.internal.StateText;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Rule;
import dev.runnel.timeseries.TextState;
import dev.runnel.timeseries.alarm.AlarmEvent;
import dev.runnel.timeseries.alarm.ThresholdAlarm;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.apache.flink.api.common.eventtime.WatermarkStrategy;
import org.apache.flink.api.common.typeinfo.Types;
import org.apache.flink.configuration.Configuration;
import org.apache.flink.configuration.StateRecoveryOptions;
import org.apache.flink.connector.datagen.source.DataGeneratorSource;
import org.apache.flink.core.execution.JobClient;
import org.apache.flink.streaming.api.environment.StreamExecutionEnvironment;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;

/** Savepoints that another build wrote: read if the text of the state is known, refused by its version if not. */
class OlderStatesTest {
    private static final InventedSites SITES = InventedSites.every(900, 1000);
    private static final int MANY = 7;
    private static final int HALF = MANY * 96 * 4;
    private static final Queue<String> TOLD = new ConcurrentLinkedQueue<>();
    private static volatile CountDownLatch silent = new CountDownLatch(1);

    /** Of release 0.1: never write it anew; a change of a state's text must read it. */
    private static final String SAVEPOINT_OF_0_1 = "savepoint-0.1";

    @TempDir
    Path folder;

    /** Counts readings, and sums them since version 2; a machine whose text once changed. */
    record Tally(int version) implements Rule<Reading, String, TextState> {
        @Override
        public Machine<Reading, String, TextState> start() {
            return new Counting(version, new MachineClock(), 0, 0);
        }

        @Override
        public Machine<Reading, String, TextState> start(TextState state) {
            StateText text = StateText.parse("tally", version, state.toText());
            return new Counting(
                    version,
                    MachineClock.from(text),
                    text.count("readings"),
                    text.version() > 1 ? text.number("sum") : 0);
        }

        @Override
        public TextState parseState(String text) {
            TextState state = TextState.of(text);
            start(state);
            return state;
        }
    }

    private static final class Counting implements Machine<Reading, String, TextState> {
        private final int version;
        private final MachineClock clock;
        private long readings;
        private double sum;

        Counting(int version, MachineClock clock, long readings, double sum) {
            this.version = version;
            this.clock = clock;
            this.readings = readings;
            this.sum = sum;
        }

        @Override
        public List<String> next(Reading reading) {
            long time = EpochNanos.of(reading.time());
            clock.requireAfter(time);
            clock.moveTo(time);
            readings++;
            sum += reading.value();
            return List.of();
        }

        @Override
        public List<String> finish() {
            clock.end();
            return List.of(version == 1 ? "" + readings : readings + " readings, " + sum + " since version 2");
        }

        @Override
        public TextState state() {
            StateText text = clock.into(StateText.of("tally", version).with("readings", readings));
            return TextState.of((version > 1 ? text.with("sum", sum) : text).toString());
        }
    }

    /** Events from a number on; from the end of the stretch on the source falls silent, so that it can be stopped. */
    private static SiteEvent event(long index, int from, int count) throws InterruptedException {
        if (index >= count) {
            silent.countDown();
            Thread.sleep(20);
            return new SiteEvent("", 0, 0, 0, 0);
        }
        long number = index + from;
        return SITES.event((int) (number % MANY), number / MANY);
    }

    private static <O> void build(
            StreamExecutionEnvironment job,
            SiteRule<Reading, O, TextState, String> rule,
            int from,
            int count,
            boolean ends) {
        DataGeneratorSource<SiteEvent> source = new DataGeneratorSource<>(
                index -> event(index, from, count), ends ? count : Long.MAX_VALUE, SiteFiles.EVENTS);
        RuleFunction.of(rule, SiteFiles.EVENTS, Duration.ofHours(1))
                .over(
                        job.fromSource(source, WatermarkStrategy.noWatermarks(), "source")
                                .setParallelism(1)
                                .uid("source-" + from)
                                .filter(each -> !each.site().isEmpty())
                                // Spread over workers here, the events of a site would overtake one another.
                                .setParallelism(1),
                        "rule",
                        Types.STRING)
                .map(line -> {
                    TOLD.add(line);
                    return line;
                })
                .returns(Types.STRING);
    }

    private static SiteRule<Reading, AlarmEvent, TextState, String> alarm() {
        return SiteRule.of(
                site -> ThresholdAlarm.high(0.15).withDeadband(0.01).withOnDelay(Duration.ofMinutes(30)),
                OlderStatesTest::depth,
                (site, told) -> site + "|" + Exact.text(told));
    }

    private static SiteRule<Reading, String, TextState, String> tally(int version) {
        return SiteRule.of(site -> new Tally(version), OlderStatesTest::depth, (site, told) -> site + "|" + told);
    }

    private static Reading depth(SiteEvent event) {
        return Reading.of(EpochNanos.toInstant(event.epochNanos()), event.depth());
    }

    /** Runs the first half, and returns where it was stopped. */
    private String firstHalf(SiteRule<Reading, ?, TextState, String> rule, Path to) throws Exception {
        silent = new CountDownLatch(1);
        StreamExecutionEnvironment job = Jobs.local(2, Jobs.configuration(folder.resolve("checkpoints")));
        build(job, rule, 0, HALF, false);
        JobClient running = job.executeAsync();
        // What the source has given goes through before the savepoint does.
        assertThat(silent.await(60, TimeUnit.SECONDS)).isTrue();
        return Jobs.stopped(running, to);
    }

    private void secondHalf(SiteRule<Reading, ?, TextState, String> rule, String savepoint) throws Exception {
        Configuration configuration = Jobs.from(new Configuration(), savepoint);
        configuration.set(StateRecoveryOptions.SAVEPOINT_IGNORE_UNCLAIMED_STATE, true);
        StreamExecutionEnvironment job = Jobs.local(3, configuration);
        build(job, rule, HALF, HALF, true);
        job.execute();
    }

    private static List<Reading> readings(int site) {
        return Stream.iterate(0, number -> number + 1)
                .limit(2L * HALF / MANY)
                .map(number -> depth(SITES.event(site, number)))
                .toList();
    }

    private static <O> List<String> alone(SiteRule<Reading, O, TextState, String> rule) {
        List<String> told = new ArrayList<>();
        for (int site = 0; site < MANY; site++) {
            String name = InventedSites.name(site);
            rule.rule(name).over(readings(site)).forEach(each -> told.add(rule.result(name, each)));
        }
        told.sort(null);
        return told;
    }

    @Test
    void goesOnFromTheTextOfAnOlderVersion() throws Exception {
        String savepoint = firstHalf(tally(1), folder.resolve("savepoints"));
        TOLD.clear();
        secondHalf(tally(2), savepoint);
        assertThat(TOLD)
                .hasSize(MANY)
                .allSatisfy(line ->
                        assertThat(line).matches("S\\d\\|" + 2 * HALF / MANY + " readings, [0-9.]+ since version 2"));
        assertThatThrownBy(() -> secondHalf(tally(1), savepointOfVersion2()))
                .rootCause()
                .hasMessageContaining("version of a state tally must be in [1, 1], was 2");
    }

    private String savepointOfVersion2() throws Exception {
        return firstHalf(tally(2), folder.resolve("later"));
    }

    @Test
    void goesOnFromASavepointOfRelease01() throws Exception {
        assumeFalse("record".equals(System.getProperty("savepoint")), "it is written anew");
        TOLD.clear();
        secondHalf(alarm(), resource(SAVEPOINT_OF_0_1).toUri().toString());
        List<String> before = Files.readAllLines(resource(SAVEPOINT_OF_0_1 + ".told"));
        List<String> all = new ArrayList<>(before);
        all.addAll(TOLD);
        all.sort(null);
        assertThat(before).isNotEmpty();
        assertThat(TOLD).isNotEmpty();
        assertThat(all).isEqualTo(alone(alarm()));
    }

    /** Writes a savepoint of today's build for the builds to come: {@code -Dsavepoint=record}. */
    @Test
    @EnabledIfSystemProperty(named = "savepoint", matches = "record")
    void recordsASavepoint() throws Exception {
        TOLD.clear();
        Path savepoint = Path.of(java.net.URI.create(firstHalf(alarm(), folder.resolve("savepoints"))));
        Path resources = Path.of("src/test/resources");
        Path to = Files.createDirectories(resources.resolve(SAVEPOINT_OF_0_1));
        try (Stream<Path> files = Files.list(savepoint)) {
            for (Path file : files.toList()) {
                Files.copy(file, to.resolve(file.getFileName()));
            }
        }
        List<String> told = new ArrayList<>(TOLD);
        told.sort(null);
        Files.write(resources.resolve(SAVEPOINT_OF_0_1 + ".told"), told);
        assertThat(told).isNotEmpty();
    }

    private static Path resource(String name) throws URISyntaxException {
        return Path.of(OlderStatesTest.class.getResource("/" + name).toURI());
    }
}
