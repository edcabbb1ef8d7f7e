package dev.runnel.examples.site;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.runnel.examples.House;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DocsSiteTest {
    private static final Pattern LINK = Pattern.compile("(?:href|src|action)=\"([^\"]*)\"");

    @TempDir
    static Path folder;

    private static Path site;
    private static List<String> broken;

    @BeforeAll
    static void build() {
        site = folder.resolve("site");
        broken = DocsSite.build(House.root(), site);
    }

    @Test
    void noLinkOfAPageLeadsNowhere() {
        assertThat(broken).isEmpty();
    }

    /** Counted in the pages as they are written, whatever the builder thinks of them. */
    @Test
    void whatAPageLinksToIsThere() throws IOException {
        List<String> lost = new ArrayList<>();
        int links = 0;
        for (Path page : pages()) {
            Matcher matcher = LINK.matcher(Files.readString(page));
            while (matcher.find()) {
                String link = matcher.group(1);
                if (link.matches("[a-z]+:.*")) {
                    continue;
                }
                links++;
                String[] parts = link.split("#", 2);
                Path file = parts[0].isEmpty()
                        ? page
                        : page.resolveSibling(parts[0]).normalize();
                if (!Files.isRegularFile(file)) {
                    lost.add(site.relativize(page) + ": " + link);
                } else if (parts.length == 2
                        && !Files.readString(file).contains("id=\"" + parts[1].replace("&amp;", "&") + "\"")) {
                    lost.add(site.relativize(page) + ": no " + link);
                }
            }
        }
        assertThat(lost).isEmpty();
        assertThat(links).isGreaterThan(500);
    }

    @Test
    void everyPageOfTheCheckoutIsThereAndSearched() throws IOException {
        String index = Files.readString(site.resolve("search.html"));
        try (Stream<Path> methods = Files.list(House.root().resolve("docs/methods"))) {
            for (Path method : methods.filter(file -> file.toString().endsWith(".md") && !file.endsWith("README.md"))
                    .toList()) {
                String name = "methods/" + method.getFileName().toString().replace(".md", ".html");
                assertThat(site.resolve(name)).exists();
                assertThat(index).contains("\"" + name + "#");
            }
        }
        assertThat(site.resolve("cookbook/index.html")).exists();
        assertThat(site.resolve("cookbook/drawn/part-full.svg")).exists();
        assertThat(site.resolve("start.html")).content().contains("<h1 id=\"runnel\">Runnel</h1>");
    }

    @Test
    void noPageReachesTheNetwork() throws IOException {
        for (Path page : pages()) {
            assertThat(Files.readString(page))
                    .as(page.toString())
                    .contains("default-src 'none'")
                    .doesNotContainPattern("src=\"http");
        }
    }

    @Test
    void aLinkThatLeadsNowhereIsNoticed(@TempDir Path other) throws IOException {
        Path docs = Files.createDirectories(other.resolve("top/docs"));
        Files.writeString(other.resolve("top/README.md"), "# Top\n\n[a](docs/a.md) [b](docs/b.md)\n");
        Files.writeString(other.resolve("top/DEVELOPERS.md"), "# Devs\n\n[folder](docs) <b>raw</b>\n");
        Files.writeString(
                docs.resolve("a.md"), "# A\n\n## One & two\n\n[here](#one--two) [there](../README.md#nothing)\n");
        List<String> found = DocsSite.build(other.resolve("top"), other.resolve("out"));
        assertThat(found).containsExactly("README.md: docs/b.md", "a.html: no heading #nothing in start.html");
        assertThat(other.resolve("out/developers.html")).content().contains("<p>folder &lt;b&gt;raw&lt;/b&gt;</p>");
    }

    @Test
    void aFolderWithOtherThingsIsNotEmptied(@TempDir Path other) throws IOException {
        Files.writeString(other.resolve("thesis.txt"), "years of work");
        assertThatThrownBy(() -> DocsSite.build(House.root(), other))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("must be new, empty, or hold an earlier site");
        assertThat(other.resolve("thesis.txt")).exists();
    }

    private static List<Path> pages() throws IOException {
        try (Stream<Path> files = Files.walk(site)) {
            return files.filter(file -> file.toString().endsWith(".html"))
                    .filter(file -> !file.toString().contains("javadoc")
                            && !file.toString().contains("proof"))
                    .toList();
        }
    }
}
