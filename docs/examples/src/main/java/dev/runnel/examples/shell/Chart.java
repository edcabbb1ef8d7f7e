package dev.runnel.examples.shell;

import dev.runnel.examples.pages.Drawing;
import dev.runnel.examples.pages.SitePage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** A picture that {@link Prompt} drew: a page to look at, and its first drawing as SVG. */
public final class Chart {
    private final String title;
    private final String html;
    private final String drawing;

    private Chart(String title, String html, String drawing) {
        this.title = title;
        this.html = html;
        this.drawing = drawing;
    }

    /** A page and the drawing that stands for it. */
    static Chart of(String title, SitePage page, String drawing) {
        return new Chart(title, page.toHtml(), drawing);
    }

    /**
     * Returns the page.
     *
     * @return an HTML document that needs no other file
     */
    public String html() {
        return html;
    }

    /**
     * Returns the drawing.
     *
     * @return an SVG document that needs no other file
     */
    public String svg() {
        return Drawing.alone(drawing);
    }

    /**
     * Writes the page, or the drawing alone where the name ends in {@code .svg}.
     *
     * @param file where to
     * @return that file
     * @throws UncheckedIOException if it cannot be written
     */
    public Path save(String file) {
        Path path = Path.of(file);
        try {
            return Files.writeString(path, file.endsWith(".svg") ? svg() : html, StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException("cannot write to " + file, e);
        }
    }

    /**
     * Returns what it shows.
     *
     * @return a few words
     */
    @Override
    public String toString() {
        return "Chart[" + title + "]";
    }
}
