package dev.runnel.flink;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.TextState;
import dev.runnel.timeseries.alarm.AlarmEvent;
import dev.runnel.timeseries.alarm.ThresholdAlarm;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.apache.flink.api.common.eventtime.Watermark;
import org.apache.flink.api.common.eventtime.WatermarkGenerator;
import org.apache.flink.api.common.eventtime.WatermarkOutput;
import org.apache.flink.api.common.eventtime.WatermarkStrategy;
import org.apache.flink.api.common.typeinfo.Types;
import org.apache.flink.configuration.Configuration;
import org.apache.flink.streaming.api.datastream.DataStream;
import org.apache.flink.streaming.api.datastream.SingleOutputStreamOperator;
import org.apache.flink.streaming.api.environment.StreamExecutionEnvironment;
import org.apache.flink.util.CloseableIterator;
import org.junit.jupiter.api.Test;

class RefusalsAndWatermarksTest {
    private static final Instant START = Instant.parse("2026-03-02T00:00:00Z");
    private static final Duration HOUR = Duration.ofHours(1);

    private static SiteEvent at(String site, long minutes, double depth) {
        return new SiteEvent(
                site, EpochNanos.of(START.plus(Duration.ofMinutes(minutes))), depth, Double.NaN, Double.NaN);
    }

    private static RuleFunction<SiteEvent, Reading, AlarmEvent, TextState, String> alarm(Duration bound) {
        return RuleFunction.of(
                SiteRule.of(
                        site -> ThresholdAlarm.high(0.3),
                        event -> Reading.of(EpochNanos.toInstant(event.epochNanos()), event.depth()),
                        (site, told) -> site + " " + told.activation()),
                SiteFiles.EVENTS,
                bound);
    }

    private static DataStream<SiteEvent> stream(List<SiteEvent> events, WatermarkStrategy<SiteEvent> watermarks) {
        StreamExecutionEnvironment job = Jobs.local(1, new Configuration());
        return job.fromData(events, SiteFiles.EVENTS).assignTimestampsAndWatermarks(watermarks);
    }

    @SuppressWarnings("try") // Its close may be interrupted, as anything here may.
    private static <T> List<T> collected(DataStream<T> stream) throws Exception {
        List<T> all = new ArrayList<>();
        try (CloseableIterator<T> each = stream.executeAndCollect()) {
            each.forEachRemaining(all::add);
        }
        return all;
    }

    /** After each event a watermark of its time. */
    private static final class Each implements WatermarkGenerator<SiteEvent> {
        @Override
        public void onEvent(SiteEvent event, long timestamp, WatermarkOutput output) {
            output.emitWatermark(new Watermark(event.epochNanos() / 1_000_000));
        }

        @Override
        public void onPeriodicEmit(WatermarkOutput output) {}
    }

    @Test
    void saysWhyAnEventIsRefusedAndCounts() throws Exception {
        RuleFunction<SiteEvent, Reading, AlarmEvent, TextState, String> alarm = alarm(HOUR);
        SingleOutputStreamOperator<String> told = alarm.over(
                stream(
                        List.of(
                                at("A", 0, 0.1),
                                at("A", 30, 0.1),
                                at("A", 30, 0.4),
                                at("A", 15, 0.1),
                                at("B", 0, 0.1),
                                at("A", 120, Double.POSITIVE_INFINITY),
                                at("A", 10, 0.1),
                                at("A", 30, 0.1),
                                at("A", 240, 0.1)),
                        WatermarkStrategy.noWatermarks()),
                "alarm",
                Types.STRING);
        assertThat(collected(told.getSideOutput(alarm.refusedTag()).map(SiteFiles::line, Types.STRING)))
                .containsExactly(
                        "A,SAME_TIME,1,2026-03-02T00:30:00Z,another event of the same time waits",
                        "A,LATE,2,2026-03-02T00:10:00Z,an event of 2026-03-02T00:30:00Z has been taken",
                        "A,SAME_TIME,3,2026-03-02T00:30:00Z,an event of 2026-03-02T00:30:00Z has been taken",
                        "A,INVALID,4,2026-03-02T02:00:00Z,value must be finite, or NaN for missing, was Infinity");
    }

    @Test
    void releasesTheLastReadingsOfASiteThatFellSilentByTheWatermark() throws Exception {
        List<SiteEvent> events = new ArrayList<>(List.of(at("A", 0, 0.1), at("A", 15, 0.4)));
        for (int i = 2; i < 100; i++) {
            events.add(at("B", 15L * i, i == 90 ? 0.4 : 0.1));
        }
        String first = "A 2026-03-02T00:15:00Z";
        String second = "B 2026-03-02T22:30:00Z";
        assertThat(collected(alarm(HOUR).over(stream(events, WatermarkStrategy.noWatermarks()), "alarm", Types.STRING)))
                .containsExactly(second, second, first, first);
        assertThat(collected(alarm(HOUR)
                        .over(
                                stream(events, WatermarkStrategy.forGenerator(context -> new Each())),
                                "alarm",
                                Types.STRING)))
                .containsExactly(first, second, second, first);
    }

    @Test
    void refusesABoundThatIsOutOfRange() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> alarm(Duration.ofDays(367)))
                .withMessage("bound must be in [0, 366] d, was PT8808H");
        assertThatIllegalArgumentException().isThrownBy(() -> alarm(Duration.ofSeconds(-1)));
    }

    @Test
    void readsALineAndSaysWhatIsWrongWithOne() {
        SiteEvent event = SiteEvent.parse("MB-01,2026-03-02T00:00:00Z,0.113,,0.2");
        assertThat(event).isEqualTo(new SiteEvent("MB-01", EpochNanos.of(START), 0.113, Double.NaN, 0.2));
        assertThat(SiteEvent.parse(event.toLine())).isEqualTo(event);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> SiteEvent.parse("MB-01,2026-03-02T00:00:00Z"))
                .withMessage("line must have 5 cells, was \"MB-01,2026-03-02T00:00:00Z\"");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> SiteEvent.parse("MB-01,yesterday,1,,"))
                .withMessage("line must be site,time,depth,velocity,rain, was \"MB-01,yesterday,1,,\"");
    }
}
