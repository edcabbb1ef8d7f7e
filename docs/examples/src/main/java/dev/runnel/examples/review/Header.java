package dev.runnel.examples.review;

import dev.runnel.timeseries.csv.CsvUnit;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/**
 * The line that names the columns of a file, and what it tells where the site file is silent: separator, columns and
 * units. Nothing is guessed from the numbers.
 */
public final class Header {
    private static final Pattern UNIT =
            Pattern.compile("(?:[\\[(]\\s*([^\\])]+?)\\s*[\\])]|[ _/]([a-z][a-z_/]*))\\s*$");

    /** Of UTF-8, read as bytes. */
    private static final String BYTE_ORDER_MARK = "\u00EF\u00BB\u00BF";

    /** The header must stand within that. */
    private static final int HEAD = 1 << 20;

    private final Path file;
    private final char separator;
    private final boolean hasNames;
    private final boolean hasLines;
    private final List<String> names;

    private Header(Path file, char separator, boolean hasNames, boolean hasLines, List<String> names) {
        this.file = file;
        this.separator = separator;
        this.hasNames = hasNames;
        this.hasLines = hasLines;
        this.names = names;
    }

    /** Reads the first line of a file that is no comment. */
    static Header of(Path file, Site.FileFormat format) {
        return of(file, firstLines(file, format.preambleLines()), format);
    }

    /**
     * Reads a header from the first lines of a file.
     *
     * @param file the file, for messages
     * @param lines its first lines that are no comments, the header first
     * @param format how the file is written
     * @return the header
     * @throws IllegalArgumentException if there is none
     */
    public static Header of(Path file, List<String> lines, Site.FileFormat format) {
        if (lines.isEmpty()) {
            throw new IllegalArgumentException(file + ": must hold a line that names its columns, is empty");
        }
        String line = lines.get(0);
        if (line.chars().anyMatch(c -> c < ' ' && c != '\t')) {
            throw new IllegalArgumentException(file + ": file must be text, is of another kind");
        }
        char separator = format.separator().orElseGet(() -> separatorIn(line));
        List<String> cells = Arrays.stream(line.split(Pattern.quote(String.valueOf(separator)), -1))
                .map(Header::plain)
                .toList();
        // A line that begins with a digit is a reading already: then columns go by their positions.
        boolean hasNames =
                cells.get(0).isEmpty() || !Character.isDigit(cells.get(0).charAt(0));
        List<String> names = hasNames ? cells : positions(cells.size());
        return new Header(file, separator, hasNames, !hasNames || lines.size() > 1, names);
    }

    private static List<String> positions(int count) {
        return IntStream.rangeClosed(1, count).mapToObj(Integer::toString).toList();
    }

    /** The first two lines that are no comments, as far as there are; a file of another kind may hold no line at all. */
    private static List<String> firstLines(Path file, int preamble) {
        byte[] head;
        try (InputStream in = Files.newInputStream(file)) {
            head = in.readNBytes(HEAD);
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read " + file, e);
        }
        String text = new String(head, charset(head));
        if (head.length == HEAD && text.indexOf('\n') < 0 && text.indexOf('\r') < 0) {
            throw new IllegalArgumentException(
                    file + ": file must be text, its first line is longer than " + HEAD + " bytes");
        }
        return text.lines()
                .skip(preamble)
                .map(line -> line.startsWith(BYTE_ORDER_MARK) ? line.substring(BYTE_ORDER_MARK.length()) : line)
                .filter(line -> !line.isBlank() && !line.startsWith("#"))
                .limit(2)
                .toList();
    }

    /** UTF-16 says so by its mark; else bytes one by one: whether they are text is for the reader of the records to say. */
    private static Charset charset(byte[] head) {
        boolean isMarked = head.length > 1
                && (head[0] == (byte) 0xFE && head[1] == (byte) 0xFF
                        || head[0] == (byte) 0xFF && head[1] == (byte) 0xFE);
        return isMarked ? StandardCharsets.UTF_16 : StandardCharsets.ISO_8859_1;
    }

    private static char separatorIn(String line) {
        char best = ',';
        long most = 0;
        for (char mark : new char[] {';', '\t', '|', ','}) {
            long count = line.chars().filter(c -> c == mark).count();
            if (count > most) {
                best = mark;
                most = count;
            }
        }
        return best;
    }

    private static String plain(String cell) {
        String text = cell.strip();
        return text.length() > 1 && text.startsWith("\"") && text.endsWith("\"")
                ? text.substring(1, text.length() - 1).strip()
                : text;
    }

    char separator() {
        return separator;
    }

    /**
     * Tells whether the line names columns and is no reading.
     *
     * @return true if it does
     */
    public boolean hasNames() {
        return hasNames;
    }

    List<String> names() {
        return names;
    }

    /** Tells whether any line follows that is no comment. */
    boolean hasLines() {
        return hasLines;
    }

    String first() {
        return names.get(0);
    }

    /** Returns the one column whose name holds one of some words, other than those already taken. */
    Optional<String> columnLike(List<String> words, List<String> taken) {
        List<String> found = others(taken).stream()
                .filter(name -> words.stream().anyMatch(name.toLowerCase(Locale.ROOT)::contains))
                .toList();
        return found.size() == 1 ? Optional.of(found.get(0)) : Optional.empty();
    }

    /** Returns the column that holds what is wanted, by its name or because there is no other. */
    String column(String what, List<String> words, List<String> taken) {
        List<String> others = others(taken);
        return columnLike(words, taken).orElseGet(() -> {
            if (others.size() == 1) {
                return others.get(0);
            }
            throw new IllegalArgumentException(file + ": no column is known to hold " + what + ", the columns are "
                    + names + ": add \"" + what + " column = ...\" to " + SiteFile.NAME);
        });
    }

    /** The columns other than those already taken. */
    List<String> others(List<String> taken) {
        return names.stream().filter(name -> !taken.contains(name)).toList();
    }

    /** Returns the unit that the name of a column ends with. */
    static Optional<CsvUnit> unitIn(String name) {
        Matcher matcher = UNIT.matcher(name);
        if (!matcher.find()) {
            return Optional.empty();
        }
        String text = matcher.group(1) != null ? matcher.group(1) : matcher.group(2);
        String symbol = switch (text.toLowerCase(Locale.ROOT)) {
            case "m_per_s", "m_s", "mps" -> "m/s";
            case "mm_per_s", "mm_s" -> "mm/s";
            case "cm_per_s", "cm_s" -> "cm/s";
            case "ft_per_s", "ft_s", "fps" -> "ft/s";
            default -> text;
        };
        return Arrays.stream(CsvUnit.values())
                .filter(unit -> unit != CsvUnit.AS_WRITTEN && unit.symbol().equals(symbol))
                .findFirst();
    }
}
