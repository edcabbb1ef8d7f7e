package dev.runnel.timeseries.quality;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.contract.MachineContract;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;

class QualityMachineProperties {
    private static final Instant START = Instant.parse("2026-01-01T00:00:00Z");
    private static final List<QualityCheck> CHECKS = List.of(
            RangeCheck.of(-1, 1).withUsual(-0.5, 0.5),
            SpikeCheck.of(0.1, 0.5).withMaximumGap(Duration.ofMinutes(5)),
            SpikeCheck.of(0.1, 0.5).withNeighboursSpared(),
            FlatLineCheck.of(2, 4, 0.1),
            FlatLineCheck.of(2, 3, 0),
            RateOfChangeCheck.of(0.1, Duration.ofMinutes(1)));

    @Property(tries = 300)
    void aCheckKeepsTheContractOfMachines(
            @ForAll("checks") QualityCheck check, @ForAll("records") List<Reading> readings) {
        List<QualityFlag> flags = MachineContract.holds(check, readings);
        QualityFlags batch = check.apply(Series.of(readings));
        assertThat(flags).hasSize(readings.size());
        for (int i = 0; i < readings.size(); i++) {
            Reading reading = readings.get(i);
            assertThat(flags.get(i).time()).isEqualTo(reading.time());
            assertThat(flags.get(i).verdict()).isEqualTo(batch.verdict(i));
            assertThat(flags.get(i).verdict() == Verdict.MISSING).isEqualTo(reading.isMissing());
            if (reading.quality() == Quality.SUSPECT) {
                assertThat(flags.get(i).verdict()).isEqualTo(Verdict.NOT_EVALUATED);
            }
        }
    }

    @Property(tries = 200)
    void gapsKeepTheContractOfMachines(@ForAll("records") List<Reading> readings) {
        List<Interval> gaps = MachineContract.holds(GapCheck.longerThan(Duration.ofMinutes(5)), readings);
        assertThat(gaps).allMatch(gap -> gap.duration().compareTo(Duration.ofMinutes(5)) > 0);
    }

    @Property(tries = 200)
    void severalChecksKeepTheContractAndGiveWhatEachGivesBehindTheOthers(@ForAll("records") List<Reading> readings) {
        QualityChecks checks = QualityChecks.of(CHECKS.get(0), CHECKS.get(2), CHECKS.get(3), CHECKS.get(5));
        List<CheckedReading> checked = MachineContract.holds(checks, readings);
        QualityReport report = checks.apply(Series.of(readings));
        assertThat(checked.stream().map(CheckedReading::reading))
                .isEqualTo(report.series().stream().toList());
        for (int i = 0; i < readings.size(); i++) {
            for (int k = 0; k < 4; k++) {
                assertThat(checked.get(i).flags().get(k).verdict())
                        .isEqualTo(report.flags().get(k).verdict(i));
            }
        }
    }

    @Property
    void whatFailsOneCheckIsNotThereForTheNext(@ForAll("records") List<Reading> readings) {
        RangeCheck range = RangeCheck.of(-0.5, 0.5);
        QualityReport report = QualityChecks.of(range, CHECKS.get(1)).apply(Series.of(readings));
        QualityFlags alone = range.apply(Series.of(readings));
        List<Reading> cleaned = new ArrayList<>();
        for (int i = 0; i < readings.size(); i++) {
            boolean failed = alone.verdict(i) == Verdict.FAIL;
            cleaned.add(failed ? Reading.of(readings.get(i).time(), Double.NaN) : readings.get(i));
        }
        QualityFlags expected = CHECKS.get(1).apply(Series.of(cleaned));
        assertThat(report.flags("spike").raised()).isEqualTo(expected.raised());
    }

    /** Counted back from each reading, with a tolerance and without. */
    @Property
    void equalReadingsAreCountedBackFromEach(
            @ForAll @Size(max = 60) List<@IntRange(min = -1, max = 2) Integer> steps,
            @ForAll @IntRange(min = 2, max = 5) int unusual,
            @ForAll @IntRange(max = 6) int more,
            @ForAll boolean exact) {
        List<Reading> readings = new ArrayList<>();
        for (int i = 0; i < steps.size(); i++) {
            double value = steps.get(i) < 0 ? Double.NaN : steps.get(i) * 0.25;
            readings.add(Reading.of(START.plusSeconds(60L * i), value));
        }
        FlatLineCheck check = FlatLineCheck.of(unusual, unusual + more, exact ? 0 : 0.25);
        List<QualityFlag> flags = MachineContract.holds(check, readings);
        for (int i = 0; i < readings.size(); i++) {
            double value = readings.get(i).value();
            int equal = 1;
            while (equal <= i && Math.abs(readings.get(i - equal).value() - value) <= check.tolerance()) {
                equal++;
            }
            Verdict expected = Double.isNaN(value)
                    ? Verdict.MISSING
                    : equal >= check.failCount() ? Verdict.FAIL : equal >= unusual ? Verdict.UNUSUAL : Verdict.PASS;
            assertThat(flags.get(i).verdict()).as("reading %d of %s", i, steps).isEqualTo(expected);
        }
    }

    @Provide
    Arbitrary<QualityCheck> checks() {
        return Arbitraries.of(CHECKS);
    }

    @Provide
    Arbitrary<List<Reading>> records() {
        Arbitrary<Double> value =
                Arbitraries.doubles().between(-1.2, 1.2).ofScale(1).injectNull(0.1);
        Arbitrary<Quality> quality = Arbitraries.frequency(
                net.jqwik.api.Tuple.of(8, Quality.UNCHECKED), net.jqwik.api.Tuple.of(1, Quality.SUSPECT));
        return Combinators.combine(value.list().ofMaxSize(40), quality.list().ofSize(40))
                .as((values, qualities) -> {
                    List<Reading> readings = new ArrayList<>();
                    Instant time = START;
                    for (int i = 0; i < values.size(); i++) {
                        Double each = values.get(i);
                        time = time.plusSeconds(each == null ? 600 : 120);
                        readings.add(
                                each == null
                                        ? Reading.of(time, Double.NaN)
                                        : new Reading(time, each, qualities.get(i)));
                    }
                    return readings;
                });
    }
}
