package dev.runnel.verification.simulation;

import java.util.List;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;

/** What came of many cases together. */
final class Tally {
    private final List<CaseResult> results;

    Tally(List<CaseResult> results) {
        this.results = results;
    }

    Tally where(Predicate<CaseResult> wanted) {
        return new Tally(results.stream().filter(wanted).toList());
    }

    List<CaseResult> results() {
        return results;
    }

    int sites() {
        return results.size();
    }

    int count(Predicate<CaseResult> wanted) {
        return (int) results.stream().filter(wanted).count();
    }

    int found() {
        return count(CaseResult::isFound);
    }

    /** Median of the finite values; NaN if there is none. */
    double median(ToDoubleFunction<CaseResult> value) {
        double[] values = results.stream()
                .mapToDouble(value)
                .filter(Double::isFinite)
                .sorted()
                .toArray();
        int n = values.length;
        if (n == 0) {
            return Double.NaN;
        }
        return n % 2 == 1 ? values[n / 2] : (values[n / 2 - 1] + values[n / 2]) / 2;
    }

    double findingsEach() {
        return where(CaseResult::isFound).results.stream()
                .mapToInt(CaseResult::after)
                .average()
                .orElse(Double.NaN);
    }

    /** Findings while nothing was wrong. */
    int falseFindings() {
        return results.stream()
                .mapToInt(result -> result.before() + (result.of().cell().isQuiet() ? result.after() : 0))
                .sum();
    }

    double soundYears() {
        return results.stream().mapToDouble(CaseResult::soundYears).sum();
    }

    Limits foundLimits() {
        return Limits.ofShare(found(), sites());
    }
}
