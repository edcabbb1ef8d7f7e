package dev.runnel.rainfall.frequency;

import dev.runnel.internal.Text;
import dev.runnel.rainfall.distribution.Outlier;
import dev.runnel.rainfall.event.PeakDepth;
import dev.runnel.timeseries.change.MannKendall;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** What speaks against a fit to annual maxima, in words. */
final class MaximaWarnings {
    /** Common practice. */
    private static final double TREND_SIGNIFICANCE = 0.05;
    /** That of Bulletin 17B, appendix 4. */
    private static final double OUTLIER_SIGNIFICANCE = 0.10;
    /** Common practice. */
    private static final int FEW_YEARS = 20;
    /** Chosen here: of fewer values neither test can find anything. */
    private static final int FEWEST_TO_TEST = 4;

    private MaximaWarnings() {}

    /** Each sentence once, after the durations it is about unless it is about all. */
    static List<String> of(AnnualMaxima maxima) {
        Map<String, List<Duration>> about = new LinkedHashMap<>();
        for (Duration duration : maxima.durations()) {
            of(maxima, duration)
                    .forEach(sentence -> about.computeIfAbsent(sentence, s -> new ArrayList<>())
                            .add(duration));
        }
        List<String> warnings = new ArrayList<>();
        about.forEach((sentence, durations) -> warnings.add(
                durations.size() == maxima.durations().size()
                        ? sentence
                        : durations.stream().map(Text::duration).collect(Collectors.joining(", ")) + ": " + sentence));
        return List.copyOf(warnings);
    }

    static List<String> of(AnnualMaxima maxima, Duration duration) {
        double[] depths = maxima.depthsMm(duration);
        List<String> warnings = new ArrayList<>();
        if (depths.length < FEW_YEARS) {
            warnings.add("Only " + depths.length + " years: a fit of so few is rough, look at its limits.");
        }
        if (!maxima.excludedYears().isEmpty()) {
            warnings.add(maxima.excludedYears().size() + " of "
                    + (maxima.excludedYears().size() + depths.length) + " years were left out.");
        }
        long atLeast =
                maxima.peaks(duration).stream().filter(PeakDepth::isAtLeast).count();
        if (atLeast > 0) {
            warnings.add(atLeast + " of " + depths.length + " years lack steps: their maxima may be too low.");
        }
        long dry = Arrays.stream(depths).filter(depth -> depth == 0).count();
        if (dry > 0) {
            warnings.add(dry + " years have no rain at all.");
        }
        boolean allEqual = Arrays.stream(depths).allMatch(depth -> depth == depths[0]);
        if (allEqual) {
            warnings.add("All maxima are equal: there is nothing to fit.");
        } else if (depths.length >= FEWEST_TO_TEST) {
            trend(maxima.trend(duration), warnings);
            outlier(maxima, depths, warnings);
        }
        return List.copyOf(warnings);
    }

    private static void trend(MannKendall trend, List<String> warnings) {
        if (trend.pValue() < TREND_SIGNIFICANCE) {
            warnings.add("Trend over the years: tau " + Text.significant(trend.tau(), 3) + ", p "
                    + Text.significant(trend.pValue(), 3) + "; a fit assumes none.");
        }
    }

    private static void outlier(AnnualMaxima maxima, double[] depths, List<String> warnings) {
        if (Arrays.stream(depths).allMatch(depth -> depth > 0)) {
            Outlier.find(
                            OUTLIER_SIGNIFICANCE,
                            Arrays.stream(depths).map(Math::log).toArray())
                    .ifPresent(outlier ->
                            warnings.add("Outlier in " + maxima.years().get(outlier.index()) + ": "
                                    + Text.significant(depths[outlier.index()], 4) + " mm, G "
                                    + Text.significant(outlier.statistic(), 3) + " above "
                                    + Text.significant(outlier.critical(), 3) + " in the logarithms."));
        }
    }
}
