package dev.runnel.flink;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.stream.Stream;
import org.apache.flink.configuration.CheckpointingOptions;
import org.apache.flink.configuration.Configuration;
import org.apache.flink.configuration.ExternalizedCheckpointRetention;
import org.apache.flink.configuration.RestartStrategyOptions;
import org.apache.flink.configuration.StateRecoveryOptions;
import org.apache.flink.core.execution.JobClient;
import org.apache.flink.core.execution.SavepointFormatType;
import org.apache.flink.streaming.api.environment.StreamExecutionEnvironment;

/** Jobs on Flink's own cluster in this process. */
final class Jobs {
    private static final int ATTEMPTS = 100;
    private static final int PAUSE_MILLIS = 200;

    private Jobs() {}

    static Configuration configuration(Path checkpoints) {
        Configuration configuration = new Configuration();
        configuration.set(
                CheckpointingOptions.CHECKPOINTS_DIRECTORY, checkpoints.toUri().toString());
        configuration.set(CheckpointingOptions.CHECKPOINTING_INTERVAL, Duration.ofMillis(100));
        configuration.set(
                CheckpointingOptions.EXTERNALIZED_CHECKPOINT_RETENTION,
                ExternalizedCheckpointRetention.RETAIN_ON_CANCELLATION);
        configuration.set(RestartStrategyOptions.RESTART_STRATEGY, "fixed-delay");
        configuration.set(RestartStrategyOptions.RESTART_STRATEGY_FIXED_DELAY_ATTEMPTS, 20);
        configuration.set(RestartStrategyOptions.RESTART_STRATEGY_FIXED_DELAY_DELAY, Duration.ofMillis(1));
        return configuration;
    }

    static Configuration from(Configuration configuration, String savepoint) {
        Configuration restored = new Configuration(configuration);
        restored.set(StateRecoveryOptions.SAVEPOINT_PATH, savepoint);
        return restored;
    }

    static StreamExecutionEnvironment local(int parallelism, Configuration configuration) {
        return StreamExecutionEnvironment.createLocalEnvironment(parallelism, configuration);
    }

    /** Stops a job and returns its savepoint; asks again while the tasks of the job are not all up. */
    static String stopped(JobClient running, Path to) throws InterruptedException, ExecutionException {
        for (int attempt = 1; ; attempt++) {
            try {
                return running.stopWithSavepoint(false, to.toUri().toString(), SavepointFormatType.CANONICAL)
                        .get();
            } catch (ExecutionException e) {
                if (attempt == ATTEMPTS || !String.valueOf(e.getMessage()).contains("Not all required tasks")) {
                    throw e;
                }
                Thread.sleep(PAUSE_MILLIS);
            }
        }
    }

    /** The lines of all finished files of a folder, sorted; none if nothing was written. */
    static List<String> lines(Path folder) {
        List<String> lines = new ArrayList<>();
        if (!Files.exists(folder)) {
            return lines;
        }
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.filter(Files::isRegularFile)
                    .filter(file -> !file.getFileName().toString().startsWith("."))
                    .toList()) {
                lines.addAll(Files.readAllLines(file));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        lines.sort(null);
        return lines;
    }
}
