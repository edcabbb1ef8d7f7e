package dev.runnel.hydraulics.watch;

import dev.runnel.hydraulics.evidence.Direction;
import dev.runnel.internal.StateText;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A clock of the rain gauge that is off: storms in a row that the depth follows by other hours than usual, while the dry day
 * comes when it always did.
 */
final class GaugeClock {
    /** Fewest storms that say what is usual, and most that do; chosen here, as are all values of this class. */
    private static final int LEAST_USUAL = 2;

    private static final int MOST_USUAL = 20;

    /** Usual lags that a sewer can have, h; outside of them the method or the gauge is not to be trusted. */
    private static final double LEAST_LAG = -0.8;

    private static final double LARGEST_LAG = 2.5;

    /** A usual lag above this, h, is believed of so many storms only: two may have met the same tide or lock. */
    private static final double LATE_LAG = 1.5;

    private static final int LEAST_LATE = 4;

    /** A storm this late is carried by the ground and says nothing of clocks, h. */
    private static final double SLOW = 3.2;

    /** Scatter of a lag before any is known, h, and storms as which it counts. */
    private static final double PRIOR = 0.4;

    private static final double PRIOR_STORMS = 4;

    /** Share of the limit that each storm must be beyond. */
    private static final double EACH = 0.6;

    /** A dry day that moved by this share of the lag points to the clock of the monitor. */
    private static final double SHARE_OF_DAY = 0.3;

    /** One way to agree: storms, mean distance, that in scatters of the mean, how far they may differ, h, and how well each fits. */
    private record Agreement(int storms, boolean earlier, double shift, double scatters, double spread, double fit) {}

    /** Rain that seems to come after the depth cannot be; depth that comes later may be another season. */
    private static final Agreement[] AGREEMENTS = {
        new Agreement(2, true, 1.5, 4, 1.0, 0.85),
        new Agreement(3, true, 0.8, 4.5, 0.9, 0.75),
        new Agreement(3, false, 1.5, 4, 0.9, 0.75),
        new Agreement(4, false, 1.0, 4.5, 0.9, 0.75)
    };

    /**
     * Storms that fit the rain well come nearer to their true lag than usual ones: so many tell by their mean, each weighted by
     * how far its lag scatters, h: by what its correlation lacks, with none lacking, and at the least.
     */
    private static final int FITTED = 3;

    private static final double OF_MISFIT = 2.2;
    private static final double OF_NONE = 0.04;
    private static final double LEAST_SCATTER = 0.1;

    /** Scatters of the difference that they need, the least shifts that they tell, h, and how far they may differ. */
    private static final double FITTED_SURE = 4.5;

    private static final double FITTED_EARLIER = 0.8;

    private static final double FITTED_LATER = 1.5;
    private static final double FITTED_SPREAD = 0.9;

    /** Many storms tell of less, by their mean: how many, and how many of them may lie nearer than this share of it. */
    private static final int[] MANY = {6, 8, 10, 12};

    private static final int[] NEARER = {1, 1, 2, 2};
    private static final double NEAR = 0.4;

    /** Least shift that they tell, h, scatters of the mean, fewest storms before, and longest time from first to last. */
    private static final double LEAST_SHIFT = 0.5;

    private static final double SURE = 5;
    private static final int LEAST_BEFORE_MANY = 4;
    private static final long MANY_IN_A_ROW = 180 * Track.DAY;

    /**
     * Over when so many storms in a row are back, of which so many may lie beyond this share of the shift;
     * their mean must be as many scatters of a difference from those of the change as few storms need to tell one, so that
     * two lucky storms end no small shift.
     */
    private static final int[] BACK = {2, 3, 4, 6, 8};

    private static final int[] NOT_BACK = {0, 0, 0, 1, 1};
    private static final double SHARE_OF_SHIFT = 0.5;
    private static final double SURELY_BACK = 4;

    private static final int MOST_PENDING = 12;

    /** Storms of the longest agreement of few. */
    private static final int MOST_OF_FEW = 4;

    /**
     * While there is more or less water than usual, fewer storms than the longest agreement of few, by less than this, h,
     * tell only if each fits the rain so well: a storm stands out less.
     */
    private static final double SMALL = 1.5;

    private static final double GOOD_FIT = 0.85;

    /** Storms farther apart are not in a row. */
    private static final long IN_A_ROW = 30 * Track.DAY;

    private final OneFinding finding;
    private final boolean tests;
    private final StormHours storms = new StormHours(StormLag.LEAST_RISE);
    private final List<Double> usual = new ArrayList<>();
    private final List<Double> lags = new ArrayList<>();
    private final List<Double> fits = new ArrayList<>();
    private final List<Long> times = new ArrayList<>();
    private double shift;

    /** Storms that told it, or as many usual ones as they were worth. */
    private int shifted = MOST_OF_FEW;

    private long lastUsual;

    GaugeClock(SiteBaseline baseline, Findings findings) {
        this.finding = new OneFinding(findings);
        this.tests = baseline.testsGaugeClock();
        for (double lag : baseline.stormLags) {
            accept(lag);
        }
        lastUsual = EpochNanos.of(baseline.interval().end());
    }

    boolean isOpen() {
        return finding.isOpen();
    }

    /**
     * Takes an hour.
     *
     * @param excess ln depth less its usual dry day; NaN for missing
     * @param dayShift by how much the last dry days came late, h; NaN if nobody knows
     * @param other whether something else is known to move the depth, such as a tide that the baseline did not show: then
     *     storms say nothing
     * @param season whether there is more or less water than usual, of which the depth comes later by itself
     */
    void hour(SiteHour hour, double excess, double dayShift, boolean other, boolean season) {
        if (!tests || other) {
            return;
        }
        Optional<StormLag.Fit> fit = storms.add(hour.hour, hour.rain, excess);
        if (fit.isEmpty() || fit.orElseThrow().lag() > SLOW) {
            return;
        }
        double lag = fit.orElseThrow().lag();
        long end = (hour.hour + 1) * SiteHour.NANOS;
        if (usual.size() < LEAST_USUAL || usual.size() < LEAST_LATE && middle() > LATE_LAG) {
            accept(lag);
            lastUsual = end;
            return;
        }
        lags.add(lag);
        fits.add(fit.orElseThrow().correlation());
        times.add(end);
        double middle = middle();
        if (!(middle > LEAST_LAG && middle < LARGEST_LAG)) {
            passOn(0);
        } else if (isOpen()) {
            close(middle, end);
        } else {
            open(dayShift, season, end);
        }
        passOn(MOST_PENDING - 1);
    }

    private void accept(double lag) {
        usual.add(lag);
        if (usual.size() > MOST_USUAL) {
            usual.remove(0);
        }
    }

    /** Storms that nothing was said of become usual; while a finding is open they are forgotten. */
    private void passOn(int kept) {
        while (lags.size() > kept) {
            double lag = lags.remove(0);
            fits.remove(0);
            long time = times.remove(0);
            if (!isOpen()) {
                accept(lag);
                lastUsual = time;
            }
        }
    }

    private double[] usualLags() {
        return usual.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private double middle() {
        return Medians.of(usualLags());
    }

    /** Scatter of known lags about their middle, h: of few of them as if some more scattered as usual elsewhere. */
    static double scatter(double[] known, double middle) {
        double squares = 0;
        for (double each : known) {
            squares += (each - middle) * (each - middle);
        }
        double robust = Medians.scatter(known);
        double found = (robust * robust + squares / known.length) / 2;
        return Math.sqrt((PRIOR_STORMS * PRIOR * PRIOR + known.length * found) / (PRIOR_STORMS + known.length));
    }

    private void open(double dayShift, boolean season, long end) {
        for (Agreement each : AGREEMENTS) {
            if (tells(each.storms, each.storms, agreed(each, season), dayShift, season, end)) {
                return;
            }
        }
        for (int i = 0; i < MANY.length; i++) {
            if (tells(MANY[i], MANY[i], manyAgreed(MANY[i], NEARER[i]), dayShift, season, end)) {
                return;
            }
        }
        tells(FITTED, worth(), fittedAgreed(season), dayShift, season, end);
    }

    /** Tells a mean distance of the last storms from usual, h, if there is one and nothing else explains it. */
    private boolean tells(int storms, int worth, double mean, double dayShift, boolean season, long end) {
        boolean monitor = Math.abs(dayShift) > SHARE_OF_DAY * Math.abs(mean);
        if (Double.isNaN(mean) || monitor || season && mean > 0) {
            return false;
        }
        tell(storms, worth, mean, end);
        return true;
    }

    /** Sum of the weights of the last storms, by how well each fits, 1/h2. */
    private double weights() {
        return fits.subList(fits.size() - FITTED, fits.size()).stream()
                .mapToDouble(GaugeClock::weight)
                .sum();
    }

    private static double weight(double fit) {
        double scatter = Math.max(LEAST_SCATTER, OF_MISFIT * (1 - fit) + OF_NONE);
        return 1 / (scatter * scatter);
    }

    /** As many usual storms as have a mean that is as sure as that of the last ones. */
    private int worth() {
        if (lags.size() < FITTED) {
            return FITTED;
        }
        double[] before = before(lags.size() - FITTED);
        double scatter = scatter(before, Medians.of(before));
        return Math.max(FITTED, (int) Math.rint(scatter * scatter * weights()));
    }

    /** Weighted mean distance of the last storms from usual, h; NaN if they do not agree. */
    private double fittedAgreed(boolean season) {
        int from = lags.size() - FITTED;
        if (!areInARow(from, IN_A_ROW)) {
            return Double.NaN;
        }
        double[] before = before(from);
        double middle = Medians.of(before);
        double sum = 0;
        double least = Double.POSITIVE_INFINITY;
        double largest = Double.NEGATIVE_INFINITY;
        for (int i = from; i < lags.size(); i++) {
            double away = lags.get(i) - middle;
            sum += weight(fits.get(i)) * away;
            least = Math.min(least, away);
            largest = Math.max(largest, away);
        }
        double mean = sum / weights();
        double limit = mean < 0 ? FITTED_EARLIER : FITTED_LATER;
        double nearest = mean < 0 ? -largest : least;
        double usualScatter = scatter(before, middle);
        double error = Math.sqrt(1 / weights() + usualScatter * usualScatter / before.length);
        boolean agree = standsOut(from, Math.abs(mean), season)
                && Math.abs(mean) > limit
                && nearest > EACH * limit
                && Math.abs(mean) > FITTED_SURE * error
                && largest - least < FITTED_SPREAD;
        return agree ? mean : Double.NaN;
    }

    private double[] before(int from) {
        return StormsBefore.of(usual, lags.subList(0, from), MOST_USUAL);
    }

    private static double error(double[] before, double middle, int storms) {
        return scatter(before, middle) * Math.sqrt(1.0 / storms + 1.0 / before.length);
    }

    /** Whether the storms from one on lie within such a time. */
    private boolean areInARow(int from, long longest) {
        return from >= 0 && times.get(times.size() - 1) - times.get(from) <= longest;
    }

    /** Mean distance of the last storms from usual, h; NaN if they do not agree. */
    private double agreed(Agreement wanted, boolean season) {
        int from = lags.size() - wanted.storms;
        if (!areInARow(from, IN_A_ROW)) {
            return Double.NaN;
        }
        double[] before = before(from);
        double middle = Medians.of(before);
        double sign = wanted.earlier ? -1 : 1;
        double sum = 0;
        double least = Double.POSITIVE_INFINITY;
        double largest = Double.NEGATIVE_INFINITY;
        for (double lag : lags.subList(from, lags.size())) {
            double away = sign * (lag - middle);
            sum += away;
            least = Math.min(least, away);
            largest = Math.max(largest, away);
        }
        double mean = sum / wanted.storms;
        boolean agree = (wanted.storms == MOST_OF_FEW || standsOut(from, mean, season))
                && fits.subList(from, fits.size()).stream().allMatch(each -> each >= wanted.fit)
                && least > EACH * wanted.shift
                && mean > wanted.shift
                && mean > wanted.scatters * error(before, middle, wanted.storms)
                && largest - least < wanted.spread;
        return agree ? sign * mean : Double.NaN;
    }

    /** Whether storms from one on that are few may tell of a shift, h, whatever the water does. */
    private boolean standsOut(int from, double shift, boolean season) {
        return !season
                || shift > SMALL
                || fits.subList(from, fits.size()).stream().allMatch(each -> each > GOOD_FIT);
    }

    /** Mean distance of many storms from usual, h; NaN if it is not sure. */
    private double manyAgreed(int storms, int nearer) {
        int from = lags.size() - storms;
        if (!areInARow(from, MANY_IN_A_ROW)) {
            return Double.NaN;
        }
        double[] before = before(from);
        double middle = Medians.of(before);
        List<Double> last = lags.subList(from, lags.size());
        double mean = last.stream().mapToDouble(Double::doubleValue).sum() / storms - middle;
        long near = last.stream().filter(lag -> (lag - middle) / mean < NEAR).count();
        boolean agree = before.length >= LEAST_BEFORE_MANY
                && Math.abs(mean) > LEAST_SHIFT
                && Math.abs(mean) > SURE * error(before, middle, storms)
                && near <= nearer;
        return agree ? mean : Double.NaN;
    }

    private void tell(int count, int worth, double mean, long end) {
        shift = mean;
        shifted = worth;
        int from = lags.size() - count;
        double[] before = before(from);
        double middle = Medians.of(before);
        for (int i = 0; i < from; i++) {
            fits.remove(0);
            accept(lags.remove(0));
            lastUsual = times.remove(0);
        }
        long first = times.get(0);
        Track opened = finding.open(FindingName.CLOCK_OF_GAUGE, first, end);
        opened.earliest = Math.min(lastUsual, first);
        opened.latest = first;
        opened.since = first;
        opened.direction = mean < 0 ? Direction.UP : Direction.DOWN;
        opened.shape = ChangeShape.STEP;
        opened.detail = detail(count, mean, before.length, middle);
        finding.report(WatchNotice.Kind.FOUND, end);
    }

    private static String detail(int count, double mean, int before, double middle) {
        return "the depth follows the rain by " + Text.fixed(middle + mean, 1) + " h in the last " + count
                + " storms, and by " + Text.fixed(middle, 1) + " h usually (" + before
                + " storms), while the dry day comes when it did: stamps of the gauge about "
                + Text.fixed(Math.abs(mean), 1) + " h " + (mean < 0 ? "late" : "early");
    }

    private void close(double middle, long end) {
        for (int i = 0; i < BACK.length && BACK[i] <= lags.size(); i++) {
            int from = lags.size() - BACK[i];
            if (areBack(lags.subList(from, lags.size()), middle, NOT_BACK[i])) {
                finding.close(times.get(from), end);
                // Storms of the change are no part of what is usual.
                for (List<?> each : List.of(lags, fits, times)) {
                    each.subList(0, from).clear();
                }
                return;
            }
        }
    }

    /** Whether the last storms, the first of them among these, are back from the shift at the usual lag. */
    private boolean areBack(List<Double> last, double middle, int mostNotBack) {
        double mean = last.stream().mapToDouble(Double::doubleValue).sum() / last.size() - middle;
        long notBack = last.stream().filter(lag -> !isBack(lag - middle)).count();
        double error = scatter(usualLags(), middle) * Math.sqrt(1.0 / last.size() + 1.0 / shifted);
        return isBack(last.get(0) - middle)
                && notBack <= mostNotBack
                && isBack(mean)
                // Storms beyond the usual lag say no more than storms at it.
                && Math.min(Math.abs(shift), Math.abs(mean - shift)) > SURELY_BACK * error;
    }

    /** Whether a distance from the usual lag is nearer to none than to the shift; beyond usual on the other side it is. */
    private boolean isBack(double away) {
        return Math.signum(shift) * away < SHARE_OF_SHIFT * Math.abs(shift);
    }

    void finish(long end) {
        finding.finish(end);
    }

    StateText write() {
        StateText text = StateText.of("gauge-clock", 1)
                .with("usual", usualLags())
                .with("lags", lags.stream().mapToDouble(Double::doubleValue).toArray())
                .with("fits", fits.stream().mapToDouble(Double::doubleValue).toArray())
                .with("times", times.stream().mapToLong(Long::longValue).toArray())
                .with("lastUsual", lastUsual)
                .with("shift", shift)
                .with("shifted", shifted);
        finding.write(text, "track");
        storms.write(text);
        return text;
    }

    void read(String state) {
        StateText text = StateText.parse("gauge-clock", 1, state);
        usual.clear();
        for (double lag : text.numbers("usual")) {
            usual.add(lag);
        }
        for (double lag : text.numbers("lags")) {
            lags.add(lag);
        }
        for (double each : text.numbers("fits", lags.size())) {
            fits.add(each);
        }
        for (long time : text.counts("times", lags.size())) {
            times.add(time);
        }
        lastUsual = text.count("lastUsual");
        shift = text.number("shift");
        shifted = text.index("shifted");
        finding.read(text, "track");
        storms.read(text);
    }
}
