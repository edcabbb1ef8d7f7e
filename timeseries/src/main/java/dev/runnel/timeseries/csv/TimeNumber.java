package dev.runnel.timeseries.csv;

import org.apiguardian.api.API;

/**
 * Times that are written as one number.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public enum TimeNumber {
    /** Seconds since 1970-01-01T00:00:00Z, with or without decimals; leap seconds are not counted. */
    UNIX_SECONDS,
    /** Milliseconds since 1970-01-01T00:00:00Z. */
    UNIX_MILLISECONDS,
    /**
     * Days as spreadsheets count them, day 61 being 1 March 1900, with the time of day as decimals, rounded to milliseconds;
     * a local time of the layout's zone. Days before that are refused: spreadsheets count a 29 February 1900 that never was.
     */
    SPREADSHEET_DAYS
}
