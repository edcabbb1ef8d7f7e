package dev.runnel.hydraulics.watch;

import dev.runnel.internal.StateText;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
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

    /**
     * Before it is told the level must have come back: in the middle of the last so many hours it stands no farther above the
     * usual day. Behind an obstruction it stays up, and what it does beside the usual day is no rain.
     */
    private static final double BACK = Math.log(1.05);

    private static final int DAY = 24;

    /** Rain comes before the rise, by less than this, h; a late gauge clock is another matter. */
    private static final int BEFORE = 12;

    /** Water that rises with rain runs faster too: ln v may at most fall by this share of the rise of ln y. */
    private static final double SLOWER = 0.25;

    /** Rises without rain, with no drop in between: one storm may pass beside a gauge. */
    private static final int LEAST_SILENT = 2;

    /**
     * Less tells in a silence longer than this many times the longest of so many silences before, and than so many hours, and
     * one rise may; but not so long after it: that nothing rises any more is a drought.
     */
    private static final double LONGER = 2;

    private static final int LEAST_SILENCES = 8;
    private static final int LEAST_SILENCE = 168;

    /** Chance of the time without a drop, as the spells of rain have it, below which two are enough. */
    private static final double LONG_SILENCE = 0.5;

    /** From the first to the last of them, h, at least: what comes again and again in a day may be one thing. */
    private static final int LEAST_SPAN = 24;

    /** Rises that begin within so many hours of the day are habits. */
    private static final int SAME_HOURS = 3;

    /** Chance below which rises are not the weather and the rises that the site has anyway. */
    private static final double CHANCE = 0.009;

    /** And of those in a silence longer than any before. */
    private static final double CHANCE_OF_LONG = 0.035;

    /** And below which a silence that was not told is suspect: few sound sites have such ones. */
    private static final double SUSPECT = 0.02;

    /** Dates that are told. */
    private static final int TOLD = 4;

    /** Rises of one spell of rain, and drops of one, h. */
    private static final int APART = 12;

    private static final long NONE = Long.MIN_VALUE;
    private static final int VERSION = 3;

    private final Findings findings;
    private final OneFinding finding;
    private final boolean tests;
    private final Ring last = new Ring(DAY, 2);
    private final RiseRates rates = new RiseRates();

    /** The rises since the last drop, when they began and how large they were. */
    private final List<Long> begins = new ArrayList<>();

    private final List<Double> sizes = new ArrayList<>();

    /** Hours from its beginning to its highest. */
    private final List<Long> climbs = new ArrayList<>();

    /** Those of them that count, and how large they were. */
    private List<Long> missed = List.of();

    private double[] missedSizes = {};

    private long lastRain = NONE;
    private long lastUnknown = NONE;
    private long silentHours;
    private long longestSilence;
    // The rise that is followed: its beginning, excess before it, highest excess and its hour, velocity before and at
    // the highest, and its size.
    private long begin = NONE;
    private double base;
    private double highest;
    private long peak;
    private double speedBefore;
    private double speed;
    private double size;

    GaugeSilence(SiteBaseline baseline, Findings findings) {
        this.findings = findings;
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
        } else {
            size += water(excess);
            follow(hour, excess);
        }
        last.add(hour.hour, excess, hour.lnVelocity);
    }

    private void follow(SiteHour hour, double excess) {
        if (excess > highest) {
            highest = excess;
            peak = hour.hour;
            speed = hour.lnVelocity;
        } else if (hour.hour - begin > LONGEST) {
            begin = NONE;
        } else if (excess - base < FALLEN * (highest - base)) {
            fallen();
            begin = NONE;
        }
    }

    /** What an hour adds to the size of a rise: storms bring water for hours, and above what is usual. */
    private double water(double excess) {
        return Math.max(0, excess - Math.max(0, base));
    }

    private void rain(SiteHour hour, long end) {
        if (Double.isNaN(hour.rain)) {
            lastUnknown = hour.hour;
            return;
        }
        silentHours++;
        if (hour.rain > DROP) {
            drop(hour.hour);
            if (isOpen()) {
                finding.close(hour.hour * SiteHour.NANOS, end);
            }
        } else if (!isOpen() && !missed.isEmpty() && isBack(hour.hour) && !byChance(hour.hour)) {
            tell(end);
        }
    }

    /** What was said of the gauge since its last drop is over; if nothing was, the rises since came without rain. */
    private void drop(long hour) {
        if (!isOpen()) {
            noteIfSuspect(hour * SiteHour.NANOS, (hour + 1) * SiteHour.NANOS);
        }
        if (lastRain == NONE || hour - lastRain > APART) {
            rates.addSpell();
        }
        if (!isOpen()) {
            sizes.forEach(rates::addWithout);
            rates.addHours(Math.min(BEFORE, silentHours), Math.max(0, silentHours - BEFORE));
            longestSilence = lastRain == NONE ? longestSilence : Math.max(longestSilence, silentHours);
        }
        begins.clear();
        sizes.clear();
        climbs.clear();
        findMissed();
        silentHours = 0;
        lastRain = hour;
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
        peak = hour.hour;
        speed = hour.lnVelocity;
        begin = hour.hour;
        size = water(excess);
        for (int i = lowest; i < last.size(); i++) {
            size += water(last.value(i, 0));
        }
        for (int i = last.size() - 1; i > lowest && last.value(i, 0) - base > RISE / 2; i--) {
            begin = last.number(i);
        }
    }

    /** A rise has run off as a storm does. */
    private void fallen() {
        // Water that is held up, or a sensor that jumps, makes no faster water.
        if (speed - speedBefore < -SLOWER * (highest - base) || lastUnknown >= begin - BEFORE) {
            return;
        }
        if (lastRain >= begin - BEFORE) {
            if (peak - begin < RISE_HOURS) {
                rates.addWith(size);
                findMissed();
            }
            return;
        }
        begins.add(begin);
        sizes.add(size);
        climbs.add(peak - begin);
        findMissed();
        if (isOpen()) {
            finding.last().orElseThrow().detail = detail();
        }
    }

    /**
     * The rises since the last drop that speak of rain: large enough, at their highest as soon as a storm is, one for each
     * spell of rain, and each at another time of day than those before, for habits keep to their hours and storms do not.
     */
    private void findMissed() {
        List<Long> found = new ArrayList<>();
        List<Double> large = new ArrayList<>();
        for (int i = 0; i < begins.size(); i++) {
            long each = begins.get(i);
            if (sizes.get(i) >= rates.least()
                    && climbs.get(i) < RISE_HOURS
                    && (found.isEmpty() || each - found.get(found.size() - 1) > APART)
                    && found.stream().allMatch(other -> isOtherHour(each - other))) {
                found.add(each);
                large.add(sizes.get(i));
            }
        }
        missed = found;
        missedSizes = large.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private int smaller() {
        int smaller = 0;
        for (double each : sizes) {
            smaller += each < rates.least() ? 1 : 0;
        }
        return smaller;
    }

    private static boolean isOtherHour(long apart) {
        long hours = Math.floorMod(apart, 24L);
        return Math.min(hours, 24 - hours) > SAME_HOURS;
    }

    /**
     * Whether it is no wonder that no drop fell for so long, at a site that rose so often without rain before.
     */
    private boolean byChance(long now) {
        double noRain = rates.chanceOfNoRain((double) silentHours);
        double chance = chanceOfRises() * noRain;
        long last = missed.get(missed.size() - 1);
        if (isLongSilence() && now - last <= LONGER * longestSilence && chance <= CHANCE_OF_LONG) {
            return false;
        }
        return missed.size() < LEAST_SILENT
                || last - missed.get(0) < LEAST_SPAN
                || chance > CHANCE
                || missed.size() == LEAST_SILENT && noRain > LONG_SILENCE;
    }

    private double chanceOfRises() {
        return rates.chanceOf(missedSizes, smaller(), (double) (silentHours - BEFORE));
    }

    private boolean isBack(long now) {
        return Medians.of(last.column(last.from(now - DAY), 0)) <= BACK;
    }

    /** Whether no silence before came near this one. */
    private boolean isLongSilence() {
        return rates.spells() > LEAST_SILENCES && silentHours >= LEAST_SILENCE && silentHours > LONGER * longestSilence;
    }

    private void tell(long end) {
        finding.open(FindingName.SILENT_GAUGE, missed.get(0) * SiteHour.NANOS, end);
        describe(finding.last().orElseThrow());
        finding.report(WatchNotice.Kind.FOUND, end);
    }

    private void describe(Track told) {
        // The rain that was not written came up to some hours before the rise.
        told.earliest = lastRain == NONE ? told.since : Math.min(told.since, (lastRain + 1) * SiteHour.NANOS);
        told.latest = told.since;
        told.shape = ChangeShape.STEP;
        told.detail = detail();
    }

    /** Remarks of a silence that was not told, but is hardly by chance: what seemed dry in it may have been wet. */
    private void noteIfSuspect(long until, long end) {
        if (missed.isEmpty() || chanceOfRises() * rates.chanceOfNoRain((double) silentHours) > SUSPECT) {
            return;
        }
        Track noted = new Track(0, FindingName.SILENT_GAUGE, missed.get(0) * SiteHour.NANOS, end);
        describe(noted);
        noted.open = false;
        noted.closed = until;
        findings.report(WatchNotice.Kind.NOTED, end, noted);
    }

    private String detail() {
        String dates = missed.stream()
                .map(each -> EpochNanos.toInstant(each * SiteHour.NANOS)
                        .truncatedTo(ChronoUnit.HOURS)
                        .toString()
                        .substring(0, 13))
                .limit(TOLD)
                .collect(Collectors.joining(", "));
        int more = missed.size() - TOLD;
        int with = rates.asLargeWith();
        return missed.size() + (missed.size() == 1 ? " rise" : " rises") + " of the depth like those after rain ("
                + dates
                + (more > 0 ? " and " + more + " more" : "") + ") without a drop at the gauge for "
                + Text.fixed(silentHours / 24.0, 0) + " days"
                + (isLongSilence()
                        ? ", where it never had none for longer than " + Text.fixed(longestSilence / 24.0, 1) + " days"
                        : "")
                + "; " + with + " of the " + (with + rates.asLargeWithout())
                + " as large before came with rain: the gauge may have been dead";
    }

    void finish(long end) {
        if (!isOpen()) {
            noteIfSuspect(end, end);
        }
        finding.finish(end);
    }

    StateText write() {
        StateText text = StateText.of("gauge-silence", VERSION)
                .with("begins", begins.stream().mapToLong(Long::longValue).toArray())
                .with("sizes", sizes.stream().mapToDouble(Double::doubleValue).toArray())
                .with("climbs", climbs.stream().mapToLong(Long::longValue).toArray())
                .with("lastRain", lastRain)
                .with("lastUnknown", lastUnknown)
                .with("silentHours", silentHours)
                .with("longestSilence", longestSilence)
                .with("riseBegin", begin)
                .with("riseBase", base)
                .with("riseHighest", highest)
                .with("risePeak", peak)
                .with("riseSpeedBefore", speedBefore)
                .with("riseSpeed", speed)
                .with("riseSize", size);
        rates.write(text);
        finding.write(text, "track");
        last.write(text, "last");
        return text;
    }

    void read(String state) {
        StateText text = StateText.parse("gauge-silence", VERSION, state);
        begins.clear();
        for (long each : text.counts("begins")) {
            begins.add(each);
        }
        sizes.clear();
        for (double each : text.numbers("sizes", begins.size())) {
            sizes.add(each);
        }
        climbs.clear();
        for (long each : text.counts("climbs", begins.size())) {
            climbs.add(each);
        }
        lastRain = text.count("lastRain");
        lastUnknown = text.count("lastUnknown");
        silentHours = text.count("silentHours");
        longestSilence = text.count("longestSilence");
        begin = text.count("riseBegin");
        base = text.number("riseBase");
        highest = text.number("riseHighest");
        peak = text.count("risePeak");
        speedBefore = text.number("riseSpeedBefore");
        speed = text.number("riseSpeed");
        size = text.number("riseSize");
        rates.read(text);
        findMissed();
        finding.read(text, "track");
        last.read(text, "last");
    }
}
