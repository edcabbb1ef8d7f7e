package dev.runnel.verification.architecture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.lang.ArchRule;
import dev.runnel.verification.Modules;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Each rule finds the class planted for it, and spares the ones that break none. */
class RulesBiteTest {
    private static final String ROOT = "dev.runnel.verification.planted";
    private static final JavaClasses PLANTED = Modules.planted(ROOT);
    private static final Walls WALLS = new Walls(ROOT);
    private static final Habits HABITS = new Habits(ROOT);

    @ParameterizedTest
    @MethodSource
    void finds(ArchRule rule, String planted) {
        String report = rule.evaluate(PLANTED).getFailureReport().toString();
        assertThat(report).contains(planted).doesNotContain("Proof.of", ".Pipe shows", ".Pipe has", ".Series has");
    }

    static Stream<Arguments> finds() {
        return Stream.of(
                arguments(WALLS.rainWithoutPipes(), "RainThatKnowsPipes"),
                arguments(WALLS.pipesWithoutRain(), "PipeThatKnowsRain"),
                arguments(WALLS.physicsWithoutTime(), "PipeThatKnowsTime"),
                arguments(WALLS.statisticsWithoutRain(), "LawThatKnowsRain"),
                arguments(WALLS.timeseriesAtTheBottom(), "SeriesThatKnowsPipes"),
                arguments(WALLS.nothingNeedsTheProof(), "SeriesThatNeedsProof"),
                arguments(WALLS.internalsStayInTheirModule(), "RainThatKnowsSecrets"),
                arguments(WALLS.optionalLibraryBehindOneClass(), "RainThatKnowsGeometry"),
                arguments(WALLS.noCycles(), "Cycle detected"),
                arguments(
                        HABITS.signaturesSpeakJavaAndRunnel(),
                        "roots() shows org.apache.commons.math3.complex.Complex"),
                arguments(HABITS.librariesDoNotPrint(), "SeriesThatPrints"),
                arguments(HABITS.librariesDoNotLog(), "SeriesThatLogs"),
                arguments(HABITS.nothingIsLeftToTheMachine(), "ZoneId.systemDefault()"),
                arguments(HABITS.nothingIsLeftToTheMachine(), "String.format(java.lang.String, [Ljava.lang.Object;)"),
                arguments(HABITS.packagesAreNullMarked(), "Rain is in a package without @NullMarked"),
                arguments(HABITS.publicTypesStateTheirPromise(), "SeriesWithoutPromise"),
                arguments(HABITS.valuesComeFromFactories(), "SeriesWithConstructor"));
    }

    @Test
    void everyRuleIsTried() {
        long tried = finds().map(row -> ((ArchRule) row.get()[0]).getDescription())
                .distinct()
                .count();
        assertThat(tried).isEqualTo(WALLS.all().size() + HABITS.all().size());
    }
}
