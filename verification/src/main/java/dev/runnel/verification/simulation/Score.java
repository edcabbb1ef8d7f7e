package dev.runnel.verification.simulation;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apiguardian.api.API;

/**
 * The command that scores the watch.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class Score {
    private Score() {}

    /**
     * Runs the command and ends the virtual machine with its exit code if that is not 0.
     *
     * @param arguments see {@code --help}
     */
    public static void main(String[] arguments) {
        PrintStream out = new PrintStream(new FileOutputStream(FileDescriptor.out), true, StandardCharsets.UTF_8);
        PrintStream err = new PrintStream(new FileOutputStream(FileDescriptor.err), true, StandardCharsets.UTF_8);
        int code = run(List.of(arguments), out, err);
        out.flush();
        err.flush();
        if (code != 0) {
            System.exit(code);
        }
    }

    /**
     * Runs the command. A goal that is not reached is no failure of the command: it is printed as not reached.
     *
     * @param arguments see {@code --help}
     * @param out where the score goes
     * @param err where complaints go
     * @return 0 if the score could be made, 2 if not
     */
    public static int run(List<String> arguments, PrintStream out, PrintStream err) {
        ScoreOptions options;
        try {
            options = ScoreOptions.parse(arguments);
        } catch (IllegalArgumentException e) {
            err.println(e.getMessage());
            return 2;
        }
        if (options.help()) {
            out.print(ScoreOptions.USAGE);
            return 0;
        }
        try {
            if (options.survey().isPresent()) {
                out.print(SurveyReport.of(options.survey().orElseThrow(), options.diameter(), options.zone()));
                return 0;
            }
            return score(options, out, err);
        } catch (IOException e) {
            err.println(e.toString());
            return 2;
        }
    }

    private static int score(ScoreOptions options, PrintStream out, PrintStream err) throws IOException {
        ScoreRun run = options.run();
        List<CaseResult> results = run.results(new RunnelWatcher());
        if (results.isEmpty()) {
            err.println("no fault is named \"" + run.fault() + "\"");
            return 2;
        }
        if (options.verbose()) {
            results.forEach(result -> out.print(verbose(result)));
        }
        String text = ScoreTable.text(run.title(), new Tally(results));
        out.print(text);
        Path folder = options.report();
        Files.createDirectories(folder);
        Files.writeString(folder.resolve("score.md"), text);
        Files.writeString(folder.resolve("cases.csv"), ScoreCsv.cases(results));
        Files.writeString(folder.resolve("findings.csv"), ScoreCsv.findings(results));
        out.println();
        out.println("Files: " + folder);
        return 0;
    }

    private static String verbose(CaseResult result) {
        SiteOrder order = result.of().order();
        StringBuilder text = new StringBuilder();
        text.append(result.of().cell().what())
                .append(' ')
                .append(result.of().cell().how())
                .append(", seed ")
                .append(order.seed());
        if (!order.fault().isNone()) {
            text.append(", begins ")
                    .append(Simulator.grid(order)
                            .start()
                            .plusSeconds(Math.round(order.fault().begin() * 86400)));
        }
        text.append('\n');
        if (!result.heard().learned()) {
            text.append(result.heard().note().indent(4));
        }
        result.heard()
                .said()
                .forEach(said -> text.append(
                        ("told " + said.told() + ", at once " + said.atOnce() + "\n" + said.text()).indent(4)));
        return text.toString();
    }
}
