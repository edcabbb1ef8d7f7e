package dev.runnel.verification.command;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What the command line asks for. */
record Options(
        Optional<String> module,
        Optional<String> source,
        List<Path> tables,
        Optional<Path> report,
        int cases,
        boolean calculations,
        boolean help) {
    private static final int DEFAULT_CASES = 5000;

    static final String USAGE = String.join(
            System.lineSeparator(),
            "Usage: java -jar runnel-verification.jar [options]",
            "",
            "Compares what Runnel computes with what published sources print.",
            "",
            "  --module NAME    only this module: timeseries, hydraulics or rainfall",
            "  --source TEXT    only sources whose citation contains this text, in any case",
            "  --tables FOLDER  also run the published tables of this folder; may stand several times",
            "  --report FOLDER  write report.csv, report.xml and report.html there",
            "  --cases N        how many random conduits to recompute, " + DEFAULT_CASES + " if left out; 0 for none",
            "  --calculations   print what a table can check, with the inputs",
            "  --help           print this text",
            "",
            "Ends with 0 if every value passes, 1 if a value fails, 2 if something could not be run.",
            "");

    /** Reads the arguments, or throws an IllegalArgumentException that names the one that is wrong. */
    static Options parse(List<String> arguments) {
        Optional<String> module = Optional.empty();
        Optional<String> source = Optional.empty();
        List<Path> tables = new ArrayList<>();
        Optional<Path> report = Optional.empty();
        int cases = DEFAULT_CASES;
        boolean calculations = false;
        boolean help = false;
        for (int i = 0; i < arguments.size(); i++) {
            String option = arguments.get(i);
            switch (option) {
                case "--module" -> module = Optional.of(value(arguments, ++i, option));
                case "--source" -> source = Optional.of(value(arguments, ++i, option));
                case "--tables" -> tables.add(path(arguments, ++i, option));
                case "--report" -> report = Optional.of(path(arguments, ++i, option));
                case "--cases" -> cases = count(arguments, ++i, option);
                case "--calculations" -> calculations = true;
                case "--help", "-h" -> help = true;
                default -> throw new IllegalArgumentException("unknown option \"" + option + "\", see --help");
            }
        }
        return new Options(module, source, List.copyOf(tables), report, cases, calculations, help);
    }

    private static String value(List<String> arguments, int i, String option) {
        if (i >= arguments.size() || arguments.get(i).startsWith("--")) {
            throw new IllegalArgumentException("option " + option + " must be followed by a value, see --help");
        }
        return arguments.get(i);
    }

    private static int count(List<String> arguments, int i, String option) {
        String text = value(arguments, i, option);
        try {
            int count = Integer.parseInt(text);
            if (count >= 0) {
                return count;
            }
        } catch (NumberFormatException e) {
            // Refused below.
        }
        throw new IllegalArgumentException("option " + option + " must be a count of 0 or more, was \"" + text + "\"");
    }

    private static Path path(List<String> arguments, int i, String option) {
        String text = value(arguments, i, option);
        try {
            return Path.of(text);
        } catch (InvalidPathException e) {
            throw new IllegalArgumentException("option " + option + " must name a folder, was \"" + text + "\"", e);
        }
    }
}
