package dev.runnel.flink;

import dev.runnel.timeseries.EpochNanos;
import java.nio.file.Path;
import org.apache.flink.api.common.eventtime.WatermarkStrategy;
import org.apache.flink.api.common.serialization.SimpleStringEncoder;
import org.apache.flink.api.common.typeinfo.TypeInformation;
import org.apache.flink.connector.file.sink.FileSink;
import org.apache.flink.connector.file.src.FileSource;
import org.apache.flink.connector.file.src.reader.TextLineInputFormat;
import org.apache.flink.streaming.api.datastream.DataStream;
import org.apache.flink.streaming.api.environment.StreamExecutionEnvironment;
import org.apache.flink.streaming.api.functions.sink.filesystem.rollingpolicies.OnCheckpointRollingPolicy;
import org.apiguardian.api.API;

/**
 * Telemetry in files for {@link RuleFunction}: a folder of lines in, a folder of lines out, each result written once and
 * only once over failures and restarts.
 *
 * <p>In the streaming form the readings of one site must lie in one file, in about the order of time (the bound), since
 * files are read side by side. In the batch form they may lie in any number of files: Flink sorts them by site and time.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class SiteFiles {
    /** Type of the events. */
    public static final TypeInformation<SiteEvent> EVENTS = TypeInformation.of(SiteEvent.class);

    private static final long NANOS = 1_000_000;

    private SiteFiles() {}

    /**
     * Reads the lines of all files of a folder, see {@link SiteEvent#parse}.
     *
     * @param job the job
     * @param folder the folder
     * @return the events
     */
    public static DataStream<SiteEvent> read(StreamExecutionEnvironment job, Path folder) {
        FileSource<String> lines = FileSource.forRecordStreamFormat(new TextLineInputFormat("UTF-8"), path(folder))
                .build();
        return job.fromSource(lines, WatermarkStrategy.noWatermarks(), "readings")
                .uid("readings")
                .map(SiteEvent::parse, EVENTS)
                .assignTimestampsAndWatermarks(WatermarkStrategy.<SiteEvent>noWatermarks()
                        .withTimestampAssigner((event, before) -> Math.floorDiv(event.epochNanos(), NANOS)));
    }

    /**
     * Writes lines to files of a folder. Only files whose name does not begin with a dot are finished; they hold each line
     * once, whatever failed and was started again.
     *
     * @param lines the lines
     * @param folder the folder
     * @param uid name of the operator in checkpoints; never change it
     */
    public static void write(DataStream<String> lines, Path folder, String uid) {
        lines.sinkTo(FileSink.forRowFormat(path(folder), new SimpleStringEncoder<String>("UTF-8"))
                        .withRollingPolicy(OnCheckpointRollingPolicy.build())
                        .build())
                .uid(uid);
    }

    /**
     * Returns a refused event as a line: site, reason, number, time, message.
     *
     * @param refused the refused event
     * @return the line
     */
    public static String line(Refused<SiteEvent> refused) {
        return refused.site() + "," + refused.reason() + "," + refused.number() + ","
                + EpochNanos.toInstant(refused.event().epochNanos()) + "," + refused.message();
    }

    private static org.apache.flink.core.fs.Path path(Path folder) {
        return org.apache.flink.core.fs.Path.fromLocalFile(folder.toFile());
    }
}
