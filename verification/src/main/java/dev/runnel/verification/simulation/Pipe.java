package dev.runnel.verification.simulation;

import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.ClosedSection;
import dev.runnel.hydraulics.section.Egg;
import dev.runnel.hydraulics.section.Horseshoe;
import dev.runnel.hydraulics.section.RectangularSection;
import java.math.BigDecimal;
import java.math.MathContext;

/** A section as tables over the depth, so that one site costs little and is the same on every machine. */
final class Pipe {
    private static final int STEPS = 1200;
    private static final MathContext DIGITS = new MathContext(12);

    private final ClosedSection section;
    private final double height;
    private final double[] area = new double[STEPS + 1];
    private final double[] perimeter = new double[STEPS + 1];
    private final double[] width = new double[STEPS + 1];

    private Pipe(ClosedSection section) {
        this.section = section;
        this.height = section.height();
        for (int i = 0; i <= STEPS; i++) {
            double depth = Math.min(height, height * i / STEPS);
            area[i] = rounded(section.area(depth));
            perimeter[i] = rounded(section.wettedPerimeter(depth));
            width[i] = rounded(section.topWidth(depth));
        }
    }

    static Pipe of(ClosedSection section) {
        return new Pipe(section);
    }

    /** A shape and a size: circles are half of all, 0.3 to 1.2 m. */
    static Pipe drawn(Draws draws) {
        double size = draws.pick(0.3, 0.375, 0.45, 0.525, 0.6, 0.675, 0.75, 0.9, 1.05, 1.2);
        return of(
                switch (draws.below(6)) {
                    case 0 -> Egg.normal(rounded(size / 1.5));
                    case 1 -> RectangularSection.box(size, rounded(size * draws.pick(0.75, 1)));
                    case 2 -> Horseshoe.ofDiameter(size);
                    default -> CircularSection.ofDiameter(size);
                });
    }

    /** Twelve digits: the last ones of a sine may differ between machines. */
    private static double rounded(double value) {
        return new BigDecimal(value).round(DIGITS).doubleValue();
    }

    ClosedSection section() {
        return section;
    }

    double height() {
        return height;
    }

    /** Wetted area, m²; that of the full pipe above the soffit. */
    double area(double depth) {
        return at(area, depth);
    }

    double perimeter(double depth) {
        return at(perimeter, depth);
    }

    double width(double depth) {
        return at(width, depth);
    }

    private double at(double[] table, double depth) {
        double position = depth / height * STEPS;
        if (!(position < STEPS)) {
            return table[STEPS];
        }
        int below = Math.max(0, (int) position);
        return table[below] + (position - below) * (table[below + 1] - table[below]);
    }
}
