package dev.runnel.rainfall.response;

import dev.runnel.base.Require;
import dev.runnel.base.Text;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import org.apiguardian.api.API;

/**
 * The time by which flow follows rain: the shift at which the two correlate most (Pearson, over the pairs that neither
 * misses). No finer than a step.
 *
 * @param lag shift of the greatest correlation, the shortest of equals
 * @param correlation correlation coefficient there
 * @param pairs steps it is taken over
 * @param atLimit true if it is the longest shift looked at, so that a longer one may be better
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record ResponseLag(Duration lag, double correlation, int pairs, boolean atLimit) {
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
        Rain.requireNonNegative("rain", rain, "mm");
        Steps.requireSame("flow", rain, flow);
        long shifts = EpochNanos.nonNegative("longest", longest) / rain.step().toNanos();
        Require.inRange("steps in longest", (double) shifts, 0, Math.max(0, rain.size() - 2), "");
        double[] p = rain.toValues();
        double[] q = flow.toValues();
        ResponseLag best = at(p, q, 0, rain.step(), false);
        for (int shift = 1; shift <= shifts; shift++) {
            ResponseLag candidate = at(p, q, shift, rain.step(), shift == shifts);
            if (candidate.correlation > best.correlation || Double.isNaN(best.correlation)) {
                best = candidate;
            }
        }
        if (Double.isNaN(best.correlation)) {
            throw new IllegalArgumentException("rain and flow must both vary over common steps, do not");
        }
        return best;
    }

    private static ResponseLag at(double[] p, double[] q, int shift, Duration step, boolean last) {
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
        return new ResponseLag(step.multipliedBy(shift), pq / Math.sqrt(pp * qq), pairs, last);
    }

    @Override
    public String toString() {
        return "ResponseLag[" + lag + ", correlation " + Text.significant(correlation, 3) + " over " + pairs + " steps"
                + (atLimit ? ", at the limit]" : "]");
    }
}
