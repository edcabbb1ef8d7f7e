package dev.runnel.examples.docs;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.examples.House;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every page says what happens. With {@code -Ddocs=record} the answers in {@code jshell} blocks are written anew first;
 * read the difference before you commit it.
 */
class DocsTest {
    private static final boolean RECORD = "record".equals(System.getProperty("docs"));

    /** {@code -Ddocs.only=cookbook} runs the pages whose path holds that. */
    private static final String ONLY = System.getProperty("docs.only", "");

    @ParameterizedTest
    @MethodSource("pages")
    void pageSaysWhatHappens(Path file) throws IOException {
        if (RECORD) {
            Files.writeString(
                    file, String.join("\n", Page.read(House.root(), file).recorded()) + "\n");
        }
        Page page = Page.read(House.root(), file);
        assertThat(page.run()).isEqualTo(page.size());
    }

    /** Counted in another way than the pages are cut into blocks, so that a block that is overlooked shows. */
    @Test
    void noBlockIsOverlooked() throws IOException {
        long fences = 0;
        long blocks = 0;
        for (Path file : pages().toList()) {
            String text = Files.readString(file);
            fences += text.lines()
                    .filter(line -> line.matches("\\s*```(java|jshell)\\s*"))
                    .count();
            blocks += Page.read(House.root(), file).size();
        }
        assertThat(blocks).isEqualTo(fences).isPositive();
    }

    @Test
    void theIndexNamesEveryMethod() throws IOException {
        Path methods = House.root().resolve("docs/methods");
        String index = Files.readString(methods.resolve("README.md"));
        try (Stream<Path> pages = Files.list(methods)) {
            assertThat(pages.map(page -> page.getFileName().toString())
                            .filter(name -> name.endsWith(".md") && !name.equals("README.md")))
                    .isNotEmpty()
                    .allSatisfy(name -> assertThat(index).contains("](" + name + ")"));
        }
    }

    static Stream<Path> pages() throws IOException {
        try (Stream<Path> docs = Files.walk(House.root().resolve("docs"))) {
            List<Path> pages = Stream.concat(Stream.of(House.root().resolve("README.md")), docs)
                    .filter(file -> file.toString().endsWith(".md") && Files.isRegularFile(file))
                    .filter(file -> !file.toString().contains("target"))
                    .filter(file -> House.root().relativize(file).toString().contains(ONLY))
                    .sorted()
                    .toList();
            return pages.stream();
        }
    }
}
