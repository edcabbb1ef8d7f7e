package dev.runnel.examples.docs;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** A page and the run of its blocks. */
final class Page {
    private final String name;
    private final List<String> lines;
    private final List<Block> blocks;

    Page(String name, List<String> lines) {
        this.name = name;
        this.lines = lines;
        this.blocks = Block.of(lines).stream()
                .filter(block -> block.isJava() || block.isSession())
                .toList();
    }

    static Page read(Path root, Path file) throws IOException {
        return new Page(root.relativize(file).toString().replace('\\', '/'), Files.readAllLines(file));
    }

    int size() {
        return blocks.size();
    }

    /** Runs all blocks in order and returns how many. A page that does not say what happens fails with its line. */
    int run() {
        int run = 0;
        if (size() > 0) {
            try (Session session = new Session()) {
                for (Block block : blocks) {
                    if (block.isJava()) {
                        runJava(session, block);
                    } else {
                        runSession(session, block);
                    }
                    run++;
                }
            }
        }
        return run;
    }

    private void runJava(Session session, Block block) {
        List<String> answers = type(session, block.line(), String.join("\n", block.lines()));
        answers.stream()
                .filter(answer -> answer.startsWith("|  Exception"))
                .findFirst()
                .ifPresent(answer -> {
                    throw new AssertionError(name + ":" + block.line() + ": " + answer);
                });
    }

    private void runSession(Session session, Block block) {
        for (Entry entry : Entry.of(block)) {
            List<String> actual = type(session, entry.line(), entry.input());
            if (!Answers.agree(entry.output(), actual)) {
                throw new AssertionError(name + ":" + entry.line() + ": " + entry.input() + "\nthe page says:\n"
                        + String.join("\n", entry.output()) + "\nthe shell says:\n" + String.join("\n", actual));
            }
        }
    }

    private List<String> type(Session session, int line, String input) {
        try {
            return session.type(input);
        } catch (AssertionError e) {
            throw new AssertionError(name + ":" + line + ": " + e.getMessage(), e);
        }
    }

    /** The page with the answers that the shell gives today in place of those it holds. */
    List<String> recorded() {
        if (size() == 0) {
            return lines;
        }
        List<String> page = new ArrayList<>();
        int copied = 0;
        try (Session session = new Session()) {
            for (Block block : blocks) {
                if (block.isJava()) {
                    runJava(session, block);
                } else {
                    page.addAll(lines.subList(copied, block.line() - 1));
                    page.addAll(recorded(session, block));
                    copied = block.line() - 1 + block.lines().size();
                }
            }
        }
        page.addAll(lines.subList(copied, lines.size()));
        return page;
    }

    private List<String> recorded(Session session, Block block) {
        List<String> written = new ArrayList<>();
        for (Entry entry : Entry.of(block)) {
            if (!written.isEmpty()) {
                written.add("");
            }
            written.add(Entry.PROMPT + entry.input().replace("\n", "\n" + Entry.MORE));
            written.addAll(type(session, entry.line(), entry.input()));
        }
        return written;
    }
}
