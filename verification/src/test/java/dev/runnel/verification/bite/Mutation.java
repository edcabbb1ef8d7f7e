package dev.runnel.verification.bite;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.objectweb.asm.Opcodes;
import org.objectweb.asm.tree.AbstractInsnNode;
import org.objectweb.asm.tree.ClassNode;
import org.objectweb.asm.tree.InsnNode;
import org.objectweb.asm.tree.IntInsnNode;
import org.objectweb.asm.tree.InvokeDynamicInsnNode;
import org.objectweb.asm.tree.JumpInsnNode;
import org.objectweb.asm.tree.LdcInsnNode;
import org.objectweb.asm.tree.LineNumberNode;
import org.objectweb.asm.tree.MethodInsnNode;
import org.objectweb.asm.tree.MethodNode;

/**
 * One change of one constant or operator: a number becomes 5 % larger (0 becomes 1), a whole number one more; plus becomes
 * minus, times becomes divided by, and the other way round; a sign goes; a comparison is turned round.
 *
 * <p>Not changed: what only guards or words an answer (arguments of {@code Require}, parts of a message, methods that
 * return text or an exception, {@code equals} and {@code hashCode}, lambdas inside those, and numbers that only decide whether
 * an exception is thrown), and numbers below 1e-9, which end searches. Unit tests look after those.
 *
 * @param className name of the class
 * @param method index of the method
 * @param instruction index of the instruction
 * @param line line of the source
 * @param text what is changed, in words
 * @param place which of the changes of the class that read the same, from 1
 */
record Mutation(String className, int method, int instruction, int line, String text, int place) {
    private static final double LEAST_CONSTANT = 1e-9;
    private static final Map<Integer, Integer> OPERATORS = Map.ofEntries(
            Map.entry(Opcodes.DADD, Opcodes.DSUB),
            Map.entry(Opcodes.DSUB, Opcodes.DADD),
            Map.entry(Opcodes.DMUL, Opcodes.DDIV),
            Map.entry(Opcodes.DDIV, Opcodes.DMUL),
            Map.entry(Opcodes.DNEG, Opcodes.NOP),
            Map.entry(Opcodes.IADD, Opcodes.ISUB),
            Map.entry(Opcodes.ISUB, Opcodes.IADD),
            Map.entry(Opcodes.IMUL, Opcodes.IADD),
            Map.entry(Opcodes.LADD, Opcodes.LSUB),
            Map.entry(Opcodes.LSUB, Opcodes.LADD));
    private static final Map<Integer, Integer> COMPARISONS = Map.of(
            Opcodes.IFLT, Opcodes.IFGE,
            Opcodes.IFGE, Opcodes.IFLT,
            Opcodes.IFGT, Opcodes.IFLE,
            Opcodes.IFLE, Opcodes.IFGT);
    private static final Set<String> WORDS = Set.of("toString", "hashCode", "equals");
    /** What makes a whole number part of a calculation. */
    private static final Set<Integer> USES_INT =
            Set.of(Opcodes.IADD, Opcodes.ISUB, Opcodes.IMUL, Opcodes.IDIV, Opcodes.IREM, Opcodes.I2D, Opcodes.DALOAD);

    /** All changes of a class that can be made. */
    static List<Mutation> of(String className, ClassNode node) {
        List<Mutation> found = new ArrayList<>();
        Map<String, Integer> places = new HashMap<>();
        for (int m = 0; m < node.methods.size(); m++) {
            MethodNode method = node.methods.get(m);
            if (isOfWords(method)) {
                continue;
            }
            int line = 0;
            for (int i = 0; i < method.instructions.size(); i++) {
                AbstractInsnNode each = method.instructions.get(i);
                if (each instanceof LineNumberNode number) {
                    line = number.line;
                }
                String change = change(each);
                if (!change.isEmpty() && !isGuardOrWord(each) && !decidesOnlyToThrow(each)) {
                    String text = nameInSource(method) + ": " + change;
                    found.add(new Mutation(className, m, i, line, text, places.merge(text, 1, Integer::sum)));
                }
            }
        }
        return found;
    }

    /** Compilers number the lambdas of a class each in its own way. */
    private static String nameInSource(MethodNode method) {
        return method.name.startsWith("lambda$") ? method.name.substring(0, method.name.lastIndexOf('$')) : method.name;
    }

    private static boolean isOfWords(MethodNode method) {
        boolean inWords = WORDS.stream().anyMatch(word -> method.name.startsWith("lambda$" + word + "$"));
        return inWords
                || WORDS.contains(method.name)
                || method.desc.endsWith(")Ljava/lang/String;")
                || method.desc.endsWith("Exception;");
    }

    /** Makes the change in a class of the same bytes. */
    void apply(ClassNode node) {
        MethodNode changed = node.methods.get(method);
        AbstractInsnNode old = changed.instructions.get(instruction);
        changed.instructions.set(old, replacement(old));
    }

    private static String change(AbstractInsnNode each) {
        @Nullable Double constant = constant(each);
        if (constant != null) {
            return Math.abs(constant) < LEAST_CONSTANT && constant != 0
                    ? ""
                    : constant + " becomes " + changed(constant);
        }
        @Nullable Integer whole = whole(each);
        if (whole != null) {
            AbstractInsnNode next = following(each);
            return next != null && USES_INT.contains(next.getOpcode()) ? whole + " becomes " + (whole + 1) : "";
        }
        if (OPERATORS.containsKey(each.getOpcode())) {
            return name(each.getOpcode()) + " becomes " + name(OPERATORS.get(each.getOpcode()));
        }
        AbstractInsnNode before = each.getPrevious();
        if (before != null
                && COMPARISONS.containsKey(each.getOpcode())
                && (before.getOpcode() == Opcodes.DCMPG || before.getOpcode() == Opcodes.DCMPL)) {
            return "comparison turned round";
        }
        return "";
    }

    private static AbstractInsnNode replacement(AbstractInsnNode old) {
        if (old instanceof JumpInsnNode jump) {
            return new JumpInsnNode(COMPARISONS.getOrDefault(old.getOpcode(), old.getOpcode()), jump.label);
        }
        return OPERATORS.containsKey(old.getOpcode())
                ? new InsnNode(OPERATORS.get(old.getOpcode()))
                : new LdcInsnNode(changed(value(old)));
    }

    /** The number that an instruction pushes, a {@link Double} or an {@link Integer}. */
    static Number value(AbstractInsnNode each) {
        @Nullable Double constant = constant(each);
        if (constant != null) {
            return constant;
        }
        @Nullable Integer whole = whole(each);
        if (whole == null) {
            throw new IllegalStateException("instruction " + each.getOpcode() + " pushes no number");
        }
        return whole;
    }

    /** What a number becomes. */
    static Number changed(Number old) {
        if (old instanceof Integer whole) {
            return whole + 1;
        }
        return changed(old.doubleValue());
    }

    private static double changed(double constant) {
        return constant == 0 ? 1 : constant * 1.05;
    }

    private static @Nullable Double constant(AbstractInsnNode each) {
        if (each instanceof LdcInsnNode ldc && ldc.cst instanceof Double number && Double.isFinite(number)) {
            return number;
        }
        return switch (each.getOpcode()) {
            case Opcodes.DCONST_0 -> 0.0;
            case Opcodes.DCONST_1 -> 1.0;
            default -> null;
        };
    }

    private static @Nullable Integer whole(AbstractInsnNode each) {
        if (each instanceof IntInsnNode push && each.getOpcode() != Opcodes.NEWARRAY) {
            return push.operand;
        }
        int opcode = each.getOpcode();
        return opcode >= Opcodes.ICONST_M1 && opcode <= Opcodes.ICONST_5 ? opcode - Opcodes.ICONST_0 : null;
    }

    /** Whether the next thing called only checks an argument or makes a text. */
    private static boolean isGuardOrWord(AbstractInsnNode from) {
        for (AbstractInsnNode each = from.getNext(); each != null; each = each.getNext()) {
            if (each instanceof JumpInsnNode) {
                return false;
            }
            if (each instanceof InvokeDynamicInsnNode made) {
                return made.name.startsWith("makeConcat");
            }
            if (each instanceof MethodInsnNode call) {
                return call.owner.endsWith("/Require")
                        || call.owner.endsWith("/Text")
                        || call.owner.equals("java/lang/String")
                        || call.owner.equals("java/lang/StringBuilder")
                        || call.owner.endsWith("Exception");
            }
        }
        return false;
    }

    /** Whether a number is compared, and nothing is kept or returned between there and the throwing of an exception. */
    private static boolean decidesOnlyToThrow(AbstractInsnNode from) {
        if (constant(from) == null) {
            return false;
        }
        boolean compared = false;
        for (AbstractInsnNode each = from.getNext(); each != null; each = each.getNext()) {
            int opcode = each.getOpcode();
            compared |= opcode == Opcodes.DCMPG || opcode == Opcodes.DCMPL;
            if (opcode == Opcodes.ATHROW) {
                return compared;
            }
            boolean kept = opcode >= Opcodes.ISTORE && opcode <= Opcodes.SASTORE || opcode == Opcodes.PUTFIELD;
            boolean ends = opcode >= Opcodes.IRETURN && opcode <= Opcodes.RETURN || opcode == Opcodes.GOTO;
            if (kept || ends) {
                return false;
            }
        }
        return false;
    }

    private static @Nullable AbstractInsnNode following(AbstractInsnNode each) {
        AbstractInsnNode next = each.getNext();
        while (next != null && next.getOpcode() < 0) {
            next = next.getNext();
        }
        return next;
    }

    private static String name(int opcode) {
        return switch (opcode) {
            case Opcodes.DADD, Opcodes.IADD, Opcodes.LADD -> "+";
            case Opcodes.DSUB, Opcodes.ISUB, Opcodes.LSUB -> "-";
            case Opcodes.DMUL, Opcodes.IMUL -> "*";
            case Opcodes.DDIV -> "/";
            case Opcodes.DNEG -> "the sign";
            default -> "nothing";
        };
    }

    @Override
    public String toString() {
        return className.substring(className.lastIndexOf('.') + 1) + ", line " + line + ", " + text + " #" + place;
    }
}
