package dev.runnel.verification.simulation;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * What came of one case. Times in days; NaN where there is none.
 *
 * @param of the case
 * @param heard all that was said
 * @param first the first finding told after the fault began, if any
 * @param after count of findings told from then on
 * @param before count of findings told before it began; on a sound site all of them
 * @param seasons count of the findings on a sound site that say more or less water where the season's flow had truly moved
 * @param delay from the beginning of the fault to the first finding
 * @param alarm from the beginning of the fault to the depth alarm it causes
 * @param shift by how much ln(v / law) had truly moved when it was found
 * @param dryDays dry days from the beginning to the first finding
 */
record CaseResult(
        Case of,
        Heard heard,
        Optional<Said> first,
        int after,
        int before,
        int seasons,
        double delay,
        double alarm,
        double shift,
        int dryDays) {
    static CaseResult sound(Case of, Heard heard, int seasons) {
        int all = heard.said().size();
        return new CaseResult(of, heard, Optional.empty(), 0, all, seasons, Double.NaN, Double.NaN, Double.NaN, 0);
    }

    static CaseResult missed(Case of, Heard heard, OptionalDouble alarm) {
        double untilAlarm = alarm.orElse(Double.NaN) - of.order().fault().begin();
        int all = heard.said().size();
        return new CaseResult(of, heard, Optional.empty(), 0, all, 0, Double.NaN, untilAlarm, Double.NaN, 0);
    }

    static CaseResult found(Case of, Heard heard, Site site, List<Said> after, int before) {
        Said first = after.get(0);
        Truths truths = new Truths(site);
        double begin = site.fault().begin();
        double told = Duration.between(site.grid().start(), first.told()).toSeconds() / 86400.0;
        return new CaseResult(
                of,
                heard,
                Optional.of(first),
                after.size(),
                before,
                0,
                told - begin,
                truths.alarm().orElse(Double.NaN) - begin,
                truths.shift(told),
                truths.dryDays(begin, told));
    }

    /** Days by which the first finding puts the beginning too late; negative if too early. */
    double sinceOff() {
        return first.map(said -> Duration.between(Simulator.grid(of.order()).start(), said.since())
                                        .toSeconds()
                                / 86400.0
                        - of.order().fault().begin())
                .orElse(Double.NaN);
    }

    boolean isFound() {
        return first.isPresent();
    }

    boolean hasAlarm() {
        return !Double.isNaN(alarm);
    }

    /** Hours from the finding to the alarm; negative if the alarm came first, NaN if one of them did not come. */
    double leadHours() {
        return 24 * (alarm - delay);
    }

    boolean isFoundBeforeAlarm() {
        return leadHours() > 0;
    }

    private Set<Called> right() {
        return Called.rightFor(of.order().fault(), of.cell().levelOnly());
    }

    boolean isRightAtOnce() {
        return first.map(said -> said.atOnce().stream().anyMatch(right()::contains))
                .orElse(false);
    }

    boolean isRightAtEnd() {
        return first.map(said -> said.atEnd().stream().anyMatch(right()::contains))
                .orElse(false);
    }

    boolean isCalledRecurring() {
        return heard.said().stream().anyMatch(Said::recurring);
    }

    /** Whether any finding named a cause, at once or at the end. */
    boolean namesCause() {
        return heard.said().stream()
                .anyMatch(said -> said.atOnce().stream().anyMatch(Called::isCause)
                        || said.atEnd().stream().anyMatch(Called::isCause));
    }

    /** Years during which nothing at the monitor was wrong and a baseline stood; the first fortnight is learning. */
    double soundYears() {
        double until = of.cell().isQuiet()
                ? of.order().days()
                : Math.min(of.order().days(), of.order().fault().begin());
        return heard.learned() ? Math.max(0, until - 14) / 365.25 : 0;
    }
}
