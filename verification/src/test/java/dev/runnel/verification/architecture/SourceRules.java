package dev.runnel.verification.architecture;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** What compiled classes do not show. Each method returns complaints about one file, none if it is in order. */
final class SourceRules {
    /** Surefire and Failsafe pick test classes by name; another name would silently not run. */
    private static final Pattern RUN = Pattern.compile(".*(Test|Properties|IT)\\.java");

    private static final Pattern TESTS =
            Pattern.compile("(?m)^\\s*@(Test|ParameterizedTest|TestFactory|Property|Example)\\b");
    private static final Pattern LEFT_UNDONE = Pattern.compile("@Disa" + "bled|\\bTO" + "DO\\b|\\bFIX" + "ME\\b");
    private static final Pattern OWN_MACHINE =
            Pattern.compile("(?<![\\w.])/(home|root|tmp|work|Users)/|[A-Z]:\\\\Users");

    private static final Pattern DOUBLE_FIELD = Pattern.compile("(?m)^\\s+(?:private |final )+double (\\w+);");
    private static final Pattern COMPARED = Pattern.compile("\\b(\\w+) == \\w+\\.\\1\\b");

    private SourceRules() {}

    static List<String> complaints(String file, String text) {
        List<String> complaints = new ArrayList<>();
        if (file.contains("src/test/java/")
                && TESTS.matcher(text).find()
                && !RUN.matcher(file).matches()) {
            complaints.add(file + " holds tests, but its name does not end in Test, Properties or IT: nothing runs it");
        }
        if (LEFT_UNDONE.matcher(text).find()) {
            complaints.add(file + " holds unfinished or disabled work");
        }
        if (OWN_MACHINE.matcher(text).find()) {
            complaints.add(file + " holds a path of somebody's machine");
        }
        if (file.endsWith(".java")) {
            complaints.addAll(unequalHashes(file, text));
        }
        return complaints;
    }

    /** To {@code ==} the two zeros are equal and NaN is not, to {@code hashCode} it is the other way round. */
    private static List<String> unequalHashes(String file, String text) {
        Set<String> doubles = DOUBLE_FIELD
                .matcher(text)
                .results()
                .map(field -> field.group(1))
                .collect(Collectors.toSet());
        Matcher compared = COMPARED.matcher(text);
        return compared.results()
                .filter(each -> doubles.contains(each.group(1)))
                .map(MatchResult::group)
                .map(each -> file + " compares doubles by " + each + ", which does not agree with hashCode")
                .toList();
    }
}
