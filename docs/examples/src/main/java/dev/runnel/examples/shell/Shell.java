package dev.runnel.examples.shell;

import dev.runnel.examples.terminal.Terminal;
import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import jdk.jshell.tool.JavaShellToolBuilder;

/**
 * Opens JShell in this very process, so that it has the terminal to itself whatever started it. The command
 * {@code mvn -q compile -P shell} runs it.
 */
public final class Shell {
    private static final String GREETING = """
            Runnel at the JShell prompt. Everything is imported; lengths in m, flows in m3/s, rain in mm. /exit leaves.
            Try: chart(Conduit.of(CircularSection.ofDiameter(0.450), Gradient.ofRatio(1, 150), Manning.of(0.013)))
                 var site = readSite("docs/examples/marram-bay/saltings-lane")
                 sparkline(site.flow().level())
                 show(site.storms())
            """;

    private Shell() {}

    /**
     * Opens the shell and returns when it is left.
     *
     * @param arguments none
     * @throws Exception if JShell cannot start
     */
    public static void main(String[] arguments) throws Exception {
        // The shell and what is printed at its prompt go through these.
        System.setOut(Terminal.out());
        System.setErr(Terminal.err());
        System.out.print(GREETING);
        run(JavaShellToolBuilder.builder());
    }

    /** Separate from the greeting, so that a test can give the shell its own input and output. */
    static void run(JavaShellToolBuilder builder) throws Exception {
        Path startup = Files.createTempFile("runnel", ".jsh");
        try {
            Files.writeString(startup, imports() + read("feedback.jsh"));
            List<String> options = new ArrayList<>(
                    List.of("--class-path", classPath(), "--startup", startup.toString(), "--feedback", "runnel"));
            String charts = System.getProperty("runnel.charts", "");
            if (!charts.isEmpty()) {
                options.add("-R-Drunnel.charts=" + charts);
            }
            builder.start(options.toArray(String[]::new));
        } finally {
            Files.deleteIfExists(startup);
        }
    }

    /**
     * Returns the imports that the shell starts with.
     *
     * @return import declarations, one a line
     */
    public static String imports() {
        return read("imports.jsh");
    }

    private static String read(String name) {
        try (InputStream in = Shell.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException(name + " is missing beside " + Shell.class.getName());
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new IllegalStateException(name + " cannot be read", e);
        }
    }

    /** Where our own classes come from: Maven runs us in a loader of its own, which the class path property omits. */
    private static String classPath() throws Exception {
        if (!(Shell.class.getClassLoader() instanceof URLClassLoader loader)) {
            return System.getProperty("java.class.path");
        }
        List<String> entries = new ArrayList<>();
        for (URL url : loader.getURLs()) {
            entries.add(Path.of(new URI(url.toString())).toString());
        }
        return String.join(File.pathSeparator, entries);
    }
}
