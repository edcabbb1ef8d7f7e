package dev.runnel.rainfall.event;

import dev.runnel.internal.Text;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.apiguardian.api.API;

/**
 * How a storm stands against {@link StormCriteria}.
 *
 * @param criteria name of the criteria
 * @param storm time of the storm
 * @param findings every criterion with its figures
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record StormAssessment(String criteria, Interval storm, List<Finding> findings) {
    /** Whether a criterion is met. */
    public enum Verdict {
        /** It is. */
        MET,
        /** It is not. */
        NOT_MET,
        /** Missing steps, steps too long or a lone gauge leave it open. */
        UNKNOWN
    }

    /**
     * One criterion.
     *
     * @param what gauge, quantity and unit
     * @param value what was found
     * @param limit what was asked for
     * @param verdict whether it is met
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public record Finding(String what, double value, double limit, Verdict verdict) {
        /**
         * Checks that nothing is missing.
         *
         * @param what gauge, quantity and unit
         * @param value what was found
         * @param limit what was asked for
         * @param verdict whether it is met
         */
        public Finding {
            Objects.requireNonNull(what, "what");
            Objects.requireNonNull(verdict, "verdict");
        }

        @Override
        public String toString() {
            return what + " " + Text.significant(value, 3) + " against " + Text.significant(limit, 6) + ": "
                    + switch (verdict) {
                        case MET -> "met";
                        case NOT_MET -> "not met";
                        case UNKNOWN -> "unknown";
                    };
        }
    }

    /**
     * Copies the list.
     *
     * @param criteria name of the criteria
     * @param storm time of the storm
     * @param findings every criterion with its figures
     */
    public StormAssessment {
        Objects.requireNonNull(criteria, "criteria");
        Objects.requireNonNull(storm, "storm");
        Objects.requireNonNull(findings, "findings");
        findings = List.copyOf(findings);
    }

    /**
     * Returns the same assessment with one more criterion: the flow was back at its dry weather course within a time after the storm, and so
     * before the next. {@link dev.runnel.rainfall.response.ReturnToDryWeather} finds the time.
     *
     * @param site where the flow was measured
     * @param took how long it took; empty if it was not seen to be back
     * @param longest longest time, such as until the next rain; 0 or longer
     * @return the assessment; without a time the criterion is unknown if the flow was not looked at for that long
     * @throws IllegalArgumentException if the longest time is negative
     */
    public StormAssessment withReturn(String site, Optional<Duration> took, Duration longest) {
        Objects.requireNonNull(site, "site");
        EpochNanos.nonNegative("longest", longest);
        double hours = took.map(Rain::hours).orElse(Double.NaN);
        Verdict verdict = took.map(each -> each.compareTo(longest) <= 0 ? Verdict.MET : Verdict.NOT_MET)
                .orElse(Verdict.UNKNOWN);
        List<Finding> more = new ArrayList<>(findings);
        more.add(new Finding(
                site + ": hours until the flow was back at dry weather,", hours, Rain.hours(longest), verdict));
        return new StormAssessment(criteria, storm, more);
    }

    /**
     * Tells whether the storm serves.
     *
     * @return met if every criterion is, not met if any is not, else unknown
     */
    public Verdict verdict() {
        if (findings.stream().anyMatch(finding -> finding.verdict() == Verdict.NOT_MET)) {
            return Verdict.NOT_MET;
        }
        return isSuitable() ? Verdict.MET : Verdict.UNKNOWN;
    }

    /**
     * Tells whether the storm is known to serve.
     *
     * @return true if every criterion is met
     */
    public boolean isSuitable() {
        return findings.stream().allMatch(finding -> finding.verdict() == Verdict.MET);
    }

    @Override
    public String toString() {
        String suitability = switch (verdict()) {
            case MET -> "suitable";
            case NOT_MET -> "not suitable";
            case UNKNOWN -> "not known whether suitable";
        };
        return "StormAssessment[" + suitability + " by " + criteria + ": " + findings + "]";
    }
}
