package dev.runnel.verification.listing;

import dev.runnel.verification.Modules;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/** The page that lists what may still change, made from the listings. */
final class ExperimentalPage {
    private static final String MARK = " | EXPERIMENTAL";

    private ExperimentalPage() {}

    static List<String> of(Function<String, List<String>> listing, Function<String, String> reason) {
        List<String> page = new ArrayList<>(List.of(
                "# What may still change",
                "",
                "Made from the code by `" + ApiListing.RECORD + "`; what the words promise stands in",
                "[api-policy.md](../api-policy.md). A type stands for all of its members; a member stands here by itself",
                "only if its type is stable. Behind it stands what keeps it from that."));
        for (String module : Modules.names()) {
            page.add("");
            page.add("## " + module);
            page.add("");
            List<String> lines = listing.apply(module).stream()
                    .filter(line -> line.endsWith(MARK))
                    .toList();
            List<String> names = lines.stream().map(ExperimentalPage::name).toList();
            int before = page.size();
            for (String name : names) {
                if (!name.contains("#") || !names.contains(name.substring(0, name.indexOf('#')))) {
                    page.add("- `" + name + "`: " + reason.apply(name));
                }
            }
            if (page.size() == before) {
                page.add("Nothing: all of it is stable.");
            }
        }
        return page;
    }

    private static String name(String line) {
        return line.substring(0, line.indexOf(" : "));
    }
}
