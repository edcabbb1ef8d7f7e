package dev.runnel.verification.simulation;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What the publisher of a record says of a stretch of it.
 *
 * @param file how the name of the file begins
 * @param from start
 * @param to end
 * @param says the label
 */
record SurveyLabel(String file, Instant from, Instant to, String says) {
    private static final Pattern SERIES =
            Pattern.compile("\"([^\"]*/)?([^\"/]+\\.csv)\"\\s*:\\s*\\[((?:[^\\[\\]]|\\[[^\\]]*\\])*)\\]");
    private static final Pattern WINDOW = Pattern.compile("\\[\\s*\"([^\"]+)\"\\s*,\\s*\"([^\"]+)\"\\s*\\]");

    /**
     * The labels of a folder: tables with the columns {@code Node ID, start, end, Clean} whose files begin with the node,
     * and files {@code ..._windows.json} that give for each series a list of pairs of times.
     */
    static List<SurveyLabel> of(List<Path> files) throws IOException {
        List<SurveyLabel> labels = new ArrayList<>();
        for (Path path : files) {
            String name = String.valueOf(path.getFileName());
            if (name.endsWith("_windows.json")) {
                labels.addAll(windows(Files.readString(path)));
            } else if (name.startsWith("metadata") && name.endsWith(".csv")) {
                labels.addAll(stretches(path));
            }
        }
        return labels;
    }

    private static List<SurveyLabel> windows(String text) {
        List<SurveyLabel> labels = new ArrayList<>();
        Matcher series = SERIES.matcher(text);
        while (series.find()) {
            Matcher window = WINDOW.matcher(series.group(3));
            while (window.find()) {
                Optional<Instant> from = SurveyFile.time(window.group(1), ZoneOffset.UTC);
                Optional<Instant> to = SurveyFile.time(window.group(2), ZoneOffset.UTC);
                if (from.isPresent() && to.isPresent()) {
                    labels.add(new SurveyLabel(series.group(2), from.orElseThrow(), to.orElseThrow(), "anomalous"));
                }
            }
        }
        return labels;
    }

    private static List<SurveyLabel> stretches(Path path) throws IOException {
        List<SurveyLabel> labels = new ArrayList<>();
        List<CsvRecord> lines;
        try (CsvReader<CsvRecord> reader = CsvReader.builder().ofCsvRecord(path)) {
            lines = reader.stream().toList();
        }
        List<String> heads = lines.isEmpty() ? List.of() : lines.get(0).getFields();
        int node = heads.indexOf("Node ID");
        int start = heads.indexOf("start");
        int end = heads.indexOf("end");
        int clean = heads.indexOf("Clean");
        if (node < 0 || start < 0 || end < 0 || clean < 0) {
            return labels;
        }
        for (CsvRecord line : lines.subList(1, lines.size())) {
            Optional<Instant> from = SurveyFile.time(line.getField(start), ZoneOffset.UTC);
            Optional<Instant> to = SurveyFile.time(line.getField(end), ZoneOffset.UTC);
            if (from.isPresent() && to.isPresent()) {
                String says = "1".equals(line.getField(clean).strip()) ? "clean" : "obstructed view";
                labels.add(new SurveyLabel(line.getField(node), from.orElseThrow(), to.orElseThrow(), says));
            }
        }
        return labels;
    }

    /** What was told in the stretch. */
    String against(List<Said> said) {
        List<String> names = said.stream()
                .filter(finding ->
                        !finding.told().isBefore(from) && finding.told().isBefore(to))
                .map(finding -> finding.atEnd().get(0).toString())
                .toList();
        return "labelled " + says + " from " + from + " to " + to + ": "
                + (names.isEmpty() ? "no finding" : String.join(", ", names));
    }
}
