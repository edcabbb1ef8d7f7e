package dev.runnel.verification.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Does what docs/national-handbook.md tells the reader to do, with the files and the answers that stand there. */
class HandbookPageTest {
    private static final Pattern BLOCK =
            Pattern.compile("(?:`(\\S+?)(, changed)?`\\n\\n)?```text\\n(.*?)```", Pattern.DOTALL);

    @TempDir
    Path folder;

    private List<MatchResult> blocks;
    private String printed = "";

    @BeforeEach
    void read() throws Exception {
        String page = Files.readString(Path.of("..", "docs", "national-handbook.md"));
        blocks = BLOCK.matcher(page).results().toList();
    }

    private String block(int i) {
        return blocks.get(i).group(3);
    }

    private int run(String... more) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        String[] first = {
            "--tables",
            folder.resolve("handbook").toString(),
            "--report",
            folder.resolve("r").toString(),
            "--cases",
            "0"
        };
        String[] all = Arrays.copyOf(first, first.length + more.length);
        System.arraycopy(more, 0, all, first.length, more.length);
        int code = Main.run(List.of(all), new PrintStream(out, true, StandardCharsets.UTF_8), System.err);
        printed = out.toString(StandardCharsets.UTF_8);
        return code;
    }

    private int runTheHandbook() {
        return run("--source", "board of works");
    }

    @Test
    void thePageRunsAsItIsWritten() throws Exception {
        assertThat(blocks).hasSize(8);
        assertThat(blocks.stream().map(block -> block.group(1)))
                .containsExactly(
                        "capacity.csv", "capacity.table", null, null, "capacity.table", null, "capacity.csv", null);
        Path handbook = Files.createDirectory(folder.resolve("handbook"));
        Path descriptor = handbook.resolve("capacity.table");
        Files.writeString(handbook.resolve("capacity.csv"), block(0));
        Files.writeString(descriptor, block(1));

        assertThat(block(2)).contains("--tables handbook --source \"board of works\"");
        assertThat(runTheHandbook()).isEqualTo(1);
        assertThat(printed).contains(block(3).lines().toList());

        String changed = block(4).strip();
        String line = block(1).lines()
                .filter(l -> l.startsWith("input.n "))
                .findFirst()
                .orElseThrow();
        Files.writeString(descriptor, block(1).replace(line, changed));
        assertThat(runTheHandbook()).isEqualTo(1);
        assertThat(printed).contains(block(5).lines().toList());

        Files.writeString(handbook.resolve("capacity.csv"), block(6));
        assertThat(runTheHandbook()).isZero();
        assertThat(printed).contains("10 values from 1 sources, 9 pass (9 published), 0 fail, 1 excluded");

        assertThat(block(7)).contains("--day 2026-11-28");
        assertThat(run("--source", "board of works", "--day", "2026-11-28")).isZero();
        assertThat(folder.resolve("r").resolve("sign-off.html")).content().contains("misprint: 397 for 379");
    }
}
