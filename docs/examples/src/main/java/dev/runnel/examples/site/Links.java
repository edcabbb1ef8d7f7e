package dev.runnel.examples.site;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** From links of the checkout to links of the site. */
final class Links {
    private final Path root;
    private final Map<Path, String> pages;
    private final Set<String> extras;
    private final List<String> broken;

    Links(Path root, Map<Path, String> pages, Set<String> extras, List<String> broken) {
        this.root = root;
        this.pages = pages;
        this.extras = extras;
        this.broken = broken;
    }

    /**
     * Where a link leads.
     *
     * @param target from the top of the site, with its anchor; empty if the site has nothing to show for it
     * @param asset a file that must be copied for it
     */
    record Led(Optional<String> target, Optional<Path> asset) {
        static final Led NOWHERE = new Led(Optional.empty(), Optional.empty());
    }

    static boolean isOutside(String link) {
        return link.matches("[a-z]+:.*");
    }

    Led follow(Path page, String link) {
        String[] parts = link.split("#", 2);
        String anchor = parts.length == 2 ? "#" + parts[1] : "";
        Path file = parts[0].isEmpty() ? page : page.resolveSibling(parts[0]).normalize();
        if (!Files.exists(file)) {
            broken.add(slashes(root.relativize(page)) + ": " + link);
            return Led.NOWHERE;
        }
        String target = pages.get(file);
        if (target == null) {
            target = pages.get(file.resolve("README.md"));
        }
        if (target != null) {
            return new Led(Optional.of(target + anchor), Optional.empty());
        }
        String module = "javadoc/" + slashes(root.relativize(file));
        if (Files.isDirectory(file)) {
            return extras.contains(module)
                    ? new Led(Optional.of(module + "/index.html"), Optional.empty())
                    : Led.NOWHERE;
        }
        return file.startsWith(root.resolve("docs"))
                ? new Led(Optional.of(assetTarget(root, file)), Optional.of(file))
                : Led.NOWHERE;
    }

    static String assetTarget(Path root, Path file) {
        return slashes(root.resolve("docs").relativize(file));
    }

    static String slashes(Path path) {
        return path.toString().replace('\\', '/');
    }

    /** The way from one page of the site to another. */
    static String relative(String from, String to) {
        String[] way = from.split("/");
        return "../".repeat(way.length - 1) + to;
    }

    /** Links to a heading that its page does not have. */
    static List<String> missingAnchors(List<DocPage> built) {
        Map<String, Set<String>> anchors = new HashMap<>();
        built.forEach(page -> anchors.put(page.target(), new HashSet<>(page.anchors())));
        List<String> missing = new ArrayList<>();
        for (DocPage page : built) {
            for (String link : page.links()) {
                String[] parts = link.split("#", 2);
                if (parts.length == 2
                        && anchors.containsKey(parts[0])
                        && !anchors.getOrDefault(parts[0], Set.of()).contains(parts[1])) {
                    missing.add(page.target() + ": no heading #" + parts[1] + " in " + parts[0]);
                }
            }
        }
        return missing;
    }
}
