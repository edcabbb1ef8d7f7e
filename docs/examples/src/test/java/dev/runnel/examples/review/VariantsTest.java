package dev.runnel.examples.review;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.timeseries.csv.CsvTable;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One invented record, written as many kinds of loggers write it: each must give the review of the plain one. */
class VariantsTest {
    private static final Instant START = Instant.parse("2026-03-02T00:00:00Z");
    private static final int STEPS = 24 * 96;
    private static final String PIPE = "diameter = 600 mm\ngradient = 1:150\nroughness = manning 0.013\n";

    @TempDir
    static Path temporary;

    private static final List<double[]> READINGS = new ArrayList<>();
    private static final List<Instant> TIPS = new ArrayList<>();
    private static final int[] COUNTS = new int[STEPS];

    /** For each site its part of the text, without columns and line breaks. */
    private static final Map<String, String> TEXTS = new TreeMap<>();

    private static final String FLOW = "dry_weather_flow_m3_per_s";

    /** The dry weather flow of each site, l/s, empty if there is none. */
    private static final Map<String, String> FLOWS = new TreeMap<>();

    private static String complaints = "";

    private static Instant time(int step) {
        return START.plus(Duration.ofMinutes(15L * step));
    }

    private static String iso(Instant time) {
        return time.toString();
    }

    private static Function<Instant, String> pattern(String pattern) {
        return DateTimeFormatter.ofPattern(pattern, Locale.ENGLISH).withZone(ZoneOffset.UTC)::format;
    }

    private static void makeRecord() {
        Random random = new Random(11);
        for (int storm : new int[] {5 * 96 + 40, 9 * 96 + 60, 15 * 96 + 20, 19 * 96 + 50}) {
            for (int i = 0; i < 60; i++) {
                TIPS.add(time(storm).plusSeconds(60L * i + random.nextInt(50)));
            }
        }
        TIPS.forEach(tip -> COUNTS[(int) (Duration.between(START, tip).toMinutes() / 15)]++);
        double fast = 0;
        for (int i = 0; i < STEPS; i++) {
            double hour = i % 96 / 4.0;
            double dry =
                    0.012 * (1 + 0.5 * Math.sin(2 * Math.PI * (hour - 9) / 24)) * (1 + 0.03 * random.nextGaussian());
            fast = fast * 0.7 + COUNTS[i] * 0.2 / 1000 * 20_000 * 0.3;
            double flow = dry + fast / 900;
            double depth = 0.10 * Math.sqrt(flow / 0.02);
            double theta = 2 * Math.acos(1 - 2 * depth / 0.6);
            double area = 0.36 / 8 * (theta - Math.sin(theta));
            READINGS.add(new double[] {depth * 1000, flow / area + 0.01 * random.nextGaussian()});
        }
    }

    /** How one site is written. */
    private static final class Site {
        private final String name;
        private String keys = "";
        private Function<Instant, String> time = VariantsTest::iso;
        private char separator = ',';
        private char mark = '.';
        private String depthName = "depth_mm";
        private double depthUnit = 1;
        private String velocityName = "velocity_m_per_s";
        private double velocityUnit = 1;
        private UnaryOperator<List<String>> depthLines = lines -> lines;
        private UnaryOperator<List<String>> velocityLines = lines -> lines;
        private UnaryOperator<List<String>> tipLines = lines -> lines;
        private Charset charset = StandardCharsets.UTF_8;
        private String end = "\n";

        Site(String name) {
            this.name = name;
        }

        Site keys(String... lines) {
            keys = String.join("\n", lines) + "\n";
            return this;
        }

        Site depth(UnaryOperator<List<String>> change) {
            depthLines = change;
            return this;
        }

        Site velocity(UnaryOperator<List<String>> change) {
            velocityLines = change;
            return this;
        }

        Site tips(UnaryOperator<List<String>> change) {
            tipLines = change;
            return this;
        }

        Site time(Function<Instant, String> form) {
            time = form;
            return this;
        }

        private List<String> lines(int column, String header, double unit, int decimals) {
            List<String> lines = new ArrayList<>(List.of("time" + separator + header));
            for (int i = 0; i < STEPS; i++) {
                String value = String.format(Locale.ROOT, "%." + decimals + "f", READINGS.get(i)[column] / unit);
                lines.add(time.apply(VariantsTest.time(i)) + separator + value.replace('.', mark));
            }
            return lines;
        }

        void write() {
            List<String> tips = new ArrayList<>(List.of("time"));
            TIPS.forEach(tip -> tips.add(time.apply(tip)));
            write("site.txt", List.of(PIPE + keys), StandardCharsets.UTF_8, "\n");
            write("depth.csv", depthLines.apply(lines(0, depthName, depthUnit, 3)), charset, end);
            write("velocity.csv", velocityLines.apply(lines(1, velocityName, velocityUnit, 4)), charset, end);
            write("tips.csv", tipLines.apply(tips), charset, end);
        }

        private void write(String file, List<String> lines, Charset coded, String lineEnd) {
            if (lines.isEmpty()) {
                return;
            }
            try {
                Path folder = Files.createDirectories(temporary.resolve("sites").resolve(name));
                Files.write(folder.resolve(file), (String.join(lineEnd, lines) + lineEnd).getBytes(coded));
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }

    private static UnaryOperator<List<String>> each(UnaryOperator<String> change) {
        return lines -> lines.stream().map(change).toList();
    }

    private static UnaryOperator<List<String>> inserted(int at, List<String> more) {
        return lines -> {
            List<String> all = new ArrayList<>(lines.subList(0, at));
            all.addAll(more);
            all.addAll(lines.subList(at, lines.size()));
            return all;
        };
    }

    /** Every n-th value replaced. */
    private static UnaryOperator<List<String>> spoilt(int every, String value) {
        return lines -> {
            List<String> all = new ArrayList<>(lines);
            for (int i = every; i < all.size(); i += every) {
                all.set(i, all.get(i).replaceAll(",.*", "," + value));
            }
            return all;
        };
    }

    private static List<String> counts(String header) {
        List<String> lines = new ArrayList<>(List.of("time," + header));
        for (int i = 0; i < STEPS; i++) {
            lines.add(iso(time(i)) + "," + COUNTS[i]);
        }
        return lines;
    }

    private static List<Site> sites() {
        List<Site> sites = new ArrayList<>();
        sites.add(new Site("plain"));
        Site utf16 = new Site("utf16");
        utf16.charset = StandardCharsets.UTF_16;
        sites.add(utf16);
        Site comma = new Site("comma")
                .keys("decimal mark = comma", "time pattern = dd.MM.yyyy HH:mm:ss")
                .time(pattern("dd.MM.yyyy HH:mm:ss"));
        comma.separator = ';';
        comma.mark = ',';
        sites.add(comma);
        sites.add(new Site("apart")
                .keys(
                        "time column = day",
                        "time of day column = clock",
                        "tips time column = time",
                        "tips time of day column = none")
                .depth(each(line -> line.replace("time,", "day,clock,").replaceAll("T(..:..:..)Z", ",$1")))
                .velocity(each(line -> line.replace("time,", "day,clock,").replaceAll("T(..:..:..)Z", ",$1"))));
        sites.add(new Site("united-states")
                .keys("time pattern = MM/dd/yyyy hh:mm:ss a")
                .time(pattern("MM/dd/yyyy hh:mm:ss a")));
        sites.add(new Site("counts").tips(lines -> counts("tip count")));
        Site feet = new Site("feet");
        feet.depthName = "level (ft)";
        feet.depthUnit = 304.8;
        feet.velocityName = "velocity_fps";
        feet.velocityUnit = 0.3048;
        sites.add(feet);
        sites.add(new Site("trailing").depth(each(line -> line + ",,")).velocity(each(line -> line + ",")));
        sites.add(new Site("repeated-header").depth(inserted(900, List.of("time,depth_mm", "", "[UTC],[mm]"))));
        sites.add(new Site("nuls").depth(inserted(700, List.of("\u0000".repeat(4000)))));
        Site mark = new Site("mark");
        mark.end = "\r\n";
        sites.add(mark.depth(lines ->
                each(line -> line.equals(lines.get(0)) ? "\uFEFF" + line : line).apply(lines)));
        sites.add(new Site("spreadsheet")
                .keys("time pattern = spreadsheet days")
                .time(when -> String.format(
                        Locale.ROOT,
                        "%.6f",
                        46083 + Duration.between(START, when).toSeconds() / 86400.0)));
        sites.add(new Site("unix").keys("time pattern = seconds since 1970").time(when -> "" + when.getEpochSecond()));
        sites.add(new Site("offsets")
                .time(when -> when.atOffset(ZoneOffset.ofHours(5)).toString()));
        sites.add(new Site("missing").keys("missing marks = -9999 ---").depth(spoilt(90, "---")));
        sites.add(new Site("future").depth(inserted(800, List.of("2099-01-01T00:00:00Z,55"))));
        sites.add(new Site("reset")
                .velocity(inserted(800, List.of("2000-01-01T00:00:00Z,0.5", "2000-01-01T00:15:00Z,0.5"))));
        sites.add(new Site("duplicates")
                .depth(lines -> inserted(900, lines.subList(850, 900)).apply(lines)));
        sites.add(new Site("unsorted").depth(lines -> {
            List<String> all = new ArrayList<>(lines.subList(0, 500));
            all.addAll(lines.subList(700, 900));
            all.addAll(lines.subList(500, 700));
            all.addAll(lines.subList(900, lines.size()));
            return all;
        }));
        sites.add(new Site("depth-fails").depth(spoilt(60, "-9999")));
        sites.add(new Site("velocity-fails").velocity(spoilt(200, "-9999")));
        sites.add(new Site("gauge-dead").tips(lines -> lines.subList(0, 121)));
        sites.add(new Site("no-velocity").velocity(lines -> List.of()));
        sites.add(new Site("counts-unsaid").tips(lines -> counts("n")));
        sites.add(new Site("stuck-gauge").tips(lines -> {
            List<String> all = new ArrayList<>(lines);
            for (int i = 0; i < 400; i++) {
                all.add(iso(time(22 * 96).plusSeconds(2L * i)));
            }
            return all;
        }));
        return sites;
    }

    @BeforeAll
    static void review() throws IOException {
        makeRecord();
        sites().forEach(Site::write);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        Path output = temporary.resolve("output");
        Main.run(
                new String[] {temporary.resolve("sites").toString(), output.toString()},
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8));
        complaints = err.toString(StandardCharsets.UTF_8);
        for (String part : out.toString(StandardCharsets.UTF_8).split("\n-{60,}\n")) {
            String flat = part.replaceAll("[\\s\u00A0]+", " ").strip();
            TEXTS.put(flat.split(" ")[0].toLowerCase(Locale.ROOT), flat);
        }
        Path survey = output.resolve("survey.csv");
        String[] columns = Files.readAllLines(survey).get(0).split(",", -1);
        for (CsvTable.Row row : CsvTable.read(survey, columns).rows()) {
            FLOWS.put(
                    row.text("site"), row.has(FLOW) ? String.format(Locale.ROOT, "%.1f", 1000 * row.number(FLOW)) : "");
        }
    }

    /** Only the dead gauge, the site without velocity and the one in question may differ from the plain record. */
    @Test
    void everyWayOfWritingGivesTheSameFlowAndRain() {
        String plain = FLOWS.getOrDefault("plain", "");
        assertThat(plain).isEqualTo("12.0");
        List<String> different = FLOWS.entrySet().stream()
                .filter(entry -> !entry.getValue().equals(plain))
                .map(Map.Entry::getKey)
                .toList();
        assertThat(different).containsExactly("no-velocity");
        List<String> otherRain = TEXTS.entrySet().stream()
                .filter(entry -> FLOWS.containsKey(entry.getKey()))
                .filter(entry -> !entry.getValue().contains("rain 48.0 mm "))
                .map(Map.Entry::getKey)
                .collect(Collectors.toList());
        assertThat(otherRain).containsExactly("gauge-dead", "stuck-gauge");
        assertThat(FLOWS).hasSize(24);
    }

    @Test
    void whatCannotBeKnownIsAskedForAndStopsNoOther() {
        assertThat(complaints.strip().lines().toList())
                .singleElement()
                .asString()
                .contains("counts-unsaid cannot be reviewed.")
                .contains("column \"n\" holds whole numbers from 0 to ")
                .contains("add \"tips count column = n\" to site.txt");
    }

    @Test
    void nothingIsLostWithoutAWord() {
        assertThat(TEXTS.get("repeated-header"))
                .contains("depth 2306 2304 2 0")
                .contains("2 unreadable time (line 901)");
        assertThat(TEXTS.get("nuls")).contains("depth 2305 2304 1 0").contains("1 unreadable line (line 701)");
        assertThat(TEXTS.get("future"))
                .contains("depth 2305 2305 0 0")
                .contains(
                        "1 line of depth stamped more than 30 days from all others and set aside, the first 1 Jan 2099");
        assertThat(TEXTS.get("reset"))
                .contains("velocity 2306 2306 0 2")
                .contains("2 lines of velocity stamped more than 30 days from all others");
        assertThat(TEXTS.get("duplicates")).contains("depth 2354 2304 50 0").contains("50 duplicate (line 901)");
        assertThat(TEXTS.get("unsorted")).contains("depth 2304 2304 0 200").contains("200 out of order (line 701)");
        assertThat(TEXTS.get("depth-fails"))
                .contains("depth 2304 2304 0 0 0 38 0")
                .contains("range 38 failed");
        assertThat(TEXTS.get("velocity-fails"))
                .contains("velocity 2304 2304 0 0 0 11 0")
                .contains("range 11 failed");
        assertThat(TEXTS.get("missing")).contains("depth: 25 readings without a value");
        assertThat(TEXTS.get("gauge-dead"))
                .contains("The gauge wrote nothing for 13 d 20 h")
                .contains(", 14 not known; dry:");
        assertThat(TEXTS.get("no-velocity")).contains("no velocity readings: the review is of depth only");
        assertThat(TEXTS.get("stuck-gauge")).contains(" of 640 tips come at even gaps");
    }
}
