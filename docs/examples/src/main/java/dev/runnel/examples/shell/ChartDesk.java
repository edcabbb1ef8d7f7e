package dev.runnel.examples.shell;

import java.awt.Desktop;
import java.awt.GraphicsEnvironment;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * Where charts go: each to a page in a folder of this session, opened where there is a desktop; elsewhere its path is
 * printed. The property {@code runnel.charts} may say {@code print} to open none, or {@code keep} to write none.
 */
final class ChartDesk {
    private static final int MOST_KEPT = 100;
    private static final List<Chart> DRAWN = new ArrayList<>();

    private static Path folder = Path.of("");
    private static int written;

    private ChartDesk() {}

    static synchronized Chart show(Chart chart) {
        if (DRAWN.size() == MOST_KEPT) {
            DRAWN.remove(0);
        }
        DRAWN.add(chart);
        String way = System.getProperty("runnel.charts", "open");
        if (way.equals("keep")) {
            return chart;
        }
        try {
            if (written == 0) {
                folder = Files.createTempDirectory("runnel-charts");
            }
            written++;
            Path page = chart.save(folder.resolve("chart-" + written + ".html").toString());
            if (way.equals("print") || !opened(page)) {
                System.out.println("chart: " + page);
            }
        } catch (IOException e) {
            throw new UncheckedIOException("cannot write the chart", e);
        }
        return chart;
    }

    static synchronized List<Chart> drawn() {
        return List.copyOf(DRAWN);
    }

    private static boolean opened(Path page) {
        try {
            if (GraphicsEnvironment.isHeadless()
                    || !Desktop.isDesktopSupported()
                    || !Desktop.getDesktop().isSupported(Desktop.Action.BROWSE)) {
                return false;
            }
            Desktop.getDesktop().browse(page.toUri());
            return true;
        } catch (Exception | LinkageError | java.awt.AWTError e) {
            // A display that is named and not there, or a desktop without a browser: the path is printed instead.
            return false;
        }
    }
}
