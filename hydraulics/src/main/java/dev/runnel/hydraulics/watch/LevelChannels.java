package dev.runnel.hydraulics.watch;

import dev.runnel.internal.StateText;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.baseline.DayCurve;
import java.util.ArrayList;
import java.util.List;

/**
 * What a level alone says beside its usual dry day: the lowest level of each night, rises without rain, and how soon the level
 * falls to half of its rise after rain. None of them tells a cause; each is a figure of its own beside a finding of the level.
 */
final class LevelChannels {
    // All values of this class are chosen here.

    /** Hours of a night, about the hour at which the usual dry day is lowest. */
    private static final int NIGHT = 5;

    /** Fewest of them that must be known and dry. */
    private static final int LEAST_NIGHT_HOURS = 3;

    /**
     * A rise of ln y above the usual dry day, by so much within so many hours, and of ln y itself: where water is held up the
     * day is flatter, and what should have fallen is no rise.
     */
    private static final double RISE = Math.log(1.25);

    private static final int RISE_HOURS = 6;

    /** Share of the rise at which it has fallen to half, and the longest time that is waited for. */
    private static final double HALF = 0.5;

    private static final int LONGEST = 72;

    /** Rain comes up to so many hours before the rise. */
    private static final int BEFORE = 12;

    /** Rain of an hour up to which it is none, mm. */
    private static final double DROP = 0.05;

    /** Rain after the highest level by more than this holds the fall up, h: such a fall says nothing. */
    private static final int AFTER_PEAK = 1;

    /** Nights that a change is told from, and those that say what is usual. */
    private static final int LEAST_NIGHTS = 2;

    private static final int LEAST_USUAL_NIGHTS = 4;

    private static final int KEPT = 64;
    private static final long NONE = Long.MIN_VALUE;

    /**
     * What the baseline showed.
     *
     * @param nights lowest ln level of each night, less the lowest that is usual
     * @param falls hours from the highest level after rain to half of the rise, of each storm
     * @param rises count of rises without rain
     * @param days days in which they were counted
     */
    record Usual(double[] nights, double[] falls, int rises, double days) {
        static Usual read(StateText text) {
            return new Usual(
                    text.numbers("levelNights"),
                    text.numbers("levelFalls"),
                    text.index("levelRises"),
                    text.number("levelDays"));
        }

        void write(StateText text) {
            text.with("levelNights", nights)
                    .with("levelFalls", falls)
                    .with("levelRises", rises)
                    .with("levelDays", days);
        }
    }

    private final double nightFrom;
    private final Ring nights = new Ring(KEPT, 1);
    private final Ring falls = new Ring(KEPT, 1);
    private final Ring rises = new Ring(KEPT, 1);
    private final Ring recent = new Ring(RISE_HOURS, 2);
    private boolean rainKnown;
    private long lastRain = NONE;
    private long lastUnknown = NONE;
    private long lastHour = NONE;
    // The night that is gathered, and the rise that is followed.
    private long night = NONE;
    private int nightHours;
    private double lowest;
    private double lowestUsual;
    private long begin = NONE;
    private long peak;
    private double base;
    private double highest;

    /**
     * Returns the channels of one site.
     *
     * @param lowestHour hour of the day at which the usual dry day is lowest
     */
    LevelChannels(double lowestHour) {
        nightFrom = lowestHour - NIGHT / 2.0;
    }

    /** Hour of the day at which a usual working day is lowest. */
    static double lowestHour(DayCurve usualDay) {
        double lowest = 0;
        for (int quarter = 1; quarter < 96; quarter++) {
            double at = quarter / 4.0;
            lowest = usualDay.value(at, false) < usualDay.value(lowest, false) ? at : lowest;
        }
        return lowest;
    }

    /**
     * Takes an hour.
     *
     * @param hourOfDay its middle, h
     * @param usual usual ln level of a dry day at that hour
     */
    void hour(SiteHour hour, double hourOfDay, double usual, boolean dry) {
        lastHour = hour.hour;
        if (Double.isNaN(hour.rain)) {
            lastUnknown = hour.hour;
        } else {
            rainKnown = true;
            lastRain = hour.rain > DROP ? hour.hour : lastRain;
        }
        double position = ((hourOfDay - nightFrom) % 24 + 24) % 24;
        long now = position < NIGHT ? hour.hour - (long) position : NONE;
        if (now != night) {
            endNight();
            night = now;
        }
        if (!hour.hasDepth()) {
            return;
        }
        if (night != NONE && dry) {
            lowest = nightHours == 0 ? hour.lnDepth : Math.min(lowest, hour.lnDepth);
            lowestUsual = nightHours == 0 ? usual : Math.min(lowestUsual, usual);
            nightHours++;
        }
        double excess = hour.lnDepth - usual;
        if (begin == NONE) {
            rise(hour.hour, excess, hour.lnDepth);
        } else {
            follow(hour.hour, excess);
        }
        recent.add(hour.hour, excess, hour.lnDepth);
    }

    private void endNight() {
        if (night != NONE && nightHours >= LEAST_NIGHT_HOURS) {
            nights.add(night, lowest - lowestUsual);
        }
        nightHours = 0;
    }

    private void rise(long hour, double excess, double lnDepth) {
        double least = Double.POSITIVE_INFINITY;
        double lowestLevel = Double.POSITIVE_INFINITY;
        for (int i = recent.from(hour - RISE_HOURS); i < recent.size(); i++) {
            least = Math.min(least, recent.value(i, 0));
            lowestLevel = Math.min(lowestLevel, recent.value(i, 1));
        }
        if (excess - least > RISE && lnDepth - lowestLevel > RISE) {
            begin = hour;
            peak = hour;
            base = least;
            highest = excess;
        }
    }

    private void follow(long hour, double excess) {
        if (excess > highest) {
            highest = excess;
            peak = hour;
        } else if (hour - begin > LONGEST) {
            begin = NONE;
        } else {
            double half = base + HALF * (highest - base);
            if (excess < half) {
                fallen(hour, excess, half);
                begin = NONE;
            }
        }
    }

    private void fallen(long hour, double excess, double half) {
        if (!rainKnown || lastUnknown >= begin - BEFORE) {
            return;
        }
        if (lastRain < begin - BEFORE) {
            rises.add(begin, highest - base);
        } else if (lastRain <= peak + AFTER_PEAK) {
            // Between the last two hours, as if the level fell evenly.
            double before = recent.value(recent.size() - 1, 0);
            double share = before > excess ? (half - excess) / (before - excess) : 0;
            double late = (hour - recent.number(recent.size() - 1)) * Math.max(0, Math.min(1, share));
            falls.add(peak, hour - late - peak);
        }
    }

    /** What was seen, as what is usual from now on. */
    Usual usual(double days) {
        return new Usual(nights.column(0, 0), falls.column(0, 0), rises.size(), days);
    }

    /** What the channels say since a time, against what was usual, in words. */
    String since(long nanos, Usual usual) {
        long from = Math.floorDiv(nanos, SiteHour.NANOS);
        List<String> words = new ArrayList<>();
        double[] later = nights.column(nights.from(from), 0);
        if (usual.nights.length < LEAST_USUAL_NIGHTS || later.length < LEAST_NIGHTS) {
            words.add("lowest level of the night: too few dry nights to say");
        } else {
            words.add("lowest level of the night " + percent(Medians.of(later) - Medians.of(usual.nights))
                    + " (usual scatter " + Text.fixed(100 * Medians.scatter(usual.nights), 0) + " %, " + later.length
                    + " nights)");
        }
        if (rainKnown) {
            double[] slower = falls.column(falls.from(from), 0);
            words.add(
                    usual.falls.length == 0 || slower.length == 0
                            ? "fall after rain: no storm to say "
                                    + (usual.falls.length == 0 ? "what is usual" : "so far")
                            : "after rain the level falls to half of its rise in " + hours(slower) + ", usually in "
                                    + hours(usual.falls));
            int count = rises.size() - rises.from(from);
            words.add(count + (count == 1 ? " rise" : " rises") + " without rain in "
                    + Text.fixed(Math.max(0, lastHour + 1 - from) / 24.0, 0) + " days ("
                    + usual.rises + " in the " + Text.fixed(usual.days, 0) + " days of the baseline)");
        }
        return String.join("; ", words);
    }

    private static String hours(double[] falls) {
        return Text.fixed(Medians.of(falls), 1) + " h (" + falls.length + (falls.length == 1 ? " storm)" : " storms)");
    }

    private static String percent(double ln) {
        double share = Math.rint(100 * Math.expm1(ln));
        return (share < 0 ? "-" : share > 0 ? "+" : "") + Text.fixed(Math.abs(share), 0) + " %";
    }

    StateText write() {
        StateText text = StateText.of("level-channels", 1)
                .with("rainKnown", rainKnown)
                .with("lastRain", lastRain)
                .with("lastUnknown", lastUnknown)
                .with("lastHour", lastHour)
                .with("night", night)
                .with("nightHours", nightHours)
                .with("lowest", lowest)
                .with("lowestUsual", lowestUsual)
                .with("begin", begin)
                .with("peak", peak)
                .with("base", base)
                .with("highest", highest);
        nights.write(text, "nights");
        falls.write(text, "falls");
        rises.write(text, "rises");
        recent.write(text, "recent");
        return text;
    }

    void read(String state) {
        StateText text = StateText.parse("level-channels", 1, state);
        rainKnown = text.flag("rainKnown");
        lastRain = text.count("lastRain");
        lastUnknown = text.count("lastUnknown");
        lastHour = text.count("lastHour");
        night = text.count("night");
        nightHours = text.index("nightHours");
        lowest = text.number("lowest");
        lowestUsual = text.number("lowestUsual");
        begin = text.count("begin");
        peak = text.count("peak");
        base = text.number("base");
        highest = text.number("highest");
        nights.read(text, "nights");
        falls.read(text, "falls");
        rises.read(text, "rises");
        recent.read(text, "recent");
    }
}
