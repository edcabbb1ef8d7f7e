package dev.runnel.verification.bite;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * Changes after which the library answers as before, each with the reason: a search that starts elsewhere and finds the same
 * root, a quicker way that is taken less often and gives the same. Written by people, after looking; in the order of the classes.
 */
final class EqualInEffect {
    /**
     * Simple name of a class, the change as the report words it or its beginning followed by {@code *}, which of those that
     * read the same (0: all of them), and why.
     */
    private record Line(String type, String change, int place, String reason) {
        boolean tells(Mutation mutation) {
            boolean sameType = mutation.className().endsWith("." + type);
            return sameType
                    && (place == 0 || place == mutation.place())
                    && (change.endsWith("*")
                            ? mutation.text().startsWith(change.substring(0, change.length() - 1))
                            : mutation.text().equals(change));
        }
    }

    private static final List<Line> LINES = read();

    private EqualInEffect() {}

    /** Returns why a change is without effect; nothing if it is not on the list. */
    static String reason(Mutation mutation) {
        return LINES.stream()
                .filter(line -> line.tells(mutation))
                .map(Line::reason)
                .findFirst()
                .orElse("");
    }

    /** Returns the lines that fit none of the changes: each would excuse the next error that happens to be named like it. */
    static List<String> idle(List<Mutation> all) {
        return LINES.stream()
                .filter(line -> all.stream().noneMatch(line::tells))
                .map(line -> line.type() + "," + line.change() + (line.place() == 0 ? "" : " #" + line.place()))
                .toList();
    }

    private static List<Line> read() {
        try (InputStream stream = EqualInEffect.class.getResourceAsStream("/bite/equal-in-effect.csv")) {
            if (stream == null) {
                throw new IllegalStateException("the list of changes without effect is missing");
            }
            String text = new String(stream.readAllBytes(), StandardCharsets.UTF_8);
            return text.lines().skip(1).map(EqualInEffect::line).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Line line(String text) {
        String[] cells = text.split(",", 3);
        if (cells.length < 3 || cells[2].isBlank()) {
            throw new IllegalStateException("each line needs a class, a change and a reason, was: " + text);
        }
        int mark = cells[1].lastIndexOf(" #");
        return mark < 0
                ? new Line(cells[0], cells[1], 0, cells[2])
                : new Line(
                        cells[0],
                        cells[1].substring(0, mark),
                        Integer.parseInt(cells[1].substring(mark + 2)),
                        cells[2]);
    }
}
