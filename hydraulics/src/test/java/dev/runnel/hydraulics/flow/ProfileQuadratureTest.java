package dev.runnel.hydraulics.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.hydraulics.section.Egg;
import dev.runnel.hydraulics.section.RectangularSection;
import dev.runnel.hydraulics.section.TrapezoidalSection;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.apache.commons.math3.analysis.integration.IterativeLegendreGaussIntegrator;
import org.junit.jupiter.api.Test;

/**
 * Random reaches of every class of profile against quadrature of x = ∫ (1 − Fr²)/(S₀ − Sf) dy by Commons Math, between depths
 * that the profile has itself: the distance between two stations must come out.
 */
class ProfileQuadratureTest {
    private static final int REACHES = Integer.getInteger("runnel.reaches", 400);

    /** Of the length of the reach, or of the distance from the control. */
    private static final double TOLERANCE = 1e-7;

    private final Random random = new Random(20261128);
    private final Map<ProfileType, Integer> seen = new EnumMap<>(ProfileType.class);
    private int pressurised;

    /** The drawdown of a tiny flow that once stood above normal depth: 0.6 m circle, 1 in 1000, 5000 m, 50 l/s. */
    @Test
    void drawdownStaysBetweenCriticalAndNormalDepth() {
        var conduit = Conduit.of(CircularSection.ofDiameter(0.6), Gradient.of(1e-3), Manning.of(0.013));
        WaterProfile profile = VariedFlow.of(Reach.of(conduit, 5000), 0.05).profile();
        double above = profile.stations().get(199).depth();
        // 25 m above the free outfall, by SciPy's quad and brentq.
        assertThat(above).isCloseTo(0.1909, within(1e-4));
        assertBounded(conduit, 0.05, profile);
    }

    @Test
    void drawdownsOfMildPipesNeverPassNormalDepth() {
        int reaches = 0;
        for (double gradient : new double[] {1e-4, 3e-4, 1e-3, 2e-3, 5e-3}) {
            var conduit = Conduit.of(CircularSection.ofDiameter(0.6), Gradient.of(gradient), Manning.of(0.013));
            for (double length : new double[] {50, 200, 1000, 5000}) {
                for (double part : new double[] {1e-9, 1e-6, 1e-3, 0.05, 0.2, 0.5, 0.8, 0.95}) {
                    double discharge = part * conduit.fullBore().discharge();
                    if (conduit.normalDepth(discharge) <= conduit.criticalDepth(discharge)) {
                        continue;
                    }
                    WaterProfile profile =
                            VariedFlow.of(Reach.of(conduit, length), discharge).profile();
                    assertBounded(conduit, discharge, profile);
                    assertThat(profile.pressurisedLength()).isZero();
                    reaches++;
                }
            }
        }
        assertThat(reaches).isGreaterThan(100);
    }

    private static void assertBounded(Conduit conduit, double discharge, WaterProfile profile) {
        double normal = conduit.normalDepth(discharge);
        double critical = conduit.criticalDepth(discharge);
        double last = Double.POSITIVE_INFINITY;
        for (Station station : profile.stations()) {
            assertThat(station.depth()).isLessThanOrEqualTo(normal).isGreaterThanOrEqualTo(critical);
            assertThat(station.depth()).isLessThanOrEqualTo(last);
            last = station.depth();
        }
    }

    @Test
    void everyClassOfProfileAgreesWithQuadrature() {
        int compared = 0;
        for (int i = 0; i < REACHES; i++) {
            compared += compareOne() ? 1 : 0;
        }
        assertThat(compared).isGreaterThan(REACHES / 2);
        assertThat(seen.keySet())
                .contains(
                        ProfileType.M1,
                        ProfileType.M2,
                        ProfileType.M3,
                        ProfileType.S1,
                        ProfileType.S2,
                        ProfileType.S3,
                        ProfileType.H2,
                        ProfileType.H3,
                        ProfileType.A2,
                        ProfileType.A3);
        assertThat(pressurised).isGreaterThan(REACHES / 50);
    }

    private boolean compareOne() {
        CrossSection section = section();
        double gradient = gradient();
        double size = section.height() < 100 ? section.height() : 1;
        double discharge = Math.sqrt(9.80665 * size) * size * size * Math.exp(-7 * random.nextDouble());
        double critical;
        try {
            critical = SectionFlow.of(section, discharge).criticalDepth();
        } catch (NoSolutionException fullBeforeCritical) {
            return false;
        }
        boolean fast = random.nextBoolean();
        double length = size * Math.exp(7 * random.nextDouble());
        Reach reach = Reach.of(section, Gradient.of(gradient), Manning.of(0.01 + 0.02 * random.nextDouble()), length);
        VariedFlow flow = VariedFlow.of(reach, discharge).withStep(length / 20);
        flow = fast
                ? flow.withInletDepth(critical * (0.2 + 0.8 * random.nextDouble()))
                : flow.withOutletDepth(critical * (0.9 + 3 * random.nextDouble() * random.nextDouble()));
        List<Station> stations = flow.profile().stations();
        for (Station station : stations) {
            assertThat(station.depth())
                    .as(() -> reach + ", " + discharge + " m3/s")
                    .isPositive()
                    .isFinite();
        }
        return compare(reach, discharge, stations, fast);
    }

    /** From the control as far as the regime lasts and the depth still moves. */
    private boolean compare(Reach reach, double discharge, List<Station> stations, boolean fast) {
        int from = fast ? 0 : stations.size() - 1;
        int step = fast ? 1 : -1;
        Station control = stations.get(from);
        if (control.froudeNumber() > 1 != fast && control.froudeNumber() != 1) {
            return false;
        }
        Station last = control;
        for (int i = from + step; i >= 0 && i < stations.size(); i += step) {
            Station next = stations.get(i);
            boolean otherRegime = next.froudeNumber() > 1 != fast || Math.abs(next.froudeNumber() - 1) < 1e-9;
            if (otherRegime || arrived(reach, next)) {
                break;
            }
            last = next;
        }
        if (last == control) {
            return false;
        }
        double distance = Math.abs(last.distance() - control.distance());
        double quadrature = Math.abs(distance(reach, discharge, control.depth(), last.depth()));
        assertThat(quadrature)
                .as(() -> reach + ", " + discharge + " m3/s")
                .isCloseTo(distance, within(TOLERANCE * distance));
        if (last.depth() <= reach.section().height()) {
            seen.merge(ProfileType.ofDischargeAndDepth(reach, discharge, last.depth()), 1, Integer::sum);
        }
        pressurised += last.isPressurised() || control.isPressurised() ? 1 : 0;
        return true;
    }

    /** Within 1e-3 of where friction uses up the fall: there a distance says nothing of a depth. */
    private static boolean arrived(Reach reach, Station station) {
        return Math.abs(station.frictionSlope() / reach.gradient().value() - 1) < 1e-3;
    }

    private static double distance(Reach reach, double discharge, double from, double to) {
        double low = Math.min(from, to);
        double high = Math.max(from, to);
        double[] corners = Arrays.stream(reach.section().breakDepths())
                .filter(depth -> depth > low && depth < high)
                .toArray();
        double sum = 0;
        double left = low;
        for (int i = 0; i <= corners.length; i++) {
            double right = i < corners.length ? corners[i] : high;
            sum += piece(reach, discharge, left, right);
            left = right;
        }
        return sum;
    }

    /** Both ends may have a root or a steep flank: y = low + (high − low)(3t² − 2t³) has none. */
    private static double piece(Reach reach, double discharge, double low, double high) {
        SectionFlow flow = SectionFlow.of(reach.section(), discharge);
        double soffit = reach.section().height();
        return new IterativeLegendreGaussIntegrator(24, 1e-9, 1e-14, 2, 12)
                .integrate(
                        2_000_000,
                        t -> {
                            double level = low + (high - low) * t * t * (3 - 2 * t);
                            double depth = Math.min(level, soffit);
                            double velocity = flow.velocity(depth);
                            double froude = level >= soffit ? 0 : flow.froudeNumber(depth);
                            double friction = reach.resistance()
                                    .at(reach.section(), depth)
                                    .gradient(velocity, reach.section().hydraulicRadius(depth));
                            return (1 - froude * froude)
                                    / (reach.gradient().value() - friction)
                                    * (high - low)
                                    * 6
                                    * t
                                    * (1 - t);
                        },
                        0,
                        1);
    }

    private CrossSection section() {
        double size = 0.2 + 2 * random.nextDouble();
        switch (random.nextInt(5)) {
            case 0:
                return Egg.normal(size);
            case 1:
                return RectangularSection.box(size, size * (0.3 + random.nextDouble()));
            case 2:
                return TrapezoidalSection.ofBedWidthAndSideSlope(size, 2 * random.nextDouble());
            case 3:
                return CircularSection.ofDiameter(size).withSediment(0.2 * size * random.nextDouble());
            default:
                return CircularSection.ofDiameter(size);
        }
    }

    private double gradient() {
        switch (random.nextInt(6)) {
            case 0:
                return 0;
            case 1:
                return -1e-4 * Math.exp(5 * random.nextDouble());
            default:
                return 1e-4 * Math.exp(6 * random.nextDouble());
        }
    }
}
