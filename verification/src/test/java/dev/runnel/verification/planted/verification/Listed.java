package dev.runnel.verification.planted.verification;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.apiguardian.api.API;
import org.jspecify.annotations.Nullable;

/** Has one of everything that the API listing must show, and some that it must not. */
@API(status = API.Status.STABLE, since = "0.1")
public abstract class Listed<T extends Comparable<T>> extends HiddenAncestor implements Comparable<Listed<T>> {
    /** A constant. */
    public static final double CONSTANT = 9.81;

    /** For subclasses. */
    protected Listed(int size) {
        hidden(size);
    }

    static void hidden(int size) {}

    /** May be null, may fail. */
    public static @Nullable String read(double[] values, List<? extends Number> numbers) throws IOException {
        return null;
    }

    /** Still in motion. */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public <U> Optional<U> moving(@Nullable U value) {
        return Optional.ofNullable(value);
    }

    /** To be implemented. */
    protected abstract T value();

    /** Two words, in this order. */
    public enum Kind {
        /** First. */
        OPEN,
        /** Second. */
        CLOSED
    }

    /** A result. */
    public record Result(double depth) {}
}
