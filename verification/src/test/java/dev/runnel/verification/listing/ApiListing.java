package dev.runnel.verification.listing;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import java.lang.reflect.Modifier;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.TreeSet;

/** The public API of a module, sorted, one type or member a line, each with its promise. */
final class ApiListing {
    /** What a person runs to approve a change: no quotes and no dots, so that every shell takes it as it stands. */
    static final String RECORD = "mvn verify -Dapi=record";

    private ApiListing() {}

    static List<String> of(JavaClasses classes, String rootPackage) {
        TreeSet<String> lines = new TreeSet<>();
        for (JavaClass found : classes) {
            Class<?> type = found.reflect();
            if (isBelow(rootPackage, type) && isVisible(type) && !isPrivate(type.getPackageName())) {
                lines.addAll(TypeListing.of(type));
            }
        }
        return List.copyOf(lines);
    }

    private static boolean isBelow(String rootPackage, Class<?> type) {
        return (type.getPackageName() + ".").startsWith(rootPackage + ".");
    }

    private static boolean isPrivate(String packageName) {
        return (packageName + ".").contains(".internal.");
    }

    private static boolean isVisible(Class<?> type) {
        Class<?> around = type.getDeclaringClass();
        return Modifier.isPublic(type.getModifiers())
                && !type.isSynthetic()
                && !type.isAnonymousClass()
                && (around == null || isVisible(around));
    }

    /** Says what differs and how to approve it; empty if nothing does. */
    static String difference(String file, Collection<String> approved, Collection<String> actual) {
        TreeSet<String> gone = new TreeSet<>(approved);
        gone.removeAll(new HashSet<>(actual));
        TreeSet<String> added = new TreeSet<>(actual);
        added.removeAll(new HashSet<>(approved));
        List<String> lines = new ArrayList<>();
        gone.forEach(line -> lines.add("- " + line));
        added.forEach(line -> lines.add("+ " + line));
        if (lines.isEmpty()) {
            return "";
        }
        return "The public API is not the one approved in " + file + " (- gone, + new):\n" + String.join("\n", lines)
                + "\nIf the change is intended, and docs/api-policy.md allows it, record it and commit " + file
                + " with it:\n    " + RECORD + "\n";
    }
}
