package dev.runnel.examples.review;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntFunction;

/** A folder of files for one test, and the review run over it as the command runs it. */
final class SiteOnDisk {
    static final String PLAIN_SITE = "diameter = 450 mm\ngradient = 1:150\nroughness = manning 0.013\n";

    private final Path folder;
    private final Path output;

    /** What the command printed and returned. */
    record Outcome(int status, String out, String err) {
        /** What was printed, without its line breaks and columns. */
        String flat() {
            return out.replaceAll("\\s+", " ");
        }
    }

    SiteOnDisk(Path temporary) {
        this.folder = temporary.resolve("site");
        this.output = temporary.resolve("output");
        with("site.txt", PLAIN_SITE);
    }

    SiteOnDisk with(String file, String text) {
        return with(file, text.getBytes(StandardCharsets.UTF_8));
    }

    SiteOnDisk with(String file, byte[] content) {
        try {
            Path path = folder.resolve(file);
            Files.createDirectories(path.getParent());
            Files.write(path, content);
            return this;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Lines of readings with a header, ISO times in UTC. */
    static String readings(String header, String start, Duration step, int count, IntFunction<String> value) {
        StringBuilder text = new StringBuilder(header).append('\n');
        Instant time = Instant.parse(start);
        for (int i = 0; i < count; i++) {
            text.append(time).append(',').append(value.apply(i)).append('\n');
            time = time.plus(step);
        }
        return text.toString();
    }

    /** A depth in mm and a velocity in m/s every quarter of an hour, as a text with a comma between. */
    static String quarterHours(int count, IntFunction<String> values) {
        return readings("time,depth_mm,velocity_m_s", "2026-03-02T00:00:00Z", Duration.ofMinutes(15), count, values);
    }

    /** Depths of a day that rise and fall about 100 mm, in mm, at the given step in minutes. */
    static String day(int stepMinutes) {
        return days(1, stepMinutes);
    }

    static String days(int days, int stepMinutes) {
        int perDay = 24 * 60 / stepMinutes;
        return readings(
                "time,depth_mm",
                "2026-03-02T00:00:00Z",
                Duration.ofMinutes(stepMinutes),
                days * perDay,
                i -> "" + Math.round(100 + 40 * Math.sin(2 * Math.PI * i / perDay)));
    }

    Path folder() {
        return folder;
    }

    Path output() {
        return output;
    }

    String written(String file) {
        try {
            return Files.readString(output.resolve(file));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    Outcome review() {
        return review(folder.toString());
    }

    Outcome review(String where, String... more) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        List<String> words = new ArrayList<>(List.of(where, output.toString()));
        words.addAll(List.of(more));
        int status = Main.run(
                words.toArray(String[]::new),
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8));
        return new Outcome(status, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }
}
