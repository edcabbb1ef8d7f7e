package dev.runnel.verification.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import com.tngtech.archunit.library.GeneralCodingRules;
import java.util.List;
import java.util.Set;
import org.apiguardian.api.API;
import org.jspecify.annotations.NullMarked;

/** What every class does alike. */
final class Habits {
    private static final Set<API.Status> PROMISES = Set.of(API.Status.STABLE, API.Status.EXPERIMENTAL);

    private final String root;

    /** Rules for the packages below {@code root}, which is {@code dev.runnel} except in the test of the rules. */
    Habits(String root) {
        this.root = root;
    }

    List<ArchRule> all() {
        return List.of(
                signaturesSpeakJavaAndRunnel(),
                librariesDoNotPrint(),
                librariesDoNotLog(),
                nothingIsLeftToTheMachine(),
                packagesAreNullMarked(),
                publicTypesStateTheirPromise(),
                valuesComeFromFactories());
    }

    /** A library behind the scenes stays replaceable only if no caller can see it. */
    ArchRule signaturesSpeakJavaAndRunnel() {
        return classes()
                .that()
                .resideInAPackage(root + "..")
                .and()
                .resideOutsideOfPackages(root + ".internal..", "..internal..")
                .should(new PlainSignatures(root));
    }

    ArchRule librariesDoNotPrint() {
        return noClasses()
                .that()
                .resideInAnyPackage(libraries())
                .should(GeneralCodingRules.ACCESS_STANDARD_STREAMS)
                .because("what is printed is the caller's business");
    }

    ArchRule librariesDoNotLog() {
        return noClasses()
                .that()
                .resideInAnyPackage(libraries())
                .should(GeneralCodingRules.USE_JAVA_UTIL_LOGGING)
                .orShould()
                .callMethod(System.class, "exit", int.class)
                .because("a library answers by values and exceptions only");
    }

    ArchRule nothingIsLeftToTheMachine() {
        return noClasses()
                .that()
                .resideInAPackage(root + "..")
                .should()
                .callCodeUnitWhere(new MachineDefaults())
                .because("the same input gives the same answer on every machine, on every day");
    }

    ArchRule packagesAreNullMarked() {
        return classes()
                .that()
                .resideInAPackage(root + "..")
                .should(new ArchCondition<>("be in a @NullMarked package") {
                    @Override
                    public void check(JavaClass type, ConditionEvents events) {
                        boolean marked = type.getPackage().isAnnotatedWith(NullMarked.class);
                        events.add(new SimpleConditionEvent(
                                type, marked, type.getName() + " is in a package without @NullMarked"));
                    }
                });
    }

    ArchRule publicTypesStateTheirPromise() {
        return classes()
                .that()
                .resideInAPackage(root + "..")
                .and()
                .resideOutsideOfPackages(root + ".internal..", "..internal..")
                .and()
                .arePublic()
                .and()
                .areTopLevelClasses()
                .should(new ArchCondition<>("carry @API with status STABLE or EXPERIMENTAL and since") {
                    @Override
                    public void check(JavaClass type, ConditionEvents events) {
                        boolean stated = type.tryGetAnnotationOfType(API.class)
                                .filter(api -> PROMISES.contains(api.status())
                                        && !api.since().isEmpty())
                                .isPresent();
                        events.add(
                                new SimpleConditionEvent(type, stated, type.getName() + " does not state its promise"));
                    }
                });
    }

    /** A constructor can never return a cached or checked instance, nor have a name; a record's is part of its shape. */
    ArchRule valuesComeFromFactories() {
        return noClasses()
                .that()
                .resideInAnyPackage(libraries())
                .and()
                .resideOutsideOfPackages(root + ".internal..", "..internal..")
                .and()
                .arePublic()
                .and()
                .areNotRecords()
                .and()
                .areNotAssignableTo(Throwable.class)
                .should(new ArchCondition<>("have public constructors") {
                    @Override
                    public void check(JavaClass type, ConditionEvents events) {
                        boolean open = type.getConstructors().stream()
                                .anyMatch(constructor ->
                                        constructor.getModifiers().contains(JavaModifier.PUBLIC));
                        events.add(new SimpleConditionEvent(type, open, type.getName() + " has a public constructor"));
                    }
                });
    }

    private String[] libraries() {
        return new String[] {root + ".internal..", root + ".timeseries..", root + ".hydraulics..", root + ".rainfall.."
        };
    }
}
