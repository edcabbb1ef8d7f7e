package dev.runnel.rainfall.response;

import java.time.Duration;
import java.util.EnumSet;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import org.apiguardian.api.API;

/**
 * A figure of the response to a storm that can be followed from storm to storm, and the doubts that speak against using it.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public enum ResponseMeasure {
    /** Depth of the storm: the control. If the storms themselves grew, so may all else. */
    DEPTH("depth", "mm", each -> OptionalDouble.of(each.depthMm()), ResponseDoubt.RAIN_MISSING),

    /** Flow above dry weather, added up. */
    VOLUME(
            "response volume",
            "m3",
            each -> OptionalDouble.of(each.runoff().flowM3()),
            ResponseDoubt.FLOW_MISSING,
            ResponseDoubt.WET_BEFORE,
            ResponseDoubt.NEXT_STORM,
            ResponseDoubt.NOT_BACK,
            ResponseDoubt.BELOW_DRY),

    /** Flow above dry weather over the volume of rain on the area. */
    RUNOFF_PERCENT(
            "runoff",
            "%",
            each -> each.runoff().percent(),
            ResponseDoubt.RAIN_MISSING,
            ResponseDoubt.FLOW_MISSING,
            ResponseDoubt.WET_BEFORE,
            ResponseDoubt.NEXT_STORM,
            ResponseDoubt.NOT_BACK,
            ResponseDoubt.MORE_THAN_RAIN,
            ResponseDoubt.BELOW_DRY),

    /** Greatest flow above dry weather. */
    PEAK(
            "peak above dry weather",
            "m3/s",
            StormResponse::peakM3PerS,
            ResponseDoubt.FLOW_MISSING,
            ResponseDoubt.WET_BEFORE,
            ResponseDoubt.PEAK_AT_LIMIT),

    /** From the centre of the rain to the greatest flow above dry weather. */
    LAG_TO_PEAK(
            "lag to peak",
            "h",
            each -> hours(each.lagToPeak()),
            ResponseDoubt.RAIN_MISSING,
            ResponseDoubt.FLOW_MISSING,
            ResponseDoubt.WET_BEFORE,
            ResponseDoubt.NO_RESPONSE,
            ResponseDoubt.PEAK_AT_LIMIT),

    /** From the centre of the rain to the centre of the flow above dry weather. */
    LAG_TO_CENTRE(
            "lag to centre",
            "h",
            each -> hours(each.lagToCentre()),
            ResponseDoubt.RAIN_MISSING,
            ResponseDoubt.FLOW_MISSING,
            ResponseDoubt.WET_BEFORE,
            ResponseDoubt.NEXT_STORM,
            ResponseDoubt.NOT_BACK,
            ResponseDoubt.BELOW_DRY,
            ResponseDoubt.NO_RESPONSE),

    /** Constant K of the exponential fall. */
    RECESSION(
            "recession constant",
            "h",
            each -> hours(each.recession().map(Recession::constant)),
            ResponseDoubt.FLOW_MISSING,
            ResponseDoubt.NEXT_STORM,
            ResponseDoubt.NO_RESPONSE,
            ResponseDoubt.PEAK_AT_LIMIT,
            ResponseDoubt.NO_RECESSION),

    /** From the end of the rain until the flow was back at dry weather. */
    TIME_TO_DRY(
            "time to dry weather",
            "h",
            each -> hours(each.back().time()),
            ResponseDoubt.FLOW_MISSING,
            ResponseDoubt.NEXT_STORM,
            ResponseDoubt.NOT_BACK);

    private final String words;
    private final String unit;
    private final Function<StormResponse, OptionalDouble> value;
    private final Set<ResponseDoubt> against;

    ResponseMeasure(
            String words,
            String unit,
            Function<StormResponse, OptionalDouble> value,
            ResponseDoubt first,
            ResponseDoubt... rest) {
        this.words = words;
        this.unit = unit;
        this.value = value;
        this.against = EnumSet.of(first, rest);
    }

    private static OptionalDouble hours(Optional<Duration> time) {
        return time.map(each -> OptionalDouble.of(each.toNanos() / 3.6e12)).orElse(OptionalDouble.empty());
    }

    /**
     * Returns the figure.
     *
     * @param response response to a storm
     * @return value in {@link #unit}; empty if there is none
     */
    public OptionalDouble of(StormResponse response) {
        Objects.requireNonNull(response, "response");
        return value.apply(response);
    }

    /**
     * Tells whether there is a figure and no doubt speaks against it.
     *
     * @param response response to a storm
     * @return true if it can be used
     */
    public boolean isSound(StormResponse response) {
        Objects.requireNonNull(response, "response");
        return of(response).isPresent() && response.doubts().stream().noneMatch(against::contains);
    }

    /**
     * Returns the unit.
     *
     * @return mm, m3, %, m3/s or h
     */
    public String unit() {
        return unit;
    }

    @Override
    public String toString() {
        return words;
    }
}
