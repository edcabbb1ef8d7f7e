package dev.runnel.timeseries.csv;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.DateTimeParseException;
import java.time.format.ResolverStyle;
import java.time.temporal.TemporalAccessor;
import java.time.temporal.TemporalQueries;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Times in a form of the caller's, by a java.time pattern. */
final class PatternTime extends TimeText {
    private final String pattern;
    private final DateTimeFormatter formatter;
    private final @Nullable FixedFields shortCut;

    PatternTime(String pattern) {
        this.pattern = pattern;
        this.formatter = formatter(pattern);
        this.shortCut = FixedFields.of(pattern);
    }

    /**
     * Returns the strict formatter of a pattern. The strict calendar knows years only with an era, so the y that people
     * write is read as the u they mean; without strictness 31/02 would silently become the 28th.
     */
    static DateTimeFormatter formatter(String pattern) {
        StringBuilder proleptic = new StringBuilder();
        boolean quoted = false;
        for (char c : pattern.toCharArray()) {
            quoted ^= c == '\'';
            proleptic.append(c == 'y' && !quoted ? 'u' : c);
        }
        DateTimeFormatter formatter;
        try {
            formatter = new DateTimeFormatterBuilder()
                    .parseCaseInsensitive()
                    .appendPattern(proleptic.toString())
                    .toFormatter(Locale.ENGLISH)
                    .withResolverStyle(ResolverStyle.STRICT);
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException(
                    "pattern must be one of java.time such as dd/MM/yyyy HH:mm, was " + pattern, e);
        }
        return formatter;
    }

    @Override
    boolean parse(char[] text, int from, int to) {
        if (shortCut != null && shortCut.parse(text, from, to)) {
            localSecond = shortCut.localSecond();
            nano = 0;
            hasOffset = false;
            offset = 0;
            return true;
        }
        TemporalAccessor parsed;
        try {
            parsed = formatter.parse(new String(text, from, to - from));
        } catch (DateTimeParseException e) {
            return false;
        }
        LocalDate date = parsed.query(TemporalQueries.localDate());
        if (date == null) {
            return false;
        }
        LocalTime time = parsed.query(TemporalQueries.localTime());
        ZoneOffset zoneOffset = parsed.query(TemporalQueries.offset());
        localSecond = date.toEpochDay() * 86_400 + (time == null ? 0 : time.toSecondOfDay());
        nano = time == null ? 0 : time.getNano();
        hasOffset = zoneOffset != null;
        offset = zoneOffset == null ? 0 : zoneOffset.getTotalSeconds();
        return true;
    }

    @Override
    String form() {
        return pattern;
    }
}
