package dev.runnel.verification.simulation;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.util.FastMath;

/** The cells of the score, in their order; the number of a cell is part of the seeds of its sites. */
final class Cells {
    private static final double STAYS = Double.POSITIVE_INFINITY;
    private static final double[] SCATTERS = {0.02, 0.04, 0.06, 0.08};
    private static final int SOUND_DAYS = 365;
    private static final int AFTER = 30;

    /** Within a winter, and where weeks tell, things are found late, and a fault must be there for some time. */
    private static final int AFTER_FOR_LONG = 60;

    private final List<Cell> cells = new ArrayList<>();

    private Cells() {}

    static List<Cell> all() {
        Cells all = new Cells();
        all.sound();
        all.obstructions();
        all.sensors();
        all.clocks();
        all.levels();
        // New cells come last: the number of a cell is part of the seeds of its sites.
        all.seasons();
        all.units();
        all.exchanged();
        all.gauges();
        all.small();
        all.echoes();
        return List.copyOf(all.cells);
    }

    private void sound() {
        for (boolean levelOnly : new boolean[] {false, true}) {
            for (double scatter : SCATTERS) {
                cells.add(new Cell(FaultKind.NONE, 0, 0, STAYS, scatter, Trait.PLAIN, levelOnly));
            }
            for (double scatter : new double[] {0.02, 0.06}) {
                cells.add(new Cell(FaultKind.NONE, 0, 0, STAYS, scatter, Trait.PUMPED, levelOnly));
                cells.add(new Cell(FaultKind.NONE, 0, 0, STAYS, scatter, Trait.TIDAL, levelOnly));
            }
        }
    }

    private void obstructions() {
        for (double ramp : new double[] {1, 2, 4, 7, 14, 21, 50}) {
            for (double rise : new double[] {0.2, 0.5, 1, 2}) {
                add(FaultKind.BLOCKAGE, rise, ramp, STAYS);
            }
        }
        for (double rise : new double[] {0.5, 1}) {
            add(FaultKind.BLOCKAGE_ABRUPT, rise, 1 / 12.0, STAYS);
            add(FaultKind.BLOCKAGE_RELEASED, rise, 5, 8);
            add(FaultKind.BLOCKAGE_DROWNED, rise, 7, STAYS);
            add(FaultKind.OBSTRUCTION_GONE, rise, 0, STAYS);
            add(FaultKind.RECURRING, rise, 5, STAYS);
            add(FaultKind.FROM_FIRST_DAY, rise, 0, STAYS);
        }
        add(FaultKind.SEDIMENT, 0.2, 40, STAYS);
        add(FaultKind.SEDIMENT, 0.4, 40, STAYS);
        add(FaultKind.REVERSE_FLOW, 0.8, 0, 3);
        for (double share : new double[] {0.2, 0.4}) {
            add(FaultKind.LESS_WATER, share, 0, STAYS);
            add(FaultKind.MORE_WATER, share, 0, STAYS);
        }
    }

    private void sensors() {
        for (double share : new double[] {0.15, -0.15, 0.3, -0.3}) {
            add(FaultKind.DEPTH_OFFSET, share, 0, STAYS);
        }
        add(FaultKind.DEPTH_DRIFT, 0.3, 30, STAYS);
        add(FaultKind.DEPTH_DRIFT, -0.3, 30, STAYS);
        add(FaultKind.VELOCITY_FOULING, 0.15, 20, STAYS);
        add(FaultKind.VELOCITY_FOULING, 0.3, 20, STAYS);
        add(FaultKind.VELOCITY_FOULING, 0.5, 5, STAYS);
        add(FaultKind.VELOCITY_STEP, 0.3, 0, STAYS);
        add(FaultKind.VELOCITY_ZEROS, 0.25, 0, 10);
        add(FaultKind.WEAK_ECHO, 0.3, 0, 10);
        add(FaultKind.WEAK_ECHO, 0.4, 0, 10);
        add(FaultKind.SIGN_FLIPS, 0.3, 0, 10);
        add(FaultKind.SIGN_FLIPS, 1, 0, STAYS);
        add(FaultKind.FROZEN_DEPTH, 1, 0, 3);
        add(FaultKind.FROZEN_VELOCITY, 1, 0, 3);
        add(FaultKind.FROZEN_LOGGER, 1, 0, 3);
        add(FaultKind.DEAD_GAUGE, 1, 0, STAYS);
        add(FaultKind.FALSE_STAMP, 30, 0, STAYS);
        add(FaultKind.FALSE_STAMP, -3, 0, STAYS);
    }

    private void clocks() {
        for (double hours : new double[] {0.5, 1, -1, 3}) {
            add(FaultKind.CLOCK_OF_MONITOR, hours, 0, STAYS);
        }
        add(FaultKind.CLOCK_OF_GAUGE, 1, 0, STAYS);
        add(FaultKind.CLOCK_OF_GAUGE, 3, 0, STAYS);
    }

    private void levels() {
        for (double ramp : new double[] {2, 4, 7, 21, 50}) {
            for (double rise : new double[] {0.2, 0.5, 1, 2}) {
                addLevel(FaultKind.BLOCKAGE, rise, ramp, STAYS);
            }
        }
        addLevel(FaultKind.OBSTRUCTION_GONE, 0.5, 0, STAYS);
        addLevel(FaultKind.DEPTH_OFFSET, 0.3, 0, STAYS);
        addLevel(FaultKind.DEPTH_OFFSET, -0.3, 0, STAYS);
        addLevel(FaultKind.DEPTH_DRIFT, 0.3, 30, STAYS);
        addLevel(FaultKind.FROZEN_DEPTH, 1, 0, 3);
        addLevel(FaultKind.CLOCK_OF_MONITOR, 1, 0, STAYS);
    }

    private void seasons() {
        for (boolean levelOnly : new boolean[] {false, true}) {
            for (double scatter : new double[] {0.02, 0.06}) {
                cells.add(new Cell(FaultKind.NONE, 0, 0, STAYS, scatter, Trait.SEASON, levelOnly));
            }
            addInSeason(FaultKind.DEPTH_OFFSET, 0.3, 0, levelOnly);
            addInSeason(FaultKind.BLOCKAGE, 0.5, 50, levelOnly);
            addInSeason(FaultKind.RECURRING, 0.5, 5, levelOnly);
        }
        addInSeason(FaultKind.VELOCITY_STEP, 0.3, 0, false);
    }

    private void units() {
        add(FaultKind.DEPTH_UNIT, 10, 0, STAYS);
        // Feet a second for metres a second.
        add(FaultKind.VELOCITY_UNIT, 3.281, 0, STAYS);
        addLevel(FaultKind.DEPTH_UNIT, 10, 0, STAYS);
    }

    private void exchanged() {
        add(FaultKind.EXCHANGED_COLUMNS, 1, 0, STAYS);
        add(FaultKind.EXCHANGED_COLUMNS, 1000, 0, STAYS);
    }

    private void gauges() {
        add(FaultKind.DEAD_GAUGE, 1, 0, 15);
        add(FaultKind.CLOGGED_FUNNEL, 0.5, 0, STAYS);
        add(FaultKind.CLOGGED_FUNNEL, 0.7, 0, STAYS);
        add(FaultKind.CLOGGED_FUNNEL, 0.6, 60, STAYS);
    }

    private void small() {
        add(FaultKind.VELOCITY_STEP, 0.1, 0, STAYS);
        add(FaultKind.VELOCITY_FOULING, 0.1, 30, STAYS);
        add(FaultKind.DEPTH_DRIFT, 0.15, 50, STAYS);
        add(FaultKind.DEPTH_DRIFT, -0.15, 50, STAYS);
    }

    private void echoes() {
        add(FaultKind.FALSE_ECHO, 0.1, 0, 10);
        add(FaultKind.FALSE_ECHO, 0.25, 0, 10);
        addLevel(FaultKind.FALSE_ECHO, 0.1, 0, 10);
    }

    private void addInSeason(FaultKind kind, double severity, double ramp, boolean levelOnly) {
        cells.add(new Cell(kind, severity, ramp, STAYS, 0, Trait.SEASON, levelOnly));
    }

    private void add(FaultKind kind, double severity, double ramp, double lasts) {
        cells.add(new Cell(kind, severity, ramp, lasts, 0, Trait.PLAIN, false));
    }

    private void addLevel(FaultKind kind, double severity, double ramp, double lasts) {
        cells.add(new Cell(kind, severity, ramp, lasts, 0, Trait.PLAIN, true));
    }

    /** The order for one site of a cell; the turn says which scatter it takes. */
    static SiteOrder order(Cell cell, int turn, long seed, Make make) {
        double scatter = cell.scatter() > 0 ? cell.scatter() : SCATTERS[turn % SCATTERS.length];
        boolean wet = cell.kind() == FaultKind.BLOCKAGE_DROWNED;
        if (cell.isSound()) {
            return new SiteOrder(seed, make, SOUND_DAYS, scatter, cell.trait(), wet, Fault.NONE);
        }
        Draws draws = Draws.of(seed, "fault");
        // A fortnight to learn, then at any moment, in whatever weather.
        double begin = cell.kind() == FaultKind.FROM_FIRST_DAY
                ? 0
                : cell.isInSeason() ? Season.of(seed).within(draws) : draws.uniform(18, 35);
        double period = cell.kind() == FaultKind.RECURRING ? draws.uniform(5, 10) : 0;
        double after = cell.isInSeason() || cell.isSmall() ? AFTER_FOR_LONG : after(cell.kind());
        int days = (int) FastMath.ceil(begin + cell.ramp() + after);
        Fault fault = new Fault(cell.kind(), cell.severity(), begin, cell.ramp(), begin + cell.lasts(), period);
        return new SiteOrder(seed, make, days, scatter, cell.trait(), wet, fault);
    }

    /** Days of the record after the ramp. */
    private static double after(FaultKind kind) {
        return switch (kind) {
            case RECURRING -> 50;
            case FROM_FIRST_DAY -> 60;
            // Only storms tell of it, of which there are a few in a month.
            case CLOGGED_FUNNEL -> 120;
            default -> AFTER;
        };
    }
}
