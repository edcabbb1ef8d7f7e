package dev.runnel.verification.simulation;

import org.apache.commons.math3.distribution.GammaDistribution;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import org.apache.commons.math3.util.FastMath;

/**
 * Random draws for one purpose of one site. Each purpose has a stream of its own, named by a text, so that a draw more in
 * one place changes nothing elsewhere: a site with a fault and the same site without it share everything but the fault.
 */
final class Draws {
    private final RandomGenerator random;

    private Draws(RandomGenerator random) {
        this.random = random;
    }

    static Draws of(long seed, String purpose) {
        long mixed = mix(seed);
        for (int i = 0; i < purpose.length(); i++) {
            mixed = mix(mixed ^ purpose.charAt(i));
        }
        return new Draws(new Well19937c(new int[] {(int) mixed, (int) (mixed >>> 32)}));
    }

    /** Steele, Lea and Flood (2014), Fast splittable pseudorandom number generators, figure 16: neighbours part ways. */
    private static long mix(long value) {
        long z = value + 0x9E3779B97F4A7C15L;
        z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return z ^ (z >>> 31);
    }

    double uniform(double from, double to) {
        return from + (to - from) * random.nextDouble();
    }

    double logUniform(double from, double to) {
        return FastMath.exp(uniform(FastMath.log(from), FastMath.log(to)));
    }

    double normal() {
        return random.nextGaussian();
    }

    double logNormal(double median, double sd) {
        return median * FastMath.exp(sd * normal());
    }

    double exponential(double mean) {
        return -mean * FastMath.log(1 - random.nextDouble());
    }

    double gamma(double shape, double scale) {
        return new GammaDistribution(random, shape, scale).sample();
    }

    /** Student's t of three degrees of freedom with a standard deviation of 1: heavy tails, cut at 6. */
    double heavy() {
        double a = normal();
        double b = normal();
        double c = normal();
        double t = normal() / FastMath.sqrt(a * a + b * b + c * c);
        return FastMath.max(-6, FastMath.min(6, t));
    }

    boolean chance(double probability) {
        return random.nextDouble() < probability;
    }

    /** A whole number from 0 to {@code bound} - 1. */
    int below(int bound) {
        return random.nextInt(bound);
    }

    double pick(double... values) {
        return values[below(values.length)];
    }
}
