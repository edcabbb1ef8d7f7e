package dev.runnel.rainfall.ddf;

import dev.runnel.internal.Text;
import dev.runnel.rainfall.event.PeakDepth;
import dev.runnel.rainfall.event.RainfallEvent;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import org.apiguardian.api.API;

/**
 * How rare an event was over each duration, and over which it was rarest. Immutable and thread-safe.
 *
 * <p>Peaks measured on fixed steps read low against a relation made of true maxima, on average by n/(n − 1/8) with n steps in
 * the duration: 8/7 for one step, under 1 % from 13 steps on (Weiss 1964, see
 * {@link dev.runnel.rainfall.frequency.AnnualMaxima#clockFactor}). Nothing is corrected here: whether a relation was made of
 * true or of fixed maxima is for its source to say.
 *
 * <p>Where a part of the event is not known, steps missing in it or the record shorter than it, more rain may have fallen than
 * was recorded, and the event is at least as rare as the return period says. Its text says so, and {@link #isAtLeast}.
 *
 * <p>Between two durations that both lie beyond the range of the relation, the one whose depth is the greater multiple
 * of the depth at that limit is called the rarer.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class EventRarity {
    private static final Comparator<OverDuration> BY_RARITY = Comparator.comparing(
                    (OverDuration each) -> each.returnPeriod().standing())
            .thenComparingDouble(each -> each.returnPeriod().years())
            .thenComparingDouble(OverDuration::shareOfLimit);

    private final List<OverDuration> durations;
    private final List<Duration> notCovered;
    private final List<Duration> doubtful;
    private final Optional<DdfBand.Rarity> limits;

    private EventRarity(
            List<OverDuration> durations,
            List<Duration> notCovered,
            List<Duration> doubtful,
            Optional<DdfBand.Rarity> limits) {
        this.durations = List.copyOf(durations);
        this.notCovered = List.copyOf(notCovered);
        this.doubtful = List.copyOf(doubtful);
        this.limits = limits;
    }

    /**
     * The rarity over one duration.
     *
     * @param peak greatest depth of the event in that duration
     * @param returnPeriod how rare it is
     * @param shareOfLimit depth over the depth at that return period: 1 inside the range of the relation, above 1 beyond
     *     its upper limit, below 1 beyond its lower
     * @param isAtLeast true if more rain may have fallen in that duration than is known, so that the event may be rarer
     * @param limits the return period with its limits of confidence, if the relation has them there
     * @since 0.1
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public record OverDuration(
            PeakDepth peak,
            ReturnPeriod returnPeriod,
            double shareOfLimit,
            boolean isAtLeast,
            Optional<DdfBand.Rarity> limits) {
        /**
         * Checks that nothing is missing.
         *
         * @param peak greatest depth of the event in that duration
         * @param returnPeriod how rare it is
         * @param shareOfLimit depth over the depth at that return period: 1 inside the range of the relation, above 1 beyond its upper limit, below 1 beyond its lower
         * @param isAtLeast true if more rain may have fallen in that duration than is known, so that the event may be rarer
         * @param limits the return period with its limits of confidence, if the relation has them there
         */
        public OverDuration {
            Objects.requireNonNull(peak, "peak");
            Objects.requireNonNull(returnPeriod, "returnPeriod");
            Objects.requireNonNull(limits, "limits");
        }

        /**
         * Returns the duration.
         *
         * @return length of the window
         */
        public Duration duration() {
            return peak.duration();
        }

        /**
         * Returns the return period in words, and that it is a lower bound if it is one.
         *
         * @return for example {@code 1 in 12 years}, {@code at least 1 in 12 years}, {@code more frequent than 1 in 2 years, or
         *     rarer}
         */
        @API(status = API.Status.EXPERIMENTAL, since = "0.1")
        public String toText() {
            String text = returnPeriod.toText();
            // Rarer than the limit stays so, however much more fell.
            if (!isAtLeast || returnPeriod.isAbove()) {
                return text;
            }
            return returnPeriod.isBelow() ? text + ", or rarer" : "at least " + text;
        }

        @Override
        public String toString() {
            return toText() + limits.map(each -> ", " + each.limitsText()).orElse("") + " over "
                    + Text.duration(duration()) + " (" + (isAtLeast ? "at least " : "")
                    + Text.significant(peak.depthMm(), 4) + " mm)";
        }
    }

    /**
     * Returns the rarity of an event.
     *
     * @param relation the depth-duration-frequency relation
     * @param event the event
     * @return its rarity over every duration that was measured and that the relation covers
     */
    public static EventRarity of(DepthDurationFrequency relation, RainfallEvent event) {
        return of(relation, event, peak -> Optional.empty());
    }

    /**
     * Returns the rarity of an event with limits of confidence: over each duration that all tables of the band cover, and over all
     * these durations at once.
     *
     * @param band relation with its limits
     * @param event the event
     * @return its rarity over every duration that was measured and that the relation covers
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public static EventRarity of(DdfBand band, RainfallEvent event) {
        EventRarity rarity = of(
                band.relation(),
                event,
                peak -> band.covers(peak.duration())
                        ? Optional.of(band.returnPeriod(peak.duration(), peak.depthMm()))
                        : Optional.empty());
        boolean hasLimits =
                rarity.durations.stream().anyMatch(each -> each.limits().isPresent());
        return hasLimits ? rarity.withLimits(band.rarity(event)) : rarity;
    }

    private static EventRarity of(
            DepthDurationFrequency relation,
            RainfallEvent event,
            Function<PeakDepth, Optional<DdfBand.Rarity>> limits) {
        List<OverDuration> durations = new ArrayList<>();
        List<Duration> notCovered = new ArrayList<>();
        List<Duration> doubtful = new ArrayList<>();
        for (PeakDepth peak : event.peaks()) {
            if (relation.covers(peak.duration())) {
                ReturnPeriod period = relation.returnPeriod(peak.duration(), peak.depthMm());
                double limit = relation.depthMm(peak.duration(), period.years());
                durations.add(new OverDuration(
                        peak,
                        period,
                        period.isWithin() ? 1 : peak.depthMm() / limit,
                        peak.isAtLeast() || !event.isComplete(),
                        limits.apply(peak)));
                if (relation.isDoubtful(peak.duration(), peak.depthMm())) {
                    doubtful.add(peak.duration());
                }
            } else {
                notCovered.add(peak.duration());
            }
        }
        return new EventRarity(durations, notCovered, doubtful, Optional.empty());
    }

    /**
     * Returns this with limits over several durations at once, as a bootstrap of the relation gives them.
     *
     * @param limits return period of the event with its limits
     * @return the new rarity
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public EventRarity withLimits(DdfBand.Rarity limits) {
        Objects.requireNonNull(limits, "limits");
        return new EventRarity(durations, notCovered, doubtful, Optional.of(limits));
    }

    /**
     * Returns the return period of the event over several durations at once, with its limits of confidence.
     *
     * @return the greatest return period over the durations, and the limits of that greatest; empty if the relation has none
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public Optional<DdfBand.Rarity> limits() {
        return limits;
    }

    /**
     * Returns the rarity over each duration.
     *
     * @return in the order in which the event was measured
     */
    public List<OverDuration> durations() {
        return durations;
    }

    /**
     * Returns the duration over which the event was rarest, the first of them if several are equally rare.
     *
     * @return the governing duration with its return period; empty if the relation covers none of the durations
     */
    public Optional<OverDuration> governing() {
        // Stream.max returns the last of equals.
        return durations.stream().reduce((a, b) -> BY_RARITY.compare(b, a) > 0 ? b : a);
    }

    /**
     * Tells whether the event may have been rarer than is known, because a part of it was not recorded.
     *
     * @return true if any duration says so
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public boolean isAtLeast() {
        return durations.stream().anyMatch(OverDuration::isAtLeast);
    }

    /**
     * Returns the durations of the event for which the relation has no answer.
     *
     * @return durations shorter or longer than its range
     */
    public List<Duration> notCovered() {
        return notCovered;
    }

    /**
     * Returns the durations over which the depth lies in a doubtful part of the relation.
     *
     * @return those for which {@link DepthDurationFrequency#isDoubtful} is true
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public List<Duration> doubtful() {
        return doubtful;
    }

    @Override
    public String toString() {
        String governing = governing()
                .map(each -> each + ", " + each.returnPeriod().basis().toText())
                .orElse("no duration covered");
        long limited =
                durations.stream().filter(each -> each.limits().isPresent()).count();
        long together = limited == 0 ? durations.size() : limited;
        String overAll = limits.filter(each -> together > 1)
                .map(each -> ", over " + together + " durations at once " + each.limitsText())
                .orElse("");
        return "EventRarity[" + governing + overAll + (doubtful.isEmpty() ? "" : ", doubtful over " + texts(doubtful))
                + (notCovered.isEmpty() ? "" : ", not covered " + texts(notCovered)) + "]";
    }

    private static List<String> texts(List<Duration> durations) {
        return durations.stream().map(Text::duration).toList();
    }
}
