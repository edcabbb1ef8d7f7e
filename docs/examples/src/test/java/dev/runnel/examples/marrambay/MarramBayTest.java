package dev.runnel.examples.marrambay;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.examples.House;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class MarramBayTest {
    private static final Path SHIPPED = House.root().resolve("docs/examples/marram-bay");
    private static final List<String> READINGS = List.of(
            "quay-street/depth.csv",
            "quay-street/tips.csv",
            "quay-street/velocity.csv",
            "saltings-lane/depth.csv",
            "saltings-lane/tips.csv",
            "saltings-lane/velocity.csv");

    @TempDir
    Path folder;

    @Test
    void makesTheShippedReadingsByteForByte() throws IOException {
        MarramBay.write(folder);

        List<String> made = new ArrayList<>();
        try (Stream<Path> files = Files.walk(folder)) {
            files.filter(Files::isRegularFile)
                    .forEach(file -> made.add(folder.relativize(file).toString().replace('\\', '/')));
        }
        assertThat(made).containsExactlyInAnyOrderElementsOf(READINGS);
        for (String name : READINGS) {
            assertThat(Files.mismatch(folder.resolve(name), SHIPPED.resolve(name)))
                    .as(
                            "first byte of %s that differs; mvn -q package -P review,marram-bay writes the files anew",
                            name)
                    .isEqualTo(-1);
        }
    }

    @Test
    void everyShippedFileSaysThatItIsInvented() throws IOException {
        try (Stream<Path> files = Files.walk(SHIPPED)) {
            List<Path> all = files.filter(Files::isRegularFile).toList();
            assertThat(all).hasSize(10);
            for (Path file : all) {
                assertThat(Files.readAllLines(file).get(0)).as(file.toString()).startsWith("# INVENTED");
            }
        }
    }

    @Test
    void shippedFolderStaysSmall() throws IOException {
        long bytes = 0;
        try (Stream<Path> files = Files.walk(SHIPPED)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                bytes += Files.size(file);
            }
        }
        assertThat(bytes).isBetween(1_000_000L, 5_000_000L);
    }
}
