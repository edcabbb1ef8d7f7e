package dev.runnel.hydraulics.structure;

import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.internal.Roots;

/** Critical flow in a section, which needs no gradient and no roughness. */
final class CriticalFlow {
    private CriticalFlow() {}

    /** Returns the discharge that is critical at a depth, √(g A³/T), m³/s. */
    static double discharge(CrossSection section, double depth) {
        double area = section.area(depth);
        return area * Math.sqrt(GravityFactors.G * area / section.topWidth(depth));
    }

    /** Returns the critical depth of an energy, y + A/(2T) = H, m; the section widens or stays as wide upwards. */
    static double depth(CrossSection section, double energy) {
        return Roots.between(y -> y + section.area(y) / (2 * section.topWidth(y)) - energy, energy / 2, energy);
    }
}
