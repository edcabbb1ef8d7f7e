package dev.runnel.hydraulics.watch;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.apiguardian.api.API;

/**
 * What the watch found in a record. Immutable and thread-safe.
 *
 * @param baseline what the record was held against
 * @param findings the findings as they stood in the end, by number
 * @param events what became known, in order
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record WatchReport(SiteBaseline baseline, List<Finding> findings, List<WatchNotice> events) {
    /**
     * Copies the lists.
     *
     * @param baseline what the record was held against
     * @param findings the findings as they stood in the end
     * @param events what became known, in order
     */
    public WatchReport {
        Objects.requireNonNull(baseline, "baseline");
        findings = List.copyOf(findings);
        events = List.copyOf(events);
    }

    /**
     * Returns the report that events come to.
     *
     * @param baseline what the record was held against
     * @param events what a watch gave, in order
     * @return the report
     */
    public static WatchReport of(SiteBaseline baseline, Collection<WatchNotice> events) {
        Collector collector = new Collector();
        collector.add(List.copyOf(events));
        return collector.report(baseline);
    }

    /** Gathers events as they come. */
    static final class Collector {
        private final List<WatchNotice> events = new ArrayList<>();

        void add(List<WatchNotice> more) {
            // Hardly any reading has something to tell.
            if (!more.isEmpty()) {
                events.addAll(more);
            }
        }

        WatchReport report(SiteBaseline baseline) {
            Map<Integer, Finding> last = new TreeMap<>();
            events.stream()
                    .filter(event -> event.kind() != WatchNotice.Kind.NOTED)
                    .forEach(event -> last.put(event.finding().number(), event.finding()));
            return new WatchReport(baseline, List.copyOf(last.values()), events);
        }
    }

    /**
     * Returns the findings that are open.
     *
     * @return those without a closing
     */
    public List<Finding> open() {
        return findings.stream().filter(Finding::isOpen).toList();
    }

    /**
     * Returns what is worth knowing beside the findings and speaks against no reading: an hour in which a clock was wrong
     * and has been mended, stamps that were left out, a tide that the baseline did not see, a time in which a rain gauge was
     * perhaps dead (from the lower end of its {@code sinceRange()} on), which is not sure enough for a finding.
     *
     * @return remarks, in order, each with number 0
     */
    public List<Finding> remarks() {
        return events.stream()
                .filter(event -> event.kind() == WatchNotice.Kind.NOTED)
                .map(WatchNotice::finding)
                .toList();
    }

    /**
     * Returns the report in words.
     *
     * @return the baseline, then each finding
     */
    public String describe() {
        StringBuilder text = new StringBuilder(baseline.describe());
        if (findings.isEmpty()) {
            text.append("\n\nnothing found by the tests that could be made");
        }
        remarks().forEach(remark -> text.append("\n\n").append(remark.describe()));
        findings.forEach(finding -> text.append("\n\n").append(finding.describe()));
        return text.toString();
    }

    @Override
    public String toString() {
        return "WatchReport[" + findings.size() + " findings, " + open().size() + " open]";
    }
}
