package dev.runnel.examples.review;

import dev.runnel.internal.Text;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Values as the review shows them: in the units of the trade, no more digits than a monitor deserves. */
final class Show {
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ENGLISH);
    private static final DateTimeFormatter FULL = DateTimeFormatter.ofPattern("d MMM yyyy HH:mm", Locale.ENGLISH);

    /** Binds a number to its unit. */
    private static final String BOUND = String.valueOf(Page.BOUND);

    private Show() {}

    /** For example {@code 19:32}. */
    static String clock(Instant time, ZoneId zone) {
        return CLOCK.withZone(zone).format(time);
    }

    /** For example {@code 17 Oct 2026 19:32}. */
    static String timeWithYear(Instant time, ZoneId zone) {
        return FULL.withZone(zone).format(time).replace(' ', Page.BOUND);
    }

    /** For example {@code 45 s}, {@code 12 min}, {@code 3 h 20 min}, {@code 2 d 4 h}. */
    static String duration(Duration duration) {
        if (duration.compareTo(Duration.ofMinutes(2)) < 0) {
            return duration.toSeconds() % 60 == 0
                    ? duration.toMinutes() + BOUND + "min"
                    : duration.toSeconds() + BOUND + "s";
        }
        long minutes = Math.round(duration.toSeconds() / 60.0);
        if (minutes < 60) {
            return minutes + BOUND + "min";
        }
        if (minutes < 48 * 60) {
            return minutes / 60 + BOUND + "h" + (minutes % 60 == 0 ? "" : BOUND + (minutes % 60) + BOUND + "min");
        }
        long hours = Math.round(minutes / 60.0);
        return hours / 24 + BOUND + "d" + (hours % 24 == 0 ? "" : BOUND + (hours % 24) + BOUND + "h");
    }

    /** The same for files, with plain spaces. */
    static String plain(Duration duration) {
        return duration(duration).replace(Page.BOUND, ' ');
    }

    /** Hours with one decimal, without the unit. */
    static String hoursValue(Duration duration) {
        return Text.fixed(duration.toSeconds() / 3600.0, 1);
    }

    /** Hours or days with one decimal, for example {@code 13.3 h} or {@code 3.1 d}. */
    static String spell(Duration duration) {
        double hours = duration.toSeconds() / 3600.0;
        return hours < 48 ? Text.fixed(hours, 1) + BOUND + "h" : Text.fixed(hours / 24, 1) + BOUND + "d";
    }

    /** Millimetres of a depth in m. */
    static String mm(double metres) {
        return Double.isFinite(metres) ? Math.round(metres * 1000) + BOUND + "mm" : "-";
    }

    /** Litres a second of a flow in m3/s, three significant digits. */
    static String flow(double cubicMetresPerSecond) {
        return flowValue(cubicMetresPerSecond) + BOUND + "l/s";
    }

    /** The same without the unit. */
    static String flowValue(double cubicMetresPerSecond) {
        return Double.isFinite(cubicMetresPerSecond) ? significant(cubicMetresPerSecond * 1000) : "-";
    }

    /** Metres a second, two decimals. */
    static String velocity(double metresPerSecond) {
        return Text.fixed(metresPerSecond, 2) + BOUND + "m/s";
    }

    /** Cubic metres, whole from 100 on. */
    static String volume(double cubicMetres) {
        return significant(cubicMetres) + BOUND + "m3";
    }

    /** Millimetres of rain, one decimal. */
    static String rain(double mm) {
        return Double.isFinite(mm) ? Text.fixed(mm, 1) : "-";
    }

    /** Three significant digits, but never digits beyond the whole number taken away. */
    static String significant(double value) {
        if (!Double.isFinite(value)) {
            return "-";
        }
        double magnitude = Math.abs(value);
        return Text.fixed(value, magnitude >= 100 ? 0 : magnitude >= 10 ? 1 : magnitude >= 1 ? 2 : 3);
    }

    /** A share of one, as percent. */
    static String percent(double share) {
        double percent = share * 100;
        return Text.fixed(percent, percent > 0 && percent < 9.95 ? 1 : 0) + BOUND + "%";
    }

    /** For example {@code 1 day} or {@code 3 days}. */
    static String count(long count, String noun) {
        return count + BOUND + noun + (count == 1 ? "" : "s");
    }
}
