package dev.runnel.examples.review;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.examples.House;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page of the columns against the headers of the files that a review of the demo writes. */
class ColumnsPageTest {
    @TempDir
    Path temporary;

    private static Map<String, List<String>> page() throws IOException {
        Map<String, List<String>> files = new LinkedHashMap<>();
        List<String> columns = new ArrayList<>();
        for (String line : Files.readAllLines(House.root().resolve("docs/review-files.md"))) {
            if (line.startsWith("### ")) {
                columns = new ArrayList<>();
                files.put(line.substring(4), columns);
            } else if (line.startsWith("| `")) {
                columns.add(line.substring(3, line.indexOf('`', 3)));
            }
        }
        return files;
    }

    @Test
    void everyFileAndEveryColumnStandsThere() throws IOException {
        PrintStream nowhere = new PrintStream(OutputStream.nullOutputStream(), false, StandardCharsets.UTF_8);
        Path output = temporary.resolve("review");
        int status = Main.run(
                new String[] {House.root() + "/docs/examples/marram-bay", output.toString()}, nowhere, nowhere);
        assertThat(status).isZero();
        SiteOnDisk booked = SiteBooksTest.booked(temporary.resolve("booked"));
        assertThat(booked.review().status()).isZero();
        Map<String, List<String>> documented = page();
        List<String> names = new ArrayList<>(SiteFiles.NAMES);
        names.add(SurveySummary.NAME);
        assertThat(documented.keySet()).containsExactlyInAnyOrderElementsOf(names);
        for (String name : names) {
            Path file =
                    name.equals(SurveySummary.NAME) ? output.resolve(name) : output.resolve("saltings-lane/" + name);
            // The demo has no books.
            if (Files.notExists(file)) {
                file = booked.output().resolve("site/" + name);
            }
            String header = Files.readAllLines(file).stream()
                    .filter(line -> !line.startsWith("#"))
                    .findFirst()
                    .orElseThrow();
            assertThat(documented.get(name)).as(name).containsExactly(header.split(","));
        }
        volumesThatAreMostlyDoubtfulAreWithheld(output);
    }

    private static void volumesThatAreMostlyDoubtfulAreWithheld(Path output) throws IOException {
        int withheld = 0;
        int given = 0;
        try (Stream<Path> sites = Files.list(output)) {
            for (Path file : sites.map(site -> site.resolve("daily.csv"))
                    .filter(Files::exists)
                    .toList()) {
                for (String line : Files.readAllLines(file)) {
                    if (line.matches("[0-9].*")) {
                        String[] cells = line.split(",");
                        boolean isDoubtful = Double.parseDouble(cells[4]) > 0.5;
                        assertThat(cells[3].isEmpty()).as(line).isEqualTo(isDoubtful);
                        withheld += isDoubtful ? 1 : 0;
                        given += isDoubtful ? 0 : 1;
                    }
                }
            }
        }
        assertThat(withheld).isPositive();
        assertThat(given).isPositive();
    }
}
