package dev.runnel.verification.bite;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.hydraulics.flow.Manning;
import java.lang.reflect.Method;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;
import org.objectweb.asm.ClassWriter;
import org.objectweb.asm.tree.ClassNode;

/** One copy with a switch for each change says what copies say that each have one change. */
class WarmCopyTest {
    private static final String PLANTED = Planted.class.getName();
    private static final List<Mutation> CHANGES = Mutation.of(PLANTED, Library.node(PLANTED));
    private static final double[][] PAIRS = {
        {3.25, 8.5}, {8.5, 3.25}, {-4.75, 2.5}, {6, 6}, {Double.NaN, 1}, {1, Double.NaN}, {0, 0}
    };

    @Test
    void aSwitchDoesWhatItsChangeDoesAndNothingWhileItIsOff() throws ReflectiveOperationException {
        Switches switches = new Switches(CHANGES);
        Copy warm = new Copy((name, bytes) -> {
            ClassNode node = Library.node(bytes);
            switches.putIn(name, node);
            return bytes(node);
        });
        turn(warm, "count", CHANGES.size());
        DoubleBinaryOperator switched = planted(warm);
        TreeSet<String> kinds = new TreeSet<>();
        List<Double> unchanged = answers(new Planted());
        for (int i = 0; i < CHANGES.size(); i++) {
            Mutation change = CHANGES.get(i);
            Copy own = new Copy((name, bytes) -> name.equals(PLANTED) ? Library.changed(change) : bytes);
            turn(warm, "turn", i);
            assertThat(answers(switched)).as(change.toString()).isEqualTo(answers(planted(own)));
            assertThat(answers(switched)).as(change.toString()).isNotEqualTo(unchanged);
            turn(warm, "turn", Switch.NONE);
            assertThat(answers(switched)).isEqualTo(unchanged);
            kinds.add(change.text().replaceFirst("[-0-9.E]+ becomes [-0-9.E]+", "number"));
        }
        // Four operators, a product that becomes a sum, a sign, numbers and comparisons.
        assertThat(kinds).hasSize(8);
        assertThat(CHANGES).hasSizeGreaterThan(30);
    }

    @Test
    void aWarmCopyNoticesWhatCopiesOfTheirOwnNotice() {
        Library library = Library.read();
        OwnCopies own = new OwnCopies(library, Reach.of(library, "manning"));
        String manning = Manning.class.getName();
        List<Mutation> changes = Mutation.of(manning, library.classOf(manning));
        TreeMap<String, Long> turns = new TreeMap<>();
        changes.forEach(each -> own.tables(each).forEach(table -> turns.put(table, own.turns(table))));
        List<WarmCopy.Answer> answers = WarmCopy.ask(changes, turns);
        assertThat(answers)
                .hasSameSizeAs(changes)
                .extracting(WarmCopy.Answer::word)
                .contains(WarmCopy.Word.NOTICED);
        for (int i = 0; i < changes.size(); i++) {
            boolean noticed = answers.get(i).word() == WarmCopy.Word.NOTICED;
            boolean unsure = answers.get(i).word() == WarmCopy.Word.UNKNOWN;
            Outcome alone = own.ask(changes.get(i), own.tables(changes.get(i)));
            assertThat(noticed || unsure).as(changes.get(i).toString()).isEqualTo(alone.noticed() || unsure);
        }
    }

    @Test
    void whereNoTableIsKnownNothingIsSaid() {
        assertThat(WarmCopy.ask(CHANGES, new TreeMap<>()))
                .hasSameSizeAs(CHANGES)
                .allMatch(each -> each.word() == WarmCopy.Word.UNKNOWN);
    }

    private static byte[] bytes(ClassNode node) {
        ClassWriter writer = new ClassWriter(ClassWriter.COMPUTE_MAXS);
        node.accept(writer);
        return writer.toByteArray();
    }

    private static DoubleBinaryOperator planted(Copy copy) throws ReflectiveOperationException {
        return Class.forName(PLANTED, true, copy)
                .asSubclass(DoubleBinaryOperator.class)
                .getDeclaredConstructor()
                .newInstance();
    }

    private static void turn(Copy copy, String method, int number) throws ReflectiveOperationException {
        Method called = Class.forName(Switch.class.getName(), true, copy).getDeclaredMethod(method, int.class);
        called.setAccessible(true);
        called.invoke(null, number);
    }

    private static List<Double> answers(DoubleBinaryOperator operator) {
        List<Double> answers = new ArrayList<>();
        for (double[] pair : PAIRS) {
            answers.add(operator.applyAsDouble(pair[0], pair[1]));
        }
        return answers;
    }
}
