package dev.runnel.examples.pages;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.zone.ZoneOffsetTransition;
import java.util.Base64;
import java.util.StringJoiner;
import java.util.zip.Deflater;
import java.util.zip.GZIPOutputStream;

/**
 * A record as the page's script reads it. Values are whole numbers of the step that is drawn; each as its difference to the
 * one before, zigzag and one up (0 is for a missing value), in bytes of seven bits, all rows one after the other,
 * compressed and written in letters. Times are runs of equal steps.
 */
final class RecordData {
    private static final long NANOS = 1_000_000_000L;
    private static final double LARGEST = 1e12;

    /** Bytes that are compressed at once. */
    private static final int PIECE = 1 << 15;

    /** No number takes more bytes. */
    private static final int LONGEST = 10;

    private RecordData() {}

    static String packed(RecordRows record) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        byte[] plain = new byte[PIECE + LONGEST];
        try (Packer zip = new Packer(bytes)) {
            int size = 0;
            for (RecordRows.Row row : record.rows()) {
                zip.write(plain, 0, size);
                size = 0;
                zip.expect(row.bars());
                long before = 0;
                for (double value : row.values()) {
                    double whole = Math.rint(value * row.factor() / row.step());
                    long number = 0;
                    if (Math.abs(whole) < LARGEST) {
                        long difference = (long) whole - before;
                        number = ((difference << 1) ^ (difference >> 63)) + 1;
                        before = (long) whole;
                    }
                    size = put(plain, size, number);
                    if (size >= PIECE) {
                        zip.write(plain, 0, size);
                        size = 0;
                    }
                }
            }
            zip.write(plain, 0, size);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return Base64.getEncoder().encodeToString(bytes.toByteArray());
    }

    /**
     * Differences of readings are noise, in which a search for what was there before finds nothing and takes ten times the
     * time; amounts are mostly zeros.
     */
    private static final class Packer extends GZIPOutputStream {
        Packer(OutputStream out) throws IOException {
            super(out, PIECE);
        }

        void expect(boolean repetition) {
            def.setStrategy(repetition ? Deflater.DEFAULT_STRATEGY : Deflater.HUFFMAN_ONLY);
        }
    }

    private static int put(byte[] out, int at, long value) {
        int end = at;
        long rest = value;
        while (rest >= 128) {
            out[end++] = (byte) (rest & 127 | 128);
            rest >>>= 7;
        }
        out[end++] = (byte) rest;
        return end;
    }

    /** Rows, clock and marks as JSON. */
    static String described(RecordRows record) {
        StringJoiner rows = new StringJoiner(",", "[", "]");
        record.rows()
                .forEach(row -> rows.add("{\"name\":" + Html.json(row.name()) + ",\"step\":" + row.step() + ",\"bars\":"
                        + row.bars() + ",\"runs\":" + runs(row.times()) + "}"));
        StringJoiner marks = new StringJoiner(",", "[", "]");
        record.marks()
                .forEach(mark -> marks.add("{\"kind\":" + Html.json(mark.kind().name()) + ",\"from\":"
                        + mark.from().getEpochSecond() + ",\"to\":" + mark.to().getEpochSecond() + ",\"row\":"
                        + Html.json(mark.row()) + ",\"number\":" + mark.number() + ",\"text\":" + Html.json(mark.text())
                        + "}"));
        return "{\"rows\":" + rows + ",\"marks\":" + marks + ",\"clock\":" + clock(record) + ",\"zone\":"
                + Html.json(record.zone().getId()) + "}";
    }

    /** Start, step and count of each run of equal steps, in seconds. */
    private static String runs(long[] times) {
        StringJoiner runs = new StringJoiner(",", "[", "]");
        int i = 0;
        while (i < times.length) {
            int first = i;
            long step = i + 1 < times.length ? times[i + 1] - times[i] : NANOS;
            while (i + 1 < times.length && times[i + 1] - times[i] == step) {
                i++;
            }
            i++;
            runs.add(seconds(times[first]) + "," + seconds(step) + "," + (i - first));
        }
        return runs.toString();
    }

    private static String seconds(long nanos) {
        return nanos % NANOS == 0 ? Long.toString(nanos / NANOS) : Double.toString(nanos / (double) NANOS);
    }

    /** From which second on the clock of the page stands so many seconds before UTC. */
    private static String clock(RecordRows record) {
        long first = Long.MAX_VALUE;
        long last = Long.MIN_VALUE;
        for (RecordRows.Row row : record.rows()) {
            if (row.times().length > 0) {
                first = Math.min(first, row.times()[0]);
                last = Math.max(last, row.times()[row.times().length - 1]);
            }
        }
        if (first > last) {
            return "[[0,0]]";
        }
        var rules = record.zone().getRules();
        Instant time = Instant.ofEpochSecond(first / NANOS);
        Instant end = Instant.ofEpochSecond(last / NANOS + 1);
        StringJoiner clock = new StringJoiner(",", "[", "]");
        ZoneOffset offset = rules.getOffset(time);
        clock.add("[" + time.getEpochSecond() + "," + offset.getTotalSeconds() + "]");
        for (ZoneOffsetTransition next = rules.nextTransition(time);
                next != null && next.getInstant().isBefore(end);
                next = rules.nextTransition(next.getInstant())) {
            clock.add("[" + next.getInstant().getEpochSecond() + ","
                    + next.getOffsetAfter().getTotalSeconds() + "]");
        }
        return clock.toString();
    }
}
