package dev.runnel.timeseries.contract;

import dev.runnel.timeseries.Interval;
import java.io.StringReader;
import java.lang.reflect.Array;
import java.lang.reflect.GenericArrayType;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.Proxy;
import java.lang.reflect.Type;
import java.lang.reflect.TypeVariable;
import java.lang.reflect.WildcardType;
import java.nio.charset.StandardCharsets;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.Month;
import java.time.MonthDay;
import java.time.Year;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** Objects to call with: a few of each type, those of the library as its own calls made them. */
final class Samples {
    private static final int MOST_OF_A_TYPE = 12;

    /** Longer ones hold millions of steps. */
    private static final Duration LONGEST = Duration.ofDays(40);

    private final Map<Class<?>, List<Object>> byType = new HashMap<>();

    Samples() {
        Instant start = Instant.parse("2026-03-01T00:00:00Z");
        List.of(
                        "a",
                        "1",
                        Duration.ofMinutes(5),
                        Duration.ofHours(1),
                        Duration.ofDays(1),
                        start,
                        start.plusSeconds(86_400),
                        LocalDate.of(2026, 3, 1),
                        LocalDate.of(2026, 3, 9),
                        LocalTime.NOON,
                        ZoneOffset.UTC,
                        Month.MAY,
                        DayOfWeek.FRIDAY,
                        Year.of(2026),
                        YearMonth.of(2026, 3),
                        MonthDay.of(5, 15),
                        StandardCharsets.UTF_8,
                        OptionalDouble.of(1),
                        OptionalInt.of(1),
                        0.5,
                        1.0,
                        3)
                .forEach(this::add);
        add(new double[] {1, 2, 4, 3, 6, 5, 9, 7, 8, 11, 10, 12});
        add(new double[] {0.5, 0.7});
        add(new double[] {0.3});
        add(IntStream.range(0, 40).mapToDouble(i -> i + 0.25 * (i % 3)).toArray());
        add(new long[] {1, 2});
        add(new int[] {1, 2});
        add(new boolean[] {false, true});
        add(new byte[] {0, 0});
    }

    /** Keeps an object as a sample of all its types, unless there are many. */
    void add(Object sample) {
        if (sample instanceof Interval interval && interval.duration().compareTo(LONGEST) > 0) {
            return;
        }
        for (Class<?> type : types(sample.getClass(), new LinkedHashSet<>())) {
            List<Object> known = byType.computeIfAbsent(type, each -> new ArrayList<>());
            if (known.size() < MOST_OF_A_TYPE
                    && known.stream().noneMatch(each -> each.getClass() == sample.getClass() && each.equals(sample))) {
                known.add(sample);
            }
        }
    }

    private static Set<Class<?>> types(Class<?> type, Set<Class<?>> into) {
        into.add(type);
        for (Class<?> each : type.getInterfaces()) {
            types(each, into);
        }
        if (type.getSuperclass() != null && type.getSuperclass() != Object.class) {
            types(type.getSuperclass(), into);
        }
        return into;
    }

    Optional<Object> any(Class<?> type, Random random) {
        List<Object> known = byType.getOrDefault(type, List.of());
        return known.isEmpty() ? Optional.empty() : Optional.of(known.get(random.nextInt(known.size())));
    }

    Optional<Object> of(Type type, Random random) {
        if (type instanceof Class<?> plain) {
            return ofClass(plain, random);
        }
        if (type instanceof WildcardType wild) {
            return of(wild.getLowerBounds().length > 0 ? wild.getLowerBounds()[0] : wild.getUpperBounds()[0], random);
        }
        if (type instanceof TypeVariable<?> variable) {
            return of(variable.getBounds()[0], random);
        }
        if (type instanceof GenericArrayType) {
            return Optional.empty();
        }
        ParameterizedType generic = (ParameterizedType) type;
        Class<?> raw = (Class<?>) generic.getRawType();
        Type[] parts = generic.getActualTypeArguments();
        if (Collection.class.isAssignableFrom(raw) || raw == Iterable.class) {
            return collection(raw, some(parts[0], random));
        }
        if (Map.class.isAssignableFrom(raw)) {
            return of(parts[1], random).map(value -> map(raw, some(parts[0], random), value));
        }
        if (raw == Optional.class) {
            return of(parts[0], random).map(Optional::of);
        }
        return ofClass(raw, random);
    }

    private List<Object> some(Type type, Random random) {
        List<Object> some = new ArrayList<>();
        int count = 1 + random.nextInt(3);
        for (int i = 0; i < count; i++) {
            of(type, random).ifPresent(some::add);
        }
        return some;
    }

    private static Optional<Object> collection(Class<?> raw, List<Object> some) {
        if (raw.isAssignableFrom(List.class) || raw == Collection.class || raw == Iterable.class) {
            return Optional.of(some);
        }
        if (raw.isAssignableFrom(SortedSet.class)) {
            boolean isOrdered = some.stream().allMatch(Comparable.class::isInstance);
            return raw == SortedSet.class && !isOrdered
                    ? Optional.empty()
                    : Optional.of(isOrdered ? new TreeSet<>(some) : new LinkedHashSet<>(some));
        }
        return Optional.empty();
    }

    private static Object map(Class<?> raw, List<Object> keys, Object value) {
        Map<Object, Object> map = raw == SortedMap.class || keys.stream().allMatch(Comparable.class::isInstance)
                ? new TreeMap<>()
                : new HashMap<>();
        keys.forEach(key -> map.put(key, value));
        return map;
    }

    private Optional<Object> ofClass(Class<?> type, Random random) {
        if (type == double.class) {
            double[] values = {0.5, 1, 0.2, 2, 0.05, 5, 0.013, 20, 0};
            return Optional.of(values[random.nextInt(values.length)]);
        }
        if (type == int.class) {
            int[] values = {1, 2, 5, 10, 0};
            return Optional.of(values[random.nextInt(values.length)]);
        }
        if (type == long.class) {
            return Optional.of((long) random.nextInt(3));
        }
        if (type == boolean.class) {
            return Optional.of(random.nextBoolean());
        }
        if (type == Object.class) {
            return Optional.of("a");
        }
        if (type.isArray() && !type.getComponentType().isPrimitive()) {
            List<Object> some = some(type.getComponentType(), random);
            Object array = Array.newInstance(type.getComponentType(), some.size());
            for (int i = 0; i < some.size(); i++) {
                Array.set(array, i, some.get(i));
            }
            return some.isEmpty() ? Optional.empty() : Optional.of(array);
        }
        if (type == java.io.Reader.class) {
            return Optional.of(new StringReader("time,value\n2026-03-01T00:00:00Z,1\n2026-03-01T00:05:00Z,2\n"));
        }
        if (type == Appendable.class) {
            return Optional.of(new java.io.CharArrayWriter());
        }
        if (type == java.util.function.DoubleSupplier.class) {
            return Optional.of((java.util.function.DoubleSupplier) () -> 0.5);
        }
        if (type.isInterface() && type.getName().startsWith("java.util.function.")) {
            return Optional.of(Proxy.newProxyInstance(
                    Samples.class.getClassLoader(), new Class<?>[] {type}, (proxy, method, arguments) -> {
                        if (method.getName().equals("toString")) {
                            return "function";
                        }
                        if (method.getName().equals("hashCode")) {
                            return 1;
                        }
                        if (method.getName().equals("equals")) {
                            return proxy == arguments[0];
                        }
                        return answer(method.getReturnType(), arguments);
                    }));
        }
        return any(type, random);
    }

    /** What a function gives: its first argument, as far as that is of the right type. */
    private static @Nullable Object answer(Class<?> result, Object @Nullable [] arguments) {
        Object first = arguments == null || arguments.length == 0 ? Double.valueOf(1) : arguments[0];
        if (result == double.class) {
            return first instanceof Double ? first : Double.valueOf(1);
        }
        if (result == boolean.class) {
            return true;
        }
        if (result == int.class) {
            return Integer.valueOf(1);
        }
        return result == void.class ? null : first;
    }
}
