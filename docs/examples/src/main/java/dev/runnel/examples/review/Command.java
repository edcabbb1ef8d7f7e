package dev.runnel.examples.review;

import java.nio.file.Path;
import java.util.Optional;

/**
 * What the command is told.
 *
 * @param sites the folder with the sites
 * @param output the folder to write into
 * @param period the days that the review is of
 * @param proved an earlier review that is to be proved again
 */
record Command(Path sites, Path output, Period period, Optional<Path> proved) {
    private static final String USAGE =
            "two folders are wanted, one with the sites and one to write into; then from=DATE and "
                    + "to=DATE, if it is of some days only, or prove=FOLDER of an earlier review";

    /** Reads the words of the command; one that ends with its equals sign is not given. */
    static Command of(String[] words) {
        if (words.length < 2 || words[0].isBlank() || words[1].isBlank()) {
            throw new IllegalArgumentException(USAGE);
        }
        String from = "";
        String to = "";
        String prove = "";
        for (int i = 2; i < words.length; i++) {
            String[] parts = words[i].split("=", 2);
            String value = parts.length == 2 ? parts[1].strip() : "";
            switch (parts[0]) {
                case "from" -> from = value;
                case "to" -> to = value;
                case "prove" -> prove = value;
                default -> throw new IllegalArgumentException(USAGE + ", was \"" + words[i] + "\"");
            }
        }
        if (!prove.isEmpty() && !(from + to).isEmpty()) {
            throw new IllegalArgumentException(
                    "from and to must not be given with prove: the earlier review has its own");
        }
        return new Command(
                Path.of(words[0]).toAbsolutePath().normalize(),
                Path.of(words[1]),
                Period.of(from, to),
                prove.isEmpty() ? Optional.empty() : Optional.of(Path.of(prove)));
    }
}
