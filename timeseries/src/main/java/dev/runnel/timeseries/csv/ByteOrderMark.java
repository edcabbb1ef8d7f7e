package dev.runnel.timeseries.csv;

import java.io.IOException;
import java.io.InputStream;
import java.io.PushbackInputStream;
import java.io.Reader;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;

/** Opens text whose first bytes may say that it is UTF-16, whatever the layout says. */
final class ByteOrderMark {
    private ByteOrderMark() {}

    static Reader reader(InputStream in, Charset otherwise) throws IOException {
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
        return AsciiReader.of(peeked, charset);
    }
}
