package dev.runnel.examples.review;

import dev.runnel.hydraulics.flow.ColebrookWhite;
import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.flow.Resistance;
import dev.runnel.hydraulics.monitoring.PipeMonitor;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.ClosedSection;
import dev.runnel.hydraulics.section.Egg;
import dev.runnel.hydraulics.section.RectangularSection;
import java.util.List;
import java.util.Set;

/** The pipe and the monitor in it, as the site file tells of them. */
final class PipeKeys {
    private final SiteValues values;

    private PipeKeys(SiteValues values) {
        this.values = values;
    }

    static PipeMonitor monitor(SiteValues values) {
        return new PipeKeys(values).monitor();
    }

    private PipeMonitor monitor() {
        Conduit conduit = Conduit.of(section(), Gradient.of(values.gradient("gradient")), resistance());
        PipeMonitor plain = PipeMonitor.of(conduit);
        double offset = values.measure("sensor offset", "0", Measure.LENGTH);
        PipeMonitor raised = values.accepted("sensor offset", offset, plain::withSensorOffset);
        double sediment = values.measure("sediment depth", "0", Measure.LENGTH);
        PipeMonitor silted = values.accepted("sediment depth", sediment, raised::withSediment);
        return values.accepted("velocity factor", values.number("velocity factor", 1), silted::withVelocityFactor);
    }

    private ClosedSection section() {
        String shape = values.choice("shape", "circular", List.of("circular", "egg", "box"));
        Set<String> sizes = switch (shape) {
            case "egg" -> Set.of("width");
            case "box" -> Set.of("width", "height");
            default -> Set.of("diameter");
        };
        for (String size : List.of("diameter", "width", "height")) {
            if (values.has(size) && !sizes.contains(size)) {
                throw values.refused(size, "does not belong to the shape " + shape);
            }
        }
        return switch (shape) {
            case "egg" -> Egg.normal(values.positive("width", Measure.LENGTH));
            case "box" ->
                RectangularSection.box(
                        values.positive("width", Measure.LENGTH), values.positive("height", Measure.LENGTH));
            default -> CircularSection.ofDiameter(values.positive("diameter", Measure.LENGTH));
        };
    }

    private Resistance resistance() {
        String text = values.text("roughness", "");
        String[] words = text.split("\\s+", 2);
        if (words.length == 2 && words[0].equalsIgnoreCase("colebrook-white")) {
            double ks = values.measureIn("roughness", words[1], Measure.LENGTH);
            ColebrookWhite law = values.accepted("roughness", ks, ColebrookWhite::ofRoughness);
            double celsius = values.measure("water temperature", "10 C", Measure.TEMPERATURE);
            return values.accepted("water temperature", celsius, law::atTemperature);
        }
        if (words.length == 2 && words[0].equalsIgnoreCase("manning") && words[1].matches("[0-9]*\\.?[0-9]+")) {
            return values.accepted("roughness", Double.parseDouble(words[1]), Manning::of);
        }
        throw values.refused(
                "roughness", "must be such as \"colebrook-white 1.5 mm\" or \"manning 0.013\", was \"" + text + "\"");
    }
}
