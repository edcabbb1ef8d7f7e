package dev.runnel.verification.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import dev.runnel.verification.command.Main;
import java.io.File;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page of the proof after its script has run. Left out where there is no Chromium. */
class ReportInBrowserTest {
    private static final long SECONDS = 60;

    @TempDir
    Path folder;

    @Test
    void drawsItsRowsAndDeviationsAndFindsASource() throws Exception {
        Optional<Path> program = program();
        assumeTrue(program.isPresent(), "no chromium on the path: test of the page left out");
        String page = page();
        int values = count(page("report.csv"), "\n") - 1;

        String opened = dom(program.orElseThrow(), page.replace("<details data-group", "<details open data-group"));
        assertThat(opened).contains("<th scope=\"col\">locator</th>").contains("class=\"zero\"");
        assertThat(count(opened, "<td class=\"(pass|excluded)\">")).isEqualTo(values);
        assertThat(count(opened, "<path class=\"pass\" d=\"M")).isPositive();

        assertThat(searched(program.orElseThrow(), page, "alternate-depth")).startsWith("1 sources");
        assertThat(searched(program.orElseThrow(), page, "zzyzx")).startsWith("0 sources");
    }

    /** What the page says after a word was typed into its search. */
    private String searched(Path program, String page, String word) throws Exception {
        String typed = "<script>find.value = '" + word + "'; find.dispatchEvent(new Event('input'));</script>";
        String after = dom(program, page + typed);
        return Pattern.compile("id=\"found\"[^>]*>([^<]*)<")
                .matcher(after)
                .results()
                .findFirst()
                .orElseThrow()
                .group(1);
    }

    private String page() throws IOException {
        PrintStream nowhere = new PrintStream(OutputStream.nullOutputStream(), true, StandardCharsets.UTF_8);
        int code = Main.run(
                List.of("--source", "Water and Wastewater Engineering", "--cases", "0", "--report", folder.toString()),
                nowhere,
                nowhere);
        assertThat(code).isZero();
        return page("report.html");
    }

    private String page(String file) throws IOException {
        return Files.readString(folder.resolve(file));
    }

    private String dom(Path program, String page) throws IOException, InterruptedException {
        Path file = Files.writeString(folder.resolve("page.html"), page);
        Path dump = folder.resolve("dump.html");
        Process process = new ProcessBuilder(
                        program.toString(),
                        "--headless=new",
                        "--no-sandbox",
                        "--disable-gpu",
                        "--user-data-dir=" + folder.resolve("profile"),
                        "--virtual-time-budget=10000",
                        "--dump-dom",
                        file.toUri().toString())
                .redirectOutput(dump.toFile())
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        assertThat(process.waitFor(SECONDS, TimeUnit.SECONDS)).isTrue();
        return Files.readString(dump);
    }

    private static int count(String text, String pattern) {
        return (int) Pattern.compile(pattern).matcher(text).results().count();
    }

    private static Optional<Path> program() {
        return Stream.of(System.getenv().getOrDefault("PATH", "").split(File.pathSeparator))
                .flatMap(path -> Stream.of("chromium", "chromium-browser").map(name -> Path.of(path, name)))
                .filter(Files::isExecutable)
                .findFirst();
    }
}
