package dev.runnel.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

class StateTextProperties {
    @Property
    void everyValueComesBack(
            @ForAll String text,
            @ForAll double number,
            @ForAll long count,
            @ForAll List<String> list,
            @ForAll long bits) {
        String written = StateText.of("some-machine", 2)
                .with("text", surrogatesPaired(text))
                .with("number", number)
                .with("odd", Double.longBitsToDouble(bits))
                .with("count", count)
                .with("flag", count > 0)
                .with("list", list.stream().map(each -> surrogatesPaired(each)).toList())
                .toString();
        assertThat(written).matches("\\p{ASCII}*").doesNotContain("\n");
        StateText read = StateText.parse("some-machine", 3, written);
        assertThat(read.version()).isEqualTo(2);
        assertThat(read.text("text")).isEqualTo(surrogatesPaired(text));
        assertThat(Double.valueOf(read.number("number"))).isEqualTo(Double.valueOf(number));
        assertThat(Double.valueOf(read.number("odd"))).isEqualTo(Double.valueOf(Double.longBitsToDouble(bits)));
        assertThat(read.count("count")).isEqualTo(count);
        assertThat(read.flag("flag")).isEqualTo(count > 0);
        assertThat(read.list("list"))
                .isEqualTo(list.stream().map(each -> surrogatesPaired(each)).toList());
    }

    @Property
    void arraysComeBack(@ForAll double[] numbers, @ForAll long[] counts) {
        StateText read = StateText.parse(
                "m",
                1,
                StateText.of("m", 1).with("a", numbers).with("b", counts).toString());
        assertThat(read.numbers("a")).containsExactly(numbers);
        assertThat(read.counts("b")).containsExactly(counts);
    }

    @Example
    void aStateMayHoldAnother() {
        String inner = StateText.of("inner", 1).with("a", 1.5).toString();
        StateText outer = StateText.parse(
                "outer", 1, StateText.of("outer", 1).with("in", inner).toString());
        assertThat(StateText.parse("inner", 1, outer.text("in")).number("a")).isEqualTo(1.5);
    }

    @Example
    void whatIsNoSuchStateIsRefused() {
        assertThatThrownBy(() -> StateText.parse("alarm", 1, "count/1 a=2"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("state must begin with alarm/1, was \"count/1 a=2\"");
        assertThatThrownBy(() -> StateText.parse("alarm", 1, "alarm/2 a=2"))
                .hasMessage("version of a state alarm must be in [1, 1], was 2");
        assertThatThrownBy(() -> StateText.parse("alarm", 1, "alarm/1 a=2 a=3"))
                .hasMessage("state alarm must hold a once, was twice");
        assertThatThrownBy(() -> StateText.parse("alarm", 1, "alarm/1 a=2").number("b"))
                .hasMessage("state alarm must hold b, which is missing");
        assertThatThrownBy(() -> StateText.parse("alarm", 1, "alarm/1 a=x").number("a"))
                .hasMessage("state alarm: a must be a number, was \"x\"");
        assertThatThrownBy(() -> StateText.parse("alarm", 1, "alarm/1 a=%4"))
                .hasMessage("state must hold two digits after %, was \"%4\"");
        assertThatThrownBy(() -> StateText.parse("alarm", 1, "alarm/1 a=1,2").numbers("a"))
                .hasMessage("state alarm: a must end with a comma, was \"1,2\"");
        assertThatThrownBy(() -> StateText.parse("alarm", 1, "alarm/1 a=1,2").counts("a"))
                .hasMessage("state alarm: a must end with a comma, was \"1,2\"");
        assertThatThrownBy(() -> StateText.parse("alarm", 1, "alarm/1 a=1 b"))
                .hasMessage("state alarm must hold key=value, was \"b\"");
    }

    /** A lone half of a surrogate pair is no text: UTF-8 cannot hold it. */
    private static String surrogatesPaired(String text) {
        return text.replaceAll("\\p{Cs}", "?");
    }
}
