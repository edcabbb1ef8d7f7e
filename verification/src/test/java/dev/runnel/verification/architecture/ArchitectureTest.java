package dev.runnel.verification.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.lang.ArchRule;
import dev.runnel.verification.Modules;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The walls and habits hold for everything that is shipped. */
class ArchitectureTest {
    private static final String ROOT = "dev.runnel";
    private static final JavaClasses SHIPPED = Modules.classes();

    @ParameterizedTest
    @MethodSource
    void rules(ArchRule rule) {
        rule.check(SHIPPED);
    }

    static Stream<ArchRule> rules() {
        return Stream.concat(new Walls(ROOT).all().stream(), new Habits(ROOT).all().stream());
    }

    @ParameterizedTest
    @ValueSource(strings = {"internal", "timeseries", "hydraulics", "rainfall", "verification"})
    void everyModuleWasRead(String module) {
        assertThat(SHIPPED).anyMatch(type -> type.getPackageName().startsWith(ROOT + "." + module));
    }
}
