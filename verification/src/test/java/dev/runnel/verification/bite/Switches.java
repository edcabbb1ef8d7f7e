package dev.runnel.verification.bite;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.objectweb.asm.Opcodes;
import org.objectweb.asm.tree.AbstractInsnNode;
import org.objectweb.asm.tree.ClassNode;
import org.objectweb.asm.tree.InsnList;
import org.objectweb.asm.tree.JumpInsnNode;
import org.objectweb.asm.tree.LdcInsnNode;
import org.objectweb.asm.tree.MethodInsnNode;

/** Puts calls of {@link Switch} into class files, one for each of these changes. Its number is its place in the list. */
final class Switches {
    private static final String SWITCH = Switch.class.getName().replace('.', '/');

    /** What stands in the place of an operator: method of {@link Switch} and its descriptor. */
    private record Call(String name, String descriptor) {
        MethodInsnNode instruction() {
            return new MethodInsnNode(Opcodes.INVOKESTATIC, SWITCH, name, descriptor, false);
        }
    }

    /** Where a switch goes, and its number. */
    private record Place(InsnList code, AbstractInsnNode old, int number) {}

    private static final Map<Integer, Call> OPERATORS = Map.ofEntries(
            Map.entry(Opcodes.DADD, new Call("plus", "(DDI)D")),
            Map.entry(Opcodes.IADD, new Call("plus", "(III)I")),
            Map.entry(Opcodes.LADD, new Call("plus", "(JJI)J")),
            Map.entry(Opcodes.DSUB, new Call("minus", "(DDI)D")),
            Map.entry(Opcodes.ISUB, new Call("minus", "(III)I")),
            Map.entry(Opcodes.LSUB, new Call("minus", "(JJI)J")),
            Map.entry(Opcodes.DMUL, new Call("times", "(DDI)D")),
            Map.entry(Opcodes.IMUL, new Call("times", "(III)I")),
            Map.entry(Opcodes.DDIV, new Call("over", "(DDI)D")),
            Map.entry(Opcodes.DNEG, new Call("negated", "(DI)D")));
    private static final Map<Integer, Call> JUMPS = Map.of(
            Opcodes.IFLT, new Call("less", "(II)I"),
            Opcodes.IFGE, new Call("less", "(II)I"),
            Opcodes.IFGT, new Call("greater", "(II)I"),
            Opcodes.IFLE, new Call("greater", "(II)I"));

    /** By the class, and there by their numbers. */
    private final Map<String, Map<Integer, Mutation>> changes = new HashMap<>();

    Switches(List<Mutation> changes) {
        for (int i = 0; i < changes.size(); i++) {
            this.changes
                    .computeIfAbsent(changes.get(i).className(), key -> new HashMap<>())
                    .put(i, changes.get(i));
        }
    }

    /** Puts in the switches of a class; the places of all changes are sought before the first is put in. */
    void putIn(String className, ClassNode node) {
        List<Place> places = new ArrayList<>();
        changes.getOrDefault(className, Map.of()).forEach((number, change) -> {
            InsnList code = node.methods.get(change.method()).instructions;
            places.add(new Place(code, code.get(change.instruction()), number));
        });
        places.forEach(each -> put(each.code(), each.old(), each.number()));
    }

    private static void put(InsnList code, AbstractInsnNode old, int number) {
        if (old instanceof JumpInsnNode) {
            code.insertBefore(old, new LdcInsnNode(number));
            code.insertBefore(old, called(JUMPS, old));
        } else if (OPERATORS.containsKey(old.getOpcode())) {
            code.insertBefore(old, new LdcInsnNode(number));
            code.set(old, called(OPERATORS, old));
        } else {
            Number constant = Mutation.value(old);
            code.insertBefore(old, new LdcInsnNode(constant));
            code.insertBefore(old, new LdcInsnNode(Mutation.changed(constant)));
            code.insertBefore(old, new LdcInsnNode(number));
            String descriptor = constant instanceof Double ? "(DDI)D" : "(III)I";
            code.set(old, new Call("constant", descriptor).instruction());
        }
    }

    private static MethodInsnNode called(Map<Integer, Call> calls, AbstractInsnNode old) {
        Call call = calls.get(old.getOpcode());
        if (call == null) {
            throw new IllegalStateException("there is no switch for instruction " + old.getOpcode());
        }
        return call.instruction();
    }
}
