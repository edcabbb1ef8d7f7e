package dev.runnel.rainfall.response;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.rainfall.internal.Share;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import java.util.Objects;
import java.util.OptionalDouble;
import org.apiguardian.api.API;

/**
 * Volume of rain on an area against volume of flow above the dry weather course.
 *
 * <blockquote>V<sub>rain</sub> = P A/1000, V<sub>flow</sub> = Σ (Q − Q<sub>dry</sub>) Δt</blockquote>
 *
 * <p>P depth [mm], A area [m²], Q flow and Q<sub>dry</sub> dry weather flow [m³/s], V [m³]. Flow below the dry weather
 * course counts as negative: it is part of the balance. Of a step that reaches beyond the window the share inside counts.
 *
 * @param window time over which both are summed
 * @param rainM3 volume of rain, m³
 * @param flowM3 volume of flow above the dry weather course, m³
 * @param missingRain steps of rain missing in the window, which count as none
 * @param missingFlow steps missing in the window of flow or of dry weather flow, which count as no difference
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record RunoffVolume(Interval window, double rainM3, double flowM3, int missingRain, int missingFlow) {
    /**
     * Checks that nothing is missing.
     *
     * @param window time over which both are summed
     * @param rainM3 volume of rain, m³
     * @param flowM3 volume of flow above the dry weather course, m³
     * @param missingRain steps of rain missing in the window, which count as none
     * @param missingFlow steps missing in the window of flow or of dry weather flow, which count as no difference
     */
    public RunoffVolume {
        Objects.requireNonNull(window, "window");
    }

    /**
     * Returns the volumes over a window, which should begin with the rain and end when the flow is back at its dry weather
     * course.
     *
     * @param window time to sum over
     * @param rain depth in each step, mm
     * @param areaM2 area on which it fell, m²; greater than 0
     * @param flow mean flow in each step, m³/s
     * @param dryWeatherFlow mean dry weather flow in the same steps as {@code flow}, m³/s
     * @return the volumes
     * @throws IllegalArgumentException if a depth is negative, the area is not greater than 0, flow and dry weather flow
     *     differ in their steps, or one of the records does not hold the whole window
     */
    public static RunoffVolume of(
            Interval window, RegularSeries rain, double areaM2, RegularSeries flow, RegularSeries dryWeatherFlow) {
        Objects.requireNonNull(flow, "flow");
        Objects.requireNonNull(dryWeatherFlow, "dryWeatherFlow");
        Require.positive("areaM2", areaM2, "m2");
        Rain.requireNonNegative("rain", rain, "mm");
        Steps.requireSame("dryWeatherFlow", flow, dryWeatherFlow);
        requireWhole("rain", rain, window);
        requireWhole("flow", flow, window);
        RegularSeries above = flow.combine(dryWeatherFlow, (wet, dry) -> wet - dry);
        double seconds = 3600 * Rain.hours(flow.step());
        Share rained = Share.of(rain, window);
        Share flowed = Share.of(above, window);
        return new RunoffVolume(
                window,
                rained.sum() * areaM2 / 1000,
                flowed.sum() * seconds,
                rained.missingSteps(),
                flowed.missingSteps());
    }

    private static void requireWhole(String name, RegularSeries series, Interval window) {
        if (window.start().isBefore(series.start()) || window.end().isAfter(series.end())) {
            throw new IllegalArgumentException(
                    name + " must hold the window " + window + ", holds " + series.interval());
        }
    }

    /**
     * Returns the runoff percentage.
     *
     * @return 100 V<sub>flow</sub>/V<sub>rain</sub>, %; empty without rain
     */
    public OptionalDouble percent() {
        return rainM3 == 0 ? OptionalDouble.empty() : OptionalDouble.of(100 * flowM3 / rainM3);
    }

    /**
     * Tells whether no step is missing.
     *
     * @return true if both volumes are whole
     */
    public boolean isComplete() {
        return missingRain == 0 && missingFlow == 0;
    }

    @Override
    public String toString() {
        return "RunoffVolume[rain " + Text.significant(rainM3, 4) + " m3, flow above dry weather "
                + Text.significant(flowM3, 4) + " m3"
                + (rainM3 == 0 ? ", no rain" : ", " + Text.significant(percent().getAsDouble(), 3) + " %")
                + (isComplete() ? "]" : ", " + missingRain + " steps of rain and " + missingFlow + " of flow missing]");
    }
}
