package dev.runnel.rainfall.distribution;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class PlottedPositionsTest {
    private static final int SIZE = 9;

    /** A member of each family, with another that differs in all parameters. */
    static Stream<Distribution[]> members() {
        return Stream.of(new Distribution[][] {
            {Gumbel.of(0, 1), Gumbel.of(12, 3.5)},
            {Gev.of(0, 1, 0), Gev.of(12, 3.5, 0.21)},
            {Gev.of(0, 1, 0.4), Gev.of(12, 3.5, -0.3)},
            {Normal.of(0, 1), Normal.of(12, 3.5)},
            {PearsonIII.of(0, 1, 0.5), PearsonIII.of(12, 3.5, -1.5)}
        });
    }

    @ParameterizedTest
    @MethodSource("members")
    void whatOneMemberGaveServesAnother(Distribution first, Distribution second) {
        PlottedPositions plotted = PlottedPositions.of(first, PlottingPosition.GRINGORTEN, SIZE);
        double[] asked = IntStream.rangeClosed(1, SIZE)
                .mapToDouble(rank -> second.quantile(PlottingPosition.GRINGORTEN.nonExceedance(rank, SIZE)))
                .toArray();
        assertArrayEquals(asked, plotted.quantiles(second), 0);
    }

    @ParameterizedTest
    @MethodSource("members")
    void theMeasuresAreThoseOfEachSampleByItself(Distribution first, Distribution second) {
        double[] sample = {3, 18, 7.5, 12, 11, 15.5, 9, 20, 14};
        // A correlation knows no location or scale: a sample that lies on the quantiles themselves has 1.
        double[] own =
                PlottedPositions.of(second, PlottingPosition.CUNNANE, SIZE).quantiles(second);
        assertEquals(1, GoodnessOfFit.of(second, PlottingPosition.CUNNANE, own).plotCorrelation(), 1e-12);
        assertEquals(
                GoodnessOfFit.of(second, PlottingPosition.CUNNANE, sample),
                GoodnessOfFit.of(second, List.of(PlottedPositions.of(first, PlottingPosition.CUNNANE, SIZE)), sample)
                        .get(0));
    }
}
