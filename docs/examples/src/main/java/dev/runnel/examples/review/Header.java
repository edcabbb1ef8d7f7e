package dev.runnel.examples.review;

import dev.runnel.timeseries.csv.CsvUnit;
import java.io.BufferedReader;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.CharBuffer;
import java.nio.charset.Charset;
import java.nio.charset.CoderResult;
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
    private static final Pattern BRACKET = Pattern.compile("[\\[(]\\s*([^\\])]+?)\\s*[\\])]\\s*$");

    private static final VarHandle EIGHT = MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);

    private static final long HIGHEST_BITS = 0x80808080_80808080L;

    /** The header must stand within that. */
    private static final int HEAD = 1 << 20;

    /** Nearly all first lines are shorter. */
    private static final int BEGINNING = 1 << 10;

    private final Path file;
    private final Charset charset;
    private final char separator;
    private final boolean hasNames;
    private final boolean hasLines;
    private final List<String> names;

    private Header(Path file, Charset charset, char separator, boolean hasNames, boolean hasLines, List<String> names) {
        this.file = file;
        this.charset = charset;
        this.separator = separator;
        this.hasNames = hasNames;
        this.hasLines = hasLines;
        this.names = names;
    }

    /** Reads the first line of a file that is no comment. */
    static Header of(Path file, Site.FileFormat format) {
        byte[] head = head(file);
        Charset charset = charset(head);
        return of(file, firstLines(file, head, charset, format.preambleLines()), format, charset);
    }

    /** Tells whether a file holds a line that is no comment; of several files one may be empty. */
    static boolean isIn(Path file, Site.FileFormat format) {
        byte[] head = head(file);
        return !firstLines(file, head, charset(head), format.preambleLines()).isEmpty();
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
        return of(file, lines, format, StandardCharsets.UTF_8);
    }

    private static Header of(Path file, List<String> lines, Site.FileFormat format, Charset charset) {
        if (lines.isEmpty()) {
            throw new IllegalArgumentException(file + ": must hold a line that names its columns, is empty");
        }
        String line = lines.get(0);
        if (line.chars().anyMatch(c -> c < ' ' && c != '\t')) {
            throw new IllegalArgumentException(file + ": file must be text, is of another kind");
        }
        char separator = format.separator().orElseGet(() -> separatorIn(line, format.isDecimalComma()));
        List<String> cells = Arrays.stream(line.split(Pattern.quote(String.valueOf(separator)), -1))
                .map(Header::plain)
                .toList();
        // A line that begins with a digit is a reading already: then columns go by their positions.
        boolean hasNames =
                cells.get(0).isEmpty() || !Character.isDigit(cells.get(0).charAt(0));
        List<String> names = hasNames ? cells : positions(cells.size());
        return new Header(file, charset, separator, hasNames, !hasNames || lines.size() > 1, names);
    }

    private static List<String> positions(int count) {
        return IntStream.rangeClosed(1, count).mapToObj(Integer::toString).toList();
    }

    /** The beginning of a file. */
    private static byte[] head(Path file) {
        try (InputStream in = Files.newInputStream(file)) {
            byte[] head = new byte[(int) Math.min(HEAD, Files.size(file))];
            int size = in.readNBytes(head, 0, head.length);
            return size == head.length ? head : Arrays.copyOf(head, size);
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read " + file, e);
        }
    }

    /** The first two lines that are no comments, as far as there are; a file of another kind may hold no line at all. */
    private static List<String> firstLines(Path file, byte[] head, Charset charset, int preamble) {
        // Only as much is decoded as is looked at: a line or two.
        var text = new BufferedReader(new InputStreamReader(new ByteArrayInputStream(head), charset));
        if (head.length == HEAD && isOneLine(head, charset)) {
            throw new IllegalArgumentException(
                    file + ": file must be text, its first line is longer than " + HEAD + " bytes");
        }
        return text.lines()
                .skip(preamble)
                .map(line -> line.startsWith("\uFEFF") ? line.substring(1) : line)
                .filter(line -> !line.isBlank() && !line.startsWith("#"))
                .limit(2)
                .toList();
    }

    private static boolean isOneLine(byte[] head, Charset charset) {
        String text = new String(head, 0, BEGINNING, charset);
        if (text.indexOf('\n') < 0 && text.indexOf('\r') < 0) {
            text = new String(head, charset);
        }
        return text.indexOf('\n') < 0 && text.indexOf('\r') < 0;
    }

    /** UTF-16 says so by its mark; else UTF-8 if the beginning of the file is that, as old loggers do not write it. */
    private static Charset charset(byte[] head) {
        boolean isMarked = head.length > 1
                && (head[0] == (byte) 0xFE && head[1] == (byte) 0xFF
                        || head[0] == (byte) 0xFF && head[1] == (byte) 0xFE);
        if (isMarked) {
            return StandardCharsets.UTF_16;
        }
        if (isAscii(head)) {
            return StandardCharsets.UTF_8;
        }
        CoderResult result = StandardCharsets.UTF_8
                .newDecoder()
                .decode(ByteBuffer.wrap(head), CharBuffer.allocate(HEAD + 1), head.length < HEAD);
        return result.isError() ? StandardCharsets.ISO_8859_1 : StandardCharsets.UTF_8;
    }

    /** As nearly every file is; this is known without a letter of it decoded, eight at a time. */
    private static boolean isAscii(byte[] head) {
        long all = 0;
        int i = 0;
        for (; i <= head.length - Long.BYTES; i += Long.BYTES) {
            all |= (long) EIGHT.get(head, i);
        }
        for (; i < head.length; i++) {
            all |= head[i];
        }
        return (all & HIGHEST_BITS) == 0;
    }

    private static char separatorIn(String line, boolean isDecimalComma) {
        char best = isDecimalComma ? ';' : ',';
        long most = 0;
        for (char mark : new char[] {';', '\t', '|', ','}) {
            long count = line.chars().filter(c -> c == mark).count();
            if (count > most && !(isDecimalComma && mark == ',')) {
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

    /** How the file is coded. */
    Charset charset() {
        return charset;
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
        Matcher bracket = BRACKET.matcher(name);
        if (bracket.find()) {
            return unit(bracket.group(1));
        }
        for (int i = 0; i < name.length(); i++) {
            if (" _/".indexOf(name.charAt(i)) >= 0) {
                Optional<CsvUnit> found = unit(name.substring(i + 1).strip());
                if (found.isPresent()) {
                    return found;
                }
            }
        }
        return Optional.empty();
    }

    private static Optional<CsvUnit> unit(String text) {
        String symbol = switch (text.toLowerCase(Locale.ROOT)) {
            case "m_per_s", "m_s", "mps" -> "m/s";
            case "mm_per_s", "mm_s" -> "mm/s";
            case "cm_per_s", "cm_s" -> "cm/s";
            case "ft_per_s", "ft_s", "fps" -> "ft/s";
            case "inch", "inches" -> "in";
            case "foot", "feet" -> "ft";
            default -> text;
        };
        return Arrays.stream(CsvUnit.values())
                .filter(unit -> unit != CsvUnit.AS_WRITTEN
                        && unit != CsvUnit.PER_CENT
                        && unit.symbol().equals(symbol))
                .findFirst();
    }
}
