package dev.runnel.examples.site;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/** The command that builds the site: {@code mvn -q package -P site}. */
public final class DocsSite {
    /** Modules whose Javadoc is taken in where it was made. */
    private static final List<String> MODULES = List.of("timeseries", "hydraulics", "rainfall", "verification");

    private final Path root;
    private final Path output;

    private DocsSite(Path root, Path output) {
        this.root = root;
        this.output = output;
    }

    /**
     * Builds the site; ends the process with 1 if a link leads nowhere.
     *
     * @param args the top folder of the checkout, and the folder to write into
     */
    public static void main(String[] args) {
        if (args.length != 2) {
            throw new IllegalArgumentException(
                    "two folders are wanted: the top folder of the checkout, and one to write into");
        }
        List<String> broken = build(Path.of(args[0]), Path.of(args[1]));
        if (broken.isEmpty()) {
            System.out.println("docs site: " + Path.of(args[1]).resolve("index.html"));
            return;
        }
        broken.forEach(link -> System.err.println("docs site: leads nowhere: " + link));
        System.exit(1);
    }

    /** Builds the site and returns the links that lead nowhere, each with its page. */
    static List<String> build(Path root, Path output) {
        try {
            return new DocsSite(
                            root.toAbsolutePath().normalize(),
                            output.toAbsolutePath().normalize())
                    .build();
        } catch (IOException e) {
            throw new UncheckedIOException("cannot build the site in " + output, e);
        }
    }

    private List<String> build() throws IOException {
        deleteAll(output);
        Files.createDirectories(output);
        Map<Path, String> pages = pages();
        Set<String> extras = extras();
        List<String> broken = new ArrayList<>();
        List<DocPage> built = new ArrayList<>();
        for (Map.Entry<Path, String> page : pages.entrySet()) {
            DocPage made = DocPage.of(root, page.getKey(), page.getValue(), new Links(root, pages, extras, broken));
            built.add(made);
            for (Path asset : made.assets()) {
                copy(asset, output.resolve(Links.assetTarget(root, asset)));
            }
        }
        broken.addAll(Links.missingAnchors(built));
        Frame frame = new Frame(extras);
        for (DocPage page : built) {
            write(page.target(), frame.page(page));
        }
        write("search.html", frame.search(built));
        return broken;
    }

    private void write(String target, String html) throws IOException {
        Path file = output.resolve(target);
        Files.createDirectories(file.resolveSibling(""));
        Files.writeString(file, html, StandardCharsets.UTF_8);
    }

    /** Where each page of the checkout goes. */
    private Map<Path, String> pages() throws IOException {
        Map<Path, String> pages = new LinkedHashMap<>();
        pages.put(root.resolve("README.md"), "start.html");
        pages.put(root.resolve("DEVELOPERS.md"), "developers.html");
        Path docs = root.resolve("docs");
        try (Stream<Path> files = Files.walk(docs)) {
            files.filter(file -> file.toString().endsWith(".md"))
                    .filter(file -> !docs.relativize(file).startsWith("examples")
                            && !docs.relativize(file).toString().contains("target"))
                    .sorted()
                    .forEach(file -> pages.put(
                            file,
                            Links.slashes(docs.relativize(file))
                                    .replaceAll("README\\.md$", "index.html")
                                    .replaceAll("\\.md$", ".html")));
        }
        return pages;
    }

    /** What was built beside the pages, taken in where it is there: Javadoc and the report of the proof. */
    private Set<String> extras() throws IOException {
        Set<String> extras = new TreeSet<>();
        for (String module : MODULES) {
            for (String place : List.of("target/reports/apidocs", "target/site/apidocs")) {
                Path javadoc = root.resolve(module).resolve(place);
                if (Files.isRegularFile(javadoc.resolve("index.html")) && !extras.contains("javadoc/" + module)) {
                    copyAll(javadoc, output.resolve("javadoc").resolve(module));
                    extras.add("javadoc/" + module);
                }
            }
        }
        Path report = root.resolve("verification/target/verification");
        if (Files.isRegularFile(report.resolve("report.html"))) {
            copyAll(report, output.resolve("proof"));
            extras.add("proof");
        }
        return extras;
    }

    private static void copyAll(Path from, Path to) throws IOException {
        try (Stream<Path> files = Files.walk(from)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                copy(file, to.resolve(from.relativize(file).toString()));
            }
        }
    }

    private static void copy(Path from, Path to) throws IOException {
        if (!Files.exists(to)) {
            Files.createDirectories(to.resolveSibling(""));
            Files.copy(from, to);
        }
    }

    private static void deleteAll(Path folder) throws IOException {
        if (!Files.exists(folder)) {
            return;
        }
        if (!Files.exists(folder.resolve("search.html")) && !isEmpty(folder)) {
            throw new IllegalArgumentException(
                    folder + ": folder to write into must be new, empty, or hold an earlier site");
        }
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        }
    }

    private static boolean isEmpty(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.findAny().isEmpty();
        }
    }
}
