package dev.runnel.verification.bite;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import org.jspecify.annotations.Nullable;
import org.objectweb.asm.ClassWriter;
import org.objectweb.asm.Opcodes;
import org.objectweb.asm.tree.AbstractInsnNode;
import org.objectweb.asm.tree.ClassNode;
import org.objectweb.asm.tree.FieldInsnNode;
import org.objectweb.asm.tree.InsnList;
import org.objectweb.asm.tree.InsnNode;
import org.objectweb.asm.tree.JumpInsnNode;
import org.objectweb.asm.tree.LdcInsnNode;
import org.objectweb.asm.tree.MethodInsnNode;
import org.objectweb.asm.tree.MethodNode;
import org.objectweb.asm.tree.TypeInsnNode;
import org.objectweb.asm.tree.VarInsnNode;

/** Adds calls of {@link Hits} to class files. Straight-line code only, so that stack maps stay as they are. */
final class Tracing {
    private static final String HITS = Hits.class.getName().replace('.', '/');
    private static final String CALCULATION = "dev.runnel.verification.calculation.Calculation";

    private static final String LAST_ANSWER = "dev.runnel.verification.calculation.LastAnswer";
    private static final String COMPUTE_IF_ABSENT =
            "(Ljava/util/Map;Ljava/lang/Object;Ljava/util/function/Function;)Ljava/lang/Object;";

    /** A number for each class that is made ready by code of its own. */
    private static final Map<String, Integer> NUMBERS = new ConcurrentHashMap<>();

    private static final AtomicInteger NEXT = new AtomicInteger();

    private Tracing() {}

    /**
     * Every method says that it is entered and left, and every loop that it turns; what is computed once and then kept, in
     * the library and in the calculations that ask it, says so too.
     */
    static byte[] all(Library library, String name, byte[] bytes) {
        if (!isOfCalculations(name) && !Library.isCalculated(name)) {
            return bytes;
        }
        ClassNode node = Library.node(bytes);
        for (MethodNode method : node.methods) {
            if (method.instructions.size() == 0) {
                continue;
            }
            kept(library, name, method);
            if (name.equals(CALCULATION) && method.name.equals("answer")) {
                method.instructions.insert(nameOfCalculation());
            }
            int number = library.number(name, method);
            if (number >= 0) {
                leave(method);
                method.instructions.insert(enter(number));
            }
            turns(method);
        }
        return bytes(node);
    }

    /** Only loops say that they turn. */
    static byte[] turns(String name, ClassNode node) {
        if (Library.isCalculated(name)) {
            node.methods.forEach(Tracing::turns);
        }
        return bytes(node);
    }

    private static boolean isOfCalculations(String name) {
        return name.startsWith(CALCULATION.substring(0, CALCULATION.lastIndexOf('.') + 1));
    }

    private static void kept(Library library, String name, MethodNode method) {
        boolean initialises = method.name.equals("<clinit>");
        for (AbstractInsnNode each : method.instructions.toArray()) {
            if (each instanceof MethodInsnNode call) {
                String called = call.owner + "." + call.name;
                if (isOfCalculations(name) && called.equals("java/util/Map.computeIfAbsent")) {
                    method.instructions.set(each, call("computeIfAbsent", COMPUTE_IF_ABSENT));
                } else if (name.equals(LAST_ANSWER) && called.equals("java/util/function/Supplier.get")) {
                    method.instructions.set(each, call("kept", "(Ljava/util/function/Supplier;)Ljava/lang/Object;"));
                } else if (called.equals(LAST_ANSWER.replace('.', '/') + "$Kept.answer")) {
                    method.instructions.insert(each, call("again", "(Ljava/lang/Object;)Ljava/lang/Object;"));
                } else if (call.getOpcode() == Opcodes.INVOKESTATIC && isMadeReady(library, call.owner)) {
                    method.instructions.insertBefore(each, touch(call.owner));
                }
            } else if (each.getOpcode() == Opcodes.GETSTATIC && isMadeReady(library, ((FieldInsnNode) each).owner)) {
                method.instructions.insert(each, touch(((FieldInsnNode) each).owner));
            } else if (each.getOpcode() == Opcodes.NEW && isMadeReady(library, ((TypeInsnNode) each).desc)) {
                method.instructions.insert(each, touch(((TypeInsnNode) each).desc));
            } else if (initialises && each.getOpcode() == Opcodes.RETURN) {
                InsnList end = new InsnList();
                end.add(new LdcInsnNode(number(name)));
                end.add(new InsnNode(Library.isCalculated(name) ? Opcodes.ICONST_1 : Opcodes.ICONST_0));
                end.add(call("initialised", "(IZ)V"));
                method.instructions.insertBefore(each, end);
            }
        }
        if (initialises) {
            InsnList begin = new InsnList();
            begin.add(new LdcInsnNode(number(name)));
            begin.add(call("initialise", "(I)V"));
            method.instructions.insert(begin);
        } else if (isMadeReady(library, name.replace('.', '/'))) {
            method.instructions.insert(touch(name.replace('.', '/')));
        }
    }

    /** Whether a class has code of its own that makes it ready, or may have. */
    private static boolean isMadeReady(Library library, String owner) {
        String name = owner.replace('/', '.');
        @Nullable ClassNode node = library.classes().get(name);
        return isOfCalculations(name)
                || node != null && node.methods.stream().anyMatch(method -> method.name.equals("<clinit>"));
    }

    private static int number(String name) {
        return NUMBERS.computeIfAbsent(name, key -> NEXT.getAndIncrement());
    }

    private static InsnList touch(String owner) {
        InsnList code = new InsnList();
        code.add(new LdcInsnNode(number(owner.replace('/', '.'))));
        code.add(call("touch", "(I)V"));
        return code;
    }

    private static byte[] bytes(ClassNode node) {
        ClassWriter writer = new ClassWriter(ClassWriter.COMPUTE_MAXS);
        node.accept(writer);
        return writer.toByteArray();
    }

    private static void turns(MethodNode method) {
        for (AbstractInsnNode each : method.instructions.toArray()) {
            if (each instanceof JumpInsnNode jump
                    && method.instructions.indexOf(jump.label) < method.instructions.indexOf(jump)) {
                method.instructions.insertBefore(jump, call("turn", "()V"));
            }
        }
    }

    private static void leave(MethodNode method) {
        for (AbstractInsnNode each : method.instructions.toArray()) {
            if (each.getOpcode() >= Opcodes.IRETURN && each.getOpcode() <= Opcodes.RETURN) {
                method.instructions.insertBefore(each, call("leave", "()V"));
            }
        }
    }

    private static InsnList enter(int number) {
        InsnList code = new InsnList();
        code.add(new LdcInsnNode(number));
        code.add(call("enter", "(I)V"));
        return code;
    }

    private static InsnList nameOfCalculation() {
        InsnList code = new InsnList();
        code.add(new VarInsnNode(Opcodes.ALOAD, 0));
        code.add(new MethodInsnNode(
                Opcodes.INVOKEVIRTUAL, CALCULATION.replace('.', '/'), "name", "()Ljava/lang/String;", false));
        code.add(call("calculation", "(Ljava/lang/String;)V"));
        code.add(new InsnNode(Opcodes.NOP));
        return code;
    }

    private static MethodInsnNode call(String name, String descriptor) {
        return new MethodInsnNode(Opcodes.INVOKESTATIC, HITS, name, descriptor, false);
    }
}
