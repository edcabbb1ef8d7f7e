package dev.runnel.examples.review;

import dev.runnel.internal.Settings;
import dev.runnel.rainfall.gauge.Tips;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.csv.CsvReport;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.function.Consumer;

/** Reads one file as the review of a site would read it, without a site. */
public final class PlainFiles {
    /** A site needs a pipe; the readings of a file do not, so this one plays no part. */
    private static final String ANY_PIPE = "diameter = 1 m\ngradient = 1:100\nroughness = manning 0.013\n";

    private PlainFiles() {}

    /**
     * Reads a file of depths.
     *
     * @param file the file
     * @param said takes a line for people where lines were rejected or altered
     * @param settings lines as in a site file
     * @return the readings, m
     */
    public static Series depths(Path file, Consumer<String> said, String... settings) {
        return readings(site(file, "depth file", settings).inputs().depth(), said);
    }

    /**
     * Reads a file of velocities.
     *
     * @param file the file
     * @param said takes a line for people where lines were rejected or altered
     * @param settings lines as in a site file
     * @return the readings, m/s
     */
    public static Series velocities(Path file, Consumer<String> said, String... settings) {
        return readings(site(file, "velocity file", settings).inputs().velocity(), said);
    }

    /**
     * Reads a file of tips.
     *
     * @param file the file
     * @param said takes a line for people where lines were rejected or altered
     * @param settings lines as in a site file
     * @return the tips
     */
    public static Tips tips(Path file, Consumer<String> said, String... settings) {
        Site.Column column = there(site(file, "tips file", settings).inputs().tips());
        ReadingFile.TipLines lines = ReadingFile.tips(column);
        lines.report().ifPresent(report -> tell(file, report, said));
        far(file, lines.far(), said);
        return lines.tips();
    }

    private static Series readings(Site.Column column, Consumer<String> said) {
        ReadingFile.Readings readings = ReadingFile.readings(there(column));
        tell(column.file(), readings.report(), said);
        far(column.file(), readings.far(), said);
        return readings.series();
    }

    private static void tell(Path file, CsvReport report, Consumer<String> said) {
        if (report.issueCount() > 0) {
            said.accept(file.getFileName() + ": " + report.lines() + " lines, " + report.rejected()
                    + " rejected, " + report.altered() + " altered; the first: "
                    + report.issues().get(0));
        }
    }

    private static void far(Path file, List<Instant> far, Consumer<String> said) {
        if (!far.isEmpty()) {
            said.accept(file.getFileName() + ": set aside, since more than 30 days from all others: " + far.size()
                    + " in all, the first at " + far.get(0));
        }
    }

    private static Site.Column there(Site.Column column) {
        if (!ReadingFile.exists(column)) {
            throw new IllegalArgumentException(column.file() + ": file must be there");
        }
        return column;
    }

    private static Site site(Path file, String key, String... settings) {
        Path full = file.toAbsolutePath().normalize();
        Path name = full.getFileName();
        Path folder = full.getParent();
        if (name == null || folder == null) {
            throw new IllegalArgumentException("file must be a file, was " + file);
        }
        if (!java.nio.file.Files.isRegularFile(full)) {
            throw new IllegalArgumentException(file
                    + (java.nio.file.Files.exists(full)
                            ? ": must be a file, and is a folder"
                            : ": file must be there"));
        }
        // Theirs first, so that a line of a refusal is the number of the setting.
        String text = String.join("\n", settings) + "\n" + ANY_PIPE + key + " = " + name + "\n";
        return SiteFile.parse(folder, Settings.parse("settings", text));
    }
}
