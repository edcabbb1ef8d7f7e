package dev.runnel.verification.calculation;

import static dev.runnel.verification.calculation.RainInputs.minutes;
import static dev.runnel.verification.calculation.RainInputs.rain;
import static dev.runnel.verification.calculation.RainInputs.rainfall;

import dev.runnel.rainfall.ddf.DdfBand;
import dev.runnel.rainfall.ddf.DdfTable;
import dev.runnel.rainfall.ddf.EventRarity;
import dev.runnel.rainfall.ddf.ReturnPeriod;
import dev.runnel.rainfall.ddf.ReturnPeriodBasis;
import dev.runnel.rainfall.distribution.Bootstrap;
import dev.runnel.rainfall.distribution.Distribution;
import dev.runnel.rainfall.distribution.Fit;
import dev.runnel.rainfall.distribution.FitMethod;
import dev.runnel.rainfall.distribution.LMoments;
import dev.runnel.rainfall.distribution.TrendFit;
import dev.runnel.rainfall.distribution.TrendIn;
import dev.runnel.rainfall.event.EventSeparation;
import dev.runnel.rainfall.event.RainfallEvent;
import dev.runnel.rainfall.frequency.AnnualMaxima;
import dev.runnel.rainfall.frequency.Region;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.IntStream;

/** How rare rain was where limits come with it, what speaks against a fit, and ends of laws that are nowhere. */
final class RarityCalculations {
    private static final String BAND = "table lower upper basis_of_limits confidence";
    private static final String OVER = BAND + " minutes depth";
    private static final String EVENT = BAND + " depths step_minutes windows_minutes";
    private static final String TREND = "family trend simpler sample";
    private static final String PERIOD = "family sample replicates confidence value";

    private RarityCalculations() {}

    static List<Calculation> all() {
        List<Calculation> all = new ArrayList<>();
        ofRarity(all, "ddf.band.", OVER, in -> band(in).returnPeriod(minutes(in, "minutes"), in.number("depth")));
        ofRarity(all, "ddf.band-of-event.", EVENT, in -> band(in).rarity(event(in)));
        all.add(rainfall(
                "ddf.event-rarity.share-of-limit",
                "1",
                "table depths step_minutes windows_minutes",
                in -> EventRarity.of(
                                DdfTable.parse(in.text("table"), ReturnPeriodBasis.PEAKS_OVER_THRESHOLD), event(in))
                        .durations()
                        .get(0)
                        .shareOfLimit()));
        all.add(rainfall(
                "ddf.band.depth-lower",
                "mm",
                BAND + " minutes years",
                in -> band(in).depthMm(minutes(in, "minutes"), in.number("years"))
                        .lower()));
        all.add(rainfall(
                "ddf.band.depth-upper",
                "mm",
                BAND + " minutes years",
                in -> band(in).depthMm(minutes(in, "minutes"), in.number("years"))
                        .upper()));
        all.add(rainfall(
                "region.critical-discordancy",
                "1",
                "sites",
                in -> ofSites(in.integer("sites")).criticalDiscordancy()));
        all.add(rainfall("trend-fit.against.statistic", "1", TREND, in -> test(in).statistic()));
        all.add(rainfall("trend-fit.against.freedom", "1", TREND, in -> test(in).degreesOfFreedom()));
        all.add(rainfall("trend-fit.against.p-value", "1", TREND, in -> test(in).pValue()));
        all.add(rainfall(
                "frequency.infinite-lower-bound",
                "1 above, -1 below, 0 finite",
                "family parameters",
                in -> FrequencyCalculations.infinite(law(in).lowerBound())));
        all.add(rainfall(
                "frequency.infinite-upper-bound",
                "1 above, -1 below, 0 finite",
                "family parameters",
                in -> FrequencyCalculations.infinite(law(in).upperBound())));
        all.add(rainfall(
                "drawn.period-lower-infinite",
                "1 above, -1 below, 0 finite",
                PERIOD,
                in -> FrequencyCalculations.infinite(period(in).lower())));
        all.add(rainfall(
                "drawn.period-upper-infinite",
                "1 above, -1 below, 0 finite",
                PERIOD,
                in -> FrequencyCalculations.infinite(period(in).upper())));
        all.add(rainfall(
                "drawn.period-estimate", "years", PERIOD, in -> period(in).estimate()));
        all.add(rainfall("maxima.warnings", "sentences", "maxima word", in -> warnings(in)));
        return all;
    }

    private static void ofRarity(
            List<Calculation> all, String name, String inputs, Function<Inputs, DdfBand.Rarity> of) {
        all.add(rainfall(
                name + "estimate",
                "years",
                inputs,
                in -> of.apply(in).estimate().years()));
        all.add(rainfall(
                name + "lower", "years", inputs, in -> of.apply(in).lower().years()));
        all.add(rainfall(
                name + "upper", "years", inputs, in -> of.apply(in).upper().years()));
        all.add(rainfall(name + "standing", "places of below, within and above", inputs, in -> standing(of.apply(in))));
    }

    static double standing(DdfBand.Rarity rarity) {
        return standing(rarity.estimate()) + 10 * standing(rarity.lower()) + 100 * standing(rarity.upper());
    }

    private static double standing(ReturnPeriod period) {
        return period.standing().ordinal();
    }

    private static DdfBand band(Inputs in) {
        ReturnPeriodBasis basis = ReturnPeriodBasis.PEAKS_OVER_THRESHOLD;
        ReturnPeriodBasis ofLimits =
                in.text("basis_of_limits").equals("annual") ? ReturnPeriodBasis.ANNUAL_MAXIMUM : basis;
        return DdfBand.of(
                DdfTable.parse(in.text("table"), basis),
                DdfTable.parse(in.text("lower"), ofLimits),
                DdfTable.parse(in.text("upper"), basis),
                in.number("confidence"));
    }

    private static RainfallEvent event(Inputs in) {
        return EventSeparation.of(Duration.ofDays(1))
                .withPeakDurations(Arrays.stream(in.sample("windows_minutes"))
                        .mapToObj(minutes -> Duration.ofNanos(Math.round(minutes * 60e9)))
                        .toList())
                .events(rain(in))
                .get(0);
    }

    private static Region ofSites(int count) {
        return Region.ofSites(IntStream.range(0, count)
                .mapToObj(i -> new Region.Site("site " + i, 30, LMoments.of(1, 0.2 + 0.001 * i, 0.2, 0.15)))
                .toList());
    }

    private static TrendFit.LikelihoodRatio test(Inputs in) {
        return fit(in, "trend").against(fit(in, "simpler"));
    }

    private static TrendFit fit(Inputs in, String trend) {
        double[] sample = in.sample("sample");
        double[] years = new double[sample.length];
        Arrays.setAll(years, i -> i + 1.0);
        TrendIn of = TrendIn.valueOf(FrequencyCalculations.constant(in.text(trend)));
        return TrendFit.of(FrequencyCalculations.family(in), of, years, sample);
    }

    private static Distribution law(Inputs in) {
        return FrequencyCalculations.family(in).with(in.sample("parameters"));
    }

    private static Bootstrap.Interval period(Inputs in) {
        Fit fit = Fit.of(FrequencyCalculations.family(in), FitMethod.L_MOMENTS, in.sample("sample"));
        return Bootstrap.of(in.integer("replicates"), 1)
                .withConfidence(in.number("confidence"))
                .returnPeriod(fit, in.sample("sample"), in.number("value"));
    }

    /** How many sentences hold the word. */
    private static double warnings(Inputs in) {
        double[] depths = in.sample("maxima");
        List<Integer> years =
                IntStream.range(1950, 1950 + depths.length).boxed().toList();
        TreeMap<Duration, double[]> byDuration = new TreeMap<>();
        byDuration.put(Duration.ofHours(1), depths);
        return AnnualMaxima.of(years, byDuration, Duration.ofMinutes(5)).warnings().stream()
                .filter(sentence -> sentence.contains(in.text("word")))
                .count();
    }
}
