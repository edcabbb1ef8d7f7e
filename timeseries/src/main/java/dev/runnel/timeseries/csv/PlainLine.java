package dev.runnel.timeseries.csv;

import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.csv.RecordTable.Row;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Reads in one go a line that is as plain as nearly all lines are: an ISO time to the minute or second, with or without Z,
 * decimal numbers of few digits or nothing in the columns asked for, no quote and no blank, as many fields as the header
 * has. Whatever is not so is left to the general way, which also words the complaints; where this one succeeds, the other
 * gives the same. It saves cutting each line into fields first, two thirds of the time.
 */
final class PlainLine {
    /** Roles of a field beside those of the value columns, which are 0 and more. */
    private static final int TIME = -1;

    private static final int UNUSED = -2;

    /** Whole numbers up to here are doubles without rounding, and so are the powers of ten that may divide them. */
    private static final int MOST_DIGITS = 15;

    private static final double[] POWERS_OF_TEN = {
        1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15
    };
    private static final VarHandle EIGHT = MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);

    private static final char FIRST_BEYOND_ASCII = 128;

    /** Letters of a time to the minute, and to the second. */
    private static final int TO_MINUTE = 16;

    private static final int TO_SECOND = 19;

    /** Of the eight letters from the day on, such as "01T12:30", those of the day and what ends it. */
    private static final int DAY_BITS = 24;

    private static final long DAY_AND_MARK = (1L << DAY_BITS) - 1;

    /** Takes "00:00" from five letters, so that digits become numbers and the colon nothing. */
    private static final long ZERO_TIME = 0x30303A3030L;

    private static final long NOT_DIGITS = 0xF0F0FFF0F0L;

    /** Makes sixteen or more of what is more than nine. */
    private static final long SIX = 0x0606000606L;

    private static final byte UNCHECKED = Quality.UNCHECKED.toCode();
    private static final byte MISSING = Quality.MISSING.toCode();

    private final byte separator;
    private final int[] roles;
    private final CsvUnit[] units;
    private final String[] missingMarks;
    private final Calendar calendar = new Calendar();
    private final Row row;
    private final boolean[] asWritten;
    private final byte commentMark;
    private long lastMonth;
    private long lastDayOfMonth;
    private long lastDay;
    private long localSecond;
    private boolean isUtc;
    private double number;

    private PlainLine(CsvLayout.Choices choices, Header header) {
        separator = (byte) choices.separator;
        commentMark = (byte) choices.commentMark;
        roles = new int[header.size()];
        Arrays.fill(roles, UNUSED);
        roles[header.indexOf(choices.timeColumn)] = TIME;
        List<CsvColumn> columns = choices.columns;
        units = new CsvUnit[columns.size()];
        asWritten = new boolean[units.length];
        for (int i = 0; i < units.length; i++) {
            units[i] = columns.get(i).unit();
            asWritten[i] = units[i].isAsWritten();
            roles[header.indexOf(columns.get(i).header())] = i;
        }
        // Other marks are not decimals, and their line is left to the general way.
        missingMarks = choices.missingMarks.stream()
                .filter(mark -> mark.matches("[-0-9.]+"))
                .toArray(String[]::new);
        row = Row.ofSize(units.length);
    }

    /** The reader of plain lines, or null if the layout asks for more than those have. */
    static @Nullable PlainLine of(CsvLayout.Choices choices, Header header) {
        boolean isPlain = choices.header
                && choices.timePattern.isEmpty()
                && choices.timeNumber == null
                && choices.timeOfDayColumn.isEmpty()
                && choices.offsetColumn.isEmpty()
                && !choices.decimalComma
                && "0123456789+-.:TZ".indexOf(choices.separator) < 0
                && choices.separator < FIRST_BEYOND_ASCII
                && choices.commentMark < FIRST_BEYOND_ASCII;
        for (CsvColumn column : choices.columns) {
            // A column that serves twice has no single role.
            isPlain &= column.qualityHeader().isEmpty() && !column.header().equals(choices.timeColumn);
        }
        long different =
                choices.columns.stream().map(CsvColumn::header).distinct().count();
        return isPlain && different == choices.columns.size() ? new PlainLine(choices, header) : null;
    }

    /** Reads from a place on; returns where the line ends, or -1 if it is not plain or does not end before {@code to}. */
    int read(byte[] line, int from, int to) {
        int at = from;
        if (at == to || line[at] == commentMark) {
            return -1;
        }
        for (int field = 0; field < roles.length; field++) {
            if (field > 0) {
                if (at == to || line[at] != separator) {
                    return -1;
                }
                at++;
            }
            int role = roles[field];
            if (role == UNUSED) {
                at = skip(line, at, to);
            } else if (role == TIME) {
                at = time(line, at, to);
            } else {
                int start = at;
                at = decimal(line, at, to);
                if (at >= 0) {
                    take(line, role, start, at);
                }
            }
            if (at < 0) {
                return -1;
            }
        }
        return at < to && (line[at] == '\n' || line[at] == '\r') ? at : -1;
    }

    private void take(byte[] text, int column, int start, int end) {
        if (start == end || missingMarks.length > 0 && isMissing(text, start, end)) {
            row.values()[column] = Double.NaN;
            row.qualities()[column] = MISSING;
        } else {
            row.values()[column] = asWritten[column] ? number : units[column].toSi(number);
            row.qualities()[column] = UNCHECKED;
        }
    }

    private boolean isMissing(byte[] text, int start, int end) {
        for (String mark : missingMarks) {
            int length = mark.length();
            if (length == end - start) {
                int i = 0;
                while (i < length && text[start + i] == mark.charAt(i)) {
                    i++;
                }
                if (i == length) {
                    return true;
                }
            }
        }
        return false;
    }

    private int skip(byte[] text, int from, int to) {
        int at = from;
        while (at < to && text[at] != separator && text[at] != '\n' && text[at] != '\r') {
            // A quote may hide a separator, and a character of code 0 is told of.
            if (text[at] == '"' || text[at] == 0) {
                return -1;
            }
            at++;
        }
        return at;
    }

    /** Sign, digits, point, digits; nothing is a number too, a missing one. Returns where it ends, or -1. */
    private int decimal(byte[] text, int from, int to) {
        int at = from;
        boolean negative = at < to && text[at] == '-';
        if (negative) {
            at++;
        }
        long digits = 0;
        int point = -1;
        int start = at;
        while (at < to) {
            int digit = text[at] - '0';
            if (digit >= 0 && digit <= 9) {
                digits = digits * 10 + digit;
            } else if (text[at] == '.' && point < 0) {
                point = at;
            } else {
                break;
            }
            at++;
        }
        // Of more digits the sum is nonsense, which nobody reads.
        if (at - start > MOST_DIGITS) {
            return -1;
        }
        int count = at - start - (point < 0 ? 0 : 1);
        if (count == 0) {
            return at == from ? at : -1;
        }
        int decimals = point < 0 ? 0 : at - point - 1;
        double value = digits / POWERS_OF_TEN[decimals];
        number = negative ? -value : value;
        return at;
    }

    /** Returns where the time ends, or -1. Eight letters are looked at in one go; dates are those of the line before. */
    private int time(byte[] text, int from, int to) {
        if (to - from < TO_SECOND + 1) {
            return -1;
        }
        long month = (long) EIGHT.get(text, from);
        long rest = (long) EIGHT.get(text, from + 8);
        if ((month != lastMonth || (rest & DAY_AND_MARK) != lastDayOfMonth) && !date(text, from, month, rest)) {
            return -1;
        }
        long clock = (rest >>> DAY_BITS) ^ ZERO_TIME;
        if (((clock | clock + SIX) & NOT_DIGITS) != 0) {
            return -1;
        }
        int hour = (int) (clock & 0xF) * 10 + (int) (clock >> 8 & 0xF);
        int minute = (int) (clock >> 24 & 0xF) * 10 + (int) (clock >> 32 & 0xF);
        int at = from + TO_MINUTE;
        int second = 0;
        if (text[at] == ':') {
            second = two(text, at + 1);
            at = from + TO_SECOND;
        }
        if ((second | 23 - hour | 59 - minute | 59 - second) < 0) {
            return -1;
        }
        isUtc = text[at] == 'Z';
        if (isUtc) {
            at++;
        }
        localSecond = lastDay * 86_400 + hour * 3600L + minute * 60L + second;
        return at;
    }

    /** Lines come by the hundred from one day: its letters are compared before they are read. */
    private boolean date(byte[] text, int from, long letters, long rest) {
        if (text[from + 4] != '-' || text[from + 7] != '-' || text[from + 10] != 'T' && text[from + 10] != ' ') {
            return false;
        }
        int century = two(text, from);
        int ofCentury = two(text, from + 2);
        int month = two(text, from + 5);
        int day = two(text, from + 8);
        if ((century | ofCentury | month | day) < 0) {
            return false;
        }
        long date = calendar.epochDay(century * 100 + ofCentury, month, day);
        if (date == Calendar.NO_DAY) {
            return false;
        }
        lastDay = date;
        lastMonth = letters;
        lastDayOfMonth = rest & DAY_AND_MARK;
        return true;
    }

    /** Two digits, negative if they are none; one branch instead of four. */
    private static int two(byte[] text, int at) {
        int tens = text[at] - '0';
        int ones = text[at + 1] - '0';
        return (tens | ones | 9 - tens | 9 - ones) < 0 ? -1 : tens * 10 + ones;
    }

    long localSecond() {
        return localSecond;
    }

    boolean isUtc() {
        return isUtc;
    }

    /** The values of the line read last, which the next line overwrites. */
    Row row() {
        return row;
    }
}
