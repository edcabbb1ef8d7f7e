package dev.runnel.hydraulics.evidence;

import dev.runnel.internal.StateText;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * A clock of the rain gauge that is off: storms in a row that the depth follows by other hours than usual, while the dry day
 * comes when it always did.
 */
final class GaugeClock {
    /** Fewest storms that say what is usual, and most that do; chosen here, as are all values of this class. */
    private static final int LEAST_USUAL = 2;

    private static final int MOST_USUAL = 12;

    /** Usual lags that a sewer can have, h; outside of them the method or the gauge is not to be trusted. */
    private static final double LEAST_LAG = -0.8;

    private static final double LARGEST_LAG = 2.5;

    /** A storm this late is carried by the ground and says nothing of clocks, h. */
    private static final double SLOW = 3.2;

    /** Scatter of a lag before any is known, h, and storms as which it counts. */
    private static final double PRIOR = 0.3;

    private static final double PRIOR_STORMS = 4;

    /** Share of the limit that each storm must be beyond. */
    private static final double EACH = 0.6;

    /** A dry day that moved by this share of the lag points to the clock of the monitor. */
    private static final double SHARE_OF_DAY = 0.3;

    /** One way to agree: storms, mean distance, that in scatters of the mean, and how far they may differ, h. */
    private record Agreement(int storms, boolean earlier, double shift, double scatters, double spread) {}

    /** Rain that seems to come after the depth cannot be; depth that comes later may be another season. */
    private static final Agreement[] AGREEMENTS = {
        new Agreement(2, true, 1.5, 4, 1.0),
        new Agreement(3, true, 0.7, 4.5, 0.9),
        new Agreement(3, false, 1.5, 4, 0.9),
        new Agreement(4, false, 0.7, 4.5, 0.9)
    };

    private static final int MOST_PENDING = 4;

    /** Storms farther apart are not in a row. */
    private static final long IN_A_ROW = 30 * Track.DAY;

    private final OneFinding finding;
    private final boolean tests;
    private final StormLags storms = new StormLags();
    private final List<Double> usual = new ArrayList<>();
    private final List<Double> lags = new ArrayList<>();
    private final List<Long> times = new ArrayList<>();
    private double shift;
    private long lastUsual;

    GaugeClock(SiteBaseline baseline, Findings findings) {
        this.finding = new OneFinding(findings);
        this.tests = baseline.testsGaugeClock();
        for (double lag : baseline.stormLags) {
            accept(lag);
        }
        lastUsual = EpochNanos.of(baseline.interval().end());
    }

    /**
     * Takes an hour.
     *
     * @param excess ln depth less its usual dry day; NaN for missing
     * @param dayShift by how much the last dry days came late, h; NaN if nobody knows
     */
    void hour(SiteHour hour, double excess, double dayShift) {
        if (!tests) {
            return;
        }
        OptionalDouble lag = storms.add(hour.hour, hour.rain, excess);
        if (lag.isEmpty() || lag.getAsDouble() > SLOW) {
            return;
        }
        long end = (hour.hour + 1) * SiteHour.NANOS;
        if (usual.size() < LEAST_USUAL) {
            accept(lag.getAsDouble());
            lastUsual = end;
            return;
        }
        lags.add(lag.getAsDouble());
        times.add(end);
        double middle = middle();
        if (!(middle > LEAST_LAG && middle < LARGEST_LAG)) {
            passOn(0);
        } else if (finding.isOpen()) {
            close(middle, end);
        } else {
            open(middle, dayShift, end);
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
            long time = times.remove(0);
            if (!finding.isOpen()) {
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

    private double scatter(double middle) {
        double[] known = usualLags();
        double squares = 0;
        for (double each : known) {
            squares += (each - middle) * (each - middle);
        }
        double robust = Medians.scatter(known);
        double found = (robust * robust + squares / known.length) / 2;
        return Math.sqrt((PRIOR_STORMS * PRIOR * PRIOR + known.length * found) / (PRIOR_STORMS + known.length));
    }

    private void open(double middle, double dayShift, long end) {
        for (Agreement each : AGREEMENTS) {
            double mean = agreed(each, middle);
            boolean monitor = Math.abs(dayShift) > SHARE_OF_DAY * Math.abs(mean);
            if (!Double.isNaN(mean) && !monitor) {
                tell(each.storms, mean, middle, end);
                return;
            }
        }
    }

    /** Mean distance of the last storms from usual, h; NaN if they do not agree. */
    private double agreed(Agreement wanted, double middle) {
        int from = lags.size() - wanted.storms;
        if (from < 0 || times.get(times.size() - 1) - times.get(from) > IN_A_ROW) {
            return Double.NaN;
        }
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
        boolean agree = least > EACH * wanted.shift
                && mean > wanted.shift
                && mean > wanted.scatters * scatter(middle) / Math.sqrt(wanted.storms)
                && largest - least < wanted.spread;
        return agree ? sign * mean : Double.NaN;
    }

    private void tell(int count, double mean, double middle, long end) {
        shift = mean;
        long first = times.get(times.size() - count);
        Track opened = finding.open(FindingName.CLOCK_OF_GAUGE, first, end);
        opened.earliest = Math.min(lastUsual, first);
        opened.latest = first;
        opened.since = first;
        opened.direction = mean < 0 ? Direction.UP : Direction.DOWN;
        opened.shape = ChangeShape.STEP;
        opened.detail = "the depth follows the rain by " + Text.fixed(middle + mean, 1) + " h in the last " + count
                + " storms, and by " + Text.fixed(middle, 1) + " h usually (" + usual.size()
                + " storms), while the dry day comes when it did: stamps of the gauge about "
                + Text.fixed(Math.abs(mean), 1) + " h " + (mean < 0 ? "late" : "early");
        finding.report(WatchNotice.Kind.FOUND, end);
    }

    private void close(double middle, long end) {
        int n = lags.size();
        if (n < LEAST_USUAL) {
            return;
        }
        for (double lag : lags.subList(n - LEAST_USUAL, n)) {
            if (!(Math.abs(lag - middle) < Math.abs(shift) / 2)) {
                return;
            }
        }
        finding.close(times.get(n - LEAST_USUAL), end);
    }

    void finish(long end) {
        finding.finish(end);
    }

    StateText write() {
        StateText text = StateText.of("gauge-clock", 1)
                .with("usual", usualLags())
                .with("lags", lags.stream().mapToDouble(Double::doubleValue).toArray())
                .with("times", times.stream().mapToLong(Long::longValue).toArray())
                .with("lastUsual", lastUsual)
                .with("shift", shift);
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
        for (long time : text.counts("times", lags.size())) {
            times.add(time);
        }
        lastUsual = text.count("lastUsual");
        shift = text.number("shift");
        finding.read(text, "track");
        storms.read(text);
    }
}
