package dev.runnel.rainfall.response;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.Interval;
import java.time.Duration;
import java.time.Instant;
import java.util.Collections;
import java.util.EnumSet;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import org.apiguardian.api.API;

/**
 * How the flow answered one storm.
 *
 * @param storm time of the rain
 * @param depthMm its depth, mm
 * @param rainCentre centre of the rain in time, each step taken at its middle; empty without rain in the record
 * @param runoff volumes over the window of the response: from the begin of the rain until the flow was back, the next storm began,
 *     the longest time was over, or a record ended
 * @param peakM3PerS greatest flow above dry weather, m³/s; empty if no step is known
 * @param peakTime middle of its step, the first of equals; empty if no step is known
 * @param flowCentre centre in time of the flow above dry weather; empty if the flow added up to nothing above dry weather
 * @param recession the fall of the flow above dry weather from its peak on; empty if none could be fitted
 * @param back when the flow was back at dry weather
 * @param doubts why the figures may be misread; empty if nothing speaks against them
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record StormResponse(
        Interval storm,
        double depthMm,
        Optional<Instant> rainCentre,
        RunoffVolume runoff,
        OptionalDouble peakM3PerS,
        Optional<Instant> peakTime,
        Optional<Instant> flowCentre,
        Optional<Recession> recession,
        ReturnToDryWeather back,
        Set<ResponseDoubt> doubts) {
    /**
     * Copies the doubts.
     *
     * @param storm time of the rain
     * @param depthMm its depth, mm
     * @param rainCentre centre of the rain in time
     * @param runoff volumes over the window of the response
     * @param peakM3PerS greatest flow above dry weather, m³/s
     * @param peakTime middle of its step
     * @param flowCentre centre in time of the flow above dry weather
     * @param recession the fall of the flow above dry weather
     * @param back when the flow was back at dry weather
     * @param doubts why the figures may be misread
     */
    public StormResponse {
        Objects.requireNonNull(storm, "storm");
        Objects.requireNonNull(rainCentre, "rainCentre");
        Objects.requireNonNull(runoff, "runoff");
        Objects.requireNonNull(peakM3PerS, "peakM3PerS");
        Objects.requireNonNull(peakTime, "peakTime");
        Objects.requireNonNull(flowCentre, "flowCentre");
        Objects.requireNonNull(recession, "recession");
        Objects.requireNonNull(back, "back");
        Objects.requireNonNull(doubts, "doubts");
        EnumSet<ResponseDoubt> copy = EnumSet.noneOf(ResponseDoubt.class);
        copy.addAll(doubts);
        doubts = Collections.unmodifiableSet(copy);
    }

    /**
     * Returns the time from the centre of the rain to the peak of the flow above dry weather.
     *
     * @return lag, negative if the flow was greatest before; no finer than a step; empty if one of the two is
     */
    public Optional<Duration> lagToPeak() {
        return rainCentre.flatMap(from -> peakTime.map(to -> Duration.between(from, to)));
    }

    /**
     * Returns the time from the centre of the rain to the centre of the flow above dry weather.
     *
     * @return lag; empty if one of the two is
     */
    public Optional<Duration> lagToCentre() {
        return rainCentre.flatMap(from -> flowCentre.map(to -> Duration.between(from, to)));
    }

    /**
     * Tells whether nothing speaks against any figure.
     *
     * @return true without doubts
     */
    public boolean isSound() {
        return doubts.isEmpty();
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder("StormResponse[")
                .append(storm.start())
                .append(", ")
                .append(Text.significant(depthMm, 4))
                .append(" mm, volume ")
                .append(Text.significant(runoff.flowM3(), 4))
                .append(" m3");
        runoff.percent()
                .ifPresent(percent ->
                        text.append(", ").append(Text.significant(percent, 3)).append(" % of the rain"));
        peakM3PerS.ifPresent(peak ->
                text.append(", peak ").append(Text.significant(1000 * peak, 4)).append(" l/s above dry weather"));
        lagToPeak().ifPresent(lag -> text.append(", lag ").append(signed(lag)));
        recession.ifPresent(fall -> text.append(", K ").append(Text.duration(fall.constant())));
        text.append(
                back.time().map(time -> ", back after " + Text.duration(time)).orElse(", not seen back"));
        if (!doubts.isEmpty()) {
            text.append("; ")
                    .append(doubts.stream().map(ResponseDoubt::toString).collect(Collectors.joining(", ")));
        }
        return text.append("]").toString();
    }

    private static String signed(Duration lag) {
        return lag.isNegative() ? "-" + Text.duration(lag.negated()) : Text.duration(lag);
    }
}
