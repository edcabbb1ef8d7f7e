package dev.runnel.timeseries.change;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

class BeforeAfterProperties {
    /** The differences one by one, which the class never makes. */
    @Property(tries = 300)
    void differencesOfARankAreThoseOfTheSortedList(@ForAll("few") double[] before, @ForAll("few") double[] after) {
        double[] differences = Arrays.stream(before)
                .flatMap(x -> Arrays.stream(after).map(y -> y - x))
                .sorted()
                .toArray();
        BeforeAfter change = BeforeAfter.of(before, after, 0.9);
        int n = differences.length;
        assertThat(change.shift()).isCloseTo((differences[(n - 1) / 2] + differences[n / 2]) / 2, within(1e-12));
        assertThat(change.lower()).isBetween(differences[0], change.shift());
        assertThat(change.upper()).isBetween(change.shift(), differences[n - 1]);
        double above = Arrays.stream(differences).filter(d -> d > 0).count();
        double equal = Arrays.stream(differences).filter(d -> d == 0).count();
        assertThat(change.statistic()).isEqualTo(above + equal / 2);
    }

    @Property(tries = 200)
    void groupsChangedAboutTurnTheShift(@ForAll("many") double[] before, @ForAll("many") double[] after) {
        BeforeAfter forth = BeforeAfter.of(before, after, 0.95);
        BeforeAfter back = BeforeAfter.of(after, before, 0.95);
        assertThat(back.shift()).isCloseTo(-forth.shift(), within(1e-12));
        assertThat(back.lower()).isCloseTo(-forth.upper(), within(1e-9));
        assertThat(back.upper()).isCloseTo(-forth.lower(), within(1e-9));
        assertThat(back.pValue()).isCloseTo(forth.pValue(), within(1e-12));
        assertThat(forth.pValue()).isBetween(0.0, 1.0);
    }

    @Provide
    Arbitrary<double[]> few() {
        return Arbitraries.doubles()
                .between(-50, 50)
                .ofScale(1)
                .array(double[].class)
                .ofMinSize(2)
                .ofMaxSize(12);
    }

    @Provide
    Arbitrary<double[]> many() {
        return Arbitraries.doubles()
                .between(0, 9)
                .ofScale(1)
                .array(double[].class)
                .ofMinSize(2)
                .ofMaxSize(60);
    }
}
