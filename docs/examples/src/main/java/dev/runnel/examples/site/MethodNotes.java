package dev.runnel.examples.site;

import dev.runnel.examples.pages.PageParts;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.commonmark.ext.gfm.tables.TablesExtension;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.Image;
import org.commonmark.node.Link;
import org.commonmark.node.Node;
import org.commonmark.parser.Parser;
import org.commonmark.renderer.html.HtmlRenderer;

/** The method pages that the pages of a folder name, written beside them, so that a review can be read anywhere. */
public final class MethodNotes {
    private static final String LINK = "href=\"methods/";
    private static final Pattern NAMED = Pattern.compile(LINK + "([a-z0-9-]+)\\.html\"");

    private MethodNotes() {}

    /**
     * Writes the method pages.
     *
     * @param folder the folder of the pages
     * @throws IOException if one cannot be read or written
     */
    public static void writeBeside(Path folder) throws IOException {
        Set<String> names = named(folder);
        Path methods = Files.createDirectories(folder.resolve("methods"));
        try {
            names.parallelStream().forEach(name -> write(methods, name, names));
        } catch (UncheckedIOException e) {
            throw new IOException(e.getMessage(), e);
        }
    }

    private static void write(Path methods, String name, Set<String> names) {
        try {
            Files.writeString(methods.resolve(name + ".html"), page(name, names), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Side by side, since the pages of many sites are a hundred megabytes; names are ASCII in any case. */
    private static Set<String> named(Path folder) throws IOException {
        try (Stream<Path> inside = Files.list(folder)) {
            List<Path> pages =
                    inside.filter(file -> file.toString().endsWith(".html")).toList();
            return pages.parallelStream()
                    .flatMap(page -> {
                        try {
                            return namedIn(Files.readString(page, StandardCharsets.ISO_8859_1)).stream();
                        } catch (IOException e) {
                            throw new UncheckedIOException(e);
                        }
                    })
                    .collect(Collectors.toCollection(TreeSet::new));
        } catch (UncheckedIOException e) {
            throw new IOException(e.getMessage(), e);
        }
    }

    /** Most of a page is a record in letters: it is passed over, and the pattern is asked only where a link begins. */
    private static Set<String> namedIn(String page) {
        Set<String> names = new TreeSet<>();
        Matcher matcher = NAMED.matcher(page);
        for (int at = page.indexOf(LINK); at >= 0; at = page.indexOf(LINK, at + 1)) {
            if (matcher.region(at, page.length()).lookingAt()) {
                names.add(matcher.group(1));
            }
        }
        return names;
    }

    private static String page(String name, Set<String> names) {
        Node document = Parser.builder()
                .extensions(List.of(TablesExtension.create()))
                .build()
                .parse(PageParts.part("/dev/runnel/examples/methods/" + name + ".md"));
        document.accept(new Unlinked(names));
        String html = HtmlRenderer.builder()
                .extensions(List.of(TablesExtension.create()))
                .escapeHtml(true)
                .build()
                .render(document);
        return Frame.plain("Method: " + name.replace('-', ' '), "../index.html", "All sites", html);
    }

    /** Leaves links to pages that are there, or outside; of the others the words. */
    private static final class Unlinked extends AbstractVisitor {
        private final Set<String> names;

        Unlinked(Set<String> names) {
            this.names = names;
        }

        @Override
        public void visit(Link node) {
            visitChildren(node);
            String name = node.getDestination().replaceAll("\\.md(#.*)?$", "");
            if (names.contains(name)) {
                node.setDestination(name + ".html");
            } else if (!Links.isOutside(node.getDestination())) {
                DocPage.keepWords(node);
            }
        }

        @Override
        public void visit(Image node) {
            DocPage.keepWords(node);
        }
    }
}
