package dev.runnel.timeseries.correction;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.Alignment;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Series;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apiguardian.api.API;

/**
 * Compares visits with the monitor's record and proposes corrections. Immutable and thread-safe.
 *
 * <p>The tolerance of a figure h is the larger of an absolute one and a share of h; both are to be stated for the site and
 * the way of measuring. The monitor's reading at the time of the visit lies on the line between its neighbours, no
 * further apart than the longest gap, 15 minutes unless set (chosen here).
 *
 * <p>Proposals, for each quantity from the last visit that compared it, or after which all was adjusted, to the next one that
 * compared it:
 * <ul>
 *   <li>depth: with d₁ the monitor's difference when the earlier visit ended (0 if it was adjusted there) and d₂ what the
 *       later one found, nothing if both are within tolerance; an offset of −(d₁ + d₂)/2 if they differ by no more than
 *       the tolerance of the later one; else a drift from −d₁ to −d₂
 *   <li>velocity: the factor hand/monitor found by the later visit, if its difference is beyond the tolerance
 *   <li>clock: a shift by −c, with c what the later visit found, if the earlier one found the same within tolerance; a clock
 *       that drifts, or was set right at the earlier visit, is left to a person
 *   <li>sediment: the level found, from its visit to the next that looked, on visits too on which nothing else was read
 * </ul>
 * They are proposals: the reason and evidence say where they come from, and somebody must sign them by
 * {@link Correction#because}.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class VisitComparison {
    private static final String PROPOSED = "proposed";

    private record Allowance(double absolute, double relative) {
        double at(double hand) {
            return Math.max(absolute, relative * Math.abs(hand));
        }
    }

    private final Allowance depth;
    private final Allowance velocity;
    private final Allowance flow;
    private final double clock;
    private final Duration maximumGap;

    private VisitComparison(Allowance depth, Allowance velocity, Allowance flow, double clock, Duration maximumGap) {
        this.depth = depth;
        this.velocity = velocity;
        this.flow = flow;
        this.clock = clock;
        this.maximumGap = maximumGap;
    }

    /**
     * Returns a comparison whose tolerances are common practice for a hand-held rule and meter: depth 6 mm or 2 %, velocity
     * 0.05 m/s or 10 %, flow 10 %, clock 60 s; readings at most 15 minutes apart about the visit. State your own.
     *
     * @return the comparison
     */
    public static VisitComparison standard() {
        return new VisitComparison(
                new Allowance(0.006, 0.02),
                new Allowance(0.05, 0.10),
                new Allowance(0, 0.10),
                60,
                Duration.ofMinutes(15));
    }

    /**
     * Returns the comparison with another tolerance of depths.
     *
     * @param absolute m; 0 or greater
     * @param relative share of the depth by hand; 0 or greater
     * @return the new comparison
     * @throws IllegalArgumentException if one is negative or not finite
     */
    public VisitComparison withDepthToleranceAndShare(double absolute, double relative) {
        return new VisitComparison(allowance(absolute, relative, "m"), velocity, flow, clock, maximumGap);
    }

    /**
     * Returns the comparison with another tolerance of velocities.
     *
     * @param absolute m/s; 0 or greater
     * @param relative share of the velocity by hand; 0 or greater
     * @return the new comparison
     * @throws IllegalArgumentException if one is negative or not finite
     */
    public VisitComparison withVelocityToleranceAndShare(double absolute, double relative) {
        return new VisitComparison(depth, allowance(absolute, relative, "m/s"), flow, clock, maximumGap);
    }

    /**
     * Returns the comparison with another tolerance of flows.
     *
     * @param absolute m³/s; 0 or greater
     * @param relative share of the flow by hand; 0 or greater
     * @return the new comparison
     * @throws IllegalArgumentException if one is negative or not finite
     */
    public VisitComparison withFlowToleranceAndShare(double absolute, double relative) {
        return new VisitComparison(depth, velocity, allowance(absolute, relative, "m3/s"), clock, maximumGap);
    }

    /**
     * Returns the comparison with another tolerance of clocks.
     *
     * @param tolerance 0 or longer
     * @return the new comparison
     * @throws IllegalArgumentException if it is negative
     */
    public VisitComparison withClockTolerance(Duration tolerance) {
        double seconds = EpochNanos.nonNegative("tolerance", tolerance) / 1e9;
        return new VisitComparison(depth, velocity, flow, seconds, maximumGap);
    }

    /**
     * Returns the comparison with another longest gap of the monitor's record about a visit.
     *
     * @param maximumGap greater than 0
     * @return the new comparison
     * @throws IllegalArgumentException if it is not greater than 0
     */
    public VisitComparison withMaximumGap(Duration maximumGap) {
        EpochNanos.positive("maximumGap", maximumGap);
        return new VisitComparison(depth, velocity, flow, clock, maximumGap);
    }

    private static Allowance allowance(double absolute, double relative, String unit) {
        return new Allowance(
                Require.nonNegative("absolute", absolute, unit), Require.nonNegative("relative", relative, ""));
    }

    /**
     * Compares visits with a record.
     *
     * @param visits visits in order of time
     * @param depths the monitor's depths, m; empty if it has none
     * @param velocities the monitor's velocities, m/s; empty if it has none
     * @param flows the monitor's flows, m³/s; empty if it has none
     * @return one entry for each figure read by hand, visit by visit
     */
    public List<VisitDifference> differences(List<SiteVisit> visits, Series depths, Series velocities, Series flows) {
        Objects.requireNonNull(depths, "depths");
        Objects.requireNonNull(velocities, "velocities");
        Objects.requireNonNull(flows, "flows");
        List<VisitDifference> found = new ArrayList<>();
        for (SiteVisit visit : visits) {
            add(found, visit, "depth", visit.handDepth(), depths, depth);
            add(found, visit, "velocity", visit.handVelocity(), velocities, velocity);
            add(found, visit, "flow", visit.gaugedFlow(), flows, flow);
            visit.clockAhead()
                    .ifPresent(
                            ahead -> found.add(new VisitDifference(visit, "clock", 0, ahead.toNanos() / 1e9, clock)));
        }
        return List.copyOf(found);
    }

    private void add(
            List<VisitDifference> found,
            SiteVisit visit,
            String quantity,
            OptionalDouble hand,
            Series monitor,
            Allowance allowance) {
        if (hand.isPresent()) {
            double by = hand.getAsDouble();
            found.add(new VisitDifference(visit, quantity, by, at(monitor, visit.time()), allowance.at(by)));
        }
    }

    private double at(Series series, Instant time) {
        Series clock = Series.builder().add(time, 0).build();
        Series at = Alignment.linear(maximumGap).align(clock, series);
        return at.quality(0).isUsable() ? at.value(0) : Double.NaN;
    }

    /**
     * Proposes corrections from visits and what differs on them.
     *
     * @param visits visits in order of time, those too on which nothing was read by hand
     * @param differences what {@link #differences} found for them
     * @param end until when the last visit's sediment is taken to lie; after the last visit
     * @return proposals for the series {@code depth} and {@code velocity}, in order of time, those of the sediment last
     * @throws IllegalArgumentException if the end does not come after the last visit, or the visits are not in order of time
     */
    public Corrections proposals(List<SiteVisit> visits, List<VisitDifference> differences, Instant end) {
        Objects.requireNonNull(visits, "visits");
        Objects.requireNonNull(differences, "differences");
        Objects.requireNonNull(end, "end");
        for (int i = 1; i < visits.size(); i++) {
            Instant before = visits.get(i - 1).time();
            if (!visits.get(i).time().isAfter(before)) {
                throw new IllegalArgumentException("visits must be in order of time, were at " + before
                        + " and then at " + visits.get(i).time());
            }
        }
        if (!visits.isEmpty()) {
            Instant last = visits.get(visits.size() - 1).time();
            if (!end.isAfter(last)) {
                throw new IllegalArgumentException("end must be after the last visit, " + last + ", was " + end);
            }
        }
        List<Correction> proposals = new ArrayList<>();
        readings(visits, differences, proposals);
        sediment(visits, end, proposals);
        return Corrections.of(proposals);
    }

    /** Each quantity from the last visit that tells of it to the next one: visits that do not are passed over. */
    private void readings(List<SiteVisit> visits, List<VisitDifference> differences, List<Correction> proposals) {
        for (int i = 1; i < visits.size(); i++) {
            List<SiteVisit> earlier = visits.subList(0, i);
            SiteVisit after = visits.get(i);
            depthProposal(differences, earlier, after).ifPresent(proposals::add);
            velocityProposal(differences, earlier, after).ifPresent(proposals::add);
            clockProposals(differences, earlier, after, proposals);
        }
    }

    private static Optional<VisitDifference> find(List<VisitDifference> all, SiteVisit visit, String quantity) {
        return all.stream()
                .filter(each -> each.visit().equals(visit) && each.quantity().equals(quantity) && each.isCompared())
                .findFirst();
    }

    /** The last visit that compared a quantity, or after which it was right. */
    private static Optional<SiteVisit> last(List<VisitDifference> all, List<SiteVisit> earlier, String quantity) {
        for (int i = earlier.size() - 1; i >= 0; i--) {
            if (earlier.get(i).isAdjusted()
                    || find(all, earlier.get(i), quantity).isPresent()) {
                return Optional.of(earlier.get(i));
            }
        }
        return Optional.empty();
    }

    private Optional<Correction> depthProposal(List<VisitDifference> all, List<SiteVisit> earlier, SiteVisit after) {
        Optional<VisitDifference> found = find(all, after, "depth");
        Optional<SiteVisit> before = last(all, earlier, "depth");
        if (found.isEmpty() || before.isEmpty()) {
            return Optional.empty();
        }
        VisitDifference later = found.get();
        Optional<VisitDifference> left = find(all, before.get(), "depth");
        boolean isRightAtStart = before.get().isAdjusted();
        double d1 = isRightAtStart ? 0 : left.orElseThrow().difference();
        double d2 = later.difference();
        if (!later.isBeyond() && (isRightAtStart || !left.orElseThrow().isBeyond())) {
            return Optional.empty();
        }
        Interval between = Interval.of(before.get().time(), after.time());
        Correction correction = Math.abs(d2 - d1) <= later.tolerance()
                ? Correction.offset("depth", between, -(d1 + d2) / 2)
                : Correction.drift("depth", between, -d1, -d2);
        return Optional.of(signed(correction, before.get(), left, later));
    }

    private Optional<Correction> velocityProposal(List<VisitDifference> all, List<SiteVisit> earlier, SiteVisit after) {
        Optional<VisitDifference> found =
                find(all, after, "velocity").filter(each -> each.isBeyond() && each.monitor() != 0 && each.hand() != 0);
        return last(all, earlier, "velocity")
                .flatMap(before -> found.map(each -> signed(
                        Correction.factor(
                                "velocity", Interval.of(before.time(), after.time()), each.hand() / each.monitor()),
                        before,
                        find(all, before, "velocity"),
                        each)));
    }

    /** A clock that was set right in between, or that went another way, is left to a person. */
    private void clockProposals(
            List<VisitDifference> all, List<SiteVisit> earlier, SiteVisit after, List<Correction> proposals) {
        Optional<VisitDifference> found = find(all, after, "clock").filter(VisitDifference::isBeyond);
        Optional<SiteVisit> before = last(all, earlier, "clock").filter(each -> !each.isAdjusted());
        if (found.isEmpty() || before.isEmpty()) {
            return;
        }
        VisitDifference left = find(all, before.get(), "clock").orElseThrow();
        double ahead = found.get().monitor();
        if (Math.abs(ahead - left.monitor()) <= clock) {
            Duration shift = Duration.ofNanos(-Math.round(ahead * 1e9));
            Interval between = Interval.of(before.get().time(), after.time());
            for (String series : List.of("depth", "velocity")) {
                proposals.add(signed(
                        Correction.clockShift(series, between, shift), before.get(), Optional.of(left), found.get()));
            }
        }
    }

    private static void sediment(List<SiteVisit> visits, Instant end, List<Correction> proposals) {
        List<SiteVisit> looked =
                visits.stream().filter(each -> each.sediment().isPresent()).toList();
        for (int i = 0; i < looked.size(); i++) {
            SiteVisit visit = looked.get(i);
            Instant until = i + 1 < looked.size() ? looked.get(i + 1).time() : end;
            proposals.add(Correction.sediment(
                            "depth",
                            Interval.of(visit.time(), until),
                            visit.sediment().orElseThrow())
                    .because("sediment found", "visit of " + visit.time() + " by " + visit.author(), PROPOSED));
        }
    }

    private static Correction signed(
            Correction correction, SiteVisit before, Optional<VisitDifference> left, VisitDifference later) {
        String begin = left.map(VisitComparison::evidence).orElse("visit of " + before.time() + ": not compared")
                + (before.isAdjusted() ? ", then adjusted" : "");
        return correction.because("visits differ from the monitor", begin + "; " + evidence(later), PROPOSED);
    }

    private static String evidence(VisitDifference each) {
        return "visit of " + each.visit().time() + ": monitor " + Text.significant(each.monitor(), 4) + ", hand "
                + Text.significant(each.hand(), 4);
    }

    @Override
    public String toString() {
        return "VisitComparison[depth " + Text.significant(depth.absolute, 6) + " m or "
                + Text.significant(depth.relative, 6)
                + ", velocity "
                + Text.significant(velocity.absolute, 6) + " m/s or " + Text.significant(velocity.relative, 6)
                + ", flow "
                + Text.significant(flow.absolute, 6) + " m3/s or "
                + Text.significant(flow.relative, 6) + ", clock " + Text.significant(clock, 6) + " s, gaps up to "
                + Text.duration(maximumGap) + "]";
    }
}
