package dev.runnel.verification.simulation;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/**
 * What to score.
 *
 * @param seeds which range of seeds
 * @param sites of each cell with a fault; sound sites are two for one of them
 * @param fault only cells whose fault holds this text; empty for all
 * @param levelOnly only cells without velocity
 * @param make who makes the sites
 */
record ScoreRun(Seeds seeds, int sites, String fault, boolean levelOnly, Make make) {
    static final int MOST_SITES = 1000;

    ScoreRun {
        if (sites < 1 || sites > MOST_SITES) {
            throw new IllegalArgumentException("sites must be in [1, " + MOST_SITES + "], was " + sites);
        }
    }

    List<Case> cases() {
        List<Cell> cells = Cells.all();
        List<Case> cases = new ArrayList<>();
        for (int c = 0; c < cells.size(); c++) {
            Cell cell = cells.get(c);
            if (!cell.what().toLowerCase(Locale.ROOT).contains(fault.toLowerCase(Locale.ROOT))
                    || levelOnly && !cell.levelOnly()) {
                continue;
            }
            int count = cell.isSound() && cell.trait() == Trait.PLAIN && !cell.levelOnly() ? 2 * sites : sites;
            for (int k = 0; k < count; k++) {
                cases.add(new Case(cell, k, Cells.order(cell, c + k, seeds.of(c, k), make)));
            }
        }
        return cases;
    }

    /** Runs all cases, side by side; the results in the order of the cases. */
    List<CaseResult> results(Watcher watcher) {
        List<Case> cases = cases();
        return IntStream.range(0, cases.size())
                .parallel()
                .mapToObj(i -> cases.get(i).run(watcher))
                .toList();
    }

    String title() {
        return "Score of the watch: " + seeds + " seeds, " + sites + (sites == 1 ? " site" : " sites") + " a cell, "
                + make + " generator" + (fault.isEmpty() ? "" : ", only \"" + fault + "\"")
                + (levelOnly ? ", level only" : "");
    }
}
