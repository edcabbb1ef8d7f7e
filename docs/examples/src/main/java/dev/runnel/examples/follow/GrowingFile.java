package dev.runnel.examples.follow;

import dev.runnel.internal.StateText;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;

/**
 * A file of lines that grows at its end, read as far as its last line feed. Knows how many bytes it has taken and sums over
 * the first and the last of them, so that it sees when the file is another one.
 */
final class GrowingFile {
    /** Usual length of a part. */
    static final int PART = 1 << 18;

    private static final String STATE = "growing-file";
    private static final int SUMMED = 1024;

    /**
     * Whole lines.
     *
     * @param text the lines with their ends
     * @param linesBefore lines of the file before them
     * @param bytes bytes they take in the file
     */
    record Part(String text, long linesBefore, int bytes) {}

    private final Path path;
    private long offset;
    private long lines;
    private int headLength;
    private String sums = "";
    private boolean isGone;

    GrowingFile(Path path) {
        this.path = path;
    }

    GrowingFile(Path path, String state) {
        this(path);
        StateText text = StateText.parse(STATE, 1, state);
        offset = text.count("offset");
        lines = text.count("lines");
        headLength = text.index("head");
        sums = text.text("sums");
        isGone = text.flag("gone");
    }

    String toState() {
        return StateText.of(STATE, 1)
                .with("offset", offset)
                .with("lines", lines)
                .with("head", headLength)
                .with("sums", sums)
                .with("gone", isGone)
                .toString();
    }

    Path path() {
        return path;
    }

    boolean isBegun() {
        return offset > 0;
    }

    long rest(long limit) {
        return Math.max(0, limit - offset);
    }

    /** Looks how far the file reaches. A text is returned if it is not the file that it was; it then begins anew. */
    Optional<String> look() {
        try {
            if (!Files.exists(path)) {
                boolean isNews = offset > 0 && !isGone;
                isGone = true;
                return isNews ? Optional.of("the file is gone; it is read again when it is there") : Optional.empty();
            }
            isGone = false;
            if (!Files.isRegularFile(path)) {
                throw new IllegalArgumentException(path + ": must be a file, and is a folder or a device");
            }
            if (offset == 0) {
                return Optional.empty();
            }
            long size = Files.size(path);
            if (size < offset) {
                return Optional.of(again("the file was shortened from " + offset + " to " + size + " bytes"));
            }
            return sums().equals(sums) ? Optional.empty() : Optional.of(again("the file was replaced by another one"));
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read " + path, e);
        }
    }

    private String again(String what) {
        offset = 0;
        lines = 0;
        headLength = 0;
        sums = "";
        return what + "; it is read from its beginning";
    }

    long size() {
        try {
            return isGone || !Files.exists(path) ? 0 : Files.size(path);
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read " + path, e);
        }
    }

    /**
     * Returns the next whole lines, if there are any.
     *
     * @param limit bytes of the file that may be looked at
     * @param longest most bytes of a part, and so of a line; even
     * @param isAll whether what stands behind the last line feed is a line too
     */
    Optional<Part> next(long limit, int longest, boolean isAll) {
        int length = (int) Math.min(longest, limit - offset);
        if (length <= 0) {
            return Optional.empty();
        }
        try {
            byte[] bytes = bytes(offset, length);
            Charset charset = charset();
            int end = endOfLines(bytes, charset);
            if (end == 0 && isAll && bytes.length < longest) {
                end = bytes.length;
            }
            if (end == 0) {
                if (bytes.length == longest && bytes[longest - 1] != 0) {
                    throw new IllegalArgumentException(
                            path + ", line " + (lines + 1) + ": a line must be shorter than " + PART + " bytes");
                }
                return Optional.empty();
            }
            return Optional.of(new Part(text(bytes, end, charset), lines, end));
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read " + path, e);
        }
    }

    /** Says that a part was taken. */
    void took(Part part) {
        try {
            offset += part.bytes();
            lines += part.text().lines().count();
            headLength = (int) Math.min(SUMMED, offset);
            sums = sums();
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read " + path, e);
        }
    }

    /** Sums over the first bytes and over the last ones that were taken. */
    private String sums() throws IOException {
        int tail = (int) Math.min(SUMMED, offset);
        return StateFile.sum(bytes(0, headLength)) + StateFile.sum(bytes(offset - tail, tail));
    }

    private byte[] bytes(long from, int length) throws IOException {
        ByteBuffer buffer = ByteBuffer.allocate(length);
        try (FileChannel channel = FileChannel.open(path, StandardOpenOption.READ)) {
            channel.position(from);
            while (buffer.hasRemaining() && channel.read(buffer) >= 0) {
                // Goes on until all is there or the file ends.
            }
        }
        byte[] found = new byte[buffer.position()];
        buffer.flip().get(found);
        return found;
    }

    /** UTF-16 tells itself by its first two bytes; all else is read as UTF-8. */
    private Charset charset() throws IOException {
        byte[] mark = bytes(0, 2);
        if (mark.length == 2 && mark[0] == (byte) 0xFE && mark[1] == (byte) 0xFF) {
            return StandardCharsets.UTF_16BE;
        }
        return mark.length == 2 && mark[0] == (byte) 0xFF && mark[1] == (byte) 0xFE
                ? StandardCharsets.UTF_16LE
                : StandardCharsets.UTF_8;
    }

    /** Old loggers do not write UTF-8: a line that is none is read by ISO 8859-1, whatever part it was read with. */
    private static String text(byte[] bytes, int end, Charset charset) {
        if (!charset.equals(StandardCharsets.UTF_8)) {
            return new String(bytes, 0, end, charset);
        }
        String whole = new String(bytes, 0, end, charset);
        if (whole.indexOf('\uFFFD') < 0) {
            return whole;
        }
        StringBuilder text = new StringBuilder();
        for (int from = 0; from < end; ) {
            int to = from;
            while (to < end && bytes[to] != '\n') {
                to++;
            }
            to = Math.min(end, to + 1);
            String line = new String(bytes, from, to - from, StandardCharsets.UTF_8);
            text.append(
                    line.indexOf('\uFFFD') < 0
                            ? line
                            : new String(bytes, from, to - from, StandardCharsets.ISO_8859_1));
            from = to;
        }
        return text.toString();
    }

    private static int endOfLines(byte[] bytes, Charset charset) {
        if (charset.equals(StandardCharsets.UTF_8)) {
            int at = bytes.length - 1;
            while (at >= 0 && bytes[at] != '\n') {
                at--;
            }
            return at + 1;
        }
        int feed = charset.equals(StandardCharsets.UTF_16LE) ? 0 : 1;
        for (int at = bytes.length / 2 * 2 - 2; at >= 0; at -= 2) {
            if (bytes[at + feed] == '\n' && bytes[at + 1 - feed] == 0) {
                return at + 2;
            }
        }
        return 0;
    }
}
