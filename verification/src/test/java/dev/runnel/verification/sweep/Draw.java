package dev.runnel.verification.sweep;

import java.util.SplittableRandom;

/** Random numbers of one case. */
final class Draw {
    private final SplittableRandom random;

    Draw(long seed) {
        this.random = new SplittableRandom(seed);
    }

    double between(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    /** Every decade alike. */
    double decades(double low, double high) {
        return low * Math.pow(high / low, random.nextDouble());
    }

    /** Shares of a whole, the ends included: thick in the middle, and with both ends down to 1e-12. */
    double share() {
        return switch (random.nextInt(4)) {
            case 0 -> decades(1e-12, 1e-2);
            case 1 -> 1 - decades(1e-12, 1e-2);
            default -> between(0.01, 0.99);
        };
    }

    int below(int bound) {
        return random.nextInt(bound);
    }

    boolean heads() {
        return random.nextBoolean();
    }
}
