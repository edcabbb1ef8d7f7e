package dev.runnel.timeseries.csv;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.csv.CsvIssue.Kind;
import java.time.DateTimeException;
import java.time.ZoneOffset;
import org.jspecify.annotations.Nullable;

/** Turns the time cells of a line into an instant, or says why not. */
final class TimeCell {
    private static final long PER_SECOND = 1_000_000_000L;
    private static final int NONE = -1;

    private final TimeText form;
    private final @Nullable LocalClock clock;
    private final String zoneName;
    private final RepeatedHour repeatedHour;
    private final IssueLog log;
    private final int time;
    private final int timeOfDay;
    private final int offset;
    private String offsetText = "Z";
    private int offsetSeconds;
    private char[] joined = new char[64];
    private long epochNanos;
    private boolean asWritten;

    TimeCell(CsvLayout.Choices choices, Header header, IssueLog log) {
        form = choices.timeForm();
        clock = choices.zone == null ? null : new LocalClock(choices.zone);
        zoneName = String.valueOf(choices.zone);
        repeatedHour = choices.repeatedHour;
        this.log = log;
        time = header.indexOf(choices.timeColumn);
        timeOfDay = choices.timeOfDayColumn.isEmpty() ? NONE : header.indexOf(choices.timeOfDayColumn);
        offset = choices.offsetColumn.isEmpty() ? NONE : header.indexOf(choices.offsetColumn);
    }

    int lastIndex() {
        return Math.max(time, Math.max(timeOfDay, offset));
    }

    long epochNanos() {
        return epochNanos;
    }

    /** Whether the instant followed from the text alone, without a choice of the layout's. */
    boolean isAsWritten() {
        return asWritten;
    }

    /**
     * Reads.
     *
     * @param after the instant of the line before
     * @param strictly whether the same instant again would be out of order
     * @return false if the line must be rejected; the reason is in the log
     */
    boolean read(long line, char[] buffer, FieldSplitter fields, long after, boolean strictly) {
        asWritten = true;
        if (!parse(buffer, fields)) {
            return reject(line, fields, Kind.UNREADABLE_TIME, "must be " + form.form() + "; rejected");
        }
        if (offset != NONE) {
            if (!parseOffset(fields)) {
                log.issue(
                        line,
                        offset + 1,
                        Kind.UNREADABLE_TIME,
                        Text.quoted(fields.text(offset)) + " must be an offset from UTC such as +01:00; rejected");
                return false;
            }
            return convert(line, fields, offsetSeconds);
        }
        if (form.hasOffset) {
            return convert(line, fields, form.offset);
        }
        if (clock == null) {
            return reject(line, fields, Kind.UNREADABLE_TIME, "has no offset and the layout no zone; rejected");
        }
        return switch (clock.resolve(form.localSecond)) {
            case ONCE -> convert(line, fields, clock.offset());
            case NEVER -> reject(line, fields, Kind.SKIPPED_TIME, "never occurred in " + zoneName + "; rejected");
            case TWICE -> decide(line, fields, clock, after, strictly);
        };
    }

    /** What local times mean, or null if the layout does not say. */
    @Nullable
    LocalClock clock() {
        return clock;
    }

    private boolean decide(long line, FieldSplitter fields, LocalClock twice, long after, boolean strictly) {
        if (repeatedHour == RepeatedHour.REJECT) {
            return reject(line, fields, Kind.AMBIGUOUS_TIME, "occurred twice in " + zoneName + "; rejected");
        }
        if (!convert(line, fields, twice.offset())) {
            return false;
        }
        boolean later = repeatedHour == RepeatedHour.LATER
                || repeatedHour == RepeatedHour.BY_ORDER && (strictly ? epochNanos <= after : epochNanos < after);
        if (later && !convert(line, fields, twice.laterOffset())) {
            return false;
        }
        asWritten = false;
        log.issue(
                line,
                time + 1,
                Kind.AMBIGUOUS_TIME,
                Text.quoted(text(fields)) + " occurred twice in " + zoneName + "; taken as the "
                        + (later ? "later" : "earlier"));
        return true;
    }

    private boolean parse(char[] buffer, FieldSplitter fields) {
        if (timeOfDay == NONE) {
            return form.parse(buffer, fields.start(time), fields.end(time));
        }
        String text = text(fields);
        if (text.length() > joined.length) {
            joined = new char[text.length()];
        }
        text.getChars(0, text.length(), joined, 0);
        return form.parse(joined, 0, text.length());
    }

    private String text(FieldSplitter fields) {
        return timeOfDay == NONE ? fields.text(time) : fields.text(time) + " " + fields.text(timeOfDay);
    }

    private boolean parseOffset(FieldSplitter fields) {
        if (!fields.is(offset, offsetText)) {
            String text = fields.text(offset);
            try {
                offsetSeconds = ZoneOffset.of(text).getTotalSeconds();
            } catch (DateTimeException e) {
                return false;
            }
            offsetText = text;
        }
        return true;
    }

    private boolean convert(long line, FieldSplitter fields, int offsetSeconds) {
        try {
            epochNanos =
                    Math.addExact(Math.multiplyExact(form.localSecond - offsetSeconds, PER_SECOND), (long) form.nano);
            return true;
        } catch (ArithmeticException e) {
            return reject(line, fields, Kind.UNREADABLE_TIME, "must be from 1677-09-21 to 2262-04-11; rejected");
        }
    }

    private boolean reject(long line, FieldSplitter fields, Kind kind, String why) {
        log.issue(line, time + 1, kind, Text.quoted(text(fields)) + " " + why);
        return false;
    }
}
