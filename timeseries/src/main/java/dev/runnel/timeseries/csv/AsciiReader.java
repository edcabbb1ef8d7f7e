package dev.runnel.timeseries.csv;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.SequenceInputStream;
import java.nio.charset.Charset;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Reads a file of which nearly all is ASCII: such bytes are characters as they stand, copied by the block. From the first
 * block on that holds another byte, a decoder proper takes over.
 */
final class AsciiReader extends Reader {
    /** Charsets in which a byte below 128 is always that character of ASCII. */
    private static final Set<Charset> ASCII_BELOW =
            Set.of(StandardCharsets.UTF_8, StandardCharsets.US_ASCII, StandardCharsets.ISO_8859_1);

    private static final int BLOCK = 1 << 16;
    private static final byte[] MARK = {(byte) 0xEF, (byte) 0xBB, (byte) 0xBF};

    private final InputStream stream;
    private final Charset charset;
    private final byte[] block = new byte[BLOCK];
    private boolean atStart = true;
    private @Nullable Reader decoder;

    private AsciiReader(InputStream stream, Charset charset) {
        this.stream = stream;
        this.charset = charset;
    }

    /** A reader that replaces what cannot be decoded, as the decoder of the charset would. */
    static Reader of(InputStream stream, Charset charset) {
        return ASCII_BELOW.contains(charset) ? new AsciiReader(stream, charset) : decoder(stream, charset);
    }

    private static Reader decoder(InputStream stream, Charset charset) {
        CharsetDecoder decoder = charset.newDecoder()
                .onMalformedInput(CodingErrorAction.REPLACE)
                .onUnmappableCharacter(CodingErrorAction.REPLACE);
        return new InputStreamReader(stream, decoder);
    }

    @Override
    public int read(char[] target, int offset, int length) throws IOException {
        if (decoder != null) {
            return decoder.read(target, offset, length);
        }
        if (length < 1) {
            return 0;
        }
        int count = stream.read(block, 0, Math.min(length, BLOCK));
        if (count < 0) {
            return -1;
        }
        int from = 0;
        int to = offset;
        if (atStart && charset.equals(StandardCharsets.UTF_8) && startsWithMark(count)) {
            // The mark of the byte order, which spreadsheets put there, is no reason to decode the whole file.
            target[to++] = '\uFEFF';
            from = MARK.length;
        }
        atStart = false;
        if (!isAscii(from, count)) {
            Reader rest = decoder(new SequenceInputStream(new ByteArrayInputStream(block, 0, count), stream), charset);
            decoder = rest;
            return rest.read(target, offset, length);
        }
        new String(block, from, count - from, StandardCharsets.ISO_8859_1).getChars(0, count - from, target, to);
        return count - from + (to - offset);
    }

    private boolean startsWithMark(int count) {
        return count >= MARK.length && block[0] == MARK[0] && block[1] == MARK[1] && block[2] == MARK[2];
    }

    private boolean isAscii(int from, int to) {
        int all = 0;
        for (int i = from; i < to; i++) {
            all |= block[i];
        }
        return all >= 0;
    }

    @Override
    public void close() throws IOException {
        stream.close();
    }
}
