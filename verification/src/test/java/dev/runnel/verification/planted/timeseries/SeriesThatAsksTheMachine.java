package dev.runnel.verification.planted.timeseries;

import java.time.ZoneId;

/** Reads the default zone and the default locale. */
final class SeriesThatAsksTheMachine {
    private SeriesThatAsksTheMachine() {}

    static ZoneId zone() {
        return ZoneId.systemDefault();
    }

    static String text(double value) {
        return String.format("%f", value);
    }
}
