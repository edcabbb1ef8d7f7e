package dev.runnel.examples.docs;

import dev.runnel.examples.shell.Chart;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/** A page and the run of its blocks. */
final class Page {
    /** A picture that the page draws itself lies in a folder of this name. */
    private static final Pattern PICTURE = Pattern.compile("!\\[[^\\]]*\\]\\(([^)]*drawn/[^)]+\\.svg)\\)");

    private final String name;
    private final Path folder;
    private final List<String> lines;
    private final List<Block> blocks;

    Page(String name, Path folder, List<String> lines) {
        this.name = name;
        this.folder = folder;
        this.lines = lines;
        this.blocks = Block.of(lines).stream()
                .filter(block -> block.isJava() || block.isSession())
                .toList();
    }

    static Page read(Path root, Path file) throws IOException {
        return new Page(
                root.relativize(file).toString().replace('\\', '/'), file.resolveSibling(""), Files.readAllLines(file));
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
                pictures(session, false);
            }
        }
        return run;
    }

    /** The pictures of the page, in its order, are those that its charts drew, in their order. */
    private void pictures(Session session, boolean record) {
        List<String> names = new ArrayList<>();
        lines.forEach(line ->
                PICTURE.matcher(line).results().map(found -> found.group(1)).forEach(names::add));
        List<Chart> drawn = session.drawn();
        if (names.isEmpty()) {
            return;
        }
        if (names.size() != drawn.size()) {
            throw new AssertionError(
                    name + ": has " + names.size() + " pictures and draws " + drawn.size() + " charts");
        }
        for (int i = 0; i < names.size(); i++) {
            Path file = folder.resolve(names.get(i));
            try {
                if (record) {
                    Files.createDirectories(file.resolveSibling(""));
                    Files.writeString(file, drawn.get(i).svg());
                } else if (!Answers.samePicture(
                        Files.readString(file), drawn.get(i).svg())) {
                    throw new AssertionError(name + ": " + names.get(i) + " is not what " + drawn.get(i) + " draws");
                }
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
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
            pictures(session, true);
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
