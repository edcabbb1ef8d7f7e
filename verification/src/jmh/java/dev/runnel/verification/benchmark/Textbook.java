package dev.runnel.verification.benchmark;

/** Circular pipes as ten lines of a textbook: θ = 2 acos(1 − 2y/D), without checks, and inexact in thin films. */
final class Textbook {
    static final double GRAVITY = 9.80665;

    private Textbook() {}

    static double area(double depth, double diameter) {
        double angle = 2 * Math.acos(1 - 2 * depth / diameter);
        return diameter * diameter * (angle - Math.sin(angle)) / 8;
    }

    static double manning(double depth, double diameter, double gradient, double n) {
        double angle = 2 * Math.acos(1 - 2 * depth / diameter);
        double area = diameter * diameter * (angle - Math.sin(angle)) / 8;
        double perimeter = diameter * angle / 2;
        return Math.pow(area, 5.0 / 3) * Math.pow(perimeter, -2.0 / 3) * Math.sqrt(gradient) / n;
    }

    static double colebrookWhite(double depth, double diameter, double gradient, double roughness, double viscosity) {
        double angle = 2 * Math.acos(1 - 2 * depth / diameter);
        double area = diameter * diameter * (angle - Math.sin(angle)) / 8;
        double radius = area / (diameter * angle / 2);
        double scale = Math.sqrt(8 * GRAVITY * radius * gradient);
        return area * scale * -2 * Math.log10(roughness / (14.8 * radius) + 2.51 * viscosity / (4 * radius * scale));
    }

    static double critical(double depth, double diameter) {
        double angle = 2 * Math.acos(1 - 2 * depth / diameter);
        double area = diameter * diameter * (angle - Math.sin(angle)) / 8;
        return area * Math.sqrt(GRAVITY * area / (diameter * Math.sin(angle / 2)));
    }
}
