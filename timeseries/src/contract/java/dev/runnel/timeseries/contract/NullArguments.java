package dev.runnel.timeseries.contract;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.reflect.AnnotatedType;
import java.lang.reflect.Constructor;
import java.lang.reflect.Executable;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.Parameter;
import java.net.URISyntaxException;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Calls every public factory, constructor and method of a module with null for each of its parameters, the others being
 * samples with which the call goes through, and says which of them do not name the parameter.
 */
public final class NullArguments {
    private static final int ROUNDS = 5;
    private static final int TRIES = 60;

    private static final int REPEATS = 4;
    private static final int LONGEST_SECONDS = 20;

    private final Samples samples = new Samples();
    private final List<String> unnamed = new ArrayList<>();
    private final List<String> notReached = new ArrayList<>();
    private int refused;

    private NullArguments() {}

    /**
     * What came of a module.
     *
     * @param unnamed calls that took a null, or refused it without its name
     * @param refused parameters for which null was refused by name
     * @param notReached parameters of calls for which no samples went through
     */
    public record Outcome(List<String> unnamed, int refused, List<String> notReached) {}

    /**
     * Tries a module.
     *
     * @param module a class of the module whose types are tried
     * @param below classes of the modules it stands on, for samples
     * @return what came of it
     */
    public static Outcome in(Class<?> module, Class<?>... below) {
        NullArguments arguments = new NullArguments();
        List<Class<?>> all = new ArrayList<>();
        for (Class<?> each : below) {
            all.addAll(types(each));
        }
        List<Class<?>> tried = types(module);
        all.addAll(tried);
        for (int round = 0; round < ROUNDS; round++) {
            for (Class<?> type : all) {
                arguments.collect(type);
            }
        }
        tried.stream().filter(type -> !Throwable.class.isAssignableFrom(type)).forEach(arguments::check);
        return new Outcome(List.copyOf(arguments.unnamed), arguments.refused, List.copyOf(arguments.notReached));
    }

    /** The public types of the packages that are for callers, in a folder of classes or, in a whole build, in a jar. */
    private static List<Class<?>> types(Class<?> of) {
        try {
            Path source = Path.of(
                    of.getProtectionDomain().getCodeSource().getLocation().toURI());
            if (Files.isDirectory(source)) {
                return types(source, of.getClassLoader());
            }
            try (FileSystem jar = FileSystems.newFileSystem(source)) {
                return types(jar.getPath("/"), of.getClassLoader());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (URISyntaxException | ClassNotFoundException e) {
            throw new IllegalStateException(e);
        }
    }

    private static List<Class<?>> types(Path root, ClassLoader loader) throws IOException, ClassNotFoundException {
        try (Stream<Path> files = Files.walk(root)) {
            List<Class<?>> types = new ArrayList<>();
            for (Path file : files.filter(path -> path.toString().endsWith(".class"))
                    .sorted()
                    .toList()) {
                String name = root.relativize(file)
                        .toString()
                        .replace(file.getFileSystem().getSeparator(), ".")
                        .replaceAll("\\.class$", "");
                if (name.contains(".internal.") || name.endsWith("-info")) {
                    continue;
                }
                Class<?> type = Class.forName(name, false, loader);
                if (isPublic(type)) {
                    types.add(type);
                }
            }
            return types;
        }
    }

    private static boolean isPublic(Class<?> type) {
        return Modifier.isPublic(type.getModifiers())
                && !type.isAnonymousClass()
                && (type.getEnclosingClass() == null || isPublic(type.getEnclosingClass()));
    }

    private void collect(Class<?> type) {
        if (type.isEnum()) {
            Arrays.stream(type.getEnumConstants()).forEach(samples::add);
        }
        for (Executable call : calls(type)) {
            if (isOfUse(call)) {
                going(call, random(call)).ifPresent(trial -> trial.result().ifPresent(samples::add));
            }
        }
    }

    /** What gives numbers or text gives no sample, and files are not written. */
    private static boolean isOfUse(Executable call) {
        Class<?> result = call instanceof Method method ? method.getReturnType() : call.getDeclaringClass();
        boolean isState = call.getName().equals("toText");
        return (isState || result.getName().startsWith("dev.runnel."))
                && Arrays.stream(call.getParameterTypes()).noneMatch(Path.class::isAssignableFrom);
    }

    private static List<Executable> calls(Class<?> type) {
        List<Executable> calls = new ArrayList<>();
        if (!Modifier.isAbstract(type.getModifiers()) && !type.isEnum()) {
            calls.addAll(Arrays.asList(type.getConstructors()));
        }
        for (Method method : type.getDeclaredMethods()) {
            boolean isOfAll = List.of("equals", "valueOf", "compareTo").contains(method.getName());
            if (Modifier.isPublic(method.getModifiers()) && !method.isSynthetic() && !isOfAll) {
                calls.add(method);
            }
        }
        calls.sort(Comparator.comparing(Executable::toString));
        return calls;
    }

    /** A call that went through. */
    private record Trial(@Nullable Object receiver, Object[] arguments, Optional<Object> result) {}

    /** A call has its own, so that another call that comes or goes does not change its samples. */
    private static Random random(Executable call) {
        return new Random(call.toString().hashCode() + Long.getLong("null.seed", 0));
    }

    private Optional<Trial> going(Executable call, Random random) {
        for (int i = 0; i < TRIES; i++) {
            @Nullable Object receiver = null;
            if (call instanceof Method method && !Modifier.isStatic(method.getModifiers())) {
                Optional<Object> sample = samples.any(call.getDeclaringClass(), random);
                if (sample.isEmpty()) {
                    return Optional.empty();
                }
                receiver = sample.get();
            }
            Object[] arguments = new Object[call.getParameterCount()];
            boolean isComplete = true;
            for (int k = 0; k < arguments.length; k++) {
                Optional<Object> sample = samples.of(call.getGenericParameterTypes()[k], random);
                isComplete &= sample.isPresent();
                arguments[k] = sample.orElse(null);
            }
            if (!isComplete) {
                return Optional.empty();
            }
            try {
                return Optional.of(
                        new Trial(receiver, arguments, Optional.ofNullable(invoke(call, receiver, arguments))));
            } catch (InvocationTargetException e) {
                if (arguments.length == 0) {
                    return Optional.empty();
                }
            }
        }
        return Optional.empty();
    }

    private static @Nullable Object invoke(Executable call, @Nullable Object receiver, Object[] arguments)
            throws InvocationTargetException {
        try {
            return call instanceof Method method
                    ? method.invoke(receiver, arguments)
                    : ((Constructor<?>) call).newInstance(arguments);
        } catch (IllegalAccessException | InstantiationException e) {
            throw new IllegalStateException(call.toString(), e);
        }
    }

    private void check(Class<?> type) {
        for (Executable call : calls(type)) {
            List<Integer> references = references(call);
            if (references.isEmpty()) {
                continue;
            }
            Random random = random(call);
            Optional<Trial> trial = going(call, random);
            if (trial.isEmpty()) {
                references.forEach(k -> notReached.add(text(call, k)));
                continue;
            }
            for (int k : references) {
                check(call, k, trial.get(), random);
            }
        }
    }

    /** A parameter of a call. */
    private static String text(Executable call, int k) {
        return call.getDeclaringClass().getName() + "#"
                + call.getName().replaceAll(".*\\.", "") + "("
                + Arrays.stream(call.getParameters())
                        .map(each -> each.getType().getSimpleName() + " " + each.getName())
                        .collect(Collectors.joining(", "))
                + ") " + call.getParameters()[k].getName();
    }

    /** More than one trial, since a call may ask for an argument only where the others say so. */
    private void check(Executable call, int k, Trial first, Random random) {
        Parameter parameter = call.getParameters()[k];
        for (int i = 0; i < REPEATS; i++) {
            // A call may have emptied an argument, as a reader.
            Trial fresh = going(call, random).orElse(first);
            Object[] arguments = fresh.arguments().clone();
            arguments[k] = null;
            String answer = answer(call, fresh.receiver(), arguments, parameter.getName());
            if (!answer.isEmpty()) {
                unnamed.add(text(call, k) + ": " + answer);
                return;
            }
        }
        refused++;
    }

    private static List<Integer> references(Executable call) {
        List<Integer> references = new ArrayList<>();
        AnnotatedType[] annotated = call.getAnnotatedParameterTypes();
        for (int k = 0; k < call.getParameterCount(); k++) {
            boolean isNullable = Arrays.stream(annotated[k].getAnnotations())
                    .anyMatch(each -> each.annotationType().getSimpleName().equals("Nullable"));
            if (!call.getParameterTypes()[k].isPrimitive() && !isNullable) {
                references.add(k);
            }
        }
        return references;
    }

    /** Empty if null was refused by name. A loop that waits for null never ends, so nobody waits for it. */
    private static String answer(Executable call, @Nullable Object receiver, Object[] arguments, String name) {
        CompletableFuture<String> answer = new CompletableFuture<>();
        Thread caller = new Thread(() -> {
            try {
                answer.complete(answerOf(call, receiver, arguments, name));
            } catch (RuntimeException | Error e) {
                answer.completeExceptionally(e);
            }
        });
        caller.setDaemon(true);
        caller.start();
        try {
            return answer.get(LONGEST_SECONDS, TimeUnit.SECONDS);
        } catch (TimeoutException e) {
            return "no answer in " + LONGEST_SECONDS + " s";
        } catch (InterruptedException | ExecutionException e) {
            throw new IllegalStateException(call.toString(), e);
        }
    }

    private static String answerOf(Executable call, @Nullable Object receiver, Object[] arguments, String name) {
        try {
            invoke(call, receiver, arguments);
            return "taken";
        } catch (InvocationTargetException e) {
            Throwable cause = e.getTargetException();
            boolean isRefusal = cause instanceof NullPointerException || cause instanceof IllegalArgumentException;
            String message = String.valueOf(cause.getMessage());
            boolean isNamed = Pattern.compile("(?<![\\w.])" + name + "(?!\\w)")
                    .matcher(message)
                    .find();
            return isRefusal && isNamed ? "" : cause.getClass().getSimpleName() + " " + message;
        }
    }
}
