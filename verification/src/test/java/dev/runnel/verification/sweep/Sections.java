package dev.runnel.verification.sweep;

import dev.runnel.hydraulics.section.ArchSection;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.hydraulics.section.Egg;
import dev.runnel.hydraulics.section.Horseshoe;
import dev.runnel.hydraulics.section.RectangularSection;
import dev.runnel.hydraulics.section.TrapezoidalSection;
import dev.runnel.hydraulics.section.USection;

/** Random sections, as sewers have them and somewhat beyond. */
final class Sections {
    private Sections() {}

    static CrossSection circle(Draw draw) {
        return CircularSection.ofDiameter(draw.decades(0.05, 8));
    }

    static CrossSection closed(Draw draw) {
        double size = draw.decades(0.1, 6);
        CrossSection section = switch (draw.below(6)) {
            case 0 -> CircularSection.ofDiameter(size);
            case 1 -> Egg.normal(size);
            case 2 -> RectangularSection.box(size, size * draw.decades(0.2, 5));
            case 3 -> Horseshoe.ofDiameter(size);
            case 4 -> ArchSection.of(size, size * draw.between(0.5, 1.5));
            default -> Egg.inverted(size);
        };
        return draw.below(4) == 0 ? section.withSediment(section.height() * draw.between(0.01, 0.4)) : section;
    }

    static CrossSection open(Draw draw) {
        double size = draw.decades(0.1, 6);
        return switch (draw.below(3)) {
            case 0 -> RectangularSection.open(size);
            case 1 -> TrapezoidalSection.ofBedWidthAndSideSlope(size, draw.between(0.1, 4));
            default -> USection.open(size);
        };
    }

    static CrossSection any(Draw draw) {
        return draw.below(3) == 0 ? open(draw) : closed(draw);
    }

    /** A depth from a film to the brim; an open section is filled to five times a metre. */
    static double depth(Draw draw, CrossSection section) {
        double height = Double.isFinite(section.height()) ? section.height() : 5;
        return Math.min(height * draw.share(), height);
    }
}
