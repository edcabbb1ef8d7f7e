package dev.runnel.timeseries.quality;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Series;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;

class QualityMachineProperties {
    private static final Instant START = Instant.parse("2026-01-01T00:00:00Z");

    @Property
    void equalHoweverTheRecordIsCut(
            @ForAll("tests") QualityTest test,
            @ForAll("records") List<Reading> readings,
            @ForAll @IntRange(min = 1, max = 10) int every)
            throws IOException, ClassNotFoundException {
        QualityMachine machine = test.start();
        List<QualityFlag> flags = new ArrayList<>();
        for (int i = 0; i < readings.size(); i++) {
            if (i % every == 0) {
                machine = throughBytes(machine);
            }
            machine.next(readings.get(i)).ifPresent(flags::add);
        }
        machine.finish().ifPresent(flags::add);
        QualityFlags batch = test.apply(Series.of(readings));
        assertThat(flags).hasSize(readings.size());
        for (int i = 0; i < readings.size(); i++) {
            assertThat(flags.get(i).time()).isEqualTo(readings.get(i).time());
            assertThat(flags.get(i).verdict()).isEqualTo(batch.verdict(i));
            assertThat(flags.get(i).verdict() == Verdict.MISSING)
                    .isEqualTo(readings.get(i).isMissing());
        }
    }

    private static QualityMachine throughBytes(QualityMachine machine) throws IOException, ClassNotFoundException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(machine);
        }
        try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
            return (QualityMachine) in.readObject();
        }
    }

    @Provide
    Arbitrary<QualityTest> tests() {
        return Arbitraries.of(
                RangeTest.of(-1, 1).withUsual(-0.5, 0.5),
                SpikeTest.of(0.1, 0.5).withMaximumGap(Duration.ofMinutes(5)),
                FlatLineTest.of(2, 4, 0.1),
                RateOfChangeTest.of(0.1, Duration.ofMinutes(1)));
    }

    @Provide
    Arbitrary<List<Reading>> records() {
        return Arbitraries.doubles()
                .between(-1.2, 1.2)
                .ofScale(1)
                .injectNull(0.1)
                .list()
                .ofMaxSize(40)
                .map(values -> {
                    List<Reading> readings = new ArrayList<>();
                    Instant time = START;
                    for (Double value : values) {
                        time = time.plusSeconds(value == null ? 600 : 120);
                        readings.add(Reading.of(time, value == null ? Double.NaN : value));
                    }
                    return readings;
                });
    }
}
