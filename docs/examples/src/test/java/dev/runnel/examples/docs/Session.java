package dev.runnel.examples.docs;

import dev.runnel.examples.shell.Chart;
import dev.runnel.examples.shell.Prompt;
import dev.runnel.examples.shell.Shell;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import jdk.jshell.EvalException;
import jdk.jshell.ExpressionSnippet;
import jdk.jshell.JShell;
import jdk.jshell.MethodSnippet;
import jdk.jshell.Snippet;
import jdk.jshell.SnippetEvent;
import jdk.jshell.SourceCodeAnalysis;
import jdk.jshell.TypeDeclSnippet;
import jdk.jshell.VarSnippet;

/** One shell, from the first block of a page to the last; answers in the words of the real one. */
final class Session implements AutoCloseable {
    private final JShell shell;
    private final String chartsBefore;
    private final List<Chart> drawnBefore = Prompt.charts();
    private int typed;

    Session() {
        // What is printed is caught as UTF-8; pictures are kept and not written anywhere.
        System.setProperty("stdout.encoding", "UTF-8");
        chartsBefore = System.getProperty("runnel.charts", "keep");
        System.setProperty("runnel.charts", "keep");
        shell = JShell.builder()
                .executionEngine("local")
                .tempVariableNameGenerator(() -> "$" + (typed + 1))
                .build();
        shell.addToClasspath(System.getProperty("java.class.path"));
        type("import java.io.*;\nimport java.math.*;\nimport java.util.function.*;\nimport java.util.stream.*;\n"
                + Shell.imports());
        typed = 0;
    }

    /** Runs what is typed and returns what the shell shows: printed lines, then {@code name ==> value}. */
    List<String> type(String input) {
        PrintStream usual = System.out;
        ByteArrayOutputStream printed = new ByteArrayOutputStream();
        List<String> answers = new ArrayList<>();
        try {
            System.setOut(new PrintStream(printed, true, StandardCharsets.UTF_8));
            String rest = input;
            while (!rest.isBlank()) {
                SourceCodeAnalysis.CompletionInfo next =
                        shell.sourceCodeAnalysis().analyzeCompletion(rest);
                if (!next.completeness().isComplete() || next.source() == null) {
                    throw new AssertionError("not complete or not Java: " + rest.strip());
                }
                for (SnippetEvent event : shell.eval(next.source())) {
                    if (event.causeSnippet() == null) {
                        answers.addAll(answer(event));
                        typed++;
                    }
                }
                rest = next.remaining();
            }
        } finally {
            System.setOut(usual);
        }
        List<String> lines =
                new ArrayList<>(printed.toString(StandardCharsets.UTF_8).lines().toList());
        lines.addAll(answers);
        return lines.stream().map(String::stripTrailing).toList();
    }

    private List<String> answer(SnippetEvent event) {
        Snippet snippet = event.snippet();
        if (event.status() == Snippet.Status.REJECTED) {
            throw new AssertionError(shell.diagnostics(snippet)
                    .map(diagnostic -> diagnostic.getMessage(Locale.ROOT))
                    .collect(Collectors.joining(
                            "\n", "does not compile: " + snippet.source().strip() + "\n", "")));
        }
        if (event.status() != Snippet.Status.VALID) {
            throw new AssertionError(
                    "uses what is not declared yet: " + snippet.source().strip());
        }
        if (event.exception() instanceof EvalException e) {
            return List.of("|  Exception " + e.getExceptionClassName() + ": " + e.getMessage());
        }
        if (snippet instanceof VarSnippet variable) {
            return shown(variable.name(), event.value());
        }
        if (snippet instanceof ExpressionSnippet expression) {
            return shown(expression.name(), event.value());
        }
        if (snippet instanceof MethodSnippet method) {
            return List.of("|  created method " + method.name() + "(" + method.parameterTypes() + ")");
        }
        if (snippet instanceof TypeDeclSnippet type) {
            String kind = type.subKind().name().replace("_SUBKIND", "").toLowerCase(Locale.ROOT);
            return List.of("|  created " + kind + " " + type.name());
        }
        return List.of();
    }

    private static List<String> shown(String name, String value) {
        return (name + " ==> " + value).lines().toList();
    }

    /** The pictures that were drawn so far, oldest first. */
    List<Chart> drawn() {
        List<Chart> all = Prompt.charts();
        return all.stream().filter(chart -> !drawnBefore.contains(chart)).toList();
    }

    @Override
    public void close() {
        shell.close();
        System.clearProperty("stdout.encoding");
        System.setProperty("runnel.charts", chartsBefore);
    }
}
