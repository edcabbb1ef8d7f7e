package dev.runnel.rainfall.ddf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.List;
import java.util.stream.IntStream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;

class DdfTableProperties {
    private static final double[] YEARS = {2, 5, 10, 30, 100};
    private static final int ROWS = 5;

    /** Depths that rise by 2 to 60 % from cell to cell both ways, as tables do. */
    @Provide
    Arbitrary<DdfTable> tables() {
        int columns = YEARS.length;
        return Arbitraries.doubles()
                .between(1.02, 1.6)
                .ofScale(4)
                .array(double[].class)
                .ofSize(ROWS + columns)
                .map(factors -> {
                    double[][] depths = new double[ROWS][columns];
                    double left = 5;
                    for (int row = 0; row < ROWS; row++) {
                        left *= factors[row];
                        depths[row][0] = left;
                        for (int column = 1; column < columns; column++) {
                            depths[row][column] = depths[row][column - 1] * factors[ROWS + column];
                        }
                    }
                    List<Duration> durations = IntStream.range(0, ROWS)
                            .mapToObj(row -> Duration.ofMinutes(5L * (1 << row) + row))
                            .toList();
                    return DdfTable.of(ReturnPeriodBasis.ANNUAL_MAXIMUM, durations, YEARS, depths);
                });
    }

    @Property
    void returnPeriodUndoesDepth(
            @ForAll("tables") DdfTable table,
            @ForAll @DoubleRange(min = 0, max = 1) @Scale(6) double d,
            @ForAll @DoubleRange(min = 2, max = 100) @Scale(6) double years) {
        Duration duration = between(table, d);
        ReturnPeriod back = table.returnPeriod(duration, table.depthMm(duration, years));
        assertThat(back.isWithin()).isTrue();
        assertThat(back.years()).isCloseTo(years, within(1e-13 * years));
    }

    @Property
    void depthUndoesReturnPeriod(
            @ForAll("tables") DdfTable table,
            @ForAll @DoubleRange(min = 0, max = 1) @Scale(6) double d,
            @ForAll @DoubleRange(min = 0, max = 1) @Scale(6) double p) {
        Duration duration = between(table, d);
        double low = table.depthMm(duration, 2);
        double depth = low + p * (table.depthMm(duration, 100) - low);
        assertThat(table.depthMm(duration, table.returnPeriod(duration, depth).years()))
                .isCloseTo(depth, within(1e-13 * depth));
    }

    @Property
    void depthRisesBothWays(
            @ForAll("tables") DdfTable table,
            @ForAll @DoubleRange(min = 0, max = 1) @Scale(6) double d1,
            @ForAll @DoubleRange(min = 0, max = 1) @Scale(6) double d2,
            @ForAll @DoubleRange(min = 2, max = 100) @Scale(6) double t1,
            @ForAll @DoubleRange(min = 2, max = 100) @Scale(6) double t2) {
        double less = table.depthMm(between(table, Math.min(d1, d2)), Math.min(t1, t2));
        double more = table.depthMm(between(table, Math.max(d1, d2)), Math.max(t1, t2));
        assertThat(more).isGreaterThanOrEqualTo(less * (1 - 1e-15));
    }

    private static Duration between(DdfTable table, double share) {
        Duration first = table.shortestDuration();
        return first.plusNanos(
                Math.round(share * table.longestDuration().minus(first).toNanos()));
    }
}
