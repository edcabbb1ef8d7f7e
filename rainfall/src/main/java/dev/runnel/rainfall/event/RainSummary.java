package dev.runnel.rainfall.event;

import dev.runnel.internal.CompensatedSum;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.internal.Rain;
import java.time.Duration;
import java.time.LocalDate;
import java.time.Month;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import org.apiguardian.api.API;

/**
 * Rain by month or by season, beside what is normal there: the mean of the same month over a long time, 30 years by custom (World
 * Meteorological Organization 2017, Guidelines on the calculation of climate normals, WMO-No. 1203). Immutable and thread-safe.
 *
 * <p>Seasons are those of meteorology, three whole months each: December to February, named by the year in which they end, March to May,
 * June to August, September to November.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class RainSummary {
    /** A day of at least so much rain counts as wet: 1 mm, a wet day of British tables (common practice). */
    private static final double WET_DAY_MM = 1;

    private final List<Row> rows;

    private RainSummary(List<Row> rows) {
        this.rows = List.copyOf(rows);
    }

    /**
     * The rain of one month or season.
     *
     * @param first its first month
     * @param months number of months, 1 or 3
     * @param depthMm rain recorded, mm
     * @param wetDays days with 1 mm or more
     * @param wettestMm greatest rain of a day, mm
     * @param unknown time of which the record says nothing, days before or after the record included
     * @param normalMm what is normal, mm; empty if not given
     * @since 0.1
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public record Row(
            YearMonth first,
            int months,
            double depthMm,
            int wetDays,
            double wettestMm,
            Duration unknown,
            OptionalDouble normalMm) {
        /**
         * Checks that nothing is missing.
         *
         * @param first its first month
         * @param months number of months, 1 or 3
         * @param depthMm rain recorded, mm
         * @param wetDays days with 1 mm or more
         * @param wettestMm greatest rain of a day, mm
         * @param unknown time of which the record says nothing, days before or after the record included
         * @param normalMm what is normal, mm; empty if not given
         */
        public Row {
            Objects.requireNonNull(first, "first");
            Objects.requireNonNull(unknown, "unknown");
            Objects.requireNonNull(normalMm, "normalMm");
        }

        /**
         * Returns the rain in percent of the normal.
         *
         * @return 100 P/normal, %; empty without a normal above 0
         */
        public OptionalDouble percentOfNormal() {
            return normalMm.isPresent() && normalMm.getAsDouble() > 0
                    ? OptionalDouble.of(100 * depthMm / normalMm.getAsDouble())
                    : OptionalDouble.empty();
        }

        /**
         * Tells whether all of the time was recorded.
         *
         * @return true if nothing is unknown
         */
        public boolean isComplete() {
            return unknown.isZero();
        }

        @Override
        public String toString() {
            String atLeast = isComplete() ? "" : "at least ";
            return first + (months == 1 ? "" : " to " + first.plusMonths(months - 1L)) + ": " + atLeast
                    + Text.significant(depthMm, 4) + " mm"
                    + (percentOfNormal().isPresent()
                            ? ", " + atLeast
                                    + Text.significant(percentOfNormal().getAsDouble(), 3) + " % of normal"
                            : "")
                    + ", " + wetDays + " wet days, wettest " + Text.significant(wettestMm, 3) + " mm"
                    + (isComplete() ? "" : ", " + Text.duration(unknown) + " not known");
        }
    }

    /**
     * Returns the rain by month.
     *
     * @param rain the days
     * @return one row for each month that the record touches
     */
    public static RainSummary monthly(DailyRain rain) {
        return of(rain, 1, Map.of());
    }

    /**
     * Returns the rain by month beside its normal.
     *
     * @param rain the days
     * @param normalsMm normal rain of each month, mm; 0 or greater; months left out have none
     * @return one row for each month that the record touches
     * @throws IllegalArgumentException if a normal is negative or not finite
     */
    public static RainSummary monthly(DailyRain rain, Map<Month, Double> normalsMm) {
        return of(rain, 1, normalsMm);
    }

    /**
     * Returns the rain by season.
     *
     * @param rain the days
     * @return one row for each season that the record touches
     */
    public static RainSummary seasonal(DailyRain rain) {
        return of(rain, 3, Map.of());
    }

    /**
     * Returns the rain by season beside its normal.
     *
     * @param rain the days
     * @param normalsMm normal rain of each month, mm; 0 or greater; a season has a normal if its three months have one
     * @return one row for each season that the record touches
     * @throws IllegalArgumentException if a normal is negative or not finite
     */
    public static RainSummary seasonal(DailyRain rain, Map<Month, Double> normalsMm) {
        return of(rain, 3, normalsMm);
    }

    private static RainSummary of(DailyRain rain, int months, Map<Month, Double> normalsMm) {
        normalsMm.forEach((month, normal) -> Require.nonNegative("normal of " + month, normal, "mm"));
        Map<YearMonth, List<DailyRain.Day>> periods = new LinkedHashMap<>();
        for (DailyRain.Day day : rain.days()) {
            periods.computeIfAbsent(first(day.date(), months), key -> new ArrayList<>())
                    .add(day);
        }
        List<Row> rows = new ArrayList<>();
        periods.forEach((first, days) -> rows.add(row(rain.rule(), first, months, days, normalsMm)));
        return new RainSummary(rows);
    }

    private static YearMonth first(LocalDate date, int months) {
        YearMonth month = YearMonth.from(date);
        return months == 1 ? month : month.minusMonths(month.getMonthValue() % 3);
    }

    private static Row row(
            RainDay rule, YearMonth first, int months, List<DailyRain.Day> days, Map<Month, Double> normalsMm) {
        CompensatedSum depth = new CompensatedSum();
        double wettest = 0;
        int wet = 0;
        Duration known = Duration.ZERO;
        for (DailyRain.Day day : days) {
            depth.add(day.depthMm());
            wettest = Math.max(wettest, day.depthMm());
            wet += Rain.reaches(day.depthMm(), WET_DAY_MM) ? 1 : 0;
            known = known.plus(rule.interval(day.date()).duration()).minus(day.unknown());
        }
        LocalDate from = first.atDay(1);
        LocalDate to = first.plusMonths(months).atDay(1);
        Duration all =
                Duration.between(rule.interval(from).start(), rule.interval(to).start());
        double normal = 0;
        boolean isKnown = true;
        for (int i = 0; i < months; i++) {
            Double each = normalsMm.get(first.plusMonths(i).getMonth());
            isKnown &= each != null;
            normal += each == null ? 0 : each;
        }
        return new Row(
                first,
                months,
                depth.value(),
                wet,
                wettest,
                all.minus(known),
                isKnown ? OptionalDouble.of(normal) : OptionalDouble.empty());
    }

    /**
     * Returns the rows.
     *
     * @return one for each month or season, in order of time
     */
    public List<Row> rows() {
        return Collections.unmodifiableList(rows);
    }

    @Override
    public String toString() {
        return "RainSummary" + rows;
    }
}
