package dev.runnel.verification.bite;

import dev.runnel.verification.Modules;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.objectweb.asm.ClassReader;
import org.objectweb.asm.ClassWriter;
import org.objectweb.asm.Opcodes;
import org.objectweb.asm.tree.AbstractInsnNode;
import org.objectweb.asm.tree.ClassNode;
import org.objectweb.asm.tree.FieldInsnNode;
import org.objectweb.asm.tree.MethodNode;

/** The classes of the library, and a number for each of their methods. */
final class Library {
    private final Map<String, ClassNode> classes = new TreeMap<>();
    private final Map<String, Integer> numbers = new LinkedHashMap<>();
    private final List<String> methods = new ArrayList<>();

    private Library() {}

    static Library read() {
        Library library = new Library();
        List<String> names = new ArrayList<>();
        Modules.classes().forEach(type -> names.add(type.getName()));
        names.stream().filter(Library::isCalculated).sorted().forEach(library::add);
        return library;
    }

    /** The proof itself is not what is proved. */
    static boolean isCalculated(String className) {
        return className.startsWith("dev.runnel.") && !className.startsWith("dev.runnel.verification.");
    }

    private void add(String name) {
        ClassNode node = node(name);
        classes.put(name, node);
        for (MethodNode method : node.methods) {
            if (isTraced(method)) {
                numbers.put(key(name, method), methods.size());
                methods.add(key(name, method));
            }
        }
    }

    static ClassNode node(String name) {
        try {
            return node(Copy.bytes(name));
        } catch (ClassNotFoundException e) {
            throw new IllegalStateException("class " + name + " is listed and cannot be read", e);
        }
    }

    static ClassNode node(byte[] bytes) {
        ClassNode node = new ClassNode();
        new ClassReader(bytes).accept(node, 0);
        return node;
    }

    /** The bytes of a class with one change. */
    static byte[] changed(Mutation mutation) {
        ClassNode node = node(mutation.className());
        mutation.apply(node);
        ClassWriter writer = new ClassWriter(ClassWriter.COMPUTE_MAXS);
        node.accept(writer);
        return writer.toByteArray();
    }

    /**
     * Constructors and initialisers run at unforeseen times: they count with their class. The values of an enumeration are
     * asked by the JDK once, for whoever looks for one by its name first.
     */
    static boolean isTraced(MethodNode method) {
        return !method.name.startsWith("<")
                && !(method.name.equals("values") && method.desc.startsWith("()["))
                && (method.access & (Opcodes.ACC_ABSTRACT | Opcodes.ACC_NATIVE)) == 0;
    }

    static String key(String className, MethodNode method) {
        return className + "#" + method.name + method.desc;
    }

    Map<String, ClassNode> classes() {
        return classes;
    }

    ClassNode classOf(String name) {
        ClassNode found = classes.get(name);
        if (found == null) {
            throw new IllegalArgumentException("class must be one of the library, was " + name);
        }
        return found;
    }

    int number(String className, MethodNode method) {
        return numbers.getOrDefault(key(className, method), -1);
    }

    /** Name of the class, {@code #}, name and descriptor. */
    String method(int number) {
        return methods.get(number);
    }

    /** The numbers of all traced methods that read a field of another class: a class of constants has no method of its own. */
    int[] readersOf(String className) {
        String owner = className.replace('.', '/');
        return classes.entrySet().stream()
                .flatMap(entry -> entry.getValue().methods.stream()
                        .filter(method -> isTraced(method) && reads(method, owner))
                        .map(method -> number(entry.getKey(), method)))
                .mapToInt(Integer::intValue)
                .toArray();
    }

    private static boolean reads(MethodNode method, String owner) {
        for (AbstractInsnNode each : method.instructions) {
            if (each instanceof FieldInsnNode field && field.owner.equals(owner)) {
                return true;
            }
        }
        return false;
    }

    /** The numbers of all traced methods of a class, those of its nested classes and lambdas among them. */
    int[] numbersOf(String className) {
        String host = className.contains("$") ? className.substring(0, className.indexOf('$')) : className;
        return numbers.entrySet().stream()
                .filter(entry ->
                        entry.getKey().startsWith(host + "#") || entry.getKey().startsWith(host + "$"))
                .mapToInt(Map.Entry::getValue)
                .toArray();
    }
}
