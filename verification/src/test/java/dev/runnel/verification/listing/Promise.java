package dev.runnel.verification.listing;

import java.lang.reflect.AnnotatedElement;
import org.apiguardian.api.API;
import org.jspecify.annotations.Nullable;

/** How long something may be relied on: its own {@code @API}, else that of the type around it. */
final class Promise {
    static final String NONE = "UNSTATED";

    private Promise() {}

    static String of(AnnotatedElement element, Class<?> around) {
        API own = element.getAnnotation(API.class);
        for (@Nullable Class<?> type = around; own == null && type != null; type = type.getDeclaringClass()) {
            own = type.getAnnotation(API.class);
        }
        return own == null ? NONE : own.status().name();
    }
}
