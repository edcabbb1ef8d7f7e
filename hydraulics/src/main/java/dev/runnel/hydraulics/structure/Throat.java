package dev.runnel.hydraulics.structure;

import dev.runnel.hydraulics.internal.Roots;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.internal.Text;

/** The control section of a long-throated flume: its shape and the critical flow of a given energy through it. */
interface Throat {
    /** Returns the wetted area at a depth, m². */
    double area(double depth);

    /** Returns the surface width at a depth, m. */
    double topWidth(double depth);

    /** Returns the depth at which the flow of an energy is critical, y + A/(2T) = H, m. */
    double criticalDepth(double energy);

    /** Returns the share that the boundary layer leaves of the width, δ taken off the bed and both sides. */
    double widthShare(double displacement);

    /** Returns bottom width or diameter, m. */
    double width();

    default double criticalDischarge(double energy) {
        double depth = criticalDepth(energy);
        double area = area(depth);
        return area * Math.sqrt(GravityFactors.G * area / topWidth(depth));
    }

    /** A rectangle, side slope 0, or a trapezoid with sides m horizontal to 1 vertical. */
    record Trapezoid(double width, double slope) implements Throat {
        @Override
        public double area(double depth) {
            return (width + slope * depth) * depth;
        }

        @Override
        public double topWidth(double depth) {
            return width + 2 * slope * depth;
        }

        @Override
        public double criticalDepth(double energy) {
            if (slope == 0) {
                return 2.0 / 3 * energy;
            }
            // 5 m y² + (3 b − 4 m H) y − 2 H b = 0, the positive root without loss of digits
            double b = 3 * width - 4 * slope * energy;
            double c = 40 * slope * width * energy;
            double root = Math.sqrt(b * b + c);
            return b > 0 ? 4 * width * energy / (b + root) : (root - b) / (10 * slope);
        }

        @Override
        public double widthShare(double displacement) {
            return 1 - 2 * displacement / width * (Math.sqrt(1 + slope * slope) - slope);
        }

        @Override
        public String toString() {
            return slope == 0
                    ? "rectangular, b = " + Text.number(width) + " m"
                    : "trapezoidal, b = " + Text.number(width) + " m, sides 1:" + Text.number(slope);
        }
    }

    /** A half circle below vertical walls. */
    record UShape(double width) implements Throat {
        private CircularSection circle() {
            return CircularSection.ofDiameter(width);
        }

        @Override
        public double area(double depth) {
            double radius = width / 2;
            return depth <= radius ? circle().area(depth) : Math.PI / 2 * radius * radius + width * (depth - radius);
        }

        @Override
        public double topWidth(double depth) {
            return depth <= width / 2 ? circle().topWidth(depth) : width;
        }

        @Override
        public double criticalDepth(double energy) {
            double radius = width / 2;
            double atSpringing = radius + area(radius) / (2 * width);
            if (energy >= atSpringing) {
                // walls: y + y/2 - c/2 = H with c what the round bottom lacks of a box
                return (2 * energy + radius - Math.PI / 4 * radius) / 3;
            }
            return Roots.between(y -> y + area(y) / (2 * topWidth(y)) - energy, energy / 2, energy);
        }

        @Override
        public double widthShare(double displacement) {
            return 1 - 2 * displacement / width;
        }

        @Override
        public String toString() {
            return "U-throated, D = " + Text.number(width) + " m";
        }
    }
}
