package dev.runnel.examples.review;

import dev.runnel.timeseries.correction.SiteVisit;
import dev.runnel.timeseries.correction.VisitDifference;
import java.nio.file.Path;
import java.util.List;

/** What visits found beside the monitor, as rows of a table. */
public final class VisitTable {
    /** Names of the columns. */
    public static final List<String> COLUMNS =
            List.of("time_utc", "author", "quantity", "by_hand", "monitor", "difference", "tolerance", "verdict");

    private VisitTable() {}

    /**
     * Compares visits with the record of a site as it is now, corrected by its books as the review does it.
     *
     * @param folder the folder of the site
     * @param visits visits of its book
     * @return one row for each figure read by hand; numbers, texts and instants
     * @throws IllegalArgumentException if a file of the site is not as it should be
     */
    public static List<List<?>> of(Path folder, List<SiteVisit> visits) {
        SiteData data = SiteData.read(folder);
        return VisitFindings.of(data, FlowFindings.record(data)).differences().stream()
                .filter(each -> visits.contains(each.visit()))
                .<List<?>>map(VisitTable::row)
                .toList();
    }

    static List<?> row(VisitDifference each) {
        return List.of(
                each.visit().time(),
                each.visit().author(),
                each.quantity(),
                each.hand(),
                cell(each.monitor()),
                cell(each.difference()),
                each.tolerance(),
                BooksText.verdict(each));
    }

    private static Object cell(double value) {
        return Double.isNaN(value) ? "" : value;
    }
}
