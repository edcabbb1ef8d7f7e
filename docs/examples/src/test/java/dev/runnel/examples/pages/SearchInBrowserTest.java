package dev.runnel.examples.pages;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import dev.runnel.examples.House;
import dev.runnel.examples.site.DocsSite;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The search of the documentation, from disk. Left out where there is no Chromium. */
class SearchInBrowserTest {
    @TempDir
    Path folder;

    @Test
    void findsTheRightPlaceFirst() throws Exception {
        var program = Browser.program();
        assumeTrue(program.isPresent(), "no chromium on the path: search test left out");
        Path site = folder.resolve("site");
        DocsSite.main(new String[] {House.root().toString(), site.toString()});
        try (Browser browser = Browser.start(program.orElseThrow(), Files.createDirectory(folder.resolve("profile")))) {
            String session = browser.open(site.resolve("search.html"), 900);
            browser.await(session, "document.getElementById('asked') !== null && document.readyState === 'complete'");
            browser.ask(session, "(asked.value = 'minimum inter-event', asked.dispatchEvent(new Event('input')))");
            assertThat(Integer.parseInt(browser.ask(session, "found.children.length")))
                    .isPositive();
            browser.ask(session, "(asked.value = 'kriging', asked.dispatchEvent(new Event('input')))");
            assertThat(browser.ask(session, "found.querySelector('a').textContent.toLowerCase()"))
                    .containsAnyOf("areal", "between the gauges");
            browser.ask(session, "(asked.value = 'zzyzx', asked.dispatchEvent(new Event('input')))");
            assertThat(browser.ask(session, "document.getElementById('count').textContent"))
                    .startsWith("nothing");
            assertThat(browser.complaints()).isEmpty();
            assertThat(browser.requests()).isNotEmpty().allMatch(url -> url.matches("(file|data|blob|about):.*"));
        }
    }
}
