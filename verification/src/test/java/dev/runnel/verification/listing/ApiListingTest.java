package dev.runnel.verification.listing;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.verification.House;
import dev.runnel.verification.Modules;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What callers see is what was approved. With {@code -Dapi=record} the files are written first. */
@Tag("gate")
class ApiListingTest {
    private static final boolean RECORD = "record".equals(System.getProperty("api"));
    private static final Path FOLDER = House.root().resolve("docs").resolve("api");

    @ParameterizedTest
    @MethodSource("dev.runnel.verification.Modules#names")
    void apiIsTheApprovedOne(String module) throws IOException {
        List<String> actual = listing(module);
        compare(FOLDER.resolve(module + ".txt"), actual);
        assertThat(actual).noneMatch(line -> line.endsWith(Promise.NONE));
    }

    @Test
    void pageOfWhatMayChangeIsUpToDate() throws IOException {
        compare(FOLDER.resolve("experimental.md"), ExperimentalPage.of(ApiListingTest::listing, Stability::missing));
    }

    /** What is called stable has a published value behind it, or is the contract of the machines. */
    @Test
    void stableIsOnlyWhatAPrintConfirms() {
        List<String> without = Modules.names().stream()
                .flatMap(module -> listing(module).stream())
                .filter(line -> line.endsWith(" | STABLE"))
                .map(line -> line.substring(0, line.indexOf(" : ")))
                .filter(name -> !name.contains("#"))
                .filter(name -> !Stability.mayBeStable(name))
                .toList();
        assertThat(without).isEmpty();
    }

    private static List<String> listing(String module) {
        return ApiListing.of(Modules.classes(), "dev.runnel." + module);
    }

    private static void compare(Path file, List<String> actual) throws IOException {
        if (RECORD) {
            Files.createDirectories(FOLDER);
            Files.writeString(file, String.join("\n", actual) + "\n");
        }
        List<String> approved = Files.exists(file) ? Files.readAllLines(file) : List.of();
        String name = House.root().relativize(file).toString().replace('\\', '/');
        assertThat(ApiListing.difference(name, approved, actual)).isEmpty();
        assertThat(approved).isEqualTo(actual);
    }
}
