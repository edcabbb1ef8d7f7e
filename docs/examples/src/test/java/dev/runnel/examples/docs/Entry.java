package dev.runnel.examples.docs;

import java.util.ArrayList;
import java.util.List;

/**
 * What is typed at one prompt of a {@code jshell} block, and what the page says comes back.
 *
 * @param line number of the prompt's line in the page, counted from 1
 * @param input what is typed, without prompts
 * @param output what comes back, without blank lines at its end
 */
record Entry(int line, String input, List<String> output) {
    static final String PROMPT = "jshell> ";
    static final String MORE = "   ...> ";

    static List<Entry> of(Block block) {
        List<Entry> entries = new ArrayList<>();
        int at = 0;
        while (at < block.lines().size()) {
            int line = block.line() + at;
            String text = block.lines().get(at);
            if (text.isBlank()) {
                at++;
                continue;
            }
            if (!text.startsWith(PROMPT)) {
                throw new AssertionError("line " + line + ": expected \"" + PROMPT + "\", was: " + text);
            }
            StringBuilder input = new StringBuilder(text.substring(PROMPT.length()));
            at++;
            for (; at < block.lines().size() && block.lines().get(at).startsWith(MORE); at++) {
                input.append('\n').append(block.lines().get(at).substring(MORE.length()));
            }
            List<String> output = new ArrayList<>();
            for (; at < block.lines().size() && !block.lines().get(at).startsWith(PROMPT); at++) {
                output.add(block.lines().get(at).stripTrailing());
            }
            while (!output.isEmpty() && output.get(output.size() - 1).isEmpty()) {
                output.remove(output.size() - 1);
            }
            entries.add(new Entry(line, input.toString(), List.copyOf(output)));
        }
        return entries;
    }
}
