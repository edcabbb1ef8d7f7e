package dev.runnel.hydraulics.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

/** What holds for every budget. */
class PropagationProperties {
    private static UncertainInput[] inputs(Random random, int n) {
        UncertainInput[] inputs = new UncertainInput[n];
        for (int i = 0; i < n; i++) {
            inputs[i] = UncertainInput.normal("x" + i, 1 + random.nextDouble(), 0.01 + 0.1 * random.nextDouble());
        }
        return inputs;
    }

    private static double product(double[] x) {
        double product = 1;
        for (double each : x) {
            product *= each;
        }
        return product;
    }

    @Property
    void sharesAddUpToOne(@ForAll long seed) {
        Random random = new Random(seed);
        int n = 2 + random.nextInt(6);
        MeasurementModel model = MeasurementModel.of(PropagationProperties::product, inputs(random, n))
                .withCorrelation("x0", "x1", 1.8 * random.nextDouble() - 0.9);
        double sum = model.propagated().contributions().stream()
                .mapToDouble(Contribution::share)
                .sum();
        assertThat(sum).isCloseTo(1, within(1e-12));
    }

    @Property
    void aResultInAnotherUnitScalesItsUncertainty(@ForAll long seed) {
        Random random = new Random(seed);
        double unit = Math.pow(10, 6 * random.nextDouble() - 3);
        UncertainInput[] inputs = inputs(random, 3);
        Propagation metres =
                MeasurementModel.of(PropagationProperties::product, inputs).propagated();
        Propagation others = MeasurementModel.of(x -> unit * product(x), inputs).propagated();
        assertThat(others.standardUncertainty())
                .isCloseTo(unit * metres.standardUncertainty(), within(1e-9 * others.standardUncertainty()));
        assertThat(others.relative()).isCloseTo(metres.relative(), within(1e-9));
        assertThat(others.expanded(0.95)).isCloseTo(unit * metres.expanded(0.95), within(1e-9 * others.expanded(0.95)));
    }

    /** Of a product the relative uncertainties add as squares, independent inputs; correlated ones with twice their product. */
    @Property
    void relativeUncertaintiesOfAProduct(@ForAll long seed) {
        Random random = new Random(seed);
        UncertainInput[] inputs = inputs(random, 2);
        double r = 2 * random.nextDouble() - 1;
        double a = inputs[0].standardUncertainty() / inputs[0].estimate();
        double b = inputs[1].standardUncertainty() / inputs[1].estimate();
        Propagation result = MeasurementModel.of(PropagationProperties::product, inputs)
                .withCorrelation("x0", "x1", r)
                .propagated();
        assertThat(result.relative() * result.relative()).isCloseTo(a * a + b * b + 2 * r * a * b, within(1e-10));
        double alone = MeasurementModel.of(PropagationProperties::product, inputs)
                .propagated()
                .standardUncertainty();
        assertThat(alone)
                .isGreaterThanOrEqualTo(Math.max(a, b) * Math.abs(result.value()) * (1 - 1e-9))
                .isLessThanOrEqualTo((a + b) * Math.abs(result.value()) * (1 + 1e-9));
    }

    @Property
    void daysAddUpInAnyOrder(@ForAll long seed) {
        Random random = new Random(seed);
        VolumeUncertainty[] days = new VolumeUncertainty[3];
        for (int i = 0; i < 3; i++) {
            days[i] = VolumeUncertainty.of(
                    random.doubles(24, 0.01, 1).toArray(),
                    3600,
                    VolumeUncertainty.FlowErrors.ofRandom(random.nextDouble())
                            .withCommon(0.2 * random.nextDouble())
                            .withMemory(7200 * random.nextDouble()));
        }
        VolumeUncertainty one = days[0].plus(days[1]).plus(days[2]);
        VolumeUncertainty other = days[2].plus(days[0].plus(days[1]));
        assertThat(one.volume()).isCloseTo(other.volume(), within(1e-9 * one.volume()));
        assertThat(one.standard()).isCloseTo(other.standard(), within(1e-9 * one.standard()));
        assertThat(one.random()).isLessThanOrEqualTo(days[0].random() + days[1].random() + days[2].random());
        assertThat(one.standard()).isGreaterThanOrEqualTo(one.common());
    }
}
