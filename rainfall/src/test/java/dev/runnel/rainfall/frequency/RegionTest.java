package dev.runnel.rainfall.frequency;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.rainfall.distribution.DistributionFamily;
import dev.runnel.rainfall.distribution.Gev;
import dev.runnel.rainfall.distribution.LMoments;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RegionTest {
    @Test
    void aHomogeneousGroupIsFoundSo() {
        Region region = Region.ofRecords(records(12, 0));
        RegionSimulation test = region.test(300, 1);
        assertThat(test.heterogeneity().get(0)).isLessThan(2);
        assertThat(Math.abs(test.z().getOrDefault(DistributionFamily.GEV, Double.NaN)))
                .isLessThan(2.5);
        assertThat(region.discordancy().values().stream()
                        .mapToDouble(Double::doubleValue)
                        .average())
                .hasValueCloseTo(1.0, within(1e-10));
        assertThat(region.returnLevel(40, DistributionFamily.GEV, 100))
                .isCloseTo(40 * region.growthCurve(DistributionFamily.GEV).returnLevel(100), within(1e-12));
    }

    @Test
    void aMixedGroupIsFoundSo() {
        assertThat(Region.ofRecords(records(12, 0.9))
                        .test(300, 1)
                        .heterogeneity()
                        .get(0))
                .isGreaterThan(2);
    }

    /** Records of 4 to 12 years: every simulated record counts, and the same seed gives the same answer. */
    @ParameterizedTest
    @ValueSource(ints = {4, 5, 6, 8, 10, 12})
    void aGroupOfShortRecordsIsTested(int years) {
        Region region = Region.ofSites(sites(years, 0.2));
        RegionSimulation test = region.test(200, years);
        assertThat(test.heterogeneity()).allMatch(Double::isFinite);
        assertThat(test.z()).hasSize(5).allSatisfy((family, z) -> assertThat(z).isFinite());
        assertThat(test.redrawn()).isZero();
        assertThat(test).isEqualTo(region.test(200, years)).asString().endsWith("200 simulations]");
    }

    /** With an L-CV this large some simulated records have a mean below 0: they are drawn again, and counted. */
    @Test
    void recordsWithoutAMeanAboveZeroAreDrawnAgainAndCounted() {
        RegionSimulation test = Region.ofSites(sites(4, 0.75)).test(200, 1);
        assertThat(test.redrawn()).isBetween(1L, 200 * 8L);
        assertThat(test).asString().endsWith("200 simulations, " + test.redrawn() + " records drawn again]");
        assertThat(test).isEqualTo(Region.ofSites(sites(4, 0.75)).test(200, 1));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Region.ofSites(List.of(
                                new Region.Site("quay", 4, LMoments.of(1, 1e6, 0.98, 0.96)),
                                new Region.Site("pier", 4, LMoments.of(1, 1e6, 0.98, 0.96))))
                        .test(200, 1))
                .withMessage("average L-moments must be such that records with them have a mean above 0, were"
                        + " LMoments[l1 = 1, l2 = 1000000, t3 = 0.98, t4 = 0.96]");
    }

    private static List<Region.Site> sites(int years, double tau) {
        List<Region.Site> sites = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            sites.add(new Region.Site(
                    "site " + i, years, LMoments.of(10, 10 * tau + 0.1 * i, 0.15 + 0.01 * i, 0.15 + 0.01 * (i % 3))));
        }
        return sites;
    }

    /** Eight sites about one average, some twice as long: their L-moments lie as far from it as asked, half on either side. */
    private static List<Double> heterogeneityOfSpread(double spread) {
        List<Region.Site> sites = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            double sign = i % 2 == 0 ? spread : -spread;
            double wide = i < 4 ? 0.02 : 0.03;
            sites.add(new Region.Site(
                    "site " + i,
                    i < 4 ? 20 : 40,
                    LMoments.of(10, 2 + 10 * wide * sign, 0.15 + wide * sign / 2, 0.14 + 0.01 * sign)));
        }
        return Region.ofSites(sites).test(200, 1).heterogeneity();
    }

    /** Twice as far from one average is twice the scatter, in all three measures, against the same simulated groups. */
    @Test
    void heterogeneityGrowsWithTheScatter() {
        List<Double> none = heterogeneityOfSpread(0);
        List<Double> once = heterogeneityOfSpread(1);
        List<Double> twice = heterogeneityOfSpread(2);
        for (int k = 0; k < 3; k++) {
            assertThat(none.get(k)).isNegative();
            assertThat(once.get(k)).isGreaterThan(none.get(k) + 0.1);
            assertThat(twice.get(k) - none.get(k)).isCloseTo(2 * (once.get(k) - none.get(k)), within(1e-6));
        }
    }

    /** The z of two families differ by the difference of their kurtoses over one scatter. */
    @Test
    void familiesAreComparedByOneScatter() {
        Region region = Region.ofRecords(records(12, 0));
        Map<DistributionFamily, Double> z = region.test(300, 1).z();
        double[] scatter = new double[2];
        DistributionFamily[] others = {DistributionFamily.GENERALIZED_NORMAL, DistributionFamily.GENERALIZED_PARETO};
        for (int i = 0; i < 2; i++) {
            double kurtosis = region.growthCurve(others[i]).lMoments().tau4()
                    - region.growthCurve(DistributionFamily.GEV).lMoments().tau4();
            scatter[i] = kurtosis
                    / (z.getOrDefault(others[i], Double.NaN) - z.getOrDefault(DistributionFamily.GEV, Double.NaN));
        }
        assertThat(scatter[0]).isCloseTo(scatter[1], within(1e-9)).isBetween(0.002, 0.05);
    }

    @Test
    void theOddSiteIsDiscordant() {
        Map<String, double[]> records = records(12, 0);
        double[] odd = new double[40];
        for (int i = 0; i < 40; i++) {
            odd[i] = i == 0 ? 500 : 10 + i * 0.01;
        }
        records.put("odd", odd);
        Region region = Region.ofRecords(records);
        assertThat(region.discordancy())
                .hasEntrySatisfying("odd", d -> assertThat(d).isGreaterThan(region.criticalDiscordancy()));
    }

    @Test
    void refusesBadInput() {
        Map<String, double[]> withEqual = records(2, 0);
        withEqual.put("quay", new double[] {30, 30, 30, 30});
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Region.ofRecords(withEqual))
                .withMessage("site quay: sample must not be all equal, was 4 times 30");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Region.ofRecords(records(1, 0)))
                .withMessage("number of sites must be at least 2, was 1");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Region.ofRecords(records(4, 0)).discordancy())
                .withMessage("number of sites must be at least 5, was 4");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Region.ofRecords(records(5, 0)).growthCurve(DistributionFamily.LOG_NORMAL))
                .withMessage("family must not be one of the logarithm, was LOG_NORMAL");
    }

    /** Sites of 40 years whose scale grows from site to site by the given spread. */
    private static Map<String, double[]> records(int sites, double spread) {
        Random random = new Random(9);
        Map<String, double[]> records = new LinkedHashMap<>();
        for (int s = 0; s < sites; s++) {
            Gev site = Gev.of(30, 8 * (1 + spread * s / sites), 0.05);
            double[] x = new double[40];
            for (int i = 0; i < x.length; i++) {
                x[i] = (1 + s) * site.quantile(random.nextDouble(1e-12, 1));
            }
            records.put("site " + s, x);
        }
        return records;
    }
}
