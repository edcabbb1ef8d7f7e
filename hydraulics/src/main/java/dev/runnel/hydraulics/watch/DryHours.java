package dev.runnel.hydraulics.watch;

import dev.runnel.internal.StateText;
import java.util.Arrays;

/**
 * Tells dry hours from wet ones: by the rain and how much of it fell, and where no rain is known by rises above the same
 * hour of the days before. How long each stays wet is chosen here.
 */
final class DryHours {
    /** Rain of an hour up to which it is not rain, mm; chosen here, less than one tip of a common bucket. */
    private static final double DROP = 0.05;

    /** Hours without rain after which another event begins; common practice. */
    private static final int EVENT_GAP = 6;

    /** Rain of an event that only wets the street, mm; chosen here. */
    private static final double SMALL_EVENT = 0.8;

    private static final long NEVER = Long.MIN_VALUE / 2;
    private static final int WEEK = 168;

    /** Rise of ln depth that is taken for rain where none is known; chosen here. */
    private static final double RISE = Math.log(1.25);

    /** Hours within which the depth must rise so far; chosen here. */
    private static final int RISE_HOURS = 4;

    /** Hours that stay wet after such a rise; chosen here. */
    private static final int WET_AFTER_RISE = 18;

    private long lastRain = NEVER;
    private double event;
    private long wetUntil = NEVER;
    private long longWetUntil = NEVER;
    private long shortWetUntil = NEVER;
    private long now = NEVER;
    private final double[] week = new double[WEEK];
    private final long[] weekHour = new long[WEEK];
    private final double[] above = new double[RISE_HOURS + 1];
    private final long[] aboveHour = new long[RISE_HOURS + 1];

    DryHours() {
        Arrays.fill(weekHour, NEVER);
        Arrays.fill(aboveHour, NEVER);
    }

    void add(SiteHour hour) {
        add(hour, hour.rain);
    }

    /** Adds an hour of which the rain, mm, is what can be believed of its gauge; NaN if nothing is. */
    void add(SiteHour hour, double rain) {
        now = hour.hour;
        double rise = rise(hour);
        if (Double.isNaN(rain)) {
            if (rise > RISE) {
                wetUntil = Math.max(wetUntil, now + WET_AFTER_RISE);
                longWetUntil = Math.max(longWetUntil, now + 2 * WET_AFTER_RISE);
                shortWetUntil = Math.max(shortWetUntil, now + WET_AFTER_RISE);
            }
            return;
        }
        if (rain > DROP) {
            event = (now - lastRain <= EVENT_GAP ? event : 0) + rain;
            lastRain = now;
            long wet = event >= SMALL_EVENT ? (long) Math.min(72, 18 + 2 * event) : 3;
            wetUntil = Math.max(wetUntil, now + wet);
            shortWetUntil = Math.max(shortWetUntil, now + (event >= SMALL_EVENT ? (long) Math.min(36, 6 + event) : 2));
            longWetUntil =
                    Math.max(longWetUntil, now + (event >= SMALL_EVENT ? (long) Math.min(144, 24 + 5 * event) : 3));
        }
    }

    /** How far ln y has risen within 4 h above the same hours of the seven days before; 0 if that is not known. */
    private double rise(SiteHour hour) {
        if (!hour.hasDepth()) {
            return 0;
        }
        double[] same = new double[7];
        int count = 0;
        for (int k = 1; k <= 7; k++) {
            long then = now - 24L * k;
            int at = (int) Math.floorMod(then, (long) WEEK);
            if (weekHour[at] == then) {
                same[count++] = week[at];
            }
        }
        int slot = (int) Math.floorMod(now, (long) WEEK);
        week[slot] = hour.lnDepth;
        weekHour[slot] = now;
        if (count < 2) {
            return 0;
        }
        Arrays.sort(same, 0, count);
        double excess = hour.lnDepth - same[count / 2];
        double least = excess;
        for (int k = 0; k < above.length; k++) {
            if (now - aboveHour[k] <= RISE_HOURS && now > aboveHour[k]) {
                least = Math.min(least, above[k]);
            }
        }
        int at = (int) Math.floorMod(now, (long) above.length);
        above[at] = excess;
        aboveHour[at] = now;
        return Math.min(excess, excess - least);
    }

    /** Whether the hour just added is dry. */
    boolean isDry() {
        return now > wetUntil;
    }

    /** Whether it is dry enough to tell the phase of a day, whose level need not be the usual one. */
    boolean isNearlyDry() {
        return now > shortWetUntil;
    }

    /** Whether it is dry by the longer rule, after which no storm water seeps in any more. */
    boolean isLongDry() {
        return now > longWetUntil;
    }

    void write(StateText text) {
        text.with("lastRain", lastRain)
                .with("event", event)
                .with("wet", new long[] {wetUntil, longWetUntil, shortWetUntil, now})
                .with("week", week)
                .with("weekHour", weekHour)
                .with("above", above)
                .with("aboveHour", aboveHour);
    }

    void read(StateText text) {
        lastRain = text.count("lastRain");
        event = text.number("event");
        long[] wet = text.counts("wet", 4);
        wetUntil = wet[0];
        longWetUntil = wet[1];
        shortWetUntil = wet[2];
        now = wet[3];
        fill(week, text.numbers("week", WEEK));
        fill(above, text.numbers("above", above.length));
        System.arraycopy(text.counts("weekHour", WEEK), 0, weekHour, 0, WEEK);
        System.arraycopy(text.counts("aboveHour", above.length), 0, aboveHour, 0, above.length);
    }

    private static void fill(double[] to, double[] from) {
        System.arraycopy(from, 0, to, 0, to.length);
    }
}
