package dev.runnel.verification.simulation;

/**
 * What site to make. Everything that is not said here follows from the seed.
 *
 * @param seed the seed
 * @param make who makes it
 * @param days length of the record
 * @param scatter standard deviation of the law's scatter from day to day, as a share of the velocity
 * @param trait what is peculiar
 * @param wet whether it rains often all the time; else the seed tells
 * @param fault the fault, with its times in days from the start
 */
record SiteOrder(long seed, Make make, int days, double scatter, Trait trait, boolean wet, Fault fault) {
    SiteOrder {
        if (!(scatter >= 0 && scatter <= 0.2)) {
            throw new IllegalArgumentException("scatter must be in [0, 0.2], was " + scatter);
        }
        if (days < 1 || days > 1100) {
            throw new IllegalArgumentException("days must be in [1, 1100], was " + days);
        }
    }

    SiteOrder withFault(Fault other) {
        return new SiteOrder(seed, make, days, scatter, trait, wet, other);
    }
}
