package dev.runnel.verification.simulation;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What the command line asks for; an option without a value counts as left out. */
record ScoreOptions(
        ScoreRun run, Path report, Optional<Path> survey, double diameter, ZoneId zone, boolean verbose, boolean help) {
    private static final int SCORING_SITES = 12;
    private static final int DEVELOPING_SITES = 3;

    static final String USAGE = String.join(
            System.lineSeparator(),
            "Scores the watch on invented sites whose faults are known, or runs it on real records.",
            "",
            "  --seeds=scoring|developing  which sites; scoring if left out",
            "  --sites=N                   sites of each kind of fault; " + SCORING_SITES + ", or " + DEVELOPING_SITES
                    + " when developing",
            "  --fault=TEXT                only faults whose name holds this text, in any case; \"sound\" for none",
            "  --level-only=true           only sites without velocity",
            "  --generator=first|second|third  who makes the sites",
            "  --report=FOLDER             where the files go; target/score if left out",
            "  --survey=FOLDER             no score: what the watch finds in the records of this folder",
            "  --diameter=M                bore of the pipe of the records, m; a large box if left out",
            "  --zone=ZONE                 whose civil clock the records follow, such as UTC or Europe/London; UTC",
            "  --verbose=true              also print every finding",
            "  --help                      print this text",
            "");

    static ScoreOptions parse(List<String> arguments) {
        Seeds seeds = Seeds.SCORING;
        int sites = 0;
        String fault = "";
        boolean levelOnly = false;
        Make make = Make.FIRST;
        Path report = Path.of("target", "score");
        Optional<Path> survey = Optional.empty();
        double diameter = Double.NaN;
        ZoneId zone = ZoneOffset.UTC;
        boolean verbose = false;
        boolean help = false;
        for (String argument : arguments) {
            int equals = argument.indexOf('=');
            String option = equals < 0 ? argument : argument.substring(0, equals);
            String value = equals < 0 ? "" : argument.substring(equals + 1).strip();
            boolean given = !value.isEmpty();
            switch (option) {
                case "--seeds" -> seeds = given ? seeds(value) : seeds;
                case "--sites" -> sites = given ? count(value) : sites;
                case "--fault" -> fault = value;
                case "--level-only" -> levelOnly = given && truth(option, value);
                case "--generator" -> make = given ? make(value) : make;
                case "--report" -> report = given ? path(option, value) : report;
                case "--survey" -> survey = given ? Optional.of(path(option, value)) : survey;
                case "--diameter" -> diameter = given ? length(value) : diameter;
                case "--zone" -> zone = given ? zone(value) : zone;
                case "--verbose" -> verbose = given && truth(option, value);
                case "--help", "-h" -> help = true;
                default -> throw new IllegalArgumentException("unknown option \"" + argument + "\", see --help");
            }
        }
        int of = sites > 0 ? sites : seeds == Seeds.SCORING ? SCORING_SITES : DEVELOPING_SITES;
        return new ScoreOptions(
                new ScoreRun(seeds, of, fault, levelOnly, make), report, survey, diameter, zone, verbose, help);
    }

    private static Seeds seeds(String value) {
        for (Seeds seeds : Seeds.values()) {
            if (seeds.toString().equals(value.toLowerCase(Locale.ROOT))) {
                return seeds;
            }
        }
        throw refused("--seeds", "scoring or developing", value);
    }

    private static Make make(String value) {
        for (Make make : Make.values()) {
            if (make.toString().equals(value.toLowerCase(Locale.ROOT))) {
                return make;
            }
        }
        throw refused("--generator", "first, second or third", value);
    }

    private static boolean truth(String option, String value) {
        return switch (value.toLowerCase(Locale.ROOT)) {
            case "false" -> false;
            case "true" -> true;
            default -> throw refused(option, "true or false", value);
        };
    }

    private static int count(String value) {
        try {
            int count = Integer.parseInt(value);
            if (count >= 1 && count <= ScoreRun.MOST_SITES) {
                return count;
            }
        } catch (NumberFormatException e) {
            // Refused below.
        }
        throw refused("--sites", "a count in [1, " + ScoreRun.MOST_SITES + "]", value);
    }

    private static double length(String value) {
        try {
            double length = Double.parseDouble(value);
            if (length > 0 && length <= 20) {
                return length;
            }
        } catch (NumberFormatException e) {
            // Refused below.
        }
        throw refused("--diameter", "in (0, 20] m", value);
    }

    private static ZoneId zone(String value) {
        try {
            return ZoneId.of(value);
        } catch (DateTimeException e) {
            throw new IllegalArgumentException("--zone must be a time zone, was \"" + value + "\"", e);
        }
    }

    private static Path path(String option, String value) {
        try {
            return Path.of(value);
        } catch (InvalidPathException e) {
            throw new IllegalArgumentException(option + " must be a folder, was \"" + value + "\"", e);
        }
    }

    private static IllegalArgumentException refused(String option, String allowed, String value) {
        return new IllegalArgumentException(option + " must be " + allowed + ", was \"" + value + "\"");
    }
}
