package dev.runnel.verification.simulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.List;
import java.util.zip.CRC32;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class SimulatorTest {
    @ParameterizedTest
    @EnumSource
    void sameOrderMakesTheSameSite(Make make) {
        SiteOrder order = Orders.with(5, make, FaultKind.WEAK_ECHO, 0.3, 0);

        Site one = Simulator.site(order);
        Site other = Simulator.site(order);

        assertThat(one.stamp()).isEqualTo(other.stamp());
        assertThat(one.depth()).isEqualTo(other.depth());
        assertThat(one.velocity()).isEqualTo(other.velocity());
        assertThat(one.gauge()).isEqualTo(other.gauge());
    }

    /** These sums were taken once; another machine, locale or JDK must find them again. */
    @ParameterizedTest
    @CsvSource({"FIRST, 11, 2389852025", "SECOND, 11, 818550491", "THIRD, 11, 3985029605"})
    void readingsAreTheSameEverywhere(Make make, long seed, long sum) {
        Site site = Simulator.site(Orders.with(seed, make, FaultKind.BLOCKAGE, 0.5, 4));

        assertThat(sum(site)).isEqualTo(sum);
    }

    private static long sum(Site site) {
        CRC32 sum = new CRC32();
        for (double[] values : new double[][] {site.depth(), site.velocity(), site.gauge()}) {
            ByteBuffer bytes = ByteBuffer.allocate(8 * values.length);
            Arrays.stream(values).forEach(bytes::putDouble);
            sum.update(bytes.array());
        }
        return sum.getValue();
    }

    @ParameterizedTest
    @EnumSource
    void sitesOfDifferentSeedsDifferInEverything(Make make) {
        Site one = Simulator.site(Orders.sound(1, make));
        Site other = Simulator.site(Orders.sound(2, make));

        assertThat(one.grid().start()).isNotEqualTo(other.grid().start());
        assertThat(one.water().usualDepth()).isNotEqualTo(other.water().usualDepth());
        assertThat(one.water().flow()[0]).isNotEqualTo(other.water().flow()[0]);
    }

    @Test
    void generatorsShareOnlyWhatIsNotInvented() {
        Site smooth = Simulator.site(Orders.sound(3, Make.FIRST));
        Site rough = Simulator.site(Orders.sound(3, Make.SECOND));
        Site households = Simulator.site(Orders.sound(3, Make.THIRD));

        assertThat(smooth.grid()).isEqualTo(rough.grid());
        assertThat(smooth.water().flow()).isNotEqualTo(rough.water().flow());
        assertThat(smooth.water().rain()).isNotEqualTo(rough.water().rain());
        assertThat(households.grid().start()).isEqualTo(rough.grid().start());
        assertThat(households.water().usualDepth()).isNotEqualTo(rough.water().usualDepth());
    }

    @ParameterizedTest
    @EnumSource(FaultKind.class)
    void depthAndVelocityCarryTheFlow(FaultKind kind) {
        for (Make make : Make.values()) {
            for (Trait trait : Trait.values()) {
                SiteOrder order =
                        new SiteOrder(21, make, Orders.DAYS, 0.06, trait, false, new Fault(kind, 0.4, 20.3, 3, 36, 5));
                Water water = Simulator.water(order);
                Pipe pipe = Simulator.law(order, Simulator.nature(order)).pipe();
                for (int i = 0; i < water.flow().length; i++) {
                    double carried = water.velocity()[i] * (pipe.area(water.depth()[i]) - pipe.area(water.bed()[i]));
                    assertThat(carried).isCloseTo(water.flow()[i], within(1e-12 + 1e-9 * Math.abs(water.flow()[i])));
                }
            }
        }
    }

    @Test
    void pumpsLoseNoWater() {
        SiteOrder order = Orders.sound(8, Make.FIRST);
        double inflow = volume(Simulator.water(order), Simulator.grid(order));
        SiteOrder pumped = new SiteOrder(8, Make.FIRST, Orders.DAYS, 0.04, Trait.PUMPED, false, Fault.NONE);

        Water water = Simulator.water(pumped);

        // What is still in the well and in the reach: less than an hour and a half of usual flow.
        double usual = inflow / Orders.DAYS / 16;
        assertThat(volume(water, Simulator.grid(pumped))).isBetween(inflow - usual, inflow + 1e-6);
        assertThat(Arrays.stream(water.flow()).min().orElseThrow()).isLessThan(0.2 * inflow / Orders.DAYS / 86400);
    }

    /** Against the same site without a winter: what seeps in is the bell curve of the order, at the highest 10 to 90 %. */
    @ParameterizedTest
    @EnumSource
    void winterAddsItsWaterToTheDryFlowAndNothingElse(Make make) {
        SiteOrder dry = new SiteOrder(31, make, 365, 0.04, Trait.PLAIN, false, Fault.NONE);
        SiteOrder wet = new SiteOrder(31, make, 365, 0.04, Trait.SEASON, false, Fault.NONE);
        Grid grid = Simulator.grid(wet);
        Law law = Simulator.law(wet, Simulator.nature(wet));
        double usual = law.flow(law.referenceDepth());
        Water without = Simulator.water(dry);
        Water with = Simulator.water(wet);

        double highest = 0;
        double peak = 0;
        for (int i = 0; i < with.dry().length; i++) {
            double more = (with.dry()[i] - without.dry()[i]) / usual;
            if (more > highest) {
                highest = more;
                peak = grid.days(i);
            }
        }
        assertThat(highest).isBetween(0.1, 0.9);
        assertThat(peak).isBetween(165.0, 205.0);
        assertThat(with.dry()[grid.at(15)] / without.dry()[grid.at(15)]).isLessThan(1.02);
        assertThat(with.dry()[grid.at(364)] / without.dry()[grid.at(364)]).isLessThan(1.02);
        assertThat(with.rain()).isEqualTo(without.rain());
    }

    @Test
    void faultsOfAWinterBeginWhileTheWaterIsUp() {
        List<Case> winter = new ScoreRun(Seeds.DEVELOPING, 5, "wet season", false, Make.FIRST).cases();

        assertThat(winter)
                .hasSize(55)
                .filteredOn(one -> one.cell().isInSeason())
                .hasSize(35);
        for (Case one : winter) {
            if (one.cell().isSound()) {
                continue;
            }
            Season season = Season.of(one.order().seed());
            assertThat(season.at(one.order().fault().begin())).isGreaterThan(0.6 * season.share());
        }
    }

    @ParameterizedTest
    @CsvSource({"DEPTH_UNIT, 10, 10, 1", "VELOCITY_UNIT, 3.281, 1, 3.281"})
    void anotherUnitIsAFactorOfTheReadings(FaultKind kind, double factor, double ofDepth, double ofVelocity) {
        Site sound = Simulator.site(Orders.sound(17, Make.FIRST));
        Site other = Simulator.site(Orders.with(17, Make.FIRST, kind, factor, 0));

        int begin = sound.grid().at(20.3);
        for (int i = 0; i < sound.depth().length; i++) {
            boolean there = i > begin;
            if (i != begin && !Double.isNaN(sound.depth()[i])) {
                // Both are rounded to a hundredth of a millimetre.
                assertThat(other.depth()[i])
                        .isCloseTo(
                                sound.depth()[i] * (there ? ofDepth : 1), within(there ? 1e-5 * (1 + ofDepth) : 1e-12));
            }
            if (i != begin && sound.velocity()[i] > 0.02) {
                assertThat(other.velocity()[i])
                        .isCloseTo(sound.velocity()[i] * (there ? ofVelocity : 1), within(there ? 0.03 : 1e-12));
            }
        }
    }

    @Test
    void exchangedColumnsHoldTheReadingsOfEachOther() {
        Site sound = Simulator.site(Orders.sound(17, Make.FIRST));
        Site other = Simulator.site(Orders.with(17, Make.FIRST, FaultKind.EXCHANGED_COLUMNS, 1000, 0));

        int begin = sound.grid().at(20.3);
        for (int i = 0; i < sound.depth().length; i++) {
            boolean there = i > begin;
            if (i != begin) {
                // Missing where the other is.
                assertThat(other.depth()[i])
                        .usingComparator(Double::compare)
                        .isEqualTo(there ? sound.velocity()[i] / 1000 : sound.depth()[i]);
                assertThat(other.velocity()[i])
                        .usingComparator(Double::compare)
                        .isEqualTo(there ? 1000 * sound.depth()[i] : sound.velocity()[i]);
            }
        }
    }

    private static double volume(Water water, Grid grid) {
        return Arrays.stream(water.flow()).sum() * grid.minutes() * 60;
    }

    @ParameterizedTest
    @EnumSource
    void soundSitesFollowTheirLaw(Make make) {
        Water water = Simulator.water(Orders.sound(4, make));

        for (int i = 0; i < water.depth().length; i++) {
            if (water.depth()[i] < 3 * water.usualDepth()) {
                assertThat(water.shift()[i]).isCloseTo(0, within(0.02));
            }
        }
    }

    /** The part from day to day, as the order says; from the water, without any reading. */
    @ParameterizedTest
    @CsvSource({"FIRST, 0.02", "FIRST, 0.08", "SECOND, 0.02", "SECOND, 0.08", "THIRD, 0.02", "THIRD, 0.08"})
    void scatterIsAsOrdered(Make make, double scatter) {
        double squares = 0;
        int n = 0;
        for (long seed = 100; seed < 112; seed++) {
            SiteOrder order = new SiteOrder(seed, make, 120, scatter, Trait.PLAIN, false, Fault.NONE);
            Law law = Simulator.law(order, Simulator.nature(order));
            Grid grid = Simulator.grid(order);
            Water water = Simulator.water(order);
            double[] r = new double[grid.perDay()];
            for (int day = 0; day + 1 < order.days(); day++) {
                for (int k = 0; k < r.length; k++) {
                    int i = day * r.length + k;
                    r[k] = Math.log(water.velocity()[i] / law.velocity(water.depth()[i]));
                }
                Arrays.sort(r);
                squares += r[r.length / 2] * r[r.length / 2];
                n++;
            }
        }

        // Day to day, and something of the hours and of the months on top.
        assertThat(Math.sqrt(squares / n)).isBetween(0.75 * scatter, 1.6 * scatter + 0.01);
    }

    /** Median and spread over sites, against the figures measured on real sensors that the class quotes. */
    @Test
    void soundSensorsErrAsRealOnesDo() {
        double[] equal = new double[40];
        double[] missing = new double[40];
        for (int k = 0; k < equal.length; k++) {
            Site site = Simulator.site(new SiteOrder(
                    900 + k, k % 2 == 1 ? Make.SECOND : Make.FIRST, 120, 0.04, Trait.PLAIN, false, Fault.NONE));
            int pairs = 0;
            double last = Double.NaN;
            for (double depth : site.depth()) {
                if (Double.isNaN(depth)) {
                    missing[k]++;
                } else {
                    pairs++;
                    equal[k] += depth == last ? 1 : 0;
                    last = depth;
                }
            }
            equal[k] /= pairs;
            missing[k] /= site.depth().length;
        }
        Arrays.sort(equal);
        Arrays.sort(missing);

        assertThat(equal[20]).isBetween(0.13, 0.46);
        assertThat(equal[1]).isLessThan(0.1);
        assertThat(equal[38]).isGreaterThan(0.45);
        assertThat(missing[20]).isBetween(0.03, 0.08);
    }

    @ParameterizedTest
    @ValueSource(doubles = {-0.1, 0.3, Double.NaN})
    void refusesScatterThatNoSiteHas(double scatter) {
        assertThatThrownBy(() -> new SiteOrder(1, Make.FIRST, 10, scatter, Trait.PLAIN, false, Fault.NONE))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("scatter must be in [0, 0.2], was ");
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 100_000})
    void refusesRecordsOfAbsurdLength(int days) {
        assertThatThrownBy(() -> new SiteOrder(1, Make.FIRST, days, 0.04, Trait.PLAIN, false, Fault.NONE))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("days must be in [1, 1100], was " + days);
    }
}
