package dev.runnel.examples.review;

import java.util.ArrayList;
import java.util.List;

/**
 * A page of plain text in two columns: a narrow one for labels, a wide one for what there is to say. ASCII only, so that
 * it looks the same on every console.
 */
final class Page {
    /** A space at which no line is broken. */
    static final char BOUND = '\u00A0';

    /** Characters in a line. */
    static final int WIDTH = 96;

    private static final int LABEL = 12;

    private final StringBuilder text = new StringBuilder();
    private String label = "";

    /** A title between two rules, with a text at its right end. */
    Page title(String left, String right) {
        rule('=');
        justified(left, right);
        return rule('=');
    }

    /** A heading under a rule, with a text at its right end. */
    Page heading(String left, String right) {
        rule('-');
        return justified(left, right);
    }

    /** Begins a section: the label stands before its first line. */
    Page section(String newLabel) {
        label = newLabel;
        return this;
    }

    /** A paragraph; lines too long are broken, and what follows is indented. */
    Page say(String paragraph) {
        return hanging("", paragraph);
    }

    /** A paragraph that begins with a mark, such as a number, and hangs from it. */
    Page hanging(String mark, String paragraph) {
        String lead = mark;
        StringBuilder line = new StringBuilder();
        for (String word : paragraph.split(" ", -1)) {
            if (!line.isEmpty() && LABEL + lead.length() + line.length() + 1 + word.length() > WIDTH) {
                put(lead + line);
                lead = " ".repeat(mark.length());
                line.setLength(0);
            }
            line.append(line.isEmpty() ? "" : " ").append(word);
        }
        put(lead + line);
        return this;
    }

    /**
     * A table.
     *
     * @param alignment a letter for each column: l for left, r for right
     * @param rows its rows, the head first
     */
    Page table(String alignment, List<List<String>> rows) {
        int columns = alignment.length();
        int[] widths = new int[columns];
        for (List<String> row : rows) {
            for (int c = 0; c < columns; c++) {
                widths[c] = Math.max(widths[c], row.get(c).length());
            }
        }
        for (List<String> row : rows) {
            List<String> cells = new ArrayList<>();
            for (int c = 0; c < columns; c++) {
                String fill = " ".repeat(widths[c] - row.get(c).length());
                cells.add(alignment.charAt(c) == 'r' ? fill + row.get(c) : row.get(c) + fill);
            }
            put(String.join("  ", cells));
        }
        return this;
    }

    /** An empty line. */
    Page gap() {
        text.append('\n');
        return this;
    }

    private Page rule(char mark) {
        text.append(String.valueOf(mark).repeat(WIDTH)).append('\n');
        return this;
    }

    private Page justified(String left, String right) {
        int fill = Math.max(2, WIDTH - left.length() - right.length());
        text.append((left + " ".repeat(fill) + right).replace(BOUND, ' ').stripTrailing())
                .append('\n');
        return this;
    }

    private void put(String line) {
        String fill = " ".repeat(Math.max(1, LABEL - label.length()));
        text.append((label + fill + line).replace(BOUND, ' ').stripTrailing()).append('\n');
        label = "";
    }

    @Override
    public String toString() {
        return text.toString();
    }
}
