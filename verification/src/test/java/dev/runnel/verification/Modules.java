package dev.runnel.verification;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.rainfall.gauge.TippingBucket;
import dev.runnel.timeseries.Series;
import java.net.URL;
import java.util.List;
import java.util.Map;

/** The modules as they are on the path: jars under {@code mvn verify}, folders of classes under {@code mvn test}. */
public final class Modules {
    private static final Map<String, Class<?>> ONE_OF_EACH = Map.of(
            "timeseries", Series.class,
            "hydraulics", CircularSection.class,
            "rainfall", TippingBucket.class,
            "verification", Check.class);

    private Modules() {}

    /** Their names, in the order in which they build on each other. */
    public static List<String> names() {
        return List.of("timeseries", "hydraulics", "rainfall", "verification");
    }

    /** The classes of all modules, without their tests. */
    public static JavaClasses classes() {
        return Shipped.CLASSES;
    }

    /** The classes planted to be found by the rules, below one package of the tests. */
    public static JavaClasses planted(String rootPackage) {
        String folder = rootPackage.replace('.', '/') + "/";
        return new ClassFileImporter()
                .withImportOption(location -> location.contains(folder))
                .importUrls(List.of(location(Modules.class)));
    }

    /** Read once, when first asked for: it takes a second. */
    private static final class Shipped {
        static final JavaClasses CLASSES = new ClassFileImporter()
                .importUrls(ONE_OF_EACH.values().stream().map(Modules::location).toList());
    }

    private static URL location(Class<?> type) {
        return type.getProtectionDomain().getCodeSource().getLocation();
    }
}
