package dev.runnel.verification.listing;

import java.lang.reflect.AnnotatedElement;
import java.lang.reflect.AnnotatedType;
import java.lang.reflect.Constructor;
import java.lang.reflect.Executable;
import java.lang.reflect.Field;
import java.lang.reflect.Member;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SortedSet;
import java.util.StringJoiner;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The lines of one public type: itself, and each member that a caller or a subclass can see. */
final class TypeListing {
    private final Class<?> type;
    private final SortedSet<String> lines = new TreeSet<>();

    private TypeListing(Class<?> type) {
        this.type = type;
    }

    static SortedSet<String> of(Class<?> type) {
        TypeListing listing = new TypeListing(type);
        listing.addHead();
        for (Field field : type.getDeclaredFields()) {
            listing.addIfVisible(field, field.getName(), TypeNames.of(field.getAnnotatedType()) + constant(field));
        }
        for (Constructor<?> constructor : type.getDeclaredConstructors()) {
            listing.addIfVisible(constructor, "new" + parameters(constructor), type.getName());
        }
        // A package-private ancestor is invisible, but what it declares is inherited by all that is public here.
        for (Class<?> from = type; from != null && (from == type || isHidden(from)); from = from.getSuperclass()) {
            for (Method method : from.getDeclaredMethods()) {
                listing.addIfVisible(
                        method, method.getName() + parameters(method), TypeNames.of(method.getAnnotatedReturnType()));
            }
        }
        return listing.lines;
    }

    private static boolean isHidden(Class<?> ancestor) {
        return !Modifier.isPublic(ancestor.getModifiers());
    }

    private void addHead() {
        StringJoiner head = new StringJoiner(" ");
        int shown = Modifier.ABSTRACT | Modifier.FINAL | Modifier.STATIC;
        if (!type.isInterface() && !type.isEnum() && !type.isRecord() && (type.getModifiers() & shown) != 0) {
            head.add(Modifier.toString(type.getModifiers() & shown));
        }
        head.add((type.isSealed() ? "sealed " : "") + kind() + TypeNames.parameters(type.getTypeParameters()));
        AnnotatedType parent = type.getAnnotatedSuperclass();
        if (!type.isEnum() && !type.isRecord() && parent != null && parent.getType() != Object.class) {
            head.add("extends " + TypeNames.of(parent));
        }
        for (AnnotatedType parentInterface : type.getAnnotatedInterfaces()) {
            head.add((type.isInterface() ? "extends " : "implements ") + TypeNames.of(parentInterface));
        }
        lines.add(type.getName() + " : " + head + " | " + Promise.of(type, type));
    }

    private String kind() {
        if (type.isAnnotation()) {
            return "annotation";
        }
        if (type.isInterface()) {
            return "interface";
        }
        if (type.isEnum()) {
            // In their order, which compareTo and stored ordinals rest on.
            return Arrays.stream(type.getEnumConstants())
                    .map(constant -> ((Enum<?>) constant).name())
                    .collect(Collectors.joining(", ", "enum of ", ""));
        }
        return type.isRecord() ? "record" : "class";
    }

    /** The compiler copies such a value into the caller's code: changing it changes nothing there. */
    private static String constant(Field field) {
        boolean isConstant = Modifier.isFinal(field.getModifiers())
                && Modifier.isStatic(field.getModifiers())
                && Modifier.isPublic(field.getModifiers())
                && (field.getType().isPrimitive() || field.getType() == String.class);
        try {
            return isConstant ? " = " + field.get(null) : "";
        } catch (IllegalAccessException e) {
            throw new IllegalStateException(e);
        }
    }

    private <T extends Member & AnnotatedElement> void addIfVisible(T member, String name, String result) {
        int modifiers = member.getModifiers();
        boolean inheritable = Modifier.isProtected(modifiers) && !Modifier.isFinal(type.getModifiers());
        if (member.isSynthetic() || !(Modifier.isPublic(modifiers) || inheritable)) {
            return;
        }
        String words = Stream.of(
                        inheritable ? "protected" : "",
                        Modifier.isStatic(modifiers) ? "static" : "",
                        Modifier.isAbstract(modifiers) ? "abstract" : "",
                        member instanceof Method method && method.isDefault() ? "default" : "")
                .filter(word -> !word.isEmpty())
                .map(word -> word + " ")
                .collect(Collectors.joining());
        String thrown = member instanceof Executable executable ? thrown(executable) : "";
        lines.add(type.getName() + "#" + name + " : " + words + result + thrown + " | " + Promise.of(member, type));
    }

    private static String parameters(Executable executable) {
        List<String> parameters = new ArrayList<>();
        for (AnnotatedType parameter : executable.getAnnotatedParameterTypes()) {
            parameters.add(TypeNames.of(parameter));
        }
        return TypeNames.parameters(executable.getTypeParameters()) + "(" + String.join(", ", parameters) + ")";
    }

    private static String thrown(Executable executable) {
        return executable.getAnnotatedExceptionTypes().length == 0
                ? ""
                : Arrays.stream(executable.getAnnotatedExceptionTypes())
                        .map(TypeNames::of)
                        .sorted()
                        .collect(Collectors.joining(", ", " throws ", ""));
    }
}
