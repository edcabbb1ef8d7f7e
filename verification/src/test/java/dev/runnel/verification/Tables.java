package dev.runnel.verification;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Small file pairs for tests: means of samples, which the module can compute without any physics. */
public final class Tables {
    /** A descriptor that fits {@link #ROWS}. */
    public static final String DESCRIPTOR = String.join(
            "\n",
            "author = A. Tester",
            "year = 2001",
            "work = Means",
            "locator = p. 1",
            "provenance = published",
            "values = 2",
            "column.sample = 1, some numbers",
            "column.mean = 1, their mean",
            "calculation = statistics.mean",
            "input.sample = text sample",
            "expected = mean",
            "tolerance = 0.5 digit",
            "reason = one decimal is printed",
            "");
    /** Two rows that pass. */
    public static final String ROWS = "sample,mean\n1 2 4,2.3\n1 2,1.5\n";

    private Tables() {}

    /** Writes a file pair and returns the descriptor. */
    public static Path write(Path folder, String name, String descriptor, String rows) {
        try {
            Files.createDirectories(folder);
            Files.writeString(folder.resolve(name + ".csv"), rows);
            return Files.writeString(folder.resolve(name + ".table"), descriptor);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
