package dev.runnel.rainfall.areal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.runnel.internal.Require;
import java.lang.reflect.Method;
import java.net.URL;
import java.net.URLClassLoader;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** As for a user who has not put the optional library on the class path. */
class WithoutGeometryLibraryTest {
    private static URL classes(Class<?> type) {
        return type.getProtectionDomain().getCodeSource().getLocation();
    }

    private static URLClassLoader loader() {
        URL[] ours = {classes(Catchment.class), classes(Require.class)};
        return new URLClassLoader(ours, ClassLoader.getPlatformClassLoader());
    }

    private static Class<?> load(ClassLoader loader, Class<?> type) throws ClassNotFoundException {
        return loader.loadClass(type.getName());
    }

    @Test
    void aCatchmentSaysWhatItLacksEveryTime() throws Exception {
        try (URLClassLoader loader = loader()) {
            Method parse = load(loader, Catchment.class).getMethod("parse", String.class);
            for (int i = 0; i < 2; i++) {
                assertThatThrownBy(() -> parse.invoke(null, "POLYGON ((0 0, 1 0, 1 1, 0 0))"))
                        .cause()
                        .isInstanceOf(IllegalStateException.class)
                        .hasMessage(
                                "a Catchment needs org.locationtech.jts:jts-core on the class path, which is lacking");
            }
            Method of = load(loader, Location.class).getMethod("of", double.class, double.class);
            List<Object> corners = List.of(of.invoke(null, 0, 0), of.invoke(null, 1, 0), of.invoke(null, 1, 1));
            Method inside = load(loader, Catchment.class).getMethod("of", List.class);
            assertThatThrownBy(() -> inside.invoke(null, corners)).cause().isInstanceOf(IllegalStateException.class);
        }
    }

    @Test
    void theRestWorks() throws Exception {
        try (URLClassLoader loader = loader()) {
            Class<?> weights = load(loader, GaugeWeights.class);
            assertThat(weights.getMethod("of", Map.class).invoke(null, Map.of("A", 3.0, "B", 1.0)))
                    .hasToString("GaugeWeights[A 0.75, B 0.25]");
            assertThat(weights.getMethods()).anyMatch(method -> method.getName().equals("thiessen"));
            Class<?> reduction = load(loader, ArealReduction.class);
            Object keersWescott = reduction.getMethod("keersWescott").invoke(null);
            Object factor = reduction
                    .getMethod("factor", double.class, Duration.class)
                    .invoke(keersWescott, 10.0, Duration.ofHours(1));
            assertThat((double) factor).isBetween(0.9, 0.92);
        }
    }
}
