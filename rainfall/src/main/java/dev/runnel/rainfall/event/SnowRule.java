package dev.runnel.rainfall.event;

import dev.runnel.internal.CompensatedSum;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import java.time.Instant;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * Tells snow from rain by the air temperature, and when snow that lies melts. Immutable and thread-safe.
 *
 * <blockquote>share of snow = 1 at T ≤ T<sub>s</sub>, 0 at T ≥ T<sub>r</sub>, linear between;
 * melt = min(snow lying, D max(0, T − T₀) Δt)</blockquote>
 *
 * <p>with the mean temperature T of the step [°C], T<sub>s</sub> = 0 °C, T<sub>r</sub> = 2 °C and T₀ = 0 °C unless said, and the degree-day
 * factor D [mm/(°C d)]. Source of the degree-day method: US Army Corps of Engineers (1956), Snow hydrology; factors of 1.6 to 6 are in
 * use (US Department of Agriculture, National Engineering Handbook part 630, chapter 11, from memory), 2.74 unless said.
 *
 * <p>Why: a gauge that melts its snow records rain when none runs off, one that does not records it days later, and the sewer answers to the
 * melt. Flows in a step with melt, or with snow lying, are no dry weather.
 *
 * <p>What this is not: a model of snow. Wind, sun and refreezing are not in it.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class SnowRule {
    private final double allSnow;
    private final double allRain;
    private final double meltAbove;
    private final double degreeDay;

    private SnowRule(double allSnow, double allRain, double meltAbove, double degreeDay) {
        this.allSnow = allSnow;
        this.allRain = allRain;
        this.meltAbove = meltAbove;
        this.degreeDay = degreeDay;
    }

    /**
     * Returns the rule with snow below 0 °C, rain above 2 °C and 2.74 mm of melt for each degree and day above 0 °C.
     *
     * @return the rule
     */
    public static SnowRule standard() {
        return new SnowRule(0, 2, 0, 2.74);
    }

    /**
     * Returns the same rule with other temperatures of snow and rain.
     *
     * @param allSnowCelsius at or below it all is snow, °C; −10 to 10
     * @param allRainCelsius at or above it all is rain, °C; not below the other, to 10
     * @return the rule
     * @throws IllegalArgumentException if one is out of range
     */
    public SnowRule withSnowBelowAndRainAbove(double allSnowCelsius, double allRainCelsius) {
        Require.inRange("allSnowCelsius", allSnowCelsius, -10, 10, "degC");
        Require.inRange("allRainCelsius", allRainCelsius, allSnowCelsius, 10, "degC");
        return new SnowRule(allSnowCelsius, allRainCelsius, meltAbove, degreeDay);
    }

    /**
     * Returns the same rule with another degree-day factor.
     *
     * @param mmPerDegreeDay D, mm/(°C d); greater than 0
     * @return the rule
     * @throws IllegalArgumentException if it is out of range
     */
    public SnowRule withDegreeDayFactor(double mmPerDegreeDay) {
        return new SnowRule(allSnow, allRain, meltAbove, Require.positive("mmPerDegreeDay", mmPerDegreeDay, "mm"));
    }

    /**
     * Returns the same rule with another temperature above which snow melts.
     *
     * @param celsius T₀, °C; −10 to 10
     * @return the rule
     * @throws IllegalArgumentException if it is out of range
     */
    public SnowRule withMeltAbove(double celsius) {
        return new SnowRule(allSnow, allRain, Require.inRange("celsius", celsius, -10, 10, "degC"), degreeDay);
    }

    /**
     * Returns the share of precipitation that falls as snow.
     *
     * @param celsius mean air temperature of the step, °C; finite
     * @return 0 to 1
     * @throws IllegalArgumentException if the temperature is not finite
     */
    public double snowShare(double celsius) {
        Require.finite("celsius", celsius, "degC");
        if (celsius <= allSnow) {
            return 1;
        }
        return celsius >= allRain ? 0 : (allRain - celsius) / (allRain - allSnow);
    }

    /**
     * Marks a record.
     *
     * <p>The temperature of a step is the mean of the usable readings in it, and where there is none the last one before it that is at most 3 h
     * old (chosen here). A step without either is unknown: its precipitation is taken as rain, and nothing melts in it.
     *
     * @param precipitation depth in each step, melted, mm; 0 or greater, NaN for missing
     * @param celsius air temperature, °C
     * @return rain, snow, melt and the snow that lies, step by step
     * @throws IllegalArgumentException if a depth is negative
     */
    public SnowRecord mark(RegularSeries precipitation, Series celsius) {
        Objects.requireNonNull(celsius, "celsius");
        Objects.requireNonNull(precipitation, "precipitation");
        Rain.requireNonNegative("precipitation", precipitation, "mm");
        int size = precipitation.size();
        double[] rain = new double[size];
        double[] snow = new double[size];
        double[] melt = new double[size];
        double[] lying = new double[size];
        double days = Rain.hours(precipitation.step()) / 24;
        int unknown = 0;
        double pack = 0;
        for (int i = 0; i < size; i++) {
            double depth = precipitation.value(i);
            double temperature = temperature(precipitation.interval(i), celsius);
            boolean isKnown = !Double.isNaN(temperature);
            unknown += isKnown ? 0 : 1;
            double share = isKnown ? snowShare(temperature) : 0;
            rain[i] = depth * (1 - share);
            snow[i] = depth * share;
            pack += Double.isNaN(depth) ? 0 : snow[i];
            melt[i] = isKnown ? Math.min(pack, degreeDay * Math.max(0, temperature - meltAbove) * days) : 0;
            pack -= melt[i];
            lying[i] = pack;
        }
        return new SnowRecord(
                like(precipitation, rain),
                like(precipitation, snow),
                like(precipitation, melt),
                like(precipitation, lying),
                unknown);
    }

    private static RegularSeries like(RegularSeries given, double[] values) {
        return RegularSeries.of(given.start(), given.step(), values);
    }

    private static double temperature(Interval step, Series celsius) {
        int first = celsius.firstIndexAtOrAfter(step.start());
        CompensatedSum sum = new CompensatedSum();
        int count = 0;
        for (int i = first; i < celsius.size() && celsius.time(i).isBefore(step.end()); i++) {
            if (celsius.quality(i).isUsable()) {
                sum.add(celsius.value(i));
                count++;
            }
        }
        if (count > 0) {
            return sum.value() / count;
        }
        Instant oldest = step.start().minusNanos(3 * 3_600_000_000_000L);
        for (int i = first - 1; i >= 0 && !celsius.time(i).isBefore(oldest); i--) {
            if (celsius.quality(i).isUsable()) {
                return celsius.value(i);
            }
        }
        return Double.NaN;
    }

    @Override
    public String toString() {
        return "SnowRule[snow to " + Text.significant(allSnow, 6) + " degC, rain from " + Text.significant(allRain, 6)
                + " degC, melt " + Text.significant(degreeDay, 6) + " mm a degree and day above "
                + Text.significant(meltAbove, 6) + " degC]";
    }
}
