package dev.runnel.hydraulics.watch;

import dev.runnel.internal.StateText;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

/**
 * A rain gauge that says nothing: the sewer rises as after rain, several times, and the gauge has no drop since the rise
 * before, while earlier rises came with rain.
 */
final class GaugeSilence {
    // Every number of this class is chosen here; the reasons stand beside them.

    /** Rain of an hour up to which it is none, mm: less than one tip of a common bucket. */
    private static final double DROP = 0.05;

    /** A rise of ln y above the usual dry day, by so much within so many hours, that may be one of rain. */
    private static final double RISE = Math.log(1.25);

    private static final int RISE_HOURS = 6;

    /** It must lead so far above what is usual at any of the hours about. */
    private static final double ABOVE = Math.log(1.1);

    /** A storm runs off: a rise that has not fallen to this share of itself after so many hours was none. */
    private static final double FALLEN = 0.5;

    private static final int LONGEST = 48;

    /** Rain comes before the rise, by less than this, h; a late gauge clock is another matter. */
    private static final int BEFORE = 12;

    /** Rises with rain that say what one looks like, and how many of them are kept. */
    private static final int LEAST_USUAL = 2;

    private static final int MOST_USUAL = 20;

    /** Share of them that may be smaller than a rise that counts. */
    private static final double SMALLER = 0.25;

    /** A rise that counts is larger than this share of that; with two known, of the smaller. */
    private static final double SHARE_OF_USUAL = 0.75;

    private static final int LEAST_FOR_QUARTER = 3;

    /** Water that rises with rain runs faster too: ln v may at most fall by this share of the rise of ln y. */
    private static final double SLOWER = 0.25;

    /** Rises without rain, with no drop in between: one storm may pass beside a gauge. */
    private static final int LEAST_SILENT = 2;

    /**
     * One rise alone tells after a silence longer than this many times the longest of so many silences before, and than so
     * many hours, if it is larger than the middle of those with rain and than this times the largest without; but not so long
     * after it: that nothing rises any more is a drought.
     */
    private static final double LONGER = 2;

    private static final int LEAST_SILENCES = 8;
    private static final int LEAST_SILENCE = 168;
    private static final double CLEARLY_LARGER = 1.25;

    /** Chance of the time without a drop, as the spells of rain have it, below which two are enough. */
    private static final double LONG_SILENCE = 0.5;

    /** From the first to the last of them, h, at least: what comes again and again in a day or two may be one thing. */
    private static final int LEAST_SPAN = 72;

    /** Rises that begin within so many hours of the day are habits. */
    private static final int SAME_HOURS = 3;

    /** Chance below which two rises are not the weather and the rises that the site has anyway; and of more. */
    private static final double CHANCE_OF_FEW = 0.02;

    private static final double CHANCE = 0.03;

    /** And of those in a silence longer than any before. */
    private static final double CHANCE_OF_LONG = 0.05;

    /** Dates that are told. */
    private static final int TOLD = 4;

    /** A season may have fewer spells of rain than before, by this. */
    private static final double DRIER = 0.25;

    /** Rises of one spell of rain, and drops of one, h. */
    private static final int APART = 12;

    private static final long NONE = Long.MIN_VALUE;
    private static final int VERSION = 2;

    private final OneFinding finding;
    private final boolean tests;
    private final Ring last = new Ring(RISE_HOURS, 2);
    private final List<Double> usual = new ArrayList<>();
    private final List<Double> sizes = new ArrayList<>();
    private final List<Long> silent = new ArrayList<>();
    private long lastRain = NONE;
    private long lastUnknown = NONE;
    private long hoursKnown;
    private int spells;
    private int without;
    private double largestWithout;
    private long silentHours;
    private long longestSilence;
    private double largestSilent;
    // The rise that is followed: its beginning, excess before it, highest excess, and velocity before and at the
    // highest.
    private long begin = NONE;
    private double base;
    private double highest;
    private double speedBefore;
    private double speed;

    GaugeSilence(SiteBaseline baseline, Findings findings) {
        this.finding = new OneFinding(findings);
        this.tests = baseline.testsGaugeClock();
    }

    boolean isOpen() {
        return finding.isOpen();
    }

    /** What of the rain of an hour can be believed. */
    double believed(SiteHour hour) {
        return isOpen() ? Double.NaN : hour.rain;
    }

    /**
     * Takes an hour.
     *
     * @param excess ln depth less its usual dry day; NaN for missing
     * @param above ln depth less the highest that is usual at these hours of the day; NaN for missing
     * @param other whether something else is known to move the depth
     */
    void hour(SiteHour hour, double excess, double above, boolean other) {
        if (!tests) {
            return;
        }
        long end = (hour.hour + 1) * SiteHour.NANOS;
        rain(hour, end);
        if (other || Double.isNaN(excess)) {
            begin = other ? NONE : begin;
            return;
        }
        if (begin == NONE) {
            rise(hour, excess, above);
        } else if (excess > highest) {
            highest = excess;
            speed = hour.lnVelocity;
        } else if (hour.hour - begin > LONGEST) {
            begin = NONE;
        } else if (excess - base < FALLEN * (highest - base)) {
            fallen();
            begin = NONE;
        }
        last.add(hour.hour, excess, hour.lnVelocity);
    }

    private void rain(SiteHour hour, long end) {
        if (Double.isNaN(hour.rain)) {
            lastUnknown = hour.hour;
            return;
        }
        hoursKnown++;
        silentHours++;
        if (hour.rain > DROP) {
            spells += lastRain == NONE || hour.hour - lastRain > APART ? 1 : 0;
            if (!isOpen()) {
                without += silent.size();
                largestWithout = Math.max(
                        largestWithout,
                        sizes.stream().mapToDouble(Double::doubleValue).max().orElse(0));
                longestSilence = lastRain == NONE ? longestSilence : Math.max(longestSilence, silentHours);
            }
            sizes.clear();
            silent.clear();
            largestSilent = 0;
            silentHours = 0;
            lastRain = hour.hour;
            if (isOpen()) {
                finding.close(hour.hour * SiteHour.NANOS, end);
            }
        } else if (!isOpen() && !silent.isEmpty() && !byChance(hour.hour)) {
            tell(end);
        }
    }

    private void rise(SiteHour hour, double excess, double above) {
        if (!(above > ABOVE)) {
            return;
        }
        int from = last.from(hour.hour - RISE_HOURS);
        int lowest = -1;
        for (int i = from; i < last.size(); i++) {
            lowest = lowest < 0 || last.value(i, 0) < last.value(lowest, 0) ? i : lowest;
        }
        if (lowest < 0 || !(excess - last.value(lowest, 0) > RISE)) {
            return;
        }
        base = last.value(lowest, 0);
        speedBefore = last.value(lowest, 1);
        highest = excess;
        speed = hour.lnVelocity;
        begin = hour.hour;
        for (int i = last.size() - 1; i > lowest && last.value(i, 0) - base > RISE / 2; i--) {
            begin = last.number(i);
        }
    }

    /** A rise has run off as a storm does. */
    private void fallen() {
        // Water that is held up, or a sensor that jumps, makes no faster water.
        double size = highest - base;
        if (speed - speedBefore < -SLOWER * size || lastUnknown >= begin - BEFORE) {
            return;
        }
        if (lastRain >= begin - BEFORE) {
            usual.add(size);
            if (usual.size() > MOST_USUAL) {
                usual.remove(0);
            }
            return;
        }
        if (!silent.isEmpty() && begin - silent.get(silent.size() - 1) <= APART) {
            largestSilent = Math.max(largestSilent, size);
            return;
        }
        sizes.add(size);
        if (usual.size() >= LEAST_USUAL && size > largestWithout && size > lowerOfUsual() && isNewHour()) {
            silent.add(begin);
            largestSilent = Math.max(largestSilent, size);
        }
        if (isOpen()) {
            finding.last().orElseThrow().detail = detail();
        }
    }

    private double[] values() {
        return usual.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /** Whether it began at another time of day than those before: habits keep to their hours, storms do not. */
    private boolean isNewHour() {
        for (long each : silent) {
            long apart = Math.floorMod(begin - each, 24L);
            if (Math.min(apart, 24 - apart) <= SAME_HOURS) {
                return false;
            }
        }
        return true;
    }

    private double lowerOfUsual() {
        double[] sorted = values();
        Arrays.sort(sorted);
        return SHARE_OF_USUAL * (sorted.length < LEAST_FOR_QUARTER ? sorted[0] : Medians.quantile(sorted, SMALLER));
    }

    /**
     * Whether it is no wonder that no drop fell for so long, at a site that rose so often without rain before: both as events
     * that come at random (Poisson).
     */
    private boolean byChance(long now) {
        double before = Math.max(1, hoursKnown - silentHours);
        double expected = (without + 0.5) / before * silentHours;
        double term = Math.exp(-expected);
        double fewer = 0;
        for (int k = 0; k < silent.size(); k++) {
            fewer += term;
            term *= expected / (k + 1);
        }
        double noRain = Math.exp(-DRIER * spells / before * silentHours);
        double chance = (1 - fewer) * noRain;
        long last = silent.get(silent.size() - 1);
        if (isLongSilence() && now - last <= LONGER * longestSilence) {
            return chance > CHANCE_OF_LONG;
        }
        boolean few = silent.size() == LEAST_SILENT;
        boolean near = last - silent.get(0) < LEAST_SPAN;
        return silent.size() < LEAST_SILENT
                || near
                || chance > (few ? CHANCE_OF_FEW : CHANCE)
                || few && noRain > LONG_SILENCE;
    }

    /** Whether no silence before came near this one, and a rise in it is clearly one of rain. */
    private boolean isLongSilence() {
        return spells > LEAST_SILENCES
                && silentHours >= LEAST_SILENCE
                && silentHours > LONGER * longestSilence
                && usual.size() >= LEAST_FOR_QUARTER
                && largestSilent > CLEARLY_LARGER * largestWithout
                && largestSilent > Medians.of(values());
    }

    private void tell(long end) {
        // The rain that was not written came up to some hours before the rise.
        long since = silent.get(0) * SiteHour.NANOS;
        Track opened = finding.open(FindingName.SILENT_GAUGE, since, end);
        opened.earliest = lastRain == NONE ? since : Math.min(since, (lastRain + 1) * SiteHour.NANOS);
        opened.latest = since;
        opened.shape = ChangeShape.STEP;
        opened.detail = detail();
        finding.report(WatchNotice.Kind.FOUND, end);
    }

    private String detail() {
        String dates = silent.stream()
                .map(each -> EpochNanos.toInstant(each * SiteHour.NANOS)
                        .truncatedTo(ChronoUnit.HOURS)
                        .toString()
                        .substring(0, 13))
                .limit(TOLD)
                .collect(Collectors.joining(", "));
        int more = silent.size() - TOLD;
        return silent.size() + (silent.size() == 1 ? " rise" : " rises") + " of the depth like those after rain ("
                + dates
                + (more > 0 ? " and " + more + " more" : "") + ") without a drop at the gauge for "
                + Text.fixed(silentHours / 24.0, 0) + " days"
                + (isLongSilence()
                        ? ", where it never had none for longer than " + Text.fixed(longestSilence / 24.0, 1) + " days"
                        : "")
                + "; " + usual.size() + " of the " + (usual.size() + without)
                + " before came with rain: the gauge may have been dead";
    }

    void finish(long end) {
        finding.finish(end);
    }

    StateText write() {
        StateText text = StateText.of("gauge-silence", VERSION)
                .with("usual", values())
                .with("silent", silent.stream().mapToLong(Long::longValue).toArray())
                .with("sizes", sizes.stream().mapToDouble(Double::doubleValue).toArray())
                .with("lastRain", lastRain)
                .with("lastUnknown", lastUnknown)
                .with("hoursKnown", hoursKnown)
                .with("silentHours", silentHours)
                .with("spells", spells)
                .with("without", without)
                .with("largestWithout", largestWithout)
                .with("longestSilence", longestSilence)
                .with("largestSilent", largestSilent)
                .with("riseBegin", begin)
                .with("riseBase", base)
                .with("riseHighest", highest)
                .with("riseSpeedBefore", speedBefore)
                .with("riseSpeed", speed);
        finding.write(text, "track");
        last.write(text, "last");
        return text;
    }

    void read(String state) {
        StateText text = StateText.parse("gauge-silence", VERSION, state);
        usual.clear();
        for (double each : text.numbers("usual")) {
            usual.add(each);
        }
        silent.clear();
        for (long each : text.counts("silent")) {
            silent.add(each);
        }
        sizes.clear();
        for (double each : text.numbers("sizes")) {
            sizes.add(each);
        }
        lastRain = text.count("lastRain");
        lastUnknown = text.count("lastUnknown");
        hoursKnown = text.count("hoursKnown");
        silentHours = text.count("silentHours");
        spells = text.index("spells");
        without = text.index("without");
        largestWithout = text.number("largestWithout");
        longestSilence = text.count("longestSilence");
        largestSilent = text.number("largestSilent");
        begin = text.count("riseBegin");
        base = text.number("riseBase");
        highest = text.number("riseHighest");
        speedBefore = text.number("riseSpeedBefore");
        speed = text.number("riseSpeed");
        finding.read(text, "track");
        last.read(text, "last");
    }
}
