package dev.runnel.flink;

import dev.runnel.timeseries.EpochNanos;
import java.time.Instant;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * One line of telemetry: what a site measured at one time.
 *
 * @param site the site
 * @param epochNanos when, ns since 1970-01-01T00:00:00Z
 * @param depth depth, m, or NaN for none
 * @param velocity velocity, m/s, or NaN for none
 * @param rain rain since the reading before, mm, or NaN for none
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record SiteEvent(String site, long epochNanos, double depth, double velocity, double rain) {
    private static final int CELLS = 5;

    /**
     * Checks that there is a site; the numbers are for the rules to judge.
     *
     * @param site the site
     * @param epochNanos when
     * @param depth depth
     * @param velocity velocity
     * @param rain rain
     */
    public SiteEvent {
        Objects.requireNonNull(site, "site");
    }

    /**
     * Reads a line such as {@code MB-01,2026-03-01T00:02:00Z,0.113,0.61,}; an empty cell is no value.
     *
     * @param line site, time in UTC, depth, velocity, rain; parted by commas, without quotes
     * @return the event
     * @throws IllegalArgumentException if the line is not such a one
     */
    public static SiteEvent parse(String line) {
        String[] cells = line.split(",", -1);
        if (cells.length != CELLS) {
            throw new IllegalArgumentException("line must have " + CELLS + " cells, was \"" + line + "\"");
        }
        try {
            return new SiteEvent(
                    cells[0],
                    EpochNanos.of(Instant.parse(cells[1])),
                    number(cells[2]),
                    number(cells[3]),
                    number(cells[4]));
        } catch (java.time.DateTimeException | NumberFormatException e) {
            throw new IllegalArgumentException("line must be site,time,depth,velocity,rain, was \"" + line + "\"", e);
        }
    }

    /**
     * Returns the line that {@link #parse} reads back to an equal event.
     *
     * @return the line
     */
    public String toLine() {
        return site + "," + EpochNanos.toInstant(epochNanos) + "," + text(depth) + "," + text(velocity) + ","
                + text(rain);
    }

    private static double number(String cell) {
        return cell.isEmpty() ? Double.NaN : Double.parseDouble(cell);
    }

    private static String text(double value) {
        return Double.isNaN(value) ? "" : Double.toString(value);
    }
}
