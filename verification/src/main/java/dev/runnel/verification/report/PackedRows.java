package dev.runnel.verification.report;

import dev.runnel.internal.Text;
import dev.runnel.verification.Check;
import dev.runnel.verification.Results;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.List;
import java.util.zip.GZIPOutputStream;

/**
 * Every value of a run, packed for the page: one line a value, fields parted by a unit separator, compressed and written in
 * letters. Written out, thousands of rows would make a page that is slow to open.
 */
final class PackedRows {
    private static final char PART = '\u001F';
    /** Chosen here: some lines of the page. */
    private static final int LONGEST_INPUT = 400;

    private PackedRows() {}

    /** Groups are numbered as they stand on the page, so that a row needs to name only its group. */
    static String of(List<Group> groups) {
        StringBuilder lines = new StringBuilder();
        for (int i = 0; i < groups.size(); i++) {
            for (Check check : groups.get(i).checks()) {
                lines.append(i).append(PART).append(line(check)).append('\n');
            }
        }
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (OutputStream zip = new GZIPOutputStream(bytes)) {
            zip.write(lines.toString().getBytes(StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return Base64.getEncoder().encodeToString(bytes.toByteArray());
    }

    private static String line(Check check) {
        return String.join(
                String.valueOf(PART),
                check.name(),
                check.calculation(),
                clean(check.locator()),
                shortened(clean(check.input())),
                check.printed(),
                check.computed().isEmpty()
                        ? "none"
                        : Text.significant(check.computed().getAsDouble(), 9),
                check.deviation().isEmpty()
                        ? ""
                        : Text.significant(check.deviation().getAsDouble(), 3),
                Text.significant(check.tolerance(), 3),
                clean(check.unit()),
                check.status().toString(),
                clean(check.remark()));
    }

    /** A whole record as an input would make most of the page; report.csv has all of it. */
    private static String shortened(String input) {
        return input.length() <= LONGEST_INPUT
                ? input
                : input.substring(0, LONGEST_INPUT) + "\u2026 (" + input.length() + " characters, all in report.csv)";
    }

    private static String clean(String text) {
        return text.replace('\n', ' ').replace(PART, ' ');
    }

    static List<Group> bySource(Results results) {
        return Group.by(results.checks(), check -> check.module() + "\t" + check.source());
    }
}
