package dev.runnel.verification.report;

import dev.runnel.internal.Text;
import dev.runnel.verification.Check;
import dev.runnel.verification.Results;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.List;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.zip.GZIPOutputStream;

/**
 * Every value of a run, packed for the page, compressed and written in letters. Written out, thousands of rows would make a
 * page that is slow to open.
 *
 * <p>First how many rows each group of the page has, then column by column, since like stands beside like then; and what
 * repeats is left out: of a name what the row above says, of an input what it begins with as the row above does, of a
 * computed value all of it where it is the expected one to the digits shown, of a tolerance the digits where it is a usual share
 * of the expected value. {@code report.js} undoes it.
 */
final class PackedRows {
    private static final String COLUMN = "\u001E";
    private static final Pattern NAME = Pattern.compile("(.*):(\\d{1,9}):(.*)");
    /** Chosen here: what fits beside the expected value. */
    private static final int COMPUTED_DIGITS = 9;

    private static final int TOLERANCE_DIGITS = 3;

    /** Those that tables name again and again. */
    private static final List<String> SHARES = List.of("1e-9", "1e-6", "1e-12", "1e-10", "1e-8", "1e-7", "1e-11");

    private PackedRows() {}

    /** Groups stand in the order of the page, so that no row needs to name its own. */
    static String of(List<Group> groups) {
        List<Check> checks =
                groups.stream().flatMap(group -> group.checks().stream()).toList();
        String text = String.join(
                COLUMN,
                groups.stream()
                        .map(group -> Integer.toString(group.checks().size()))
                        .collect(Collectors.joining("\n")),
                names(checks),
                column(checks, Check::calculation),
                column(checks, Check::locator),
                inputs(checks),
                column(checks, Check::printed),
                column(checks, PackedRows::computed),
                column(
                        checks,
                        check -> check.deviation().isEmpty()
                                ? ""
                                : Text.significant(check.deviation().getAsDouble(), 3)),
                column(checks, PackedRows::tolerance),
                column(checks, Check::unit),
                column(checks, check -> check.status().toString()),
                column(checks, Check::remark));
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (OutputStream zip = new GZIPOutputStream(bytes)) {
            zip.write(text.getBytes(StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return Base64.getEncoder().encodeToString(bytes.toByteArray());
    }

    private static String column(List<Check> checks, Function<Check, String> cell) {
        return checks.stream().map(check -> clean(cell.apply(check))).collect(Collectors.joining("\n"));
    }

    /** Table, row and column as {@code " whole name"}, {@code "+column"} of the next row or {@code "=column"} of the same. */
    private static String names(List<Check> checks) {
        StringBuilder names = new StringBuilder();
        String table = "";
        int row = -1;
        for (Check check : checks) {
            String name = clean(check.name());
            Matcher parts = NAME.matcher(name);
            String written = " " + name;
            if (parts.matches()) {
                int here = Integer.parseInt(parts.group(2));
                boolean plain = parts.group(2).equals(Integer.toString(here));
                if (plain && parts.group(1).equals(table) && (here == row || here == row + 1)) {
                    written = (here == row ? "=" : "+") + parts.group(3);
                }
                table = parts.group(1);
                row = here;
            }
            names.append(names.isEmpty() ? "" : "\n").append(written);
        }
        return names.toString();
    }

    /** Each input as the count of its first letters that the one above has too, a bar, and the rest. */
    private static String inputs(List<Check> checks) {
        StringBuilder inputs = new StringBuilder();
        String above = "";
        for (Check check : checks) {
            String input = InputText.shortened(clean(check.input()));
            int same = 0;
            while (same < Math.min(input.length(), above.length()) && input.charAt(same) == above.charAt(same)) {
                same++;
            }
            inputs.append(inputs.isEmpty() ? "" : "\n").append(same).append('|').append(input, same, input.length());
            above = input;
        }
        return inputs.toString();
    }

    private static String computed(Check check) {
        if (check.computed().isEmpty()) {
            return "none";
        }
        if (check.computed().getAsDouble() == check.expected()) {
            return "";
        }
        String computed = Text.significant(check.computed().getAsDouble(), COMPUTED_DIGITS);
        return computed.equals(Text.significant(check.expected(), COMPUTED_DIGITS)) ? "" : computed;
    }

    /** A star and the share of the expected value, if the tolerance is such a share to the digits shown. */
    private static String tolerance(Check check) {
        String shown = Text.significant(check.tolerance(), TOLERANCE_DIGITS);
        double expected = Math.abs(check.expected());
        for (String share : SHARES) {
            double allowed = Double.parseDouble(share) * expected;
            // The script rounds the number itself, not the digits it is written with: on a tie the two differ.
            if (allowed > 0
                    && Math.abs(check.tolerance() / allowed - 1) < 0.01
                    && new BigDecimal(allowed)
                                    .round(new MathContext(TOLERANCE_DIGITS))
                                    .doubleValue()
                            == Double.parseDouble(shown)) {
                return "*" + share;
            }
        }
        return shown;
    }

    private static String clean(String text) {
        return text.replace('\n', ' ').replace(COLUMN, " ");
    }

    static List<Group> bySource(Results results) {
        return Group.by(results.checks(), check -> check.module() + "\t" + check.source());
    }
}
