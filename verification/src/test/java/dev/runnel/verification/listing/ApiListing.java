package dev.runnel.verification.listing;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.lang.reflect.Modifier;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.TreeSet;

/** The public API below one package, sorted, one type or member a line, each with its promise. */
final class ApiListing {
    /** What a person runs to approve a change: no quotes and no dots, so that every shell takes it as it stands. */
    static final String RECORD = "mvn verify -Dapi=record";

    private ApiListing() {}

    static List<String> of(String rootPackage, ImportOption option) {
        TreeSet<String> lines = new TreeSet<>();
        for (JavaClass found : new ClassFileImporter().withImportOption(option).importPackages(rootPackage)) {
            Class<?> type = found.reflect();
            if (isVisible(type) && !(type.getPackageName() + ".").contains(".internal.")) {
                lines.addAll(TypeListing.of(type));
            }
        }
        return List.copyOf(lines);
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
        List<String> lines = new ArrayList<>();
        approved.stream().filter(line -> !actual.contains(line)).forEach(line -> lines.add("- " + line));
        actual.stream().filter(line -> !approved.contains(line)).forEach(line -> lines.add("+ " + line));
        if (lines.isEmpty()) {
            return "";
        }
        return "The public API is not the one approved in " + file + " (- gone, + new):\n" + String.join("\n", lines)
                + "\nIf the change is intended, and docs/api-policy.md allows it, record it and commit " + file
                + " with it:\n    " + RECORD + "\n";
    }
}
