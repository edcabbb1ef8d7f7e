package dev.runnel.verification.calculation;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

class KeptAnswersTest {
    @Test
    void whatWasKeptIsComputedAgainAfterItWasDropped() {
        Map<String, Integer> kept = KeptAnswers.map();
        LastAnswer<Integer> last = new LastAnswer<>();
        AtomicInteger computed = new AtomicInteger();
        for (int i = 0; i < 3; i++) {
            kept.computeIfAbsent("asked", key -> computed.incrementAndGet());
            last.of(List.of("asked"), computed::incrementAndGet);
        }
        assertThat(computed).hasValue(2);
        KeptAnswers.drop();
        kept.computeIfAbsent("asked", key -> computed.incrementAndGet());
        last.of(List.of("asked"), computed::incrementAndGet);
        assertThat(computed).hasValue(4);
    }

    /** What tables that run side by side fill together is a collection of this package of the JDK. */
    @Test
    void noCalculationKeepsAnswersElsewhere() {
        noClasses()
                .that()
                .resideInAPackage("dev.runnel.verification.calculation")
                .and()
                .doNotBelongToAnyOf(KeptAnswers.class, LastAnswer.class)
                .should()
                .dependOnClassesThat()
                .resideInAPackage("java.util.concurrent")
                .because("KeptAnswers.drop() must reach all that is kept")
                .check(new ClassFileImporter()
                        .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
                        .importPackages("dev.runnel.verification.calculation"));
    }
}
