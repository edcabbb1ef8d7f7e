package dev.runnel.timeseries.csv;

import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetEncoder;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;

/** The text of a reader as UTF-8, a block at a time; half a pair of surrogates, which is no character, becomes a mark. */
final class Utf8Stream extends InputStream {
    private static final int BLOCK = 1 << 14;

    private final Reader reader;
    private final CharsetEncoder encoder = StandardCharsets.UTF_8
            .newEncoder()
            .onMalformedInput(CodingErrorAction.REPLACE)
            .replaceWith("\uFFFD".getBytes(StandardCharsets.UTF_8));
    private final CharBuffer letters = CharBuffer.allocate(BLOCK).flip();
    private final ByteBuffer bytes = ByteBuffer.allocate(4 * BLOCK).flip();
    private boolean atEnd;

    Utf8Stream(Reader reader) {
        this.reader = reader;
    }

    @Override
    public int read() throws IOException {
        return fill() ? bytes.get() & 0xFF : -1;
    }

    @Override
    public int read(byte[] target, int offset, int length) throws IOException {
        if (length == 0) {
            return 0;
        }
        if (!fill()) {
            return -1;
        }
        int count = Math.min(length, bytes.remaining());
        bytes.get(target, offset, count);
        return count;
    }

    /** Sees to it that there is a byte; false at the end of the text. */
    private boolean fill() throws IOException {
        while (!bytes.hasRemaining()) {
            if (atEnd) {
                return false;
            }
            // What is left is the first half of a pair.
            letters.compact();
            int read = reader.read(letters.array(), letters.position(), letters.remaining());
            atEnd = read < 0;
            letters.position(letters.position() + Math.max(read, 0)).flip();
            bytes.clear();
            encoder.encode(letters, bytes, atEnd);
            bytes.flip();
        }
        return true;
    }

    @Override
    public void close() throws IOException {
        reader.close();
    }
}
