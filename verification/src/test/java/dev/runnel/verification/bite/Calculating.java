package dev.runnel.verification.bite;

import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.objectweb.asm.Handle;
import org.objectweb.asm.Opcodes;
import org.objectweb.asm.tree.AbstractInsnNode;
import org.objectweb.asm.tree.ClassNode;
import org.objectweb.asm.tree.InvokeDynamicInsnNode;
import org.objectweb.asm.tree.MethodInsnNode;
import org.objectweb.asm.tree.MethodNode;

/**
 * The public calculations of the library: public methods of public types that do arithmetic with numbers of their own, in
 * their body or in hidden methods they call. What only hands on the answer of another public method is none.
 */
final class Calculating {
    private static final Set<String> WORDS = Set.of("toString", "hashCode", "equals", "compareTo", "main");

    private final Library library;
    private final Map<String, Boolean> known = new HashMap<>();

    private Calculating(Library library) {
        this.library = library;
    }

    /** Returns their numbers by name: class without package root, {@code #}, name of the method, once for all overloads. */
    static Map<String, int[]> methods(Library library) {
        Calculating calculating = new Calculating(library);
        Map<String, int[]> found = new TreeMap<>();
        library.classes().forEach((name, node) -> {
            if (calculating.isPublic(name) && !name.contains(".internal.")) {
                for (MethodNode method : node.methods) {
                    if (isPublic(method.access)
                            && Library.isTraced(method)
                            && !WORDS.contains(method.name)
                            && (method.access & (Opcodes.ACC_BRIDGE | Opcodes.ACC_SYNTHETIC)) == 0
                            && calculating.does(name, method)) {
                        String key = name.substring("dev.runnel.".length()) + "#" + method.name;
                        found.merge(key, new int[] {library.number(name, method)}, Calculating::joined);
                    }
                }
            }
        });
        return found;
    }

    private static int[] joined(int[] first, int[] second) {
        int[] all = java.util.Arrays.copyOf(first, first.length + second.length);
        System.arraycopy(second, 0, all, first.length, second.length);
        return all;
    }

    private boolean isPublic(String className) {
        ClassNode node = library.classes().get(className);
        int nested = className.lastIndexOf('$');
        return node != null && isPublic(access(node)) && (nested < 0 || isPublic(className.substring(0, nested)));
    }

    /** Of a nested class the access stands in the list of nested classes. */
    private static int access(ClassNode node) {
        return node.innerClasses.stream()
                .filter(each -> each.name.equals(node.name))
                .mapToInt(each -> each.access)
                .findFirst()
                .orElse(node.access);
    }

    private static boolean isPublic(int access) {
        return (access & Opcodes.ACC_PUBLIC) != 0;
    }

    private boolean does(String className, MethodNode method) {
        String key = Library.key(className, method);
        Boolean before = known.putIfAbsent(key, false);
        if (before != null) {
            return before;
        }
        boolean does = false;
        for (AbstractInsnNode each : method.instructions) {
            does |= isArithmetic(each) || callsOneThatDoes(each);
        }
        known.put(key, does);
        return does;
    }

    private boolean callsOneThatDoes(AbstractInsnNode each) {
        if (each instanceof MethodInsnNode call) {
            return isHiddenAndDoes(call.owner, call.name, call.desc);
        }
        if (each instanceof InvokeDynamicInsnNode made) {
            for (Object argument : made.bsmArgs) {
                if (argument instanceof Handle handle
                        && isHiddenAndDoes(handle.getOwner(), handle.getName(), handle.getDesc())) {
                    return true;
                }
            }
        }
        return false;
    }

    private boolean isHiddenAndDoes(String owner, String name, String descriptor) {
        String className = owner.replace('/', '.');
        ClassNode node = library.classes().get(className);
        if (node == null || className.startsWith("dev.runnel.internal.")) {
            return false;
        }
        for (MethodNode method : node.methods) {
            if (method.name.equals(name) && method.desc.equals(descriptor)) {
                boolean hidden = !isPublic(method.access) || !isPublic(className) || className.contains(".internal.");
                return hidden && !method.name.startsWith("<") && does(className, method);
            }
        }
        return false;
    }

    private static boolean isArithmetic(AbstractInsnNode each) {
        return switch (each.getOpcode()) {
            case Opcodes.DADD, Opcodes.DSUB, Opcodes.DMUL, Opcodes.DDIV, Opcodes.DNEG, Opcodes.DREM -> true;
            default -> each instanceof MethodInsnNode call && call.owner.equals("java/lang/Math");
        };
    }
}
