package dev.runnel.rainfall.distribution;

/** Bounds of what is counted, so that an absurd number is refused and neither hangs nor fills the memory. Chosen here. */
final class Limits {
    /** Values of one array: 0.8 GB. */
    static final int MOST_VALUES = 100_000_000;

    /** Replicates of a bootstrap or of a simulation. */
    static final int MOST_REPLICATES = 1_000_000;

    private Limits() {}

    static int within(String name, int value, int least, int most) {
        if (value < least || value > most) {
            throw new IllegalArgumentException(name + " must be in [" + least + ", " + most + "], was " + value);
        }
        return value;
    }
}
