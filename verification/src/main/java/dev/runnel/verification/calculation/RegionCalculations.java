package dev.runnel.verification.calculation;

import dev.runnel.rainfall.distribution.LMoments;
import dev.runnel.rainfall.event.AntecedentIndex;
import dev.runnel.rainfall.event.DryGaps;
import dev.runnel.rainfall.frequency.Region;
import dev.runnel.rainfall.frequency.RegionSimulation;
import dev.runnel.rainfall.gauge.DoubleMass;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Regional frequency analysis, double mass, dry gaps and antecedent wetness. */
final class RegionCalculations {
    private static final String SITES = "years lcv lskew lkurt";

    private static final Map<Simulated, RegionSimulation> KEPT = KeptAnswers.map();

    private record Simulated(List<Region.Site> sites, int simulations) {}

    private RegionCalculations() {}

    static List<Calculation> all() {
        return List.of(
                Calculation.of(
                        "rainfall",
                        "region.discordancy",
                        "1",
                        "site " + SITES,
                        in -> region(in).discordancy().get("site " + in.integer("site"))),
                Calculation.of(
                        "rainfall",
                        "region.growth-curve.parameter",
                        "1",
                        "family parameter " + SITES,
                        in -> region(in)
                                .growthCurve(FrequencyCalculations.family(in))
                                .parameters()
                                .get(in.text("parameter"))),
                Calculation.of(
                        "rainfall",
                        "region.return-level",
                        "1",
                        "family mean years_asked " + SITES,
                        in -> region(in)
                                .returnLevel(
                                        in.number("mean"), FrequencyCalculations.family(in), in.number("years_asked"))),
                Calculation.of(
                        "rainfall",
                        "region.heterogeneity",
                        "1",
                        "measure simulations " + SITES,
                        in -> simulated(in).heterogeneity().get(in.integer("measure") - 1)),
                Calculation.of(
                        "rainfall",
                        "region.z",
                        "1",
                        "family simulations " + SITES,
                        in -> simulated(in).z().get(FrequencyCalculations.family(in))),
                Calculation.of(
                        "rainfall",
                        "double-mass.slope-before",
                        "1",
                        "gauge reference periods",
                        in -> broken(in).slopeBefore()),
                Calculation.of(
                        "rainfall",
                        "double-mass.slope-after",
                        "1",
                        "gauge reference periods",
                        in -> broken(in).slopeAfter()),
                Calculation.of(
                        "rainfall",
                        "double-mass.squares-left",
                        "mm2",
                        "gauge reference periods",
                        in -> broken(in).squaresLeft()),
                Calculation.of(
                        "rainfall",
                        "double-mass.rank-correlation",
                        "1",
                        "gauge reference",
                        in -> DoubleMass.of(in.sample("gauge"), in.sample("reference"))
                                .rankCorrelation()),
                Calculation.of(
                        "rainfall",
                        "dry-gaps.variation",
                        "1",
                        "gaps_hours candidate_hours convention",
                        in -> DryGaps.ofHours(in.sample("gaps_hours"))
                                .candidates(DryGaps.Convention.valueOf(
                                        in.text("convention").toUpperCase(Locale.ROOT)))
                                .stream()
                                .filter(candidate ->
                                        candidate.minimum().equals(Duration.ofHours(in.integer("candidate_hours"))))
                                .findFirst()
                                .orElseThrow(() -> new IllegalArgumentException("no such candidate"))
                                .coefficientOfVariation()),
                Calculation.of(
                        "rainfall",
                        "antecedent.five-day-index",
                        "mm",
                        "daily_mm",
                        in -> AntecedentIndex.fiveDays().indexMm(in.sample("daily_mm"))),
                Calculation.of(
                        "rainfall",
                        "antecedent.urban-wetness",
                        "mm",
                        "index_mm deficit_mm",
                        in -> AntecedentIndex.urbanCatchmentWetnessOfIndexAndDeficit(
                                in.number("index_mm"), in.number("deficit_mm"))),
                Calculation.of(
                        "rainfall",
                        "antecedent.wetness",
                        "mm",
                        "index_mm deficit_mm",
                        in -> AntecedentIndex.catchmentWetnessOfIndexAndDeficit(
                                in.number("index_mm"), in.number("deficit_mm"))));
    }

    private static Region region(Inputs in) {
        double[] years = in.sample("years");
        double[] lcv = in.sample("lcv");
        double[] skew = in.sample("lskew");
        double[] kurtosis = in.sample("lkurt");
        List<Region.Site> sites = new ArrayList<>();
        for (int i = 0; i < years.length; i++) {
            sites.add(new Region.Site("site " + (i + 1), (int) years[i], LMoments.of(1, lcv[i], skew[i], kurtosis[i])));
        }
        return Region.ofSites(sites);
    }

    /** One simulation serves all its measures, and is kept. */
    private static RegionSimulation simulated(Inputs in) {
        Region region = region(in);
        Simulated asked = new Simulated(region.sites(), in.integer("simulations"));
        return KEPT.computeIfAbsent(asked, key -> region.test(key.simulations(), 1));
    }

    private static DoubleMass.Break broken(Inputs in) {
        return DoubleMass.of(in.sample("gauge"), in.sample("reference")).breakAfter(in.integer("periods"));
    }
}
