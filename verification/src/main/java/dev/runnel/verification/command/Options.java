package dev.runnel.verification.command;

import dev.runnel.verification.Provenance;
import dev.runnel.verification.Selection;
import dev.runnel.verification.Version;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** What the command line asks for. */
record Options(
        Selection selection,
        List<Path> tables,
        Optional<Path> report,
        int cases,
        Optional<LocalDate> day,
        boolean calculations,
        boolean list,
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
            "  --calculation TEXT  only calculations whose name contains this text",
            "  --provenance WORD   only values obtained like this: published, second-hand, derived oracle ...",
            "  --since VERSION  only tables that came with this version of Runnel or after it",
            "  --tables FOLDER  also run the published tables of this folder; may stand several times",
            "  --report FOLDER  write report.html, sign-off.html, report.csv, matrix.csv and report.xml there",
            "  --cases N        how many random conduits to recompute, " + DEFAULT_CASES + " if left out; 0 for none",
            "  --day DATE       the day to print on the page to sign, such as 2026-11-28; left open if left out",
            "  --calculations   print what a table can check, with the inputs",
            "  --list           print the tables that would run, with their count of values, and compute nothing",
            "  --help           print this text",
            "",
            "Ends with 0 if every value passes, 1 if a value fails, 2 if something could not be run.",
            "");

    /** Reads the arguments, or throws an IllegalArgumentException that names the one that is wrong. */
    static Options parse(List<String> arguments) {
        Selection selection = Selection.all();
        List<Path> tables = new ArrayList<>();
        Optional<Path> report = Optional.empty();
        int cases = DEFAULT_CASES;
        Optional<LocalDate> day = Optional.empty();
        boolean calculations = false;
        boolean list = false;
        boolean help = false;
        for (int i = 0; i < arguments.size(); i++) {
            String option = arguments.get(i);
            switch (option) {
                case "--module" -> selection = selection.withModule(value(arguments, ++i, option));
                case "--source" -> selection = selection.withSource(value(arguments, ++i, option));
                case "--calculation" -> selection = selection.withCalculation(value(arguments, ++i, option));
                case "--provenance" ->
                    selection = selection.withProvenance(parsed(arguments, ++i, option, Provenance::parse));
                case "--since" -> selection = selection.withSince(parsed(arguments, ++i, option, Version::parse));
                case "--tables" -> tables.add(path(arguments, ++i, option));
                case "--report" -> report = Optional.of(path(arguments, ++i, option));
                case "--cases" -> cases = count(arguments, ++i, option);
                case "--day" -> day = Optional.of(day(arguments, ++i, option));
                case "--calculations" -> calculations = true;
                case "--list" -> list = true;
                case "--help", "-h" -> help = true;
                default -> throw new IllegalArgumentException("unknown option \"" + option + "\", see --help");
            }
        }
        return new Options(selection, List.copyOf(tables), report, cases, day, calculations, list, help);
    }

    private static String value(List<String> arguments, int i, String option) {
        if (i >= arguments.size() || arguments.get(i).startsWith("--")) {
            throw new IllegalArgumentException("option " + option + " must be followed by a value, see --help");
        }
        return arguments.get(i);
    }

    private static <T> T parsed(List<String> arguments, int i, String option, Function<String, T> parser) {
        try {
            return parser.apply(value(arguments, i, option));
        } catch (IllegalArgumentException e) {
            String problem = String.valueOf(e.getMessage());
            throw problem.startsWith("option ")
                    ? e
                    : new IllegalArgumentException("option " + option + " " + problem, e);
        }
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

    private static LocalDate day(List<String> arguments, int i, String option) {
        String text = value(arguments, i, option);
        try {
            return LocalDate.parse(text);
        } catch (DateTimeParseException e) {
            throw new IllegalArgumentException(
                    "option " + option + " must be a day such as 2026-11-28, was \"" + text + "\"", e);
        }
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
