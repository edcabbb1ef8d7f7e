package dev.runnel.hydraulics.watch;

import dev.runnel.hydraulics.evidence.Direction;
import dev.runnel.internal.StateText;
import dev.runnel.internal.Text;
import java.util.Arrays;

/**
 * A level alone that leaps up in dry weather and stays, while a finding of it is open: a wet season hides it from the sums, for
 * whom the level stands away already. Dry hours of a day are held against the last dry hours before it, at the same times of
 * the day. Outside of a season the sums tell it, and people who come and go would be told as well.
 */
final class LevelStep {
    // All values of this class are chosen here.

    /** Hours after a leap that are looked at, in steps of so many, and fewest of them that must be dry and have a partner. */
    private static final int AFTER = 24;

    private static final int EVERY = 3;
    private static final int LEAST_PAIRS = 8;

    /** Days, from the nearest on, among which an hour finds the last dry one at its time of the day. */
    private static final int DAYS_BACK = 5;

    private static final int DAY = 24;

    /** Rain from so many hours before the leap on that explains it, mm. */
    private static final int BEFORE = 12;

    private static final double RAIN = 0.8;

    /** Least leap of ln y, and largest: beyond it is another unit; and how many usual differences of days it must be. */
    private static final double LEAST = 0.12;

    private static final double LARGEST = 0.8;
    private static final double SCATTERS = 4;

    /** A difference of days for what it is held, days as which that counts, and days that are kept. */
    private static final double PRIOR = 0.04;

    private static final double PRIOR_DAYS = 8;
    private static final int KEPT_DAYS = 60;

    /** Median distance of a normal quantity from its middle, in standard deviations. */
    private static final double NORMAL_MEDIAN = 0.6745;

    /** The hours about a leap, fewest known of them, and the share of it that must lie between them. */
    private static final int ABOUT = 6;

    private static final int LEAST_ABOUT = 3;
    private static final double SHARE_AT_ONCE = 0.7;

    /** The share of it that the lower quarter of the hours after it must show, and that must still stand later. */
    private static final double SHARE = 0.6;

    private static final double QUARTER = 0.25;

    /** It is told no sooner than this, and forgotten if no dry day decides until then, h. */
    private static final int SOONEST = 72;

    private static final int LATEST = 240;

    /** It is over when the dry hours of two days stand so little above those before it, as a share. */
    private static final double OVER = 0.25;

    private static final int HOURS = LATEST + (DAYS_BACK + 1) * DAY + BEFORE;
    private static final long NONE = Long.MIN_VALUE;

    // Columns of an hour.
    private static final int EXCESS = 0;
    private static final int FALLEN = 1;
    private static final int OTHER = 2;

    private final OneFinding finding;
    private final Ring hours = new Ring(HOURS, 3);
    private final Ring usual = new Ring(KEPT_DAYS, 1);
    private long leap = NONE;
    private double size;

    /** Median of what the dry hours before the leap left over, while its finding is open. */
    private double before;

    LevelStep(Findings findings) {
        this.finding = new OneFinding(findings);
    }

    /**
     * Takes an hour.
     *
     * @param excess ln level less its usual dry day; NaN for one that is not dry or not known
     * @param other whether another change of the level is open
     * @param tide whether the level follows a tide, whose hours are not those of the day
     */
    void hour(SiteHour hour, double excess, boolean other, boolean tide) {
        hours.add(hour.hour, excess, hour.rain, other ? 1 : 0);
        if (tide || Math.floorMod(hour.hour, EVERY) != EVERY - 1) {
            return;
        }
        long end = hour.hour + 1;
        if (finding.isOpen()) {
            close(end);
        } else if (leap == NONE) {
            look(end - AFTER);
        } else if (end - leap >= SOONEST) {
            decide(end);
        }
    }

    private double value(long hour, int column) {
        int at = hours.from(hour);
        return at < hours.size() && hours.number(at) == hour ? hours.value(at, column) : Double.NaN;
    }

    /** What the dry hours from one up to another stand above the last dry ones before the leap at the same times of the day. */
    private double[] above(long from, long to, long when) {
        double[] found = new double[(int) (to - from)];
        int count = 0;
        for (long hour = from; hour < to; hour++) {
            double now = value(hour, EXCESS);
            long days = Math.floorDiv(hour - when, (long) DAY) + 1;
            for (long back = days; back < days + DAYS_BACK && !Double.isNaN(now); back++) {
                double then = value(hour - back * DAY, EXCESS);
                if (!Double.isNaN(then)) {
                    found[count++] = now - then;
                    break;
                }
            }
        }
        return Arrays.copyOf(found, count);
    }

    private boolean isWithoutRain(long from, long to) {
        double sum = 0;
        for (long hour = from; hour < to; hour++) {
            double rain = value(hour, FALLEN);
            if (Double.isNaN(rain)) {
                return false;
            }
            sum += rain;
        }
        return sum < RAIN;
    }

    private double limit() {
        double[] days = usual.column(0, 0);
        double sum = PRIOR_DAYS * PRIOR * PRIOR;
        if (days.length > 0) {
            for (int i = 0; i < days.length; i++) {
                days[i] = Math.abs(days[i]);
            }
            double scatter = Medians.of(days) / NORMAL_MEDIAN;
            sum += days.length * scatter * scatter;
        }
        return Math.max(LEAST, SCATTERS * Math.sqrt(sum / (PRIOR_DAYS + days.length)));
    }

    private void look(long when) {
        if (!isWithoutRain(when - BEFORE, when + AFTER)) {
            return;
        }
        double[] after = above(when, when + AFTER, when);
        if (after.length < LEAST_PAIRS) {
            return;
        }
        double middle = Medians.of(after);
        double limit = limit();
        if (Math.floorMod(when, DAY) == 0) {
            usual.add(when, middle);
        }
        double[] first = above(when, when + ABOUT, when);
        double[] last = above(when - ABOUT, when, when - ABOUT);
        boolean within = value(when - 1, OTHER) > 0;
        if (!within
                || !(middle > limit)
                || middle > LARGEST
                || first.length < LEAST_ABOUT
                || last.length < LEAST_ABOUT) {
            return;
        }
        double[] sorted = after.clone();
        Arrays.sort(sorted);
        if (Medians.of(first) - Medians.of(last) >= SHARE_AT_ONCE * middle
                && Medians.quantile(sorted, QUARTER) >= SHARE * middle) {
            leap = when;
            size = middle;
        }
    }

    /** Asks some dry days later whether the leap stands. */
    private void decide(long end) {
        double[] later = above(end - AFTER, end, leap);
        if (later.length < LEAST_PAIRS && end - leap < LATEST) {
            return;
        }
        if (later.length >= LEAST_PAIRS && Medians.of(later) > SHARE * size) {
            tell(end);
        }
        leap = NONE;
    }

    private void tell(long end) {
        before = Medians.of(excesses(leap - DAYS_BACK * DAY, leap));
        long since = leap * SiteHour.NANOS;
        boolean back = finding.last()
                .map(last -> last.isBack(FindingName.LEVEL_UP, since))
                .orElse(false);
        Track opened =
                back ? finding.last().orElseThrow() : finding.open(FindingName.LEVEL_UP, since, end * SiteHour.NANOS);
        if (back) {
            opened.comeBack(since);
        } else {
            opened.earliest = (leap - EVERY) * SiteHour.NANOS;
            opened.latest = (leap + EVERY) * SiteHour.NANOS;
            opened.direction = Direction.UP;
            opened.shape = ChangeShape.STEP;
        }
        opened.detail = detail();
        finding.report(back ? WatchNotice.Kind.RETURNED : WatchNotice.Kind.FOUND, end * SiteHour.NANOS);
    }

    private String detail() {
        return "the level stands " + Text.fixed(100 * Math.expm1(size), 0)
                + " % above the same hours of the days before, at once and without rain";
    }

    private double[] excesses(long from, long to) {
        double[] found = new double[(int) (to - from)];
        for (int i = 0; i < found.length; i++) {
            found[i] = value(from + i, EXCESS);
        }
        return Medians.known(found);
    }

    private void close(long end) {
        double[] now = excesses(end - 2 * DAY, end);
        if (now.length >= LEAST_PAIRS && Medians.of(now) - before < OVER * size) {
            finding.close((end - 2 * DAY) * SiteHour.NANOS, end * SiteHour.NANOS);
        }
    }

    void finish(long end) {
        finding.finish(end);
    }

    StateText write() {
        StateText text = StateText.of("level-step", 1)
                .with("leap", leap)
                .with("size", size)
                .with("before", before);
        hours.write(text, "hours");
        usual.write(text, "usual");
        finding.write(text, "track");
        return text;
    }

    void read(String state) {
        StateText text = StateText.parse("level-step", 1, state);
        leap = text.count("leap");
        size = text.number("size");
        before = text.number("before");
        hours.read(text, "hours");
        usual.read(text, "usual");
        finding.read(text, "track");
    }
}
