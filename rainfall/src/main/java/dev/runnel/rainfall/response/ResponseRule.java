package dev.runnel.rainfall.response;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.event.RainfallEvent;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.apiguardian.api.API;

/**
 * How the response of a flow to each storm of a record is read. Immutable and thread-safe.
 *
 * <ol>
 *   <li>The peak of the flow above dry weather is looked for from the begin of the rain to the longest lag after its end, or to the
 *       next storm.
 *   <li>The flow is back at dry weather where it stays within the allowance, after the rain and after that peak, as
 *       {@link ReturnToDryWeather} says. That ends the window of the response; so do the next storm, the longest time after the rain,
 *       and the end of a record, each with a doubt.
 *   <li>Over the window the volumes are those of {@link RunoffVolume}, the centre of the flow is Σ q t/Σ q with q the flow above
 *       dry weather and t the middle of its step, and the {@link Recession} is fitted from the step after the peak on.
 * </ol>
 *
 * <p>Allowance, times and the least R² of a recession are chosen here: set those that suit the site.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class ResponseRule {
    private static final double LEAST_R_SQUARED = 0.8;

    private final double areaM2;
    private final double allowance;
    private final Duration held;
    private final Duration longestLag;
    private final Duration longest;

    private ResponseRule(double areaM2, double allowance, Duration held, Duration longestLag, Duration longest) {
        this.areaM2 = areaM2;
        this.allowance = allowance;
        this.held = held;
        this.longestLag = longestLag;
        this.longest = longest;
    }

    /**
     * Returns the rule for an area: back within 10 % of dry weather flow for an hour, a lag of at most six hours, and no more than
     * three days after the rain.
     *
     * @param areaM2 area whose rain is set against the flow, m²; greater than 0
     * @return the rule
     * @throws IllegalArgumentException if the area is not
     */
    public static ResponseRule ofArea(double areaM2) {
        return new ResponseRule(
                Require.positive("areaM2", areaM2, "m2"),
                0.1,
                Duration.ofHours(1),
                Duration.ofHours(6),
                Duration.ofDays(3));
    }

    /**
     * Returns the rule with another measure of being back.
     *
     * @param allowance greatest excess that is let be, as a share of the dry weather flow; 0 to 1
     * @param held how long the flow must stay within it; greater than 0
     * @return the new rule
     * @throws IllegalArgumentException if one is out of its range
     */
    public ResponseRule withAllowance(double allowance, Duration held) {
        Require.inRange("allowance", allowance, 0, 1, "");
        EpochNanos.positive("held", held);
        return new ResponseRule(areaM2, allowance, held, longestLag, longest);
    }

    /**
     * Returns the rule with another longest time from the end of the rain to the peak.
     *
     * @param longestLag 0 or longer
     * @return the new rule
     * @throws IllegalArgumentException if it is negative
     */
    public ResponseRule withLongestLag(Duration longestLag) {
        EpochNanos.nonNegative("longestLag", longestLag);
        return new ResponseRule(areaM2, allowance, held, longestLag, longest);
    }

    /**
     * Returns the rule with another longest time that a response may take after the rain.
     *
     * @param longest greater than 0
     * @return the new rule
     * @throws IllegalArgumentException if it is not
     */
    public ResponseRule withLongest(Duration longest) {
        EpochNanos.positive("longest", longest);
        return new ResponseRule(areaM2, allowance, held, longestLag, longest);
    }

    /**
     * Reads the response to each storm.
     *
     * @param storms storms in order of time, none overlapping another
     * @param rain depth in each step, mm, NaN for missing
     * @param flow mean flow in each step, m³/s, NaN for missing
     * @param dryWeatherFlow mean dry weather flow in the same steps as {@code flow}, m³/s
     * @return the responses
     * @throws IllegalArgumentException if storms overlap, a depth is negative, or flow and dry weather flow differ in their steps
     */
    public StormResponses responses(
            List<RainfallEvent> storms, RegularSeries rain, RegularSeries flow, RegularSeries dryWeatherFlow) {
        Objects.requireNonNull(flow, "flow");
        Objects.requireNonNull(dryWeatherFlow, "dryWeatherFlow");
        Steps.requireSame("dryWeatherFlow", flow, dryWeatherFlow);
        List<StormResponse> all = new ArrayList<>();
        int outside = 0;
        for (int i = 0; i < storms.size(); i++) {
            RainfallEvent storm = storms.get(i);
            Optional<Instant> next =
                    i + 1 < storms.size() ? Optional.of(storms.get(i + 1).start()) : Optional.empty();
            if (next.isPresent() && next.get().isBefore(storm.end())) {
                throw new IllegalArgumentException("storms must not overlap, had one from " + storm.start() + " to "
                        + storm.end() + " and one from " + next.get());
            }
            boolean rainHeld =
                    !storm.start().isBefore(rain.start()) && !storm.end().isAfter(rain.end());
            if (rainHeld && !storm.start().isBefore(flow.start()) && storm.end().isBefore(flow.end())) {
                all.add(response(storm, next, rain, flow, dryWeatherFlow));
            } else {
                outside++;
            }
        }
        return new StormResponses(all, outside);
    }

    private StormResponse response(
            RainfallEvent storm, Optional<Instant> next, RegularSeries rain, RegularSeries flow, RegularSeries dry) {
        // No further than it can matter: a record of years holds thousands of storms.
        Instant limit = next.orElse(Instant.MAX);
        Instant end = earliest(storm.end().plus(longest), limit, flow.end(), rain.end());
        Interval reach = around(Interval.of(storm.start(), end), flow);
        RegularSeries near = flow.slice(reach);
        RegularSeries usual = dry.slice(reach);
        RegularSeries above = near.combine(usual, (wet, normal) -> wet - normal);
        Instant peakLimit = earliest(storm.end().plus(longestLag), end);
        int peak = greatest(above, indexAt(above, storm.start()), peakLimit);

        Instant from = storm.end();
        if (peak >= 0) {
            Instant afterPeak = above.time(peak).plus(above.step());
            from = afterPeak.isAfter(from) && afterPeak.isBefore(end) ? afterPeak : from;
        }
        ReturnToDryWeather found = from.isBefore(near.end())
                ? ReturnToDryWeather.of(from, near, usual, allowance, held)
                : new ReturnToDryWeather(storm.end(), Optional.empty(), storm.end());
        // Never after the end: a slice holds only steps that begin before it.
        Optional<Instant> back = found.back();
        Interval window = Interval.of(storm.start(), back.orElse(end));
        RunoffVolume runoff = RunoffVolume.of(window, rain.slice(around(window, rain)), areaM2, near, usual);
        RegularSeries response = above.slice(window);
        Optional<Recession> recession = recession(above, peak, window.end());

        Set<ResponseDoubt> doubts = EnumSet.noneOf(ResponseDoubt.class);
        add(doubts, ResponseDoubt.RAIN_MISSING, runoff.missingRain() > 0 || !storm.isComplete());
        add(doubts, ResponseDoubt.FLOW_MISSING, runoff.missingFlow() > 0);
        add(doubts, ResponseDoubt.WET_BEFORE, !isDryBefore(storm.start(), flow, dry));
        boolean cutByNext = back.isEmpty() && end.equals(limit);
        add(doubts, ResponseDoubt.NEXT_STORM, cutByNext);
        add(doubts, ResponseDoubt.NOT_BACK, back.isEmpty() && !cutByNext);
        add(doubts, ResponseDoubt.MORE_THAN_RAIN, runoff.flowM3() > runoff.rainM3());
        add(doubts, ResponseDoubt.BELOW_DRY, runoff.flowM3() < 0);
        boolean rises = peak >= 0 && above.value(peak) > allowance * usual.value(peak);
        add(doubts, ResponseDoubt.NO_RESPONSE, !rises);
        boolean isLast = peak >= 0 && !above.time(peak).plus(above.step()).isBefore(peakLimit);
        add(doubts, ResponseDoubt.PEAK_AT_LIMIT, rises && isLast);
        boolean isClear =
                recession.filter(fall -> fall.rSquared() >= LEAST_R_SQUARED).isPresent();
        add(doubts, ResponseDoubt.NO_RECESSION, !isClear);
        return new StormResponse(
                storm.interval(),
                storm.depthMm(),
                centre(rain.slice(around(storm.interval(), rain))),
                runoff,
                peak < 0 ? OptionalDouble.empty() : OptionalDouble.of(above.value(peak)),
                peak < 0 ? Optional.empty() : Optional.of(middle(above, peak)),
                centre(response),
                recession,
                new ReturnToDryWeather(storm.end(), back, found.knownUntil()),
                doubts);
    }

    private static void add(Set<ResponseDoubt> doubts, ResponseDoubt doubt, boolean is) {
        if (is) {
            doubts.add(doubt);
        }
    }

    private static Instant earliest(Instant first, Instant... others) {
        Instant earliest = first;
        for (Instant each : others) {
            earliest = each.isBefore(earliest) ? each : earliest;
        }
        return earliest;
    }

    /** The steps of a record that share time with an interval, as one interval. */
    private static Interval around(Interval interval, RegularSeries series) {
        long step = series.step().toNanos();
        long start = EpochNanos.of(series.start());
        long from = Math.floorDiv(EpochNanos.of(interval.start()) - start, step);
        Instant begin = series.start().plusNanos(step * from);
        Instant firstEnd = begin.plusNanos(step);
        // A storm of one tip has no duration, and still a step.
        return Interval.of(begin, interval.end().isAfter(firstEnd) ? interval.end() : firstEnd);
    }

    /** The first step that ends after a time. */
    private static int indexAt(RegularSeries series, Instant time) {
        long offset = EpochNanos.of(time) - EpochNanos.of(series.start());
        return (int) Math.max(0, Math.floorDiv(offset, series.step().toNanos()));
    }

    /** The place of the greatest value of the steps that begin before a time; -1 if none is known. */
    private static int greatest(RegularSeries above, int from, Instant limit) {
        int greatest = -1;
        for (int i = from; i < above.size() && above.time(i).isBefore(limit); i++) {
            if (!Double.isNaN(above.value(i)) && (greatest < 0 || above.value(i) > above.value(greatest))) {
                greatest = i;
            }
        }
        return greatest;
    }

    private static Instant middle(RegularSeries series, int index) {
        return series.time(index).plus(series.step().dividedBy(2));
    }

    private static Optional<Instant> centre(RegularSeries series) {
        double sum = 0;
        double moment = 0;
        for (int i = 0; i < series.size(); i++) {
            if (!Double.isNaN(series.value(i))) {
                sum += series.value(i);
                moment += series.value(i) * (i + 0.5);
            }
        }
        double steps = moment / sum;
        // What falls below dry weather can throw the centre out of the window: then there is none.
        return sum > 0 && steps >= 0 && steps <= series.size()
                ? Optional.of(series.start()
                        .plusNanos(Math.round(steps * series.step().toNanos())))
                : Optional.empty();
    }

    private static Optional<Recession> recession(RegularSeries above, int peak, Instant end) {
        if (peak < 0) {
            return Optional.empty();
        }
        Instant from = above.time(peak).plus(above.step());
        return from.isBefore(end) ? Recession.in(above.slice(Interval.of(from, end))) : Optional.empty();
    }

    private boolean isDryBefore(Instant start, RegularSeries flow, RegularSeries dry) {
        int before = indexAt(flow, start) - 1;
        return before >= 0 && flow.value(before) - dry.value(before) <= allowance * dry.value(before);
    }

    @Override
    public String toString() {
        return "ResponseRule[" + Text.significant(areaM2 / 10_000, 4) + " ha, back within "
                + Text.significant(100 * allowance, 3) + " % for " + Text.duration(held) + ", lag up to "
                + Text.duration(longestLag) + ", up to " + Text.duration(longest) + " after the rain]";
    }
}
