package dev.runnel.verification.planted.timeseries;

/** Prints. */
final class SeriesThatPrints {
    private SeriesThatPrints() {}

    static void print() {
        System.out.println("printed");
    }
}
