package dev.runnel.verification.bite;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.water.Air;
import dev.runnel.hydraulics.water.Water;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.objectweb.asm.tree.ClassNode;

class MutationTest {
    private static final Library LIBRARY = Library.read();

    /** Watched once: the tables of one formula are enough to plant errors in it. */
    private static final Reach REACH = Reach.of(LIBRARY, "manning");

    @Test
    void aClassLoadedUnchangedPassesAndAChangedOneDoesNot() {
        String manning = Manning.class.getName();
        List<Mutation> mutations = Mutation.of(manning, LIBRARY.classOf(manning)).stream()
                .filter(each -> each.text().contains("velocity: * becomes /"))
                .toList();
        assertThat(mutations).isNotEmpty();
        assertThat(REACH.failing()).isEmpty();
        Mutation changed = mutations.get(0);
        var method = LIBRARY.classOf(manning).methods.get(changed.method());
        List<String> tables = REACH.tables(LIBRARY.number(manning, method)).subList(0, 3);
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
    void eachReasonFitsAChangeThatCanBeMade() {
        List<Mutation> all = LIBRARY.classes().entrySet().stream()
                .flatMap(each -> Mutation.of(each.getKey(), each.getValue()).stream())
                .toList();
        assertThat(all).hasSizeGreaterThan(10_000);
        assertThat(EqualInEffect.idle(all))
                .as("lines to delete from equal-in-effect.csv")
                .isEmpty();
    }

    @Test
    void changesThatReadTheSameAreToldApartByTheirPlace() {
        List<Mutation> all = Mutation.of(Manning.class.getName(), LIBRARY.classOf(Manning.class.getName()));
        assertThat(all).extracting(Mutation::place).contains(1, 2);
        assertThat(all).extracting(each -> each.text() + " #" + each.place()).doesNotHaveDuplicates();
    }

    @Test
    void theTestsThatReachAClassAreAskedTheNearestFirst() {
        List<String> tests = NearestTests.of(Water.class.getName());
        assertThat(tests.get(0)).startsWith("dev.runnel.hydraulics.water.Water");
        assertThat(tests)
                .contains("dev.runnel.hydraulics.flow.LawsTest")
                .doesNotContain("dev.runnel.hydraulics.section.CircularSectionTest");
        assertThat(tests.indexOf("dev.runnel.hydraulics.flow.LawsTest"))
                .isGreaterThan(tests.indexOf("dev.runnel.hydraulics.water.WaterTest"));
    }

    @Test
    void theUnitTestsAreAskedToo() {
        String air = Air.class.getName();
        Mutation change = Mutation.of(air, LIBRARY.classOf(air)).stream()
                .filter(each -> each.text().contains("* becomes /"))
                .findFirst()
                .orElseThrow();
        assertThat(UnitTests.ask(air, Library.changed(change))).isEqualTo(UnitTests.Answer.NOTICED);
        assertThat(UnitTests.ask(air, Tracing.turns("none", LIBRARY.classOf(air))))
                .isEqualTo(UnitTests.Answer.PASSED);
    }

    @Test
    void aLoopThatDoesNotEndIsNoticed() {
        String longest = REACH.asked().stream()
                .map(Reach.Asked::table)
                .max((a, b) -> Long.compare(REACH.turns(a), REACH.turns(b)))
                .orElseThrow();
        Copy turning = new Copy(
                (name, bytes) -> Library.isCalculated(name) ? Tracing.turns(name, Library.node(bytes)) : bytes);
        assertThat(turning.ask(longest, "1")).isEqualTo(longest);
    }
}
