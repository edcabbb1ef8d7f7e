package dev.runnel.examples.follow;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;

/** A site of the demo whose files grow piece by piece, and what the command makes of them. */
final class Growth {
    static final String ID = "saltings-lane";
    private static final Path DEMO = Path.of("docs/examples/marram-bay", ID);

    /** The files of one moment are written in this order: a gauge is never behind the depths. */
    private static final List<String> FILES = List.of("tips.csv", "velocity.csv", "depth.csv");

    private static final int MANY = 5;
    private static final int OVERLAP = 40;

    private final Path sites;
    private final Map<String, byte[]> whole = new LinkedHashMap<>();
    private final Map<String, byte[]> later = new LinkedHashMap<>();
    private final Map<String, Integer> written = new TreeMap<>();

    Growth(Path sites, double shareOfRecord) {
        this.sites = sites;
        try {
            Files.createDirectories(sites.resolve(ID));
            Files.copy(DEMO.resolve("site.txt"), sites.resolve(ID).resolve("site.txt"));
            for (String file : FILES) {
                byte[] all = Files.readAllBytes(DEMO.resolve(file));
                whole.put(file, Arrays.copyOf(all, (int) (all.length * shareOfRecord)));
                written.put(file, 0);
            }
            growTo(0.002);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    Path sites() {
        return sites;
    }

    Path file(String name) {
        return sites.resolve(ID).resolve(name);
    }

    /** Lets the files grow to a share of all they will hold; the last line is cut in most cases. */
    void growTo(double share) {
        whole.forEach((file, bytes) -> {
            // Tips are bunched in storms: they are there in full before any depth is.
            int end = file.equals("tips.csv") ? bytes.length : (int) Math.round(bytes.length * share);
            int from = written.getOrDefault(file, 0);
            if (end > from) {
                try {
                    Files.write(
                            file(file),
                            Arrays.copyOfRange(bytes, from, end),
                            StandardOpenOption.CREATE,
                            StandardOpenOption.APPEND);
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
                written.put(file, end);
            }
        });
        try {
            growLater(share);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * The same record with the depths in a file for each month or so, each beginning with some lines of the one before it,
     * and the last line of each without its line feed.
     */
    static Growth ofManyFiles(Path sites, double shareOfRecord) {
        Growth growth = new Growth(sites, shareOfRecord);
        try {
            Path depths = growth.file("depth.csv");
            Files.delete(depths);
            String all = new String(growth.whole.remove("depth.csv"), StandardCharsets.UTF_8);
            growth.written.remove("depth.csv");
            List<String> lines =
                    all.lines().filter(line -> !line.startsWith("#")).toList();
            String header = lines.get(0);
            int size = lines.size() / MANY + 1;
            Files.createDirectories(growth.file("depths"));
            for (int i = 0; i < MANY; i++) {
                int from = Math.max(1, i * size - OVERLAP);
                String piece =
                        header + "\n" + String.join("\n", lines.subList(from, Math.min(lines.size(), (i + 1) * size)));
                // The order of their names is not that of their times.
                growth.later.put("depths/" + (MANY - i) + ".csv", piece.getBytes(StandardCharsets.UTF_8));
            }
            Files.writeString(growth.file("site.txt"), "\ndepth file = depths/*.csv\n", StandardOpenOption.APPEND);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        growth.growTo(0.002);
        return growth;
    }

    private void growLater(double share) throws IOException {
        long all = later.values().stream().mapToLong(bytes -> bytes.length).sum();
        long end = Math.round(all * share);
        for (Map.Entry<String, byte[]> each : later.entrySet()) {
            int to = (int) Math.max(0, Math.min(each.getValue().length, end));
            int from = written.getOrDefault(each.getKey(), 0);
            if (to > from) {
                Files.write(
                        file(each.getKey()),
                        Arrays.copyOfRange(each.getValue(), from, to),
                        StandardOpenOption.CREATE,
                        StandardOpenOption.APPEND);
                written.put(each.getKey(), to);
            }
            end -= each.getValue().length;
        }
    }

    /** What the command printed and returned. */
    record Outcome(int status, String out, String err) {}

    static Outcome follow(Path sites, Path output, String how) {
        return follow(sites, output, how, "off", Instant.EPOCH, GrowingFile.PART);
    }

    static Outcome follow(Path sites, Path output, String how, String stale, Instant now, int part) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int status = Follow.run(
                new String[] {sites.toString(), output.toString(), how, stale},
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8),
                Clock.fixed(now, ZoneOffset.UTC),
                part);
        return new Outcome(status, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    /** All that was written, without the state. */
    static Map<String, String> written(Path output) {
        Map<String, String> written = new TreeMap<>();
        try (Stream<Path> inside = Files.walk(output)) {
            for (Path file : inside.filter(Files::isRegularFile).toList()) {
                String name = output.relativize(file).toString().replace('\\', '/');
                if (name.contains("/")) {
                    written.put(name, Files.readString(file));
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return written;
    }

    /** Says where two outputs first differ, file by file. */
    static List<String> difference(Map<String, String> found, Map<String, String> expected) {
        List<String> different = new ArrayList<>();
        Set<String> names = new TreeSet<>(found.keySet());
        names.addAll(expected.keySet());
        for (String name : names) {
            List<String> one = found.getOrDefault(name, "").lines().toList();
            List<String> other = expected.getOrDefault(name, "").lines().toList();
            for (int i = 0; i < Math.max(one.size(), other.size()); i++) {
                String mine = i < one.size() ? one.get(i) : "nothing";
                String theirs = i < other.size() ? other.get(i) : "nothing";
                if (!mine.equals(theirs)) {
                    different.add(name + ", line " + (i + 1) + ": " + mine + " instead of " + theirs);
                    break;
                }
            }
        }
        return different;
    }
}
