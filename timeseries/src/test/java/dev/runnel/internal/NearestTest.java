package dev.runnel.internal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class NearestTest {
    private static final List<String> KNOWN = List.of("depth", "velocity", "logging interval", "zone");

    @Test
    void findsTheWordThatWasMeant() {
        assertThat(Nearest.of("dpeth", KNOWN)).as("swapped").contains("depth");
        assertThat(Nearest.of("Velocty", KNOWN))
                .as("dropped, and in upper case")
                .contains("velocity");
        assertThat(Nearest.of("loging intervall", KNOWN)).contains("logging interval");
        assertThat(Nearest.of("rain", KNOWN)).isEmpty();
        assertThat(Nearest.of("", KNOWN)).isEmpty();
        assertThat(Nearest.of("x".repeat(1_000_000), KNOWN)).isEmpty();
        assertThat(Nearest.of("depth", List.of())).isEmpty();
        assertThat(Nearest.hint("zome", KNOWN)).isEqualTo("; did you mean \"zone\"?");
        assertThat(Nearest.hint("rainfall", KNOWN)).isEmpty();
    }
}
