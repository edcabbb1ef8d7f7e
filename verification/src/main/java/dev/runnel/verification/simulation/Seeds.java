package dev.runnel.verification.simulation;

import java.util.Locale;

/** Ranges of seeds that never meet. */
enum Seeds {
    /** To build a watch with. */
    DEVELOPING(1_000_000_000L),
    /** To score it with, and for nothing else. */
    SCORING(2_000_000_000L);

    private static final long LENGTH = 1_000_000_000L;
    private static final int SITES_OF_A_CELL = 10_000;

    private final long first;

    Seeds(long first) {
        this.first = first;
    }

    /** The seed of a site, by the number of its cell and its own number there. */
    long of(int cell, int site) {
        if (cell < 0 || site < 0 || site >= SITES_OF_A_CELL || (long) cell * SITES_OF_A_CELL >= LENGTH) {
            throw new IllegalArgumentException("cell and site must be within the range, were " + cell + ", " + site);
        }
        return first + (long) cell * SITES_OF_A_CELL + site;
    }

    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }
}
