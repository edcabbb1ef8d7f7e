package dev.runnel.verification.calculation;

import dev.runnel.internal.StateText;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.alarm.AlarmEvent;
import dev.runnel.timeseries.alarm.AlarmMonitor;
import dev.runnel.timeseries.alarm.ThresholdAlarm;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/** Threshold alarms over records with gaps, as a whole or reading by reading: when, how high, and what was not seen. */
final class AlarmBookCalculations {
    private static final Instant START = Instant.parse("2001-01-01T00:00:00Z");
    private static final double NO_READING = -9999;
    private static final String RULE =
            "minutes values high limit deadband on_delay_minutes off_delay_minutes gap_minutes";

    private AlarmBookCalculations() {}

    static List<Calculation> all() {
        return List.of(
                book("onset", event -> minutes(event.onset())),
                book("activation", event -> minutes(event.activation())),
                book("peak", AlarmEvent::peak),
                book("peak-time", event -> minutes(event.peakTime())),
                book(
                        "cleared",
                        event -> event.cleared()
                                .map(AlarmBookCalculations::minutes)
                                .orElse(-1.0)),
                book(
                        "returned",
                        event -> event.returned()
                                .map(AlarmBookCalculations::minutes)
                                .orElse(-1.0)),
                book("unobserved", event -> event.unobserved().toSeconds() / 60.0),
                book(
                        "length",
                        event -> event.interval()
                                .map(Interval::duration)
                                .map(length -> length.toSeconds() / 60.0)
                                .orElse(-1.0)),
                kept("readings"),
                kept("unusable"),
                kept("gaps"));
    }

    private static Calculation book(String name, ToDoubleFunction<AlarmEvent> measure) {
        return Calculation.of(
                "timeseries", "alarm.book." + name, "as asked", RULE + " way", in -> Books.sum(events(in), measure));
    }

    /** A count that the monitor keeps, after all readings came in one array. */
    private static Calculation kept(String key) {
        return Calculation.of("timeseries", "alarm.kept." + key, "1", RULE, in -> {
            AlarmMonitor monitor = rule(in).start();
            double[] minutes = in.sample("minutes");
            long[] times = new long[minutes.length];
            double[] values = in.sample("values");
            for (int i = 0; i < times.length; i++) {
                times[i] = Math.round(minutes[i] * 60e9);
                values[i] = values[i] == NO_READING ? Double.NaN : values[i];
            }
            int changed = monitor.next(times, values, 0, times.length);
            while (changed >= 0) {
                changed = monitor.next(times, values, changed + 1, times.length);
            }
            return StateText.parse("threshold-alarm", 1, monitor.state().toText())
                    .count(key);
        });
    }

    private static List<AlarmEvent> events(Inputs in) {
        double[] minutes = in.sample("minutes");
        double[] values = in.sample("values");
        List<Reading> readings = new ArrayList<>();
        for (int i = 0; i < minutes.length; i++) {
            boolean isMissing = values[i] == NO_READING;
            readings.add(new Reading(
                    START.plus(Duration.ofSeconds(Math.round(60 * minutes[i]))),
                    isMissing ? Double.NaN : values[i],
                    isMissing ? Quality.MISSING : Quality.UNCHECKED));
        }
        if (!"whole".equals(in.text("way"))) {
            // Told when it begins and when it ends; the last may be active still.
            List<AlarmEvent> told = Books.answers(rule(in), readings, "cut".equals(in.text("way")));
            return IntStream.range(0, told.size())
                    .filter(i -> i == told.size() - 1 || !told.get(i).isActive())
                    .mapToObj(told::get)
                    .toList();
        }
        return rule(in).events(Series.of(readings));
    }

    /** What is 0 is left as it comes. */
    private static ThresholdAlarm rule(Inputs in) {
        double limit = in.number("limit");
        ThresholdAlarm rule = in.number("high") > 0 ? ThresholdAlarm.high(limit) : ThresholdAlarm.low(limit);
        if (in.number("deadband") > 0) {
            rule = rule.withDeadband(in.number("deadband"));
        }
        if (in.number("on_delay_minutes") > 0) {
            rule = rule.withOnDelay(length(in, "on_delay_minutes"));
        }
        if (in.number("off_delay_minutes") > 0) {
            rule = rule.withOffDelay(length(in, "off_delay_minutes"));
        }
        return in.number("gap_minutes") > 0 ? rule.withMaximumGap(length(in, "gap_minutes")) : rule;
    }

    private static Duration length(Inputs in, String name) {
        return Duration.ofSeconds(Math.round(60 * in.number(name)));
    }

    private static double minutes(Instant time) {
        return Duration.between(START, time).toSeconds() / 60.0;
    }
}
