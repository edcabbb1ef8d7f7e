package dev.runnel.timeseries.machines;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.timeseries.contract.MachineContract;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** All rules of the module on one record each. */
class MachinesTest {
    private static final int CUT = 31;

    @ParameterizedTest
    @MethodSource("dev.runnel.timeseries.machines.SampleRecord#all")
    void everyRuleKeepsTheContract(SampleRecord<?, ?, ?> sample) {
        assertThat(holds(sample)).as("results, or the sample shows nothing").isNotEmpty();
    }

    private static <I, O, S extends dev.runnel.timeseries.MachineState> List<O> holds(SampleRecord<I, O, S> sample) {
        return MachineContract.holds(sample.rule(), sample.inputs());
    }

    /** A state is text, so that another process, on another machine, in another locale, can go on from it. */
    @Test
    @Timeout(60)
    void aSecondJvmGoesOnWhereTheFirstStood() throws IOException, InterruptedException {
        List<String> expected = new ArrayList<>();
        StringBuilder states = new StringBuilder();
        for (SampleRecord<?, ?, ?> sample : SampleRecord.all()) {
            String state = sample.stateAfter(CUT);
            states.append(state).append('\n');
            expected.addAll(sample.resultsFrom(CUT, state));
        }
        Process second = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Duser.language=de",
                        "-Duser.country=CH",
                        "-Duser.timezone=Pacific/Apia",
                        "-cp",
                        System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")),
                        SecondJvm.class.getName(),
                        String.valueOf(CUT))
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        try (OutputStream in = second.getOutputStream()) {
            in.write(states.toString().getBytes(StandardCharsets.US_ASCII));
        }
        String out = new String(second.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(second.waitFor(30, TimeUnit.SECONDS)).isTrue();
        assertThat(second.exitValue()).isZero();
        assertThat(expected).hasSizeGreaterThan(100);
        assertThat(List.of(out.split("\n"))).isEqualTo(expected);
    }
}
