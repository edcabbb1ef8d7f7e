package dev.runnel.examples.docs;

import java.util.ArrayList;
import java.util.List;

/**
 * A fenced block of a page.
 *
 * @param language the word behind the fence, empty if there is none
 * @param line number of the first line inside, counted from 1
 * @param lines what stands inside
 */
record Block(String language, int line, List<String> lines) {
    private static final String FENCE = "```";

    /** All fenced blocks of a page, whatever their language. */
    static List<Block> of(List<String> page) {
        List<Block> blocks = new ArrayList<>();
        int open = -1;
        for (int i = 0; i < page.size(); i++) {
            if (page.get(i).strip().startsWith(FENCE)) {
                if (open >= 0) {
                    String language =
                            page.get(open).strip().substring(FENCE.length()).strip();
                    blocks.add(new Block(language, open + 2, List.copyOf(page.subList(open + 1, i))));
                    open = -1;
                } else {
                    open = i;
                }
            }
        }
        if (open >= 0) {
            throw new AssertionError("the fence opened in line " + (open + 1) + " is never closed");
        }
        return blocks;
    }

    boolean isJava() {
        return language.equals("java");
    }

    boolean isSession() {
        return language.equals("jshell");
    }
}
