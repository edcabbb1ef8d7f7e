package dev.runnel.internal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StateTextTest {
    /** Mostly of the letters that mean something in a text. */
    @Provide
    Arbitrary<String> awkward() {
        return Arbitraries.oneOf(
                Arbitraries.strings().withChars(" {}=,%/aé\n\t\u007f\u0000").ofMaxLength(8), Arbitraries.strings());
    }

    private static StateText again(StateText text) {
        return StateText.parse("outer", 3, text.toString());
    }

    @Property
    void anyTextComesBackAndStaysOnOneLineOfAscii(
            @ForAll("awkward") String first, @ForAll("awkward") String second, @ForAll List<Double> numbers) {
        double[] values = numbers.stream().mapToDouble(each -> each).toArray();
        StateText text = StateText.of("outer", 2)
                .with("first", first)
                .with("list", List.of(first, second, ""))
                .with("numbers", values)
                .with("second", second);
        assertTrue(text.toString().chars().allMatch(each -> each >= ' ' && each < 127));
        StateText read = again(text);
        assertEquals(first, read.text("first"));
        assertEquals(second, read.text("second"));
        assertEquals(List.of(first, second, ""), read.list("list"));
        assertArrayEquals(values, read.numbers("numbers"), 0);
        assertEquals(text.toString(), read.toString());
    }

    @Property
    void aStateWithinStatesComesBack(@ForAll("awkward") String value) {
        StateText inner = StateText.of("inner", 1).with("value", value);
        StateText middle =
                StateText.of("middle", 1).with("inner", inner.toString()).with("two", List.of(inner.toString(), value));
        StateText outer = again(StateText.of("outer", 1).with("middle", middle.toString()));
        StateText read = StateText.parse("middle", 1, outer.text("middle"));
        assertEquals(value, StateText.parse("inner", 1, read.text("inner")).text("value"));
        assertEquals(List.of(inner.toString(), value), read.list("two"));
    }

    @Test
    void aStateWithinStatesIsWrittenOnceAndLegible() {
        String inner = StateText.of("inner", 1)
                .with("a", 1.5)
                .with("b", new double[] {1, 2})
                .toString();
        assertEquals("inner/1 a=1.5 b=1.0,2.0,", inner);
        assertEquals(
                "outer/1 list={{inner/1 a=1.5 b=1.0,2.0,},x,} rest={inner/1 a=1.5 b=1.0,2.0,}",
                StateText.of("outer", 1)
                        .with("list", List.of(inner, "x"))
                        .with("rest", inner)
                        .toString());
        // What has no place in braces is spelt out.
        assertEquals(
                "outer/1 a=%7b b={{} {}} c=%c3%a9 d=%09",
                StateText.of("outer", 1)
                        .with("a", "{")
                        .with("b", "{} {}")
                        .with("c", "é")
                        .with("d", "\t")
                        .toString());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "outer/1 a={b;each brace",
                "outer/1 a={b}c;behind its braces",
                "outer/1 a={b}} d=1;behind its braces",
                "outer/1 a;key=value",
                "outer/1 a b=1;key=value",
                "outer/1 =1;key=value",
                "outer/1 a=1 a=2;once",
                "outer/1 a=%4;two digits",
                "outer/1 a=%zz;two digits",
                "outer/4 a=1;[1, 3]",
                "inner/1 a=1;must begin with outer"
            })
    void whatIsNoStateIsRefused(String text, String words) {
        IllegalArgumentException thrown =
                assertThrows(IllegalArgumentException.class, () -> StateText.parse("outer", 3, text));
        assertTrue(String.valueOf(thrown.getMessage()).contains(words), thrown.getMessage());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {"{1,2};with a comma", "{1,{2},;each brace", "{1}2,;behind its braces"})
    void whatIsNoListIsRefused(String value, String words) {
        StateText text = StateText.of("outer", 1).with("list", value);
        IllegalArgumentException thrown = assertThrows(IllegalArgumentException.class, () -> text.list("list"));
        assertTrue(String.valueOf(thrown.getMessage()).contains(words), thrown.getMessage());
    }
}
