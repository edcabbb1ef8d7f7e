package dev.runnel.verification.simulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ScoreRunTest {
    private static ScoreRun run(Seeds seeds, String fault) {
        return new ScoreRun(seeds, 1, fault, false, Make.FIRST);
    }

    /** A watch that knows the truth and tells it so many days after the beginning. */
    private static Watcher knowing(double days, UnaryOperator<List<Called>> said) {
        return (site, levelOnly) -> {
            Set<Called> right = Called.rightFor(site.fault(), levelOnly);
            if (right.isEmpty()) {
                return new Heard(List.of(), true, 0, "");
            }
            Instant told = site.faultBegins().plusSeconds(Math.round(days * 86400));
            List<Called> names = said.apply(List.of(right.iterator().next()));
            boolean recurring = site.fault().kind() == FaultKind.RECURRING;
            return new Heard(
                    List.of(new Said(told, told, false, List.of(), names, names, recurring, "found")), true, 0, "");
        };
    }

    private static Goal.Verdict verdict(Tally tally, String start) {
        return Goals.of(tally).stream()
                .filter(goal -> goal.text().startsWith(start))
                .findFirst()
                .orElseThrow()
                .verdict();
    }

    @Test
    void developingAndScoringSeedsNeverMeet() {
        Set<Long> developing = new HashSet<>();
        new ScoreRun(Seeds.DEVELOPING, 1000, "", false, Make.FIRST)
                .cases()
                .forEach(one -> developing.add(one.order().seed()));
        List<Case> scoring = new ScoreRun(Seeds.SCORING, 1000, "", false, Make.SECOND).cases();

        assertThat(developing).hasSameSizeAs(scoring);
        assertThat(scoring).noneMatch(one -> developing.contains(one.order().seed()));
    }

    @Test
    void filterKeepsTheSitesOfItsCells() {
        List<Case> all = run(Seeds.DEVELOPING, "").cases();
        List<Case> zeros = run(Seeds.DEVELOPING, "ZEROS").cases();

        assertThat(zeros).hasSize(1).allMatch(one -> one.cell().kind() == FaultKind.VELOCITY_ZEROS);
        assertThat(all).containsAll(zeros);
        assertThat(new ScoreRun(Seeds.DEVELOPING, 2, "", true, Make.FIRST).cases())
                .isNotEmpty()
                .allMatch(one -> one.cell().levelOnly());
    }

    @Test
    void faultsBeginAfterTheBaselineAndEveryKindIsThere() {
        List<Case> all = run(Seeds.SCORING, "").cases();

        assertThat(all)
                .filteredOn(one -> !one.cell().isSound() && one.cell().kind() != FaultKind.FROM_FIRST_DAY)
                .allMatch(one -> one.order().fault().begin() >= 18);
        assertThat(all.stream().map(one -> one.cell().kind()).distinct()).hasSize(FaultKind.values().length);
    }

    @Test
    void watchThatKnowsTheTruthReachesItsGoals() {
        Tally tally = new Tally(run(Seeds.DEVELOPING, "blockage").results(knowing(0.5, names -> names)));

        assertThat(tally.where(result -> result.of().cell().kind() == FaultKind.BLOCKAGE))
                .satisfies(blocked -> assertThat(blocked.found()).isEqualTo(blocked.sites()))
                .satisfies(
                        blocked -> assertThat(blocked.median(CaseResult::delay)).isCloseTo(0.5, within(1e-5)))
                .satisfies(blocked -> assertThat(blocked.findingsEach()).isEqualTo(1));
        assertThat(verdict(tally, "the same, at 4 % scatter: found before")).isEqualTo(Goal.Verdict.REACHED);
        assertThat(verdict(tally, "the same: lead of 60 %")).isEqualTo(Goal.Verdict.REACHED);
        assertThat(verdict(tally, "the same: lead of 48 h")).isEqualTo(Goal.Verdict.REACHED);
        assertThat(verdict(tally, "blockages of 2 d")).isEqualTo(Goal.Verdict.REACHED);
        assertThat(verdict(tally, "faults found: named right at once")).isEqualTo(Goal.Verdict.REACHED);
        assertThat(verdict(tally, "level only: no finding names a cause")).isEqualTo(Goal.Verdict.REACHED);
        assertThat(verdict(tally, "sound sites at 4 %")).isEqualTo(Goal.Verdict.NOT_TESTED);
    }

    @Test
    void watchThatIsLateOrWrongDoesNot() {
        Tally late = new Tally(run(Seeds.DEVELOPING, "blockage").results(knowing(29, names -> names)));
        Tally wrong =
                new Tally(run(Seeds.DEVELOPING, "blockage").results(knowing(1, names -> List.of(Called.MORE_WATER))));

        assertThat(verdict(late, "the same, at 4 % scatter: found before")).isEqualTo(Goal.Verdict.NOT_REACHED);
        assertThat(verdict(late, "the same: lead of 60 %")).isEqualTo(Goal.Verdict.NOT_REACHED);
        assertThat(verdict(late, "blockages of 2 d")).isEqualTo(Goal.Verdict.NOT_REACHED);
        assertThat(verdict(wrong, "faults found: named right at the end")).isEqualTo(Goal.Verdict.NOT_REACHED);
        assertThat(verdict(wrong, "level only: no finding names a cause")).isEqualTo(Goal.Verdict.NOT_REACHED);
    }

    @Test
    void silentWatchFindsNothingAndCriesNoWolf() {
        Watcher silent = (site, levelOnly) -> new Heard(List.of(), true, 0, "");
        Tally tally = new Tally(run(Seeds.DEVELOPING, "sound").results(silent));

        assertThat(tally.sites()).isPositive();
        assertThat(tally.falseFindings()).isZero();
        assertThat(verdict(tally, "sound sites at 4 %")).isEqualTo(Goal.Verdict.REACHED);
        assertThat(verdict(tally, "sound sites: at most one in five")).isEqualTo(Goal.Verdict.REACHED);
    }

    @Test
    void everyFindingOnASoundSiteIsFalse() {
        Watcher loud = (site, levelOnly) -> {
            Instant told = site.grid().end();
            Said said =
                    new Said(told, told, false, List.of(), List.of(Called.HELD_UP), List.of(Called.HELD_UP), false, "");
            return new Heard(List.of(said, said), true, 0, "");
        };
        Tally tally = new Tally(run(Seeds.DEVELOPING, "sound").results(loud));

        assertThat(tally.falseFindings()).isEqualTo(2 * tally.sites());
        assertThat(verdict(tally, "sound sites at 4 %")).isEqualTo(Goal.Verdict.NOT_REACHED);
        assertThat(verdict(tally, "sound sites: at most one in five")).isEqualTo(Goal.Verdict.NOT_REACHED);
    }

    @Test
    void findingToldBeforeTheFaultDoesNotFindIt() {
        Watcher early = knowing(-3, names -> names);
        Tally tally = new Tally(run(Seeds.DEVELOPING, "velocity zeros").results(early));

        assertThat(tally.found()).isZero();
        assertThat(tally.falseFindings()).isEqualTo(tally.sites());
    }

    @Test
    void noBaselineIsNoSoundYear() {
        Tally tally = new Tally(
                run(Seeds.DEVELOPING, "sound").results((site, levelOnly) -> Heard.nothing("too few dry hours")));

        assertThat(tally.soundYears()).isZero();
    }

    @Test
    void tablesHoldEveryCellOnceAndFilesEveryCase() {
        ScoreRun run = run(Seeds.DEVELOPING, "velocity");
        List<CaseResult> results = run.results(knowing(1, names -> names));
        String text = ScoreTable.text(run.title(), new Tally(results));

        assertThat(text)
                .contains("Score of the watch: developing seeds, 1 site a cell, first generator, only \"velocity\"")
                .contains("| velocity zeros ")
                .contains("1/1 (20.7-100.0 %)");
        assertThat(ScoreCsv.cases(results).lines()).hasSize(results.size() + 1);
        assertThat(ScoreCsv.findings(results).lines()).hasSize(results.size() + 1);
    }

    @ParameterizedTest
    @ValueSource(ints = {0, -1, 1001, Integer.MAX_VALUE})
    void refusesAbsurdCounts(int sites) {
        assertThatThrownBy(() -> new ScoreRun(Seeds.DEVELOPING, sites, "", false, Make.FIRST))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("sites must be in [1, 1000], was " + sites);
    }

    /** Told early and wrongly, closed, and back with the fault: a false finding, and the fault is found. */
    @Test
    void findingThatComesBackWithTheFaultFindsIt() {
        Watcher returning = (site, levelOnly) -> {
            Instant early = site.faultBegins().minusSeconds(5 * 86400);
            Said.Again back = new Said.Again(site.faultBegins().plusSeconds(86400), List.of(Called.DROP_OUTS));
            Said said = new Said(
                    early,
                    early,
                    true,
                    List.of(back),
                    List.of(Called.MORE_WATER),
                    List.of(Called.DROP_OUTS),
                    false,
                    "came back");
            return new Heard(List.of(said), true, 0, "");
        };
        Tally tally = new Tally(run(Seeds.DEVELOPING, "velocity zeros").results(returning));

        assertThat(tally.found()).isEqualTo(tally.sites());
        assertThat(tally.falseFindings()).isEqualTo(tally.sites());
        assertThat(tally.median(CaseResult::delay)).isCloseTo(1, within(1e-5));
        assertThat(tally.count(CaseResult::isRightAtOnce)).isEqualTo(tally.sites());
    }

    @Test
    void watchThatBreaksIsCountedAndNamed() {
        Watcher breaking = (site, levelOnly) -> {
            throw new IllegalStateException("out of order");
        };
        Tally tally = new Tally(run(Seeds.DEVELOPING, "velocity zeros").results(breaking));

        assertThat(tally.found()).isZero();
        assertThat(ScoreTable.text("title", tally))
                .contains("The watch ended with an exception on 1 sites", "IllegalStateException: out of order");
    }
}
