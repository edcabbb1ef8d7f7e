package dev.runnel.verification.benchmark;

import java.lang.annotation.ElementType;
import java.lang.annotation.Repeatable;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** A row of docs/performance.md: the marked benchmark beside a rival, or a floor, of the same class. */
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.METHOD)
@Repeatable(Against.All.class)
public @interface Against {
    /** Name of the rival's method. */
    String rival();

    /** What is computed. */
    String row();

    /** What the rival is. */
    String named();

    /** The ratio that was aimed at when the kernel was built; 0 for none. */
    double goal() default 0;

    /** The rows of one benchmark. */
    @Retention(RetentionPolicy.RUNTIME)
    @Target(ElementType.METHOD)
    @interface All {
        /** The rows. */
        Against[] value();
    }
}
