package dev.runnel.verification.bite;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URL;
import java.util.function.BinaryOperator;
import org.jspecify.annotations.Nullable;

/** A copy of the library and its proof, its class files passed through a patch as they are loaded. */
final class Copy extends ClassLoader {
    /** Takes the name of a class and its bytes, and returns the bytes to load. */
    @FunctionalInterface
    interface Patch {
        byte[] apply(String name, byte[] bytes);
    }

    private static final String OURS = "dev.runnel.";

    private final Patch patch;

    Copy(Patch patch) {
        super(Copy.class.getClassLoader());
        this.patch = patch;
    }

    /** Returns what {@link Inside} of this copy answers: nothing else passes between copies. */
    String ask(String tables, String turns) {
        return inside(Inside.class).apply(tables, turns);
    }

    /** Makes what answers inside this copy. */
    @SuppressWarnings("unchecked")
    BinaryOperator<String> inside(Class<? extends BinaryOperator<String>> type) {
        try {
            Class<?> inside = Class.forName(type.getName(), true, this);
            return (BinaryOperator<String>) inside.getDeclaredConstructor().newInstance();
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException("the copy of the library cannot be asked", e);
        }
    }

    @Override
    protected Class<?> loadClass(String name, boolean resolve) throws ClassNotFoundException {
        if (!name.startsWith(OURS)) {
            return super.loadClass(name, resolve);
        }
        synchronized (getClassLoadingLock(name)) {
            @Nullable Class<?> found = findLoadedClass(name);
            return found == null ? define(name) : found;
        }
    }

    private Class<?> define(String name) throws ClassNotFoundException {
        byte[] bytes = bytes(name);
        byte[] patched = patch.apply(name, bytes);
        return defineClass(name, patched, 0, patched.length);
    }

    static byte[] bytes(String name) throws ClassNotFoundException {
        String file = name.replace('.', '/') + ".class";
        try (InputStream in = Copy.class.getClassLoader().getResourceAsStream(file)) {
            if (in == null) {
                throw new ClassNotFoundException(name);
            }
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public @Nullable URL getResource(String name) {
        return getParent().getResource(name);
    }
}
