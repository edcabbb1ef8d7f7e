package dev.runnel.hydraulics.watch;

import dev.runnel.hydraulics.evidence.Direction;
import dev.runnel.internal.StateText;
import dev.runnel.internal.Text;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A rain gauge that catches another share of the rain than before: the flow rises farther, or less far, for each millimetre
 * that is written, storm after storm. A level alone does not tell it from water that is held up.
 */
final class GaugeCatch {
    /**
     * Storms that say what is usual before any is judged, and most that do; chosen here, as are all values of this class. A
     * month has some three: with more a gauge that clogs in the first months becomes usual.
     */
    private static final int LEAST_USUAL = 3;

    private static final int MOST_USUAL = 40;

    /** Numbers of storms in a row of which the mean is asked, and how many of them may stand on the other side. */
    private static final int[] IN_A_ROW = {4, 6, 8, 12, 16};

    private static final int[] OTHER_SIDE = {0, 1, 1, 2, 3};

    private static final int MOST_PENDING = 16;

    /** Smaller changes of the logarithm may be another season's. */
    private static final double LEAST_CHANGE = 0.4;

    /** Standard deviations of the difference beyond which a change is told. */
    private static final double SURE = 4.5;

    /** Scatter of a storm, in logarithms, before any is known, and storms as which it counts. */
    private static final double PRIOR = 0.4;

    private static final int PRIOR_STORMS = 6;

    /** Share of the change beyond which a storm is one of those after it. */
    private static final double CHANGED = 0.5;

    private final OneFinding finding;
    private final boolean tests;
    private final StormHours storms = new StormHours(0);
    private final List<Double> usual = new ArrayList<>();
    private final List<Double> pending = new ArrayList<>();
    private final List<Long> times = new ArrayList<>();
    private double change;
    private long lastUsual;

    GaugeCatch(SiteBaseline baseline, Findings findings) {
        this.finding = new OneFinding(findings);
        this.tests = baseline.testsGaugeClock() && baseline.day(Quantity.FLOW).isPresent();
    }

    boolean isOpen() {
        return finding.isOpen();
    }

    /**
     * Takes an hour.
     *
     * @param excess flow above that of the usual dry day, m3/s; NaN for missing
     * @param other whether something else moves depth or velocity, or the gauge is silent: then storms say nothing
     */
    void hour(SiteHour hour, double excess, boolean other) {
        if (!tests || other) {
            return;
        }
        Optional<StormLag.Fit> fit = storms.add(hour.hour, hour.rain, excess);
        if (fit.isEmpty() || !(fit.orElseThrow().slope() > 0)) {
            return;
        }
        double answer = Math.log(fit.orElseThrow().slope());
        long end = (hour.hour + 1) * SiteHour.NANOS;
        if (usual.size() < LEAST_USUAL) {
            accept(answer, end);
            return;
        }
        pending.add(answer);
        times.add(end);
        if (finding.isOpen()) {
            close(end);
        } else {
            open(end);
        }
        while (pending.size() >= MOST_PENDING) {
            double oldest = pending.remove(0);
            long time = times.remove(0);
            if (!finding.isOpen()) {
                accept(oldest, time);
            }
        }
    }

    private void accept(double answer, long time) {
        usual.add(answer);
        if (usual.size() > MOST_USUAL) {
            usual.remove(0);
        }
        lastUsual = time;
    }

    private static double[] values(List<Double> list) {
        return list.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private static double scatter(double[] before, double middle) {
        double squares = PRIOR_STORMS * PRIOR * PRIOR;
        for (double each : before) {
            squares += (each - middle) * (each - middle);
        }
        return Math.sqrt(squares / (PRIOR_STORMS + before.length - 1));
    }

    private void open(long end) {
        for (int i = 0; i < IN_A_ROW.length && IN_A_ROW[i] <= pending.size(); i++) {
            int from = pending.size() - IN_A_ROW[i];
            double[] before = StormsBefore.of(usual, pending.subList(0, from), MOST_USUAL);
            double middle = Medians.of(before);
            double scatter = scatter(before, middle);
            List<Double> last = pending.subList(from, pending.size());
            double mean = last.stream().mapToDouble(Double::doubleValue).sum() / last.size() - middle;
            long otherSide =
                    last.stream().filter(each -> (each - middle) * mean <= 0).count();
            double error = scatter * Math.sqrt(1.0 / last.size() + 1.0 / before.length);
            if (Math.abs(mean) > LEAST_CHANGE && Math.abs(mean) > SURE * error && otherSide <= OTHER_SIDE[i]) {
                tell(last.size(), mean, middle, scatter, before.length, end);
                return;
            }
        }
    }

    private void tell(int count, double mean, double middle, double scatter, int before, long end) {
        change = mean;
        // The mean may hold a storm or two of before.
        int at = pending.size() - count;
        while ((pending.get(at) - middle) / mean <= CHANGED) {
            at++;
        }
        for (int i = 0; i < at; i++) {
            accept(pending.remove(0), times.remove(0));
        }
        long first = times.get(0);
        FindingName name = mean > 0 ? FindingName.GAUGE_CATCHES_LESS : FindingName.GAUGE_WRITES_MORE;
        Track opened = finding.open(name, first, end);
        opened.earliest = lastUsual;
        opened.latest = first;
        opened.direction = mean > 0 ? Direction.DOWN : Direction.UP;
        opened.shape = ChangeShape.UNCERTAIN;
        opened.detail =
                "for each mm of rain the flow rises " + Text.fixed(Math.exp(mean), 2) + " times as far in the last "
                        + count + " storms as in the " + before + " before (usual scatter of a storm "
                        + Text.fixed(100 * (Math.exp(scatter) - 1), 0) + " %): as if "
                        + Text.fixed(100 * Math.exp(-mean), 0) + " % of the rain were written";
        finding.report(WatchNotice.Kind.FOUND, end);
    }

    /** Over when so many storms in a row lie nearer to usual; those of the change become no part of it. */
    private void close(long end) {
        int from = pending.size() - IN_A_ROW[0];
        double middle = Medians.of(values(usual));
        if (from >= 0
                && pending.subList(from, pending.size()).stream()
                        .allMatch(each -> Math.abs(each - middle) < CHANGED * Math.abs(change))) {
            finding.close(times.get(from), end);
            pending.subList(0, from).clear();
            times.subList(0, from).clear();
        }
    }

    void finish(long end) {
        finding.finish(end);
    }

    StateText write() {
        StateText text = StateText.of("gauge-catch", 1)
                .with("usual", values(usual))
                .with("pending", values(pending))
                .with("times", times.stream().mapToLong(Long::longValue).toArray())
                .with("lastUsual", lastUsual)
                .with("change", change);
        finding.write(text, "track");
        storms.write(text);
        return text;
    }

    void read(String state) {
        StateText text = StateText.parse("gauge-catch", 1, state);
        for (double each : text.numbers("usual")) {
            usual.add(each);
        }
        for (double each : text.numbers("pending")) {
            pending.add(each);
        }
        for (long time : text.counts("times", pending.size())) {
            times.add(time);
        }
        lastUsual = text.count("lastUsual");
        change = text.number("change");
        finding.read(text, "track");
        storms.read(text);
    }
}
