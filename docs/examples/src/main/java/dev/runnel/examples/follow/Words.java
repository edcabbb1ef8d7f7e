package dev.runnel.examples.follow;

import dev.runnel.examples.review.WholeMinutes;
import dev.runnel.hydraulics.watch.Finding;
import dev.runnel.hydraulics.watch.FindingName;
import dev.runnel.hydraulics.watch.WatchNotice;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.alarm.AlarmChange;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** What the machines tell, in words and as rows of a table. */
final class Words {
    static final List<String> ALARM =
            List.of("time_utc", "alarm", "state", "onset_utc", "highest_so_far", "highest_utc");
    static final List<String> FINDING =
            List.of("time_utc", "what", "finding", "consistent_with", "since_utc", "shape", "detail");

    private Words() {}

    static List<Object> row(String alarm, AlarmChange change) {
        return List.of(
                change.time(),
                alarm,
                words(change.state()),
                change.event().<Object>map(event -> event.onset()).orElse(""),
                change.event()
                        .<Object>map(event -> Text.significant(event.peak(), 4))
                        .orElse(""),
                change.event().<Object>map(event -> event.peakTime()).orElse(""));
    }

    static String line(String site, String alarm, AlarmChange change) {
        return change.time() + "  " + site + "  " + alarm + ": "
                + (change.state() == AlarmChange.State.NORMAL ? "returned" : "in alarm")
                + change.event()
                        .map(event -> ", since " + event.onset() + ", furthest " + Text.significant(event.peak(), 4)
                                + " at " + event.peakTime())
                        .orElse("");
    }

    static List<Object> row(WatchNotice notice) {
        Finding finding = notice.finding();
        return List.of(
                notice.time(),
                words(notice.kind()),
                finding.number(),
                names(finding),
                WholeMinutes.of(finding.since()),
                words(finding.shape()),
                finding.detail());
    }

    static String line(String site, WatchNotice notice) {
        Finding finding = notice.finding();
        return notice.time() + "  " + site + "  finding " + finding.number() + " " + words(notice.kind()) + ": "
                + names(finding) + ", since " + WholeMinutes.of(finding.since());
    }

    /** What is learned, or why nothing is, at the time when it became known. */
    static List<Object> learned(Instant time, String what, String text) {
        return List.of(time, what, "", "", "", "", text.replace('\n', ';'));
    }

    private static String names(Finding finding) {
        return finding.names().stream().map(FindingName::words).collect(Collectors.joining("; or "));
    }

    private static String words(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
