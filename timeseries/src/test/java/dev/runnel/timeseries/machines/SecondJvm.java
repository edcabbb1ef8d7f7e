package dev.runnel.timeseries.machines;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

/** The other process: reads the states of all machines, one a line, goes on with each, and writes what they give. */
final class SecondJvm {
    private SecondJvm() {}

    public static void main(String[] args) throws IOException {
        int index = Integer.parseInt(args[0]);
        BufferedReader in = new BufferedReader(new InputStreamReader(System.in, StandardCharsets.US_ASCII));
        PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
        for (SampleRecord<?, ?, ?> sample : SampleRecord.all()) {
            for (String result : sample.resultsFrom(index, in.readLine())) {
                out.print(result + "\n");
            }
        }
    }
}
