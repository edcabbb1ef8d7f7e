package dev.runnel.examples.docs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;

/** A page that is wrong fails, with its name and line. */
class DocsBiteTest {
    @Test
    void aRightPagePasses() {
        assertThat(page("""
                # Title

                ```java
                var width = 2;
                String twice(String text) { return text + text; }
                ```

                ```jshell
                jshell> width * 3
                $3 ==> 6

                jshell> twice(
                   ...>     "ab")
                $4 ==> "abab"

                jshell> width
                width ==> 2

                jshell> System.out.println("printed")
                printed

                jshell> int[] both = {width, 5}
                both ==> int[2] { 2, 5 }

                jshell> void nothing() {}
                |  created method nothing()

                jshell> record Pipe(double bore) {}
                |  created record Pipe

                jshell> both[2]
                |  Exception java.lang.ArrayIndexOutOfBoundsException: Index 2 out of bounds for length 2
                ```

                ```text
                not run
                ```
                """).run()).isEqualTo(2);
    }

    @Test
    void aWrongAnswerIsShownBesideTheRightOne() {
        refused("""
                ```jshell
                jshell> 1 + 1
                $1 ==> 3
                ```
                """, "page.md:2: 1 + 1", "the page says:\n$1 ==> 3\nthe shell says:\n$1 ==> 2");
    }

    @Test
    void anAnswerLeftOutIsFound() {
        refused("""
                ```jshell
                jshell> 1 + 1
                ```
                """, "page.md:2");
    }

    @Test
    void whatDoesNotCompileIsFound() {
        refused("""
                Text.

                ```java
                int depth = "deep";
                ```
                """, "page.md:4: does not compile: int depth");
    }

    @Test
    void anExceptionInAJavaBlockIsFound() {
        refused("""
                ```java
                throw new IllegalStateException("stuck");
                ```
                """, "page.md:2: |  Exception java.lang.IllegalStateException: stuck");
    }

    @Test
    void whatUsesSomethingUndeclaredIsFound() {
        refused("""
                ```java
                int half() { return missing / 2; }
                ```
                """, "page.md:2: uses what is not declared yet");
    }

    @Test
    void halfASentenceIsFound() {
        refused("""
                ```java
                int depth = (1 +
                ```
                """, "page.md:2: not complete");
    }

    @Test
    void aFenceLeftOpenIsFound() {
        assertThatThrownBy(() -> page("```java\nint a;\n")).hasMessageContaining("opened in line 1");
    }

    @Test
    void onlyTheLastDigitsMayDiffer() {
        assertThat(Answers.agree(List.of("$1 ==> 1.3888874164419867"), List.of("$1 ==> 1.3888874164419869")))
                .isTrue();
        assertThat(Answers.agree(List.of("$1 ==> 1.3888874164419867"), List.of("$1 ==> 1.3888874164519867")))
                .isFalse();
        assertThat(Answers.agree(List.of("$1 ==> 1.388"), List.of("$1 ==> 1.389")))
                .isFalse();
        assertThat(Answers.agree(List.of("depth 0.450 m"), List.of("depth 0.450 ft")))
                .isFalse();
        assertThat(Answers.agree(List.of("a 1.5 b"), List.of("a 1.5 b 1.5"))).isFalse();
    }

    @Test
    void answersCanBeRecorded() {
        assertThat(page("""
                Before.

                ```jshell
                jshell> 1 + 1
                old
                jshell> 2 +
                   ...> 2
                ```
                After.
                """).recorded())
                .containsExactly(
                        "Before.",
                        "",
                        "```jshell",
                        "jshell> 1 + 1",
                        "$1 ==> 2",
                        "",
                        "jshell> 2 +\n   ...> 2",
                        "$2 ==> 4",
                        "```",
                        "After.");
    }

    private static void refused(String text, String... parts) {
        assertThatThrownBy(() -> page(text).run())
                .isInstanceOf(AssertionError.class)
                .message()
                .contains(parts);
    }

    private static Page page(String text) {
        return new Page("page.md", java.nio.file.Path.of(""), text.lines().toList());
    }
}
