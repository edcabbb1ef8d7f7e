package dev.runnel.verification.bite;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.objectweb.asm.ClassReader;

/**
 * The test classes of a module that reach a class, through whatever other classes, in the order in which they are best asked:
 * those of its package first, then those that need fewest steps to it, examples before properties, which take longest. Who names
 * whom stands in the class files; what is reached by reflection alone is not seen.
 */
final class NearestTests {
    private static final int CLASS_TAG = 7;

    private static final Map<String, NearestTests> OF_MODULES = new ConcurrentHashMap<>();

    private final Map<String, Set<String>> namedBy = new HashMap<>();
    private final Set<String> tests = new HashSet<>();

    private NearestTests(String module) {
        for (String name : Library.read().classes().keySet()) {
            try {
                add(new ClassReader(Copy.bytes(name)));
            } catch (ClassNotFoundException e) {
                throw new IllegalStateException("class " + name + " is listed and cannot be read", e);
            }
        }
        try (Stream<Path> files = Files.walk(folder(module))) {
            for (Path file :
                    files.filter(each -> each.toString().endsWith(".class")).toList()) {
                String name = add(new ClassReader(Files.readAllBytes(file)));
                if (name.endsWith("Test") || name.endsWith("Properties")) {
                    tests.add(name);
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Where the compiled tests of a module lie, seen from this one. */
    static Path folder(String module) {
        return Path.of("..", module, "target", "test-classes");
    }

    /** The test classes of its module that reach a class, the best to ask first. */
    static List<String> of(String className) {
        return OF_MODULES
                .computeIfAbsent(className.split("\\.")[2], NearestTests::new)
                .reaching(className);
    }

    /** Notes whom a class names, and returns its own name. */
    private String add(ClassReader reader) {
        String name = reader.getClassName().replace('/', '.');
        char[] buffer = new char[reader.getMaxStringLength()];
        for (int i = 1; i < reader.getItemCount(); i++) {
            int at = reader.getItem(i);
            if (at > 0 && reader.readByte(at - 1) == CLASS_TAG) {
                String named = reader.readUTF8(at, buffer).replace('/', '.');
                namedBy.computeIfAbsent(named, any -> new HashSet<>()).add(name);
            }
        }
        return name;
    }

    private List<String> reaching(String className) {
        Map<String, Integer> steps = new HashMap<>(Map.of(className, 0));
        Deque<String> next = new ArrayDeque<>(List.of(className));
        while (!next.isEmpty()) {
            String here = next.remove();
            int further = steps.getOrDefault(here, 0) + 1;
            for (String each : namedBy.getOrDefault(here, Set.of())) {
                if (steps.putIfAbsent(each, further) == null) {
                    next.add(each);
                }
            }
        }
        String inPackage = className.substring(0, className.lastIndexOf('.') + 1);
        return tests.stream()
                .filter(steps::containsKey)
                .sorted(Comparator.comparing(
                                (String test) -> !inPackage.equals(test.substring(0, test.lastIndexOf('.') + 1)))
                        .thenComparing(steps::get)
                        .thenComparing(test -> test.endsWith("Properties"))
                        .thenComparing(Comparator.naturalOrder()))
                .toList();
    }
}
