package dev.runnel.verification.architecture;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import com.tngtech.archunit.library.dependencies.SliceAssignment;
import com.tngtech.archunit.library.dependencies.SliceIdentifier;
import java.util.List;

/** Who may know whom. */
final class Walls {
    private final String root;

    /** Rules for the packages below {@code root}, which is {@code dev.runnel} except in the test of the rules. */
    Walls(String root) {
        this.root = root;
    }

    List<ArchRule> all() {
        return List.of(
                rainWithoutPipes(),
                pipesWithoutRain(),
                physicsWithoutTime(),
                statisticsWithoutRain(),
                timeseriesAtTheBottom(),
                nothingNeedsTheProof(),
                internalsStayInTheirModule(),
                optionalLibraryBehindOneClass(),
                noCycles());
    }

    ArchRule rainWithoutPipes() {
        return noClasses()
                .that()
                .resideInAPackage(root + ".rainfall..")
                .should()
                .dependOnClassesThat()
                .resideInAPackage(root + ".hydraulics..")
                .because("rain and pipes exchange only series and intervals");
    }

    ArchRule pipesWithoutRain() {
        return noClasses()
                .that()
                .resideInAPackage(root + ".hydraulics..")
                .should()
                .dependOnClassesThat()
                .resideInAPackage(root + ".rainfall..")
                .because("rain and pipes exchange only series and intervals");
    }

    ArchRule physicsWithoutTime() {
        return noClasses()
                .that()
                .resideInAPackage(root + ".hydraulics..")
                .and()
                .resideOutsideOfPackages(
                        root + ".hydraulics.monitoring..",
                        root + ".hydraulics.evidence..",
                        root + ".hydraulics.watch..")
                .should()
                .dependOnClassesThat()
                .resideInAPackage(root + ".timeseries..")
                .because(
                        "sections, flow, structures and water are physics; only monitoring, evidence and watch know readings in time");
    }

    ArchRule statisticsWithoutRain() {
        return noClasses()
                .that()
                .resideInAPackage(root + ".rainfall.distribution..")
                .should()
                .dependOnClassesThat(resideInAPackage(root + ".rainfall..")
                        .and(not(resideInAnyPackage(root + ".rainfall.distribution..", root + ".rainfall.internal.."))))
                .because("distributions are pure statistics; annual maxima and peaks of rain stand on them");
    }

    ArchRule timeseriesAtTheBottom() {
        return noClasses()
                .that()
                .resideInAnyPackage(root + ".timeseries..", root + ".internal..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(root + ".hydraulics..", root + ".rainfall..")
                .because("a series knows no pipe and no rain");
    }

    ArchRule nothingNeedsTheProof() {
        return noClasses()
                .that()
                .resideInAnyPackage(
                        root + ".internal..", root + ".timeseries..", root + ".hydraulics..", root + ".rainfall..")
                .should()
                .dependOnClassesThat()
                .resideInAPackage(root + ".verification..")
                .because("the proof stands outside of what it proves");
    }

    ArchRule internalsStayInTheirModule() {
        return classes()
                .that()
                .resideInAPackage(root + "..")
                .should(new ArchCondition<>("keep out of internal packages of other modules") {
                    @Override
                    public void check(JavaClass user, ConditionEvents events) {
                        for (Dependency use : user.getDirectDependenciesFromSelf()) {
                            String used = use.getTargetClass().getPackageName();
                            if (isInternal(used)
                                    && !used.equals(root + ".internal")
                                    && !module(used).equals(module(user.getPackageName()))) {
                                events.add(SimpleConditionEvent.violated(user, use.getDescription()));
                            }
                        }
                    }
                });
    }

    ArchRule optionalLibraryBehindOneClass() {
        return noClasses()
                .that()
                .resideInAPackage(root + "..")
                .and()
                .doNotHaveSimpleName("Polygons")
                .should()
                .dependOnClassesThat()
                .resideInAPackage("org.locationtech..")
                .because("the geometry library is optional: who has it not must only miss catchments");
    }

    ArchRule noCycles() {
        return slices().assignedFrom(new SliceAssignment() {
                    @Override
                    public SliceIdentifier getIdentifierOf(JavaClass type) {
                        String name = type.getPackageName();
                        return name.startsWith(root + ".")
                                ? SliceIdentifier.of(withoutInternal(name))
                                : SliceIdentifier.ignore();
                    }

                    @Override
                    public String getDescription() {
                        return "packages, each with its internal one";
                    }
                })
                .should()
                .beFreeOfCycles();
    }

    /** The shared room counts as one of its own; a module's internal one as part of what it stands in. */
    private static String withoutInternal(String packageName) {
        int at = (packageName + ".").indexOf(".internal.");
        return at < 0 ? packageName : packageName.substring(0, at);
    }

    private boolean isInternal(String packageName) {
        return packageName.startsWith(root + ".") && (packageName + ".").contains(".internal.");
    }

    /** The first word below the root: each module has its own. */
    private String module(String packageName) {
        return packageName.startsWith(root + ".")
                ? packageName.substring(root.length() + 1).split("\\.", 2)[0]
                : "";
    }
}
