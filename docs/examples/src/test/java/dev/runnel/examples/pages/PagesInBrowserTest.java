package dev.runnel.examples.pages;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A page as a browser takes it. Left out where there is no Chromium: {@code -Dchromium=PATH} names one. */
class PagesInBrowserTest {
    @TempDir
    static Path folder;

    private static Browser browser;
    private static Path page;

    @BeforeAll
    static void start() throws Exception {
        var program = Browser.program();
        assumeTrue(program.isPresent(), "no chromium on the path: page test left out");
        page = folder.resolve("demo.html");
        Files.writeString(page, Demo.page().toHtml(), StandardCharsets.UTF_8);
        browser = Browser.start(program.orElseThrow(), Files.createDirectory(folder.resolve("profile")));
    }

    @AfterAll
    static void stop() throws Exception {
        if (browser != null) {
            browser.close();
        }
    }

    private static String drawn(int width) throws Exception {
        String session = browser.open(page, width);
        browser.await(session, "window.drawnAt > 0");
        return session;
    }

    @ParameterizedTest
    @ValueSource(ints = {390, 820, 1280})
    void fitsItsWindowWithoutAWordOnTheConsole(int width) throws Exception {
        String session = drawn(width);
        assertThat(browser.ask(session, "document.documentElement.scrollWidth <= " + width))
                .isEqualTo("true");
        assertThat(browser.ask(session, "document.querySelectorAll('#charts canvas').length"))
                .isEqualTo("4");
        assertThat(browser.complaints()).isEmpty();
        assertThat(browser.requests()).isNotEmpty().allMatch(url -> url.matches("(file|data|blob|about):.*"));
    }

    @Test
    void keysZoomMoveAndShowAll() throws Exception {
        String session = drawn(1280);
        String all = browser.ask(session, "document.getElementById('shown').textContent");
        assertThat(all).startsWith("1 Jan 2025 00:00 to ").contains("rain per day");
        browser.ask(session, "document.getElementById('record').focus()");
        browser.press(session, "+");
        browser.await(session, "!document.getElementById('shown').textContent.startsWith('1 Jan 2025')");
        String zoomed = browser.ask(session, "document.getElementById('shown').textContent");
        browser.press(session, "ArrowRight");
        browser.await(session, "document.getElementById('shown').textContent !== " + Html.json(zoomed));
        browser.press(session, "Home");
        browser.await(session, "document.getElementById('shown').textContent === " + Html.json(all));
    }

    @Test
    void theNumberOfAPointLeadsToItsPlace() throws Exception {
        String session = drawn(1280);
        browser.ask(session, "document.querySelector('a[data-mark]').click()");
        browser.await(session, "document.getElementById('shown').textContent.includes('Jun 2025')");
        assertThat(browser.ask(session, "document.activeElement.id")).isEqualTo("record");
    }

    @Test
    void printsOnTwoSheetsAtMost() throws Exception {
        assertThat(browser.sheets(drawn(1280))).isBetween(1, 2);
    }
}
