package dev.runnel.verification.bite;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.water.Water;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.objectweb.asm.tree.ClassNode;

class MutationTest {

    @Test
    void aClassLoadedUnchangedPassesAndAChangedOneDoesNot() {
        Library library = Library.read();
        String manning = Manning.class.getName();
        List<Mutation> mutations = Mutation.of(manning, library.classOf(manning)).stream()
                .filter(each -> each.text().contains("velocity: * becomes /"))
                .toList();
        assertThat(mutations).isNotEmpty();
        Reach reach = Reach.of(library);
        assertThat(reach.failing()).isEmpty();
        Mutation changed = mutations.get(0);
        var method = library.classOf(manning).methods.get(changed.method());
        List<String> tables = reach.tables(library.number(manning, method)).subList(0, 3);
        String turns = "100000000,100000000,100000000";
        assertThat(new Copy((name, bytes) -> bytes).ask(String.join(",", tables), turns))
                .isEqualTo(Inside.SURVIVED);
        Copy copy = new Copy((name, bytes) -> {
            if (!name.equals(manning)) {
                return bytes;
            }
            ClassNode node = Library.node(bytes);
            changed.apply(node);
            return Tracing.turns(name, node);
        });
        assertThat(copy.ask(String.join(",", tables), turns)).isIn(tables);
    }

    @Test
    void theUnitTestsOfThePackageAreAskedToo() {
        Library library = Library.read();
        String water = Water.class.getName();
        Mutation change = Mutation.of(water, library.classOf(water)).stream()
                .filter(each -> each.text().contains("* becomes /"))
                .findFirst()
                .orElseThrow();
        assertThat(UnitTests.notice(water, Library.changed(change))).isTrue();
        assertThat(UnitTests.notice(water, Tracing.turns("none", library.classOf(water))))
                .isFalse();
    }

    @Test
    void aLoopThatDoesNotEndIsNoticed() {
        Library library = Library.read();
        Reach reach = Reach.of(library);
        String longest = reach.asked().stream()
                .map(Reach.Asked::table)
                .max((a, b) -> Long.compare(reach.turns(a), reach.turns(b)))
                .orElseThrow();
        Copy turning = new Copy(
                (name, bytes) -> Library.isCalculated(name) ? Tracing.turns(name, Library.node(bytes)) : bytes);
        assertThat(turning.ask(longest, "1")).isEqualTo(longest);
    }
}
