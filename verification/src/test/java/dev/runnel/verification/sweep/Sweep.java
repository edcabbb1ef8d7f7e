package dev.runnel.verification.sweep;

import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * The command: random cases of every inverse, every machine and every reader; prints how many were refused, how many broke
 * a promise, and the worst. Ends with 1 if any did.
 *
 * <p>{@code mvn verify -P sweep}; {@code -Dsweep.cases=1000000 -Dsweep.seed=1 -Dsweep.in=weir} choose how many cases (of
 * the cheap questions; the dear ones have a share of it), which, and of what.
 */
public final class Sweep {
    private Sweep() {}

    /**
     * Runs the sweep.
     *
     * @param arguments count of cases, seed, part of a name, file for the CSV
     */
    public static void main(String[] arguments) {
        PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
        long cases = Long.parseLong(arguments[0]);
        long seed = Long.parseLong(arguments[1]);
        String part = arguments.length > 2 ? arguments[2] : "";
        List<Line> lines = new ArrayList<>();
        out.println(Line.HEADER);
        for (Question question : questions()) {
            if (question.name().contains(part)) {
                Line line = question.sweep(cases, seed);
                lines.add(line);
                out.println(line.toText());
            }
        }
        if (arguments.length > 3) {
            write(lines, Path.of(arguments[3]));
        }
        boolean failed = lines.isEmpty() || lines.stream().anyMatch(Line::failed);
        out.println(failed ? "FAIL" : "PASS: nothing broke its promise.");
        if (failed) {
            System.exit(1);
        }
    }

    static List<Question> questions() {
        return Stream.of(Inverses.all(), Cuts.all(), Readers.all())
                .flatMap(List::stream)
                .toList();
    }

    private static void write(List<Line> lines, Path file) {
        StringBuilder text = new StringBuilder("what,cases,refused,errors,worst,bound,case\n");
        for (Line line : lines) {
            text.append(String.join(
                            ",",
                            quoted(line.name()),
                            Long.toString(line.cases()),
                            Long.toString(line.refused()),
                            Long.toString(line.errors()),
                            Double.toString(line.worst()),
                            Double.toString(line.bound()),
                            quoted(line.worstCase())))
                    .append('\n');
        }
        try {
            Files.writeString(file, text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String quoted(String text) {
        return '"' + text.replace("\"", "\"\"") + '"';
    }
}
