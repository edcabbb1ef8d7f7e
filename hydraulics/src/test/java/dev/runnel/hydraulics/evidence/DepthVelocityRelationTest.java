package dev.runnel.hydraulics.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.flow.ColebrookWhite;
import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.monitoring.PipeMonitor;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Series;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Figures of a half-full circle of 0.6 m (R = 0.15 m) at 1 in 100 were computed apart, to 25 digits. */
class DepthVelocityRelationTest {
    private static final Instant START = Instant.parse("2026-03-01T00:00:00Z");
    private static final Conduit CONDUIT =
            Conduit.of(CircularSection.ofDiameter(0.6), Gradient.of(0.01), Manning.of(0.013));
    private static final PipeMonitor MONITOR = PipeMonitor.of(CONDUIT);
    private static final ColebrookWhite WATER = ColebrookWhite.ofRoughness(0).withViscosity(1.14e-6);

    @Test
    void manningOfOneReading() {
        DepthVelocityRelation relation = relation(MONITOR, new double[] {0.3}, 1.5);
        RoughnessEstimate n = relation.manning().orElseThrow();
        assertThat(n.median()).isCloseTo(0.0188207205776206, within(1e-15));
        assertThat(n.tooFast()).isZero();
        assertThat(n.tooSlow()).isZero();
    }

    @Test
    void sandRoughnessOfOneReading() {
        DepthVelocityRelation relation = relation(MONITOR, new double[] {0.3}, 1.5);
        assertThat(relation.sandRoughness(WATER).orElseThrow().median()).isCloseTo(0.0144252067676266, within(1e-13));
    }

    @Test
    void readingsThatNoRoughnessExplainsAreCountedAndKeptAtTheLimit() {
        // Smooth walls would give 3.33 m/s; the last is slower than any wall explains.
        DepthVelocityRelation relation = relation(MONITOR, new double[] {0.3, 0.3, 0.3}, 3.4, 1.5, 0.05);
        RoughnessEstimate ks = relation.sandRoughness(WATER).orElseThrow();
        assertThat(ks.tooFast()).isEqualTo(1);
        assertThat(ks.tooSlow()).isEqualTo(1);
        assertThat(ks.median()).isCloseTo(0.0144252067676266, within(1e-13));
        assertThat(ks.spread().lower()).isNotNegative();
        assertThat(ks.spread().upper()).isLessThan(0.6);
    }

    @Test
    void roughnessIsFoundAgainFromTheVelocitiesOfTheLaw() {
        double[] depths = {0.05, 0.13, 0.22, 0.31, 0.42, 0.55, 0.6};
        Conduit rougher = CONDUIT.withResistance(Manning.of(0.0165));
        DepthVelocityRelation manning = relation(MONITOR, depths, velocities(rougher, depths));
        assertThat(manning.manning().orElseThrow().spread().lower()).isCloseTo(0.0165, within(1e-15));
        assertThat(manning.manning().orElseThrow().spread().upper()).isCloseTo(0.0165, within(1e-15));
        assertThat(manning.ratio().orElseThrow().median()).isCloseTo(13 / 16.5, within(1e-14));
        Conduit sand = CONDUIT.withResistance(ColebrookWhite.ofRoughness(0.0015).withViscosity(1.14e-6));
        RoughnessEstimate ks = relation(MONITOR, depths, velocities(sand, depths))
                .sandRoughness(WATER)
                .orElseThrow();
        assertThat(ks.spread().lower()).isCloseTo(0.0015, within(1e-12));
        assertThat(ks.spread().upper()).isCloseTo(0.0015, within(1e-12));
    }

    @Test
    void medianIsNotMovedByAFewDropOuts() {
        double[] depths = {0.3, 0.3, 0.3, 0.3, 0.3};
        DepthVelocityRelation relation = relation(MONITOR, depths, 1.5, 1.5, 1.5, 0.01, 9);
        assertThat(relation.manning().orElseThrow().median()).isCloseTo(0.0188207205776206, within(1e-15));
    }

    @Test
    void sedimentBedNarrowsTheFlowArea() {
        PipeMonitor monitor = MONITOR.withSediment(0.1);
        DepthVelocityRelation relation = relation(monitor, new double[] {0.3}, 1.92035932650824);
        assertThat(relation.ratio().orElseThrow().median()).isCloseTo(1, within(1e-13));
    }

    @Test
    void onlyUsablePartFullForwardReadingsAreUsed() {
        Series depth = series(0.3, 0.7, 0.3, 0.3, 0, Double.NaN, 0.3);
        Series velocity = series(1.5, 1.5, -1.5, 0, 0, 1.5, Double.NaN);
        DepthVelocityRelation relation = DepthVelocityRelation.of(MONITOR.flow(depth, velocity));
        assertThat(relation.size()).isEqualTo(1);
        assertThat(relation.leftOut()).isEqualTo(6);
        Series suspect = Series.of(List.of(new Reading(START, 0.3, Quality.SUSPECT)));
        assertThat(DepthVelocityRelation.of(MONITOR.flow(suspect, series(1.5))).size())
                .isZero();
    }

    @Test
    void relationOfNothingIsEmpty() {
        DepthVelocityRelation none = relation(MONITOR, new double[0]);
        assertThat(none.ratio()).isEmpty();
        assertThat(none.manning()).isEmpty();
        assertThat(none.sandRoughness(WATER)).isEmpty();
        assertThat(none.classes(0.1)).isEmpty();
        assertThat(none).hasToString("DepthVelocityRelation[0 readings, 0 left out]");
    }

    @Test
    void classesHoldMediansByDepth() {
        double[] depths = {0.05, 0.07, 0.3, 0.31, 0.32};
        DepthVelocityRelation relation = relation(MONITOR, depths, 0.6, 0.8, 1.4, 1.6, 1.5);
        List<DepthClass> classes = relation.classes(0.1);
        assertThat(classes).hasSize(2);
        assertThat(classes.get(0).from()).isZero();
        assertThat(classes.get(0).to()).isEqualTo(0.1);
        assertThat(classes.get(0).medianLevel()).isCloseTo(0.06, within(1e-15));
        assertThat(classes.get(0).velocity().median()).isCloseTo(0.7, within(1e-15));
        assertThat(classes.get(0).lawVelocity()).isEqualTo(CONDUIT.velocity(0.06));
        assertThat(classes.get(1).velocity().count()).isEqualTo(3);
        assertThat(classes.get(1).ratio()).isCloseTo(1.5 / CONDUIT.velocity(0.31), within(1e-14));
        assertThat(classes.get(0).toString()).startsWith("DepthClass[0.000 to 0.100 m, 2 readings, velocity 0.700 m/s");
    }

    @Test
    void rangeOfLevelsCanBeNarrowed() {
        DepthVelocityRelation relation =
                relation(MONITOR, new double[] {0.05, 0.2, 0.3}, 1, 1.2, 1.5).betweenLevels(0.2, 0.3);
        assertThat(relation.size()).isEqualTo(1);
        assertThat(relation.leftOut()).isEqualTo(2);
        assertThatThrownBy(() -> relation.betweenLevels(0.3, 0.3))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("from must be less than to, was 0.3 and 0.3 m");
    }

    @Test
    void badInputIsRefused() {
        DepthVelocityRelation relation = relation(MONITOR, new double[] {0.3}, 1.5);
        assertThatThrownBy(() -> relation.classes(0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("width must be greater than 0 and finite (m), was 0");
        assertThatThrownBy(() -> new MedianAndSpread(1, 2, 3, 1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("values must be in the order lower <= median <= upper, were 2, 1, 3");
        assertThatThrownBy(() -> new MedianAndSpread(1, 1, 1, 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("count must be at least 1, was 0");
    }

    private static DepthVelocityRelation relation(PipeMonitor monitor, double[] depths, double... velocities) {
        return DepthVelocityRelation.of(monitor.flow(series(depths), series(velocities)));
    }

    private static double[] velocities(Conduit conduit, double[] depths) {
        double[] velocities = new double[depths.length];
        conduit.velocity(depths, velocities);
        return velocities;
    }

    private static Series series(double... values) {
        var builder = Series.builder();
        for (int i = 0; i < values.length; i++) {
            builder.add(START.plusSeconds(120L * i), values[i]);
        }
        return builder.build();
    }

    @Test
    void aNarrowedRangeKeepsItsOwnReadings() {
        DepthVelocityRelation relation =
                relation(MONITOR, new double[] {0.05, 0.2, 0.3}, 1, 1.2, 1.5).betweenLevels(0.2, 0.3);
        assertThat(relation.ratio().orElseThrow().median()).isCloseTo(1.2 / CONDUIT.velocity(0.2), within(1e-14));
        DepthClass kept = relation.classes(0.1).get(0);
        assertThat(kept.from()).isEqualTo(0.2);
        assertThat(kept.to()).isCloseTo(0.3, within(1e-15));
        assertThat(kept.medianLevel()).isEqualTo(0.2);
    }

    @Test
    void figuresSayWhatTheyAre() {
        DepthVelocityRelation one = relation(MONITOR, new double[] {0.3}, 1.5);
        assertThat(one)
                .hasToString("DepthVelocityRelation[1 readings, 0 left out, measured over law velocity "
                        + "MedianAndSpread[0.6907, central 68 % 0.6907 to 0.6907, 1 values], Manning n "
                        + "MedianAndSpread[0.01882, central 68 % 0.01882 to 0.01882, 1 values]]");
        assertThat(one.manning().orElseThrow())
                .hasToString("RoughnessEstimate[0.01882, central 68 % 0.01882 to 0.01882, 1 readings, 0 too fast, 0 too"
                        + " slow]");
        Estimate estimate = new Estimate(2, 1, 3);
        assertThat(estimate.toString()).startsWith("Estimate[2").contains("1", "3");
        for (double inside : new double[] {1, 2, 3}) {
            assertThat(estimate.holds(inside)).isTrue();
        }
        assertThat(estimate.holds(0.999)).isFalse();
        assertThat(estimate.holds(3.001)).isFalse();
    }
}
