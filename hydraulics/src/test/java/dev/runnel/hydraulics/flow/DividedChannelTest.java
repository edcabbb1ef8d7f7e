package dev.runnel.hydraulics.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class DividedChannelTest {
    private static final double FOOT = 0.3048;

    /**
     * T. G. Cleveland (2022), CE 4353 Design of Hydraulic Systems, examination 2, problem 2: main channel 20 ft, n 0.025;
     * overbanks 80 ft each 4.8 ft above the bed, sides 2 : 1, n 0.070; S 0.018; constant 1.49; interfaces wetted.
     */
    @Test
    void compoundChannelAsPrinted() {
        double[] places = {-130, -90, -10, -10, 10, 10, 90, 130};
        double[] levels = {24.8, 4.8, 4.8, 0, 0, 4.8, 4.8, 24.8};
        double[] n = {0.070, 0.070, 0.025, 0.025, 0.025, 0.070, 0.070};
        for (int i = 0; i < places.length; i++) {
            places[i] *= FOOT;
            levels[i] *= FOOT;
        }
        var channel = DividedChannel.ofSurvey(places, levels, n).withWettedInterfaces();
        double[][] printed = {
            {2, 449.62}, {3, 837.82}, {5, 1815.52}, {6, 2931.06}, {7, 4556.67}, {8, 6583.86}, {9, 8959.61}
        };
        int compared = 0;
        for (double[] row : printed) {
            // The source takes 1.49 for the cube root of 3.2808.
            double discharge = channel.discharge(row[0] * FOOT, Gradient.of(0.018))
                    / Math.pow(FOOT, 3)
                    * 1.49
                    / Math.cbrt(1 / FOOT);
            assertThat(discharge).as("depth " + row[0]).isCloseTo(row[1], within(0.006));
            compared++;
        }
        assertThat(compared).isEqualTo(7);
        assertThat(channel.area(5 * FOOT) / (FOOT * FOOT)).isCloseTo(132.08, within(0.0051));
        assertThat(channel.area(7 * FOOT) / (FOOT * FOOT)).isCloseTo(501.68, within(0.0051));
    }

    /** One n: no interface, a plain channel of Manning's law. */
    @Test
    void oneRoughnessIsOneChannel() {
        var channel = DividedChannel.ofSurvey(
                new double[] {0, 0, 2, 2}, new double[] {1, 0, 0, 1}, new double[] {0.02, 0.02, 0.02});
        var box = Conduit.of(
                dev.runnel.hydraulics.section.RectangularSection.open(2), Gradient.of(0.002), Manning.of(0.02));
        assertThat(channel.discharge(0.7, Gradient.of(0.002))).isCloseTo(box.discharge(0.7), within(1e-14));
        assertThat(channel.discharge(1.5, Gradient.of(0.002))).isCloseTo(box.discharge(1.5), within(1e-14));
        assertThat(channel.discharge(-1, Gradient.of(0.002))).isZero();
        assertThat(channel).hasToString("DividedChannel[4 points, 2 m wide]");
    }

    @Test
    void refusesWhatIsNoSurvey() {
        double[] two = {0, 1};
        assertThatThrownBy(() -> DividedChannel.ofSurvey(new double[] {1, 0}, two, new double[] {0.02}))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("places[1] must be at least places[0] = 1 m, was 0");
        assertThatThrownBy(() -> DividedChannel.ofSurvey(two, two, new double[] {77}))
                .hasMessageStartingWith("n[0] must be in [0.001, 1]");
        assertThatThrownBy(() -> DividedChannel.ofSurvey(two, two, two)).hasMessage("n must have length 1, was 2");
        assertThatThrownBy(() ->
                        DividedChannel.ofSurvey(two, two, new double[] {0.02}).discharge(1, Gradient.of(-0.01)))
                .hasMessageStartingWith("gradient must be 0 or greater");
    }
}
