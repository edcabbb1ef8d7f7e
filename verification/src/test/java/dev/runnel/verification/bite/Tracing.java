package dev.runnel.verification.bite;

import org.objectweb.asm.ClassWriter;
import org.objectweb.asm.Opcodes;
import org.objectweb.asm.tree.AbstractInsnNode;
import org.objectweb.asm.tree.ClassNode;
import org.objectweb.asm.tree.InsnList;
import org.objectweb.asm.tree.InsnNode;
import org.objectweb.asm.tree.JumpInsnNode;
import org.objectweb.asm.tree.LdcInsnNode;
import org.objectweb.asm.tree.MethodInsnNode;
import org.objectweb.asm.tree.MethodNode;
import org.objectweb.asm.tree.VarInsnNode;

/** Adds calls of {@link Hits} to class files. Straight-line code only, so that stack maps stay as they are. */
final class Tracing {
    private static final String HITS = Hits.class.getName().replace('.', '/');
    private static final String CALCULATION = "dev.runnel.verification.calculation.Calculation";

    private Tracing() {}

    /** Every method says that it is entered and left, and every loop that it turns. */
    static byte[] all(Library library, String name, byte[] bytes) {
        boolean asks = name.equals(CALCULATION);
        if (!asks && !Library.isCalculated(name)) {
            return bytes;
        }
        ClassNode node = Library.node(bytes);
        for (MethodNode method : node.methods) {
            if (asks && method.name.equals("answer")) {
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
