package dev.runnel.examples.terminal;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.PrintStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.stream.Stream;

/**
 * The streams of the process, as they are when nobody stands between. Maven 4 puts {@code [INFO] [stdout]} before each line that
 * goes through {@code System.out}, and our commands run in Maven's process.
 */
public final class Terminal {
    private Terminal() {}

    /**
     * Returns the standard output.
     *
     * @return a stream that goes to the terminal, in its charset
     */
    public static PrintStream out() {
        return new PrintStream(new FileOutputStream(FileDescriptor.out), true, charset());
    }

    /**
     * Returns the standard error output.
     *
     * @return a stream that goes to the terminal, in its charset
     */
    public static PrintStream err() {
        return new PrintStream(new FileOutputStream(FileDescriptor.err), true, charset());
    }

    /** The JDK tells the terminal's charset under one of these names, by its version. */
    private static Charset charset() {
        return Stream.of("stdout.encoding", "sun.stdout.encoding", "native.encoding")
                .map(name -> System.getProperty(name, ""))
                .filter(name -> !name.isEmpty() && Charset.isSupported(name))
                .map(Charset::forName)
                .findFirst()
                .orElse(StandardCharsets.UTF_8);
    }
}
