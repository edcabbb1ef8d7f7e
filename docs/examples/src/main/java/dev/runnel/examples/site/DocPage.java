package dev.runnel.examples.site;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.commonmark.ext.gfm.tables.TablesExtension;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.Code;
import org.commonmark.node.FencedCodeBlock;
import org.commonmark.node.Heading;
import org.commonmark.node.Image;
import org.commonmark.node.Link;
import org.commonmark.node.Node;
import org.commonmark.node.Text;
import org.commonmark.parser.Parser;
import org.commonmark.renderer.html.HtmlRenderer;

/**
 * A page of the site.
 *
 * @param target its place from the top of the site
 * @param title its first heading
 * @param html what stands below the head
 * @param sections what the search looks through
 * @param anchors its headings
 * @param links where its links lead, from the top of the site
 * @param assets files that it shows
 */
record DocPage(
        String target,
        String title,
        String html,
        List<Section> sections,
        List<String> anchors,
        List<String> links,
        List<Path> assets) {
    /**
     * What stands below one heading.
     *
     * @param anchor of the heading
     * @param heading its words
     * @param level 1 for the title of the page
     * @param text all that stands below it, up to the next one
     */
    record Section(String anchor, String heading, int level, String text) {}

    private static final Parser PARSER =
            Parser.builder().extensions(List.of(TablesExtension.create())).build();

    static DocPage of(Path root, Path file, String target, Links links) throws IOException {
        Node document = PARSER.parse(Files.readString(file));
        Reader reader = new Reader(file, target, links);
        document.accept(reader);
        reader.endSection();
        Map<Node, String> anchors = reader.anchorOf;
        HtmlRenderer renderer = HtmlRenderer.builder()
                .extensions(List.of(TablesExtension.create()))
                .escapeHtml(true)
                .attributeProviderFactory(context -> (node, tag, attributes) -> {
                    String anchor = anchors.get(node);
                    if (anchor != null) {
                        attributes.put("id", anchor);
                    }
                })
                .build();
        String title = reader.sections.isEmpty()
                ? Links.slashes(root.relativize(file))
                : reader.sections.get(0).heading();
        return new DocPage(
                target,
                title,
                renderer.render(document)
                        .replace("<table>", "<div class=\"scroll\"><table class=\"doc\">")
                        .replace("</table>", "</table></div>"),
                List.copyOf(reader.sections),
                List.copyOf(reader.anchors),
                List.copyOf(reader.targets),
                List.copyOf(reader.assets));
    }

    /** Puts what a link or a picture says in its place. */
    static void keepWords(Node node) {
        for (Node child = node.getFirstChild(); child != null; child = node.getFirstChild()) {
            node.insertBefore(child);
        }
        node.unlink();
    }

    /** Goes through a page once: turns its links, names its headings, gathers its words. */
    private static final class Reader extends AbstractVisitor {
        private final Path file;
        private final String target;
        private final Links links;
        private final Map<Node, String> anchorOf = new HashMap<>();
        private final List<String> anchors = new ArrayList<>();
        private final Set<String> taken = new HashSet<>();
        private final List<Section> sections = new ArrayList<>();
        private final List<String> targets = new ArrayList<>();
        private final List<Path> assets = new ArrayList<>();
        private final StringBuilder words = new StringBuilder();
        private String heading = "";
        private String anchor = "";
        private int level;

        Reader(Path file, String target, Links links) {
            this.file = file;
            this.target = target;
            this.links = links;
        }

        void endSection() {
            if (!heading.isEmpty()) {
                sections.add(new Section(
                        anchor,
                        heading,
                        level,
                        words.toString().replaceAll("\\s+", " ").strip()));
            }
            words.setLength(0);
        }

        @Override
        public void visit(Heading node) {
            endSection();
            visitChildren(node);
            heading = words.toString().replaceAll("\\s+", " ").strip();
            words.setLength(0);
            level = node.getLevel();
            String plain = heading.toLowerCase(Locale.ROOT)
                    .replaceAll("[^\\p{L}\\p{N} _-]", "")
                    .replace(' ', '-');
            anchor = plain;
            for (int i = 1; !taken.add(anchor); i++) {
                anchor = plain + "-" + i;
            }
            anchors.add(anchor);
            anchorOf.put(node, anchor);
        }

        @Override
        public void visit(Link node) {
            visitChildren(node);
            if (Links.isOutside(node.getDestination())) {
                return;
            }
            Links.Led led = links.follow(file, node.getDestination());
            led.asset().ifPresent(assets::add);
            if (led.target().isPresent()) {
                targets.add(led.target().get());
                node.setDestination(Links.relative(target, led.target().get()));
            } else {
                // Nothing to show for it: the words stay.
                keepWords(node);
            }
        }

        @Override
        public void visit(Image node) {
            visitChildren(node);
            Links.Led led = links.follow(file, node.getDestination());
            led.asset().ifPresent(assets::add);
            led.target().ifPresent(place -> node.setDestination(Links.relative(target, place)));
        }

        @Override
        public void visit(Text node) {
            words.append(node.getLiteral()).append(' ');
        }

        @Override
        public void visit(Code node) {
            words.append(node.getLiteral()).append(' ');
        }

        @Override
        public void visit(FencedCodeBlock node) {
            words.append(node.getLiteral()).append(' ');
        }
    }
}
