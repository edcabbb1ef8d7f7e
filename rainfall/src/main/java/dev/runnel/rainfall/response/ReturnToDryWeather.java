package dev.runnel.rainfall.response;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.Objects;
import java.util.Optional;
import org.apiguardian.api.API;

/**
 * When the flow is back at its dry weather course after rain: from the first step on that begins a stretch in which the flow lies no more than an
 * allowance above it throughout. Two storms with less than that between them cannot be told apart in the flow, and the minimum
 * inter-event time of a site should be no shorter.
 *
 * @param rainEnd when the rain ended
 * @param back when the flow was back; empty if it was not, or too little is known
 * @param knownUntil until when flow and dry weather flow were looked at without a gap
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record ReturnToDryWeather(Instant rainEnd, Optional<Instant> back, Instant knownUntil) {
    /**
     * Checks that nothing is missing.
     *
     * @param rainEnd when the rain ended
     * @param back when the flow was back; empty if it was not, or too little is known
     * @param knownUntil until when flow and dry weather flow were looked at without a gap
     */
    public ReturnToDryWeather {
        Objects.requireNonNull(rainEnd, "rainEnd");
        Objects.requireNonNull(back, "back");
        Objects.requireNonNull(knownUntil, "knownUntil");
    }

    /**
     * Looks for the return. A missing step ends a stretch, so that it is never called back without having been seen.
     *
     * @param rainEnd when the rain ended, inside the record
     * @param flow mean flow in each step, any unit
     * @param dryWeatherFlow mean dry weather flow in the same steps
     * @param allowance greatest excess that is let be, as a share of the dry weather flow; 0 to 1
     * @param held how long the flow must stay; greater than 0
     * @return when it was back
     * @throws IllegalArgumentException if the steps differ, the end of the rain lies outside the record, or an argument is out of range
     */
    public static ReturnToDryWeather of(
            Instant rainEnd, RegularSeries flow, RegularSeries dryWeatherFlow, double allowance, Duration held) {
        Objects.requireNonNull(rainEnd, "rainEnd");
        Objects.requireNonNull(flow, "flow");
        Objects.requireNonNull(dryWeatherFlow, "dryWeatherFlow");
        Steps.requireSame("dryWeatherFlow", flow, dryWeatherFlow);
        Require.inRange("allowance", allowance, 0, 1, "");
        long needed =
                -Math.floorDiv(-EpochNanos.positive("held", held), flow.step().toNanos());
        if (!flow.interval().contains(rainEnd)) {
            throw new IllegalArgumentException("rainEnd must lie in " + flow.interval() + ", was " + rainEnd);
        }
        long offset = EpochNanos.of(rainEnd) - EpochNanos.of(flow.start());
        int from = (int) -Math.floorDiv(-offset, flow.step().toNanos());
        int begin = from;
        Instant knownUntil = rainEnd;
        boolean isKnown = true;
        for (int i = from; i < flow.size(); i++) {
            double excess = flow.value(i) - dryWeatherFlow.value(i);
            isKnown &= !Double.isNaN(excess);
            if (isKnown) {
                knownUntil = flow.time(i).plus(flow.step());
            }
            // Not a number is not within the allowance.
            if (!(excess <= allowance * dryWeatherFlow.value(i))) {
                begin = i + 1;
            } else if (i + 1L - begin >= needed) {
                return new ReturnToDryWeather(rainEnd, Optional.of(flow.time(begin)), knownUntil);
            }
        }
        return new ReturnToDryWeather(rainEnd, Optional.empty(), knownUntil);
    }

    /**
     * Returns how long it took.
     *
     * @return from the end of the rain until the flow was back; empty if it was not
     */
    public Optional<Duration> time() {
        return back.map(each -> Duration.between(rainEnd, each));
    }

    @Override
    public String toString() {
        return "ReturnToDryWeather["
                + time().map(each -> "after " + Text.duration(each)).orElse("not back by " + knownUntil) + "]";
    }
}
