package dev.runnel.internal;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.NoSuchFileException;
import org.apiguardian.api.API;

/** The one way in which a file that cannot be read fails. */
@API(status = API.Status.INTERNAL)
public final class Unreadable {
    private Unreadable() {}

    /**
     * Makes the exception for a file that cannot be read.
     *
     * @param file the file, or its name
     * @param cause what happened
     * @return an exception whose message is {@code cannot read FILE: reason}
     */
    public static UncheckedIOException file(Object file, IOException cause) {
        return new UncheckedIOException("cannot read " + file + ": " + reason(cause), cause);
    }

    /** Some exceptions of the file system say nothing but the name of the file once more. */
    private static String reason(IOException cause) {
        if (cause instanceof NoSuchFileException) {
            return "there is no such file";
        }
        if (cause instanceof AccessDeniedException) {
            return "access is denied";
        }
        return cause.getMessage() == null ? cause.getClass().getSimpleName() : cause.getMessage();
    }
}
