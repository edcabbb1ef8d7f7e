package dev.runnel.hydraulics.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.internal.Segment;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Depths found among the nodes, against the law itself at a depth. */
class NodeSearchTest {
    private static double law(double alpha, double beta, double x) {
        double area = x <= 0.5 ? Segment.area(x) : Math.PI / 4 - Segment.area(1 - x);
        double perimeter = x <= 0.5 ? Segment.halfAngle(x) : Math.PI - Segment.halfAngle(1 - x);
        double radius = area / perimeter;
        return -area * Math.sqrt(radius) * Math.log(alpha / radius + beta / (radius * Math.sqrt(radius)));
    }

    @ParameterizedTest
    @CsvSource({
        "6e-5, 0, 0.01",
        "6e-5, 0, 0.5",
        "6e-5, 0, 0.93",
        "0, 1e-6, 0.02",
        "0, 1e-6, 0.7",
        "1e-3, 1e-4, 0.1",
        "1e-3, 1e-4, 0.9",
        "2e-2, 1e-3, 0.2",
        "2e-2, 1e-3, 0.9"
    })
    void findTheDepthThatTheLawGivesADischarge(double alpha, double beta, double x) {
        double number = NodeSearch.number(alpha, beta, law(alpha, beta, x));
        assertThat(CircleNodes.depth(number)).isCloseTo(x, within(5e-5 * x));
    }

    @Test
    void aDischargeBeyondTheCrestHasNone() {
        assertThat(NodeSearch.number(1e-3, 1e-4, 1.01 * law(1e-3, 1e-4, 0.94))).isNaN();
    }

    @Test
    void aFilmBelowTheFirstNodeHasNone() {
        double number = NodeSearch.number(6e-5, 0, 0.9 * law(6e-5, 0, CircleNodes.depth(0.5)));
        assertThat(CircleNodes.ofNumber(number)).isNegative();
    }
}
