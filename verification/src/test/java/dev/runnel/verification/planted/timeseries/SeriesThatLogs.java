package dev.runnel.verification.planted.timeseries;

import java.util.logging.Logger;

/** Logs. */
final class SeriesThatLogs {
    static final Logger LOGGER = Logger.getAnonymousLogger();

    private SeriesThatLogs() {}
}
