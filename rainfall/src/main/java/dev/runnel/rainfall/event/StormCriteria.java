package dev.runnel.rainfall.event;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import org.apiguardian.api.API;

/**
 * What a storm must be to serve for checking a model, judged over several gauges. Immutable and thread-safe.
 *
 * <p>Depth and intensity must be reached at every gauge; intensity over a time means the mean over the deepest window of
 * that length. Where the steps are longer it is looked for in whole steps: enough there is enough, less leaves it open, for
 * the rain may have been harder within a step. Criteria of one's own, such as a depth in the first hour, are
 * {@linkplain #withLeast added}. The spread is the greatest difference of a gauge's depth from the median of the gauges,
 * over the median.
 *
 * <p>What this is not: the whole judgement. No unmonitored overflow, and durations about half, once and three times
 * the {@linkplain #withConcentrationTime time of concentration} (common practice), are for the user to see to; whether the flow was back at
 * dry weather before and after the storm is {@linkplain StormAssessment#withReturn added} to the assessment.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class StormCriteria {
    /** Of a spread, so that one equal to its limit meets it; chosen here. */
    private static final double ROUNDING = 1e-12;

    private final String name;
    private final double depthMm;
    private final double intensityMmPerHour;
    private final Duration intensityOver;
    private final double spread;
    private final List<Own> own;

    private record Own(String what, double least, ToDoubleFunction<RegularSeries> measure) {}

    private StormCriteria(
            String name,
            double depthMm,
            double intensityMmPerHour,
            Duration intensityOver,
            double spread,
            List<Own> own) {
        this.name = Objects.requireNonNull(name, "name");
        this.depthMm = depthMm;
        this.intensityMmPerHour = intensityMmPerHour;
        this.intensityOver = intensityOver;
        this.spread = spread;
        this.own = own;
    }

    /**
     * Returns criteria of one's own.
     *
     * @param name what to call them in a report
     * @param depthMm least depth at each gauge, mm; 0 or greater
     * @param intensityMmPerHour least mean intensity, mm/h; 0 or greater
     * @param intensityOver time over which that intensity is reached; greater than 0
     * @return the criteria, without a limit on the spread between gauges
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static StormCriteria ofDepthAndIntensity(
            String name, double depthMm, double intensityMmPerHour, Duration intensityOver) {
        EpochNanos.positive("intensityOver", intensityOver);
        return new StormCriteria(
                name,
                Require.nonNegative("depthMm", depthMm, "mm"),
                Require.nonNegative("intensityMmPerHour", intensityMmPerHour, "mm/h"),
                intensityOver,
                Double.POSITIVE_INFINITY,
                List.of());
    }

    /**
     * Returns at least 20 mm, and 10 mm/h over 10 min. Source: Wellington Water (2020), Wastewater modelling
     * specification, draft 11.
     *
     * @return the criteria
     */
    public static StormCriteria calibration2020() {
        return ofDepthAndIntensity("Wellington Water (2020)", 20, 10, Duration.ofMinutes(10));
    }

    /**
     * Returns at least 5 mm, 6 mm/h over 4 min, gauges within 20 %: British short-term flow surveys, from memory.
     *
     * @return the criteria
     */
    public static StormCriteria shortTermSurvey() {
        return ofDepthAndIntensity("British short-term survey (from memory)", 5, 6, Duration.ofMinutes(4))
                .withMaximumSpread(0.2);
    }

    /**
     * Returns the same criteria with a limit on the spread between gauges. One gauge alone leaves it unknown.
     *
     * @param maximumSpread greatest difference from the median over the median, such as 0.2 for 20 %; 0 to 1
     * @return the criteria
     * @throws IllegalArgumentException if it is not in [0, 1]
     */
    public StormCriteria withMaximumSpread(double maximumSpread) {
        return new StormCriteria(
                name,
                depthMm,
                intensityMmPerHour,
                intensityOver,
                Require.inRange("maximumSpread", maximumSpread, 0, 1, ""),
                own);
    }

    /**
     * Returns the same criteria that ask for rain lasting as long as the catchment takes to answer as a whole: from the first wet step to the
     * end of the last, at every gauge. Shorter storms do not bring the flow of the whole area together, and test less of a model.
     *
     * @param concentration time of concentration of the catchment; greater than 0
     * @return the criteria
     * @throws IllegalArgumentException if the time is not greater than 0
     */
    public StormCriteria withConcentrationTime(Duration concentration) {
        EpochNanos.positive("concentration", concentration);
        return withLeast("duration of rain, h", Rain.hours(concentration), StormCriteria::wetHours);
    }

    private static double wetHours(RegularSeries rain) {
        int first = -1;
        int last = -1;
        for (int i = 0; i < rain.size(); i++) {
            if (rain.value(i) > 0) {
                first = first < 0 ? i : first;
                last = i;
            }
        }
        return first < 0 ? 0 : (last - first + 1) * Rain.hours(rain.step());
    }

    /**
     * Returns the same criteria with one more, to be met at every gauge.
     *
     * @param what quantity and unit, for the finding, such as {@code "wet steps"}
     * @param least least value that meets it; finite
     * @param measure the quantity, from the depths in the steps of the storm, mm; one that more rain does not lower, since missing
     *     steps count against the storm only where it is not met
     * @return the criteria
     * @throws IllegalArgumentException if the least value is not finite
     */
    public StormCriteria withLeast(String what, double least, ToDoubleFunction<RegularSeries> measure) {
        Objects.requireNonNull(what, "what");
        Objects.requireNonNull(measure, "measure");
        List<Own> more = new ArrayList<>(own);
        more.add(new Own(what, Require.finite("least", least, ""), measure));
        return new StormCriteria(name, depthMm, intensityMmPerHour, intensityOver, spread, List.copyOf(more));
    }

    /**
     * Judges a storm. Steps that share any time with it count whole; those that a gauge's record does not reach are missing. A gauge
     * without any step in it is unknown altogether.
     *
     * @param storm the time of the storm
     * @param rainByGauge depth in each step, mm, by name of gauge; at least one gauge
     * @return every criterion with its figures, gauges by name
     * @throws IllegalArgumentException if there is no gauge, a depth is negative or no gauge has a step during the storm
     */
    public StormAssessment assess(Interval storm, Map<String, RegularSeries> rainByGauge) {
        Objects.requireNonNull(storm, "storm");
        requireGauges(rainByGauge);
        return judged(storm, rainByGauge);
    }

    private StormAssessment judged(Interval storm, Map<String, RegularSeries> rainByGauge) {
        Map<String, Double> depths = new LinkedHashMap<>();
        List<StormAssessment.Finding> findings = new ArrayList<>();
        Map<String, Integer> missing = new LinkedHashMap<>();
        new TreeMap<>(rainByGauge).forEach((gauge, rain) -> {
            EventSteps steps = EventSteps.of(rain, storm);
            RegularSeries during = steps.rain();
            missing.put(gauge, steps.missing());
            if (during.isEmpty()) {
                findings.add(atLeast(gauge + ": depth, mm, not recorded", Double.NaN, depthMm, false));
                return;
            }
            depths.put(gauge, during.sum());
            boolean isAllKnown = steps.missing() == 0;
            findings.add(atLeast(gauge + ": depth, mm", during.sum(), depthMm, isAllKnown));
            findings.add(intensity(gauge, during, isAllKnown));
            for (Own each : own) {
                double value = each.measure().applyAsDouble(during);
                findings.add(atLeast(gauge + ": " + each.what(), value, each.least(), isAllKnown));
            }
        });
        if (depths.isEmpty()) {
            throw new IllegalArgumentException("rainByGauge must hold a gauge with steps in " + storm + ", held none");
        }
        if (spread < Double.POSITIVE_INFINITY) {
            int anyMissing =
                    missing.values().stream().mapToInt(Integer::intValue).sum();
            double value = spread(depths);
            StormAssessment.Verdict verdict = anyMissing > 0 || depths.size() < 2
                    ? StormAssessment.Verdict.UNKNOWN
                    : value <= spread + ROUNDING ? StormAssessment.Verdict.MET : StormAssessment.Verdict.NOT_MET;
            findings.add(new StormAssessment.Finding("spread between gauges", value, spread, verdict));
        }
        return new StormAssessment(name, storm, findings);
    }

    /**
     * Finds the storms of several gauges together and judges each. A storm lasts while it rains at any gauge: events of
     * different gauges belong to one storm if the time between them is shorter than the minimum inter-event time.
     *
     * @param rule what an event is at each gauge
     * @param rainByGauge depth in each step, mm, by name of gauge; at least one gauge
     * @return one assessment for each storm, in order of time
     * @throws IllegalArgumentException if there is no gauge or a depth is negative
     */
    public List<StormAssessment> assess(EventSeparation rule, Map<String, RegularSeries> rainByGauge) {
        requireGauges(rainByGauge);
        List<Interval> events = rainByGauge.values().stream()
                .flatMap(rain -> rule.withoutPeaks().events(rain).stream())
                .map(RainfallEvent::interval)
                .sorted(Comparator.comparing(Interval::start))
                .toList();
        List<Interval> storms = new ArrayList<>();
        for (Interval event : events) {
            int last = storms.size() - 1;
            if (last < 0 || !event.start().isBefore(storms.get(last).end().plus(rule.minimumInterEvent()))) {
                storms.add(event);
            } else if (event.end().isAfter(storms.get(last).end())) {
                storms.set(last, Interval.of(storms.get(last).start(), event.end()));
            }
        }
        return storms.stream().map(storm -> judged(storm, rainByGauge)).toList();
    }

    private static void requireGauges(Map<String, RegularSeries> rainByGauge) {
        if (rainByGauge.isEmpty()) {
            throw new IllegalArgumentException("rainByGauge must hold at least one gauge, held none");
        }
        new TreeMap<>(rainByGauge).forEach((gauge, rain) -> Rain.requireNonNegative("rain of " + gauge, rain, "mm"));
    }

    private StormAssessment.Finding intensity(String gauge, RegularSeries during, boolean isAllKnown) {
        boolean isFineEnough = during.step().compareTo(intensityOver) <= 0;
        Duration window = isFineEnough ? intensityOver : during.step();
        double peak = SlidingMaximum.of(window).peaks(during).get(0).intensityMmPerHour();
        return atLeast(
                gauge + ": intensity over " + Text.duration(window)
                        + (isFineEnough ? "" : " for " + Text.duration(intensityOver)) + ", mm/h",
                peak,
                intensityMmPerHour,
                isFineEnough && isAllKnown);
    }

    /** Where not all is known, what was recorded may be enough already; too little may have been enough. */
    private static StormAssessment.Finding atLeast(String what, double value, double limit, boolean isAllKnown) {
        StormAssessment.Verdict verdict = Rain.reaches(value, limit)
                ? StormAssessment.Verdict.MET
                : isAllKnown ? StormAssessment.Verdict.NOT_MET : StormAssessment.Verdict.UNKNOWN;
        return new StormAssessment.Finding(what, value, limit, verdict);
    }

    private static double spread(Map<String, Double> depths) {
        double[] sorted = depths.values().stream()
                .mapToDouble(Double::doubleValue)
                .sorted()
                .toArray();
        int half = sorted.length / 2;
        double median = sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
        double greatest = Math.max(sorted[sorted.length - 1] - median, median - sorted[0]);
        return greatest == 0 ? 0 : greatest / median;
    }

    @Override
    public String toString() {
        return "StormCriteria[" + name + ": " + Text.significant(depthMm, 6) + " mm, "
                + Text.significant(intensityMmPerHour, 6)
                + " mm/h over " + Text.duration(intensityOver)
                + (spread < Double.POSITIVE_INFINITY ? ", spread " + Text.significant(spread, 6) : "")
                + (own.isEmpty() ? "" : ", " + own.size() + " more") + "]";
    }
}
