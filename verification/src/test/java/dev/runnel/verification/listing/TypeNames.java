package dev.runnel.verification.listing;

import java.lang.reflect.AnnotatedArrayType;
import java.lang.reflect.AnnotatedParameterizedType;
import java.lang.reflect.AnnotatedType;
import java.lang.reflect.AnnotatedWildcardType;
import java.lang.reflect.Type;
import java.lang.reflect.TypeVariable;
import java.util.Arrays;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Types as text: full names, {@code java.lang} left out, a question mark behind what may be null. */
final class TypeNames {
    private TypeNames() {}

    static String of(AnnotatedType type) {
        return core(type) + (type.isAnnotationPresent(Nullable.class) ? "?" : "");
    }

    private static String core(AnnotatedType type) {
        if (type instanceof AnnotatedArrayType array) {
            return of(array.getAnnotatedGenericComponentType()) + "[]";
        }
        if (type instanceof AnnotatedParameterizedType generic) {
            String raw = generic.getType().getTypeName();
            return plain(raw.substring(0, raw.indexOf('<'))) + list(generic.getAnnotatedActualTypeArguments());
        }
        if (type instanceof AnnotatedWildcardType wildcard) {
            if (wildcard.getAnnotatedLowerBounds().length > 0) {
                return "? super " + of(wildcard.getAnnotatedLowerBounds()[0]);
            }
            String bound = of(wildcard.getAnnotatedUpperBounds()[0]);
            return bound.equals("Object") ? "?" : "? extends " + bound;
        }
        return of(type.getType());
    }

    static String of(Type type) {
        return plain(type.getTypeName());
    }

    /** Type parameters with their bounds, for example {@code <T extends Comparable<T>>}; empty if there are none. */
    static String parameters(TypeVariable<?>[] variables) {
        if (variables.length == 0) {
            return "";
        }
        return Arrays.stream(variables).map(TypeNames::parameter).collect(Collectors.joining(", ", "<", ">"));
    }

    private static String parameter(TypeVariable<?> variable) {
        String bounds =
                Arrays.stream(variable.getAnnotatedBounds()).map(TypeNames::of).collect(Collectors.joining(" & "));
        return variable.getName() + (bounds.equals("Object") ? "" : " extends " + bounds);
    }

    private static String list(AnnotatedType[] arguments) {
        return Arrays.stream(arguments).map(TypeNames::of).collect(Collectors.joining(", ", "<", ">"));
    }

    private static String plain(String name) {
        return name.replaceAll("\\bjava\\.lang\\.(?=[A-Z])", "");
    }
}
