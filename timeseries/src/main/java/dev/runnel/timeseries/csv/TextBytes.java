package dev.runnel.timeseries.csv;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.PushbackInputStream;
import java.io.Reader;
import java.nio.charset.Charset;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;

/**
 * Bytes of text in a charset in which a byte below 128 is always that character of ASCII, and nothing else is: lines and
 * fields can be cut before anything is decoded. Text in another charset is turned into UTF-8 as it is read.
 */
record TextBytes(InputStream stream, Charset charset) implements AutoCloseable {
    /** Opens a file, whose first bytes may say that it is UTF-16, whatever the layout says. */
    static TextBytes of(InputStream in, Charset otherwise) throws IOException {
        PushbackInputStream peeked = new PushbackInputStream(in, 2);
        byte[] mark = peeked.readNBytes(2);
        boolean two = mark.length == 2;
        Charset charset = otherwise;
        if (two && mark[0] == (byte) 0xFE && mark[1] == (byte) 0xFF) {
            charset = StandardCharsets.UTF_16BE;
        } else if (two && mark[0] == (byte) 0xFF && mark[1] == (byte) 0xFE) {
            charset = StandardCharsets.UTF_16LE;
        } else {
            peeked.unread(mark);
        }
        if (isAsciiBelow(charset)) {
            return new TextBytes(peeked, charset);
        }
        CharsetDecoder decoder = charset.newDecoder()
                .onMalformedInput(CodingErrorAction.REPLACE)
                .onUnmappableCharacter(CodingErrorAction.REPLACE);
        return of(new InputStreamReader(peeked, decoder));
    }

    /** Takes text from a reader, which is read no further than is asked for. */
    static TextBytes of(Reader reader) {
        return new TextBytes(new Utf8Stream(reader), StandardCharsets.UTF_8);
    }

    static TextBytes of(String text) {
        return new TextBytes(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)), StandardCharsets.UTF_8);
    }

    /** By name, since of a charset it cannot be asked; those of one byte a letter that people have, and UTF-8. */
    private static boolean isAsciiBelow(Charset charset) {
        String name = charset.name();
        return charset.equals(StandardCharsets.UTF_8)
                || charset.equals(StandardCharsets.US_ASCII)
                || name.startsWith("ISO-8859-")
                || name.startsWith("windows-125");
    }

    @Override
    public void close() throws IOException {
        stream.close();
    }
}
