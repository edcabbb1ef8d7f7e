package dev.runnel.hydraulics.watch;

import dev.runnel.internal.StateText;
import java.util.Arrays;

/** The cumulative sums of Page, two of each quantity, and whether a full one is told. */
final class ChangeSums {
    // Every number of this class is chosen here; the reasons stand beside them.

    /** k and h of the cumulative sums of Page (1954), in scales: {@link WatchRule} states them. */
    static final double SLACK = 0.75;

    static final double LIMIT = 7;

    /** A sum of the velocity at its depth from which on large and growing changes are told. */
    private static final double QUICK_LIMIT = 3;

    /** What takes longer than this to fill a sum of depth, velocity or flow is a season. */
    private static final int SEASON_HOURS = 14 * 24;

    /** Largest distance of an hour, in scales: one wild hour alone fills no sum. */
    private static final double CLIP = 6;

    /** An hour counts a sixth of the 6 h in which the scale is given. */
    private static final double WEIGHT = 1 / 6.0;

    /** Hours that {@link Lasting} looks at: a week, one more day than its longest ladder of days must stand. */
    private static final int LASTING_HOURS = 7 * 24;

    static final int DIRECTIONS = 2 * Quantity.COUNT;

    private static final long NONE = Long.MIN_VALUE;

    private final ChangeSeries series;
    private final TideWatch tide;
    private final boolean pumped;
    private final double[] sums = new double[DIRECTIONS];
    private final long[] starts = new long[DIRECTIONS];

    ChangeSums(ChangeSeries series, TideWatch tide, boolean pumped) {
        this.pumped = pumped;
        this.series = series;
        this.tide = tide;
        Arrays.fill(starts, NONE);
    }

    /** Position of the sum of a quantity in a direction, 1 or -1. */
    static int at(int quantity, int direction) {
        return 2 * quantity + (direction > 0 ? 0 : 1);
    }

    static int quantity(int at) {
        return at / 2;
    }

    static int direction(int at) {
        return at % 2 == 0 ? 1 : -1;
    }

    /** Adds the last hour to the sums; returns which of them tells of a change, -1 for none. */
    int add(long hour) {
        return add(hour, Quantity.COUNT);
    }

    /** The same of the velocity at its depth alone, which no water moves. */
    int addAtDepth(long hour) {
        return add(hour, ChangeSeries.R + 1);
    }

    private int add(long hour, int quantities) {
        int last = series.hours.size() - 1;
        int found = -1;
        for (int c = 0; c < quantities; c++) {
            double x = series.hours.value(last, c) - series.centre(c);
            if (Double.isNaN(x) || !(series.scale(c) > 0)) {
                continue;
            }
            double z = Math.max(-CLIP, Math.min(CLIP, x / series.scale(c)));
            for (int direction = 1; direction >= -1; direction -= 2) {
                int at = at(c, direction);
                double before = sums[at];
                sums[at] = Math.max(0, before + (direction * z - SLACK) * WEIGHT);
                if (before == 0 && sums[at] > 0) {
                    starts[at] = ChangeSeries.blockOf(hour);
                }
                if (c != ChangeSeries.R && sums[at] > 0 && hour - 3 * starts[at] > SEASON_HOURS) {
                    sums[at] = 0;
                }
                if (sums[at] > (c == ChangeSeries.R ? QUICK_LIMIT : LIMIT)
                        && lasts(hour, c, direction)
                        && (found < 0 || sums[at] > sums[found])) {
                    found = at;
                }
            }
        }
        return found;
    }

    /**
     * Whether a quantity stands away from usual for long enough. A sum that small seasons filled over months tells nothing of
     * today, and is kept at its limit until something is to be seen.
     */
    private boolean lasts(long hour, int quantity, int direction) {
        int at = at(quantity, direction);
        boolean ofDepth = quantity == ChangeSeries.R;
        int from = ofDepth ? 0 : series.hours.from(hour - LASTING_HOURS + 1);
        double[] known = Medians.known(series.hours.column(from, quantity));
        for (int i = 0; i < known.length; i++) {
            known[i] = direction * (known[i] - series.centre(quantity));
        }
        Lasting lasting = new Lasting(known, series.scale(quantity), ofDepth ? SLACK : 1);
        boolean full = sums[at] > LIMIT;
        boolean away = ofDepth ? quickly(lasting, hour) || full && lastsForTides(lasting) : lasting.isAway();
        sums[at] = away || !full ? sums[at] : LIMIT;
        return away;
    }

    /** Whether it is told at once: not what a high water or a resting pump does for some hours, and what comes undoes. */
    private boolean quickly(Lasting lasting, long hour) {
        if (!lasting.isQuick()) {
            return false;
        }
        if (pumped) {
            return lasting.isQuickOverTides();
        }
        if (!tide.isSeen()) {
            return true;
        }
        tide.tell((hour + 1) * SiteHour.NANOS);
        return lasting.isQuickOverTides();
    }

    /** Where there is a tide or a pump, growth from some hours to the next is none: only days count. */
    private boolean lastsForTides(Lasting lasting) {
        return pumped || tide.isKnown() ? lasting.staysForDays() : lasting.lasts();
    }

    /** Block in which a sum left 0. */
    long start(int at) {
        return starts[at];
    }

    /** Block in which the first of the full sums left 0, one of them given. */
    long earliestOfFull(int found) {
        long earliest = starts[found];
        for (int i = 0; i < DIRECTIONS; i++) {
            earliest = sums[i] > LIMIT ? Math.min(earliest, starts[i]) : earliest;
        }
        return earliest;
    }

    /** Block in which the first of all sums left 0; a given one if none has. */
    long earliestOfAll(long block) {
        long earliest = block;
        for (int i = 0; i < DIRECTIONS; i++) {
            earliest = sums[i] > 0 ? Math.min(earliest, starts[i]) : earliest;
        }
        return earliest;
    }

    void clear() {
        Arrays.fill(sums, 0);
    }

    void write(StateText text) {
        text.with("sums", sums).with("starts", starts);
    }

    void read(StateText text) {
        System.arraycopy(text.numbers("sums"), 0, sums, 0, DIRECTIONS);
        System.arraycopy(text.counts("starts"), 0, starts, 0, DIRECTIONS);
    }
}
