package dev.runnel.timeseries.contract;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** A state is text, so that another process, on another machine, in another locale, can go on from it. */
public final class SecondJvm {
    private SecondJvm() {}

    /**
     * Lets another process go on from the state of every machine, and holds what it gives against what this one gives.
     *
     * @param records the rules with their records
     * @param cut number of inputs after which the other process goes on
     * @return what was found from there on, in both, for further assertions
     */
    public static List<String> goesOn(SampleRecords records, int cut) throws IOException, InterruptedException {
        List<String> expected = new ArrayList<>();
        StringBuilder states = new StringBuilder();
        for (SampleRecord<?, ?, ?> sample : records.all()) {
            String state = sample.stateAfter(cut);
            List<String> results = sample.resultsFrom(cut, state);
            assertThat(results)
                    .as("results of %s, or the sample shows nothing", sample.rule())
                    .isNotEmpty();
            states.append(state).append('\n');
            expected.addAll(results);
        }
        Process second = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Duser.language=de",
                        "-Duser.country=CH",
                        "-Duser.timezone=Pacific/Apia",
                        "-cp",
                        System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")),
                        SecondJvm.class.getName(),
                        records.getClass().getName(),
                        String.valueOf(cut))
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        try (OutputStream in = second.getOutputStream()) {
            in.write(states.toString().getBytes(StandardCharsets.US_ASCII));
        }
        String out = new String(second.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(second.waitFor(30, TimeUnit.SECONDS)).isTrue();
        assertThat(second.exitValue()).isZero();
        assertThat(List.of(out.split("\n"))).isEqualTo(expected);
        return expected;
    }

    /** The other process: reads the states of all machines, one a line, goes on with each, and writes what they give. */
    public static void main(String[] args) throws IOException, ReflectiveOperationException {
        SampleRecords records = Class.forName(args[0])
                .asSubclass(SampleRecords.class)
                .getConstructor()
                .newInstance();
        int cut = Integer.parseInt(args[1]);
        BufferedReader in = new BufferedReader(new InputStreamReader(System.in, StandardCharsets.US_ASCII));
        List<SampleRecord<?, ?, ?>> samples = records.all();
        // All states before the first result: neither process waits for the other to read.
        List<String> states = new ArrayList<>();
        for (int i = 0; i < samples.size(); i++) {
            states.add(in.readLine());
        }
        PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
        for (int i = 0; i < samples.size(); i++) {
            for (String result : samples.get(i).resultsFrom(cut, states.get(i))) {
                out.print(result + "\n");
            }
        }
    }
}
