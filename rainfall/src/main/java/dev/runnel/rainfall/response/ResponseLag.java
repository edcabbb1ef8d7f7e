package dev.runnel.rainfall.response;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * The time by which flow follows rain: the shift at which the two correlate most (Pearson, over the pairs that neither
 * misses). No finer than a step. Shifts that leave fewer than three pairs, or fewer than half as many as the shift with the
 * most, are passed over: a few pairs correlate by chance.
 *
 * @param lag shift of the greatest correlation, the shortest of equals
 * @param correlation correlation coefficient there
 * @param pairs steps it is taken over
 * @param atLimit true if it is the longest shift not passed over, so that a longer one may be better
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record ResponseLag(Duration lag, double correlation, int pairs, boolean atLimit) {
    /**
     * Checks that nothing is missing.
     *
     * @param lag shift of the greatest correlation, the shortest of equals
     * @param correlation correlation coefficient there
     * @param pairs steps it is taken over
     * @param atLimit true if it is the longest shift not passed over, so that a longer one may be better
     */
    public ResponseLag {
        Objects.requireNonNull(lag, "lag");
    }

    private static final int LEAST_PAIRS = 3;

    /**
     * Finds the lag.
     *
     * @param rain depth in each step, mm
     * @param flow flow in the same steps, any unit
     * @param longest longest shift to look at; 0 or longer, less than the record
     * @return the lag
     * @throws IllegalArgumentException if the steps differ, a depth is negative, the shift is out of range, or rain or flow
     *     does not vary at any shift
     */
    public static ResponseLag of(RegularSeries rain, RegularSeries flow, Duration longest) {
        Objects.requireNonNull(flow, "flow");
        Rain.requireNonNegative("rain", rain, "mm");
        Steps.requireSame("flow", rain, flow);
        long shifts = EpochNanos.nonNegative("longest", longest) / rain.step().toNanos();
        Require.inRange("steps in longest", (double) shifts, 0, Math.max(0, rain.size() - 2), "");
        double[] p = rain.toValues();
        double[] q = flow.toValues();
        List<ResponseLag> candidates = new ArrayList<>();
        int most = 0;
        for (int shift = 0; shift <= shifts; shift++) {
            candidates.add(at(p, q, shift, rain.step()));
            most = Math.max(most, candidates.get(shift).pairs);
        }
        int least = Math.max(LEAST_PAIRS, (most + 1) / 2);
        candidates.removeIf(each -> each.pairs < least || Double.isNaN(each.correlation));
        if (candidates.isEmpty()) {
            throw new IllegalArgumentException(
                    "rain and flow must both vary over at least " + least + " common steps at some shift, do not");
        }
        ResponseLag last = candidates.get(candidates.size() - 1);
        // Of equals the first, which max would not give.
        ResponseLag best = candidates.stream()
                .reduce((a, b) -> b.correlation > a.correlation ? b : a)
                .orElseThrow();
        return new ResponseLag(best.lag, best.correlation, best.pairs, candidates.size() > 1 && best.equals(last));
    }

    private static ResponseLag at(double[] p, double[] q, int shift, Duration step) {
        int pairs = 0;
        double meanP = 0;
        double meanQ = 0;
        for (int i = 0; i + shift < q.length; i++) {
            if (!Double.isNaN(p[i] + q[i + shift])) {
                pairs++;
                meanP += p[i];
                meanQ += q[i + shift];
            }
        }
        meanP /= pairs;
        meanQ /= pairs;
        double pq = 0;
        double pp = 0;
        double qq = 0;
        for (int i = 0; i + shift < q.length; i++) {
            if (!Double.isNaN(p[i] + q[i + shift])) {
                pq += (p[i] - meanP) * (q[i + shift] - meanQ);
                pp += (p[i] - meanP) * (p[i] - meanP);
                qq += (q[i + shift] - meanQ) * (q[i + shift] - meanQ);
            }
        }
        return new ResponseLag(step.multipliedBy(shift), pq / Math.sqrt(pp * qq), pairs, false);
    }

    @Override
    public String toString() {
        return "ResponseLag[" + Text.duration(lag) + ", correlation " + Text.significant(correlation, 3) + " over "
                + pairs + " steps" + (atLimit ? ", at the limit]" : "]");
    }
}
