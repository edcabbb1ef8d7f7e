package dev.runnel.hydraulics.watch;

import dev.runnel.internal.Moments;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Series;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import org.apiguardian.api.API;

/**
 * The dry weather flow of one stretch of a record, between two changes of the site. Immutable and thread-safe.
 *
 * <p>It is the mean over the dry days of their mean flows. A day counts if at least three quarters of its readings are there
 * and not in doubt; the readings that are in doubt are left out of its mean. If no day of the stretch counts, the figure is
 * made of the doubtful days and withheld. It says what share of its days lies where the rain gauge was perhaps dead
 * ({@link DoubtfulReadings#silences()}): they were taken for dry, and may have been wet; above a half it is withheld.
 *
 * @param stretch the stretch
 * @param days dry days in it that count
 * @param daysLeftOut dry days in it that do not
 * @param flow the dry weather flow, m³/s, with its marks
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record StretchFlow(Interval stretch, int days, int daysLeftOut, MarkedFigure flow) {
    /** Share of a day, measured and not in doubt, from which its mean counts; chosen here. */
    private static final double LEAST_SHARE = 0.75;

    /**
     * Checks that all is there.
     *
     * @param stretch the stretch
     * @param days dry days in it that count
     * @param daysLeftOut dry days in it that do not
     * @param flow the dry weather flow, m³/s
     */
    public StretchFlow {
        Objects.requireNonNull(stretch, "stretch");
        Objects.requireNonNull(flow, "flow");
    }

    /**
     * Returns the dry weather flow of each stretch of a record.
     *
     * @param flow flow readings, m³/s
     * @param dryDates the dry dates
     * @param zone zone in which the dates are meant
     * @param doubt what is in doubt, and where the record is cut
     * @return one figure for each stretch, in order; none if there is no reading
     */
    public static List<StretchFlow> of(Series flow, Set<LocalDate> dryDates, ZoneId zone, DoubtfulReadings doubt) {
        if (flow.isEmpty()) {
            return List.of();
        }
        Instant first = flow.time(0);
        Instant last = flow.time(flow.size() - 1).plusNanos(1);
        List<Instant> edges = new ArrayList<>(List.of(first));
        doubt.cuts().stream()
                .filter(cut -> cut.isAfter(first) && cut.isBefore(last))
                .forEach(edges::add);
        edges.add(last);
        List<StretchFlow> stretches = new ArrayList<>();
        for (int i = 0; i + 1 < edges.size(); i++) {
            stretches.add(stretch(flow, Interval.of(edges.get(i), edges.get(i + 1)), dryDates, zone, doubt));
        }
        return List.copyOf(stretches);
    }

    private static StretchFlow stretch(
            Series flow, Interval stretch, Set<LocalDate> dryDates, ZoneId zone, DoubtfulReadings doubt) {
        List<MarkedFigure> good = new ArrayList<>();
        List<MarkedFigure> bad = new ArrayList<>();
        List<LocalDate> goodDates = new ArrayList<>();
        List<LocalDate> badDates = new ArrayList<>();
        for (LocalDate date : new TreeSet<>(dryDates)) {
            Interval day = Interval.of(
                    date.atStartOfDay(zone).toInstant(),
                    date.plusDays(1).atStartOfDay(zone).toInstant());
            // A day that a change cuts belongs to no stretch.
            if (day.start().isBefore(stretch.start()) || day.end().isAfter(stretch.end())) {
                continue;
            }
            MarkedFigure mean = MarkedFigure.mean(flow, ReadingUse.FLOW, day, doubt);
            double share = (1 - mean.missingShare()) * (1 - mean.doubtfulShare());
            (share >= LEAST_SHARE ? good : bad).add(mean);
            (share >= LEAST_SHARE ? goodDates : badDates).add(date);
        }
        List<MarkedFigure> used = good.isEmpty() ? bad : good;
        double[] means =
                Medians.known(used.stream().mapToDouble(MarkedFigure::asRead).toArray());
        double mean = means.length == 0 ? Double.NaN : Moments.mean(means);
        double doubtful =
                used.stream().mapToDouble(MarkedFigure::doubtfulShare).average().orElse(0);
        double missing =
                used.stream().mapToDouble(MarkedFigure::missingShare).average().orElse(1);
        return new StretchFlow(
                stretch,
                good.size(),
                bad.size(),
                new MarkedFigure(
                        mean,
                        doubtful,
                        missing,
                        doubt.suspectShare(good.isEmpty() ? badDates : goodDates, zone),
                        MarkedFigure.numbers(doubt.findings(ReadingUse.FLOW, stretch))));
    }

    @Override
    public String toString() {
        return "StretchFlow[" + stretch + ", " + days + " dry days, " + daysLeftOut + " left out, " + flow
                + (Double.isNaN(flow.asRead()) ? "" : " = " + Text.fixed(1000 * flow.asRead(), 1) + " l/s") + "]";
    }
}
