package dev.runnel.rainfall.areal;

import dev.runnel.internal.CompensatedSum;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * The cells of a grid that share area with a catchment. Made by {@link RainGrid#over}, once for all steps. Immutable and
 * thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class CatchmentCells {
    private final int gridSize;
    private final int[] cells;
    private final double[] areas;
    private final double covered;

    CatchmentCells(int gridSize, int[] cells, double[] areas, double covered) {
        this.gridSize = gridSize;
        this.cells = cells;
        this.areas = areas;
        this.covered = covered;
    }

    /**
     * The mean over a catchment.
     *
     * @param depthMm mean of the cells that have a depth, by the area they share with the catchment, mm; NaN if none has
     * @param knownShare share of the catchment in cells that have a depth, 0 to 1
     * @since 0.1
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public record Mean(double depthMm, double knownShare) {
        @Override
        public String toString() {
            return "Mean[" + Text.significant(depthMm, 6) + " mm, " + Text.significant(100 * knownShare, 4)
                    + " % known]";
        }
    }

    /**
     * Returns the number of cells that share area with the catchment.
     *
     * @return count
     */
    public int size() {
        return cells.length;
    }

    /**
     * Returns the share of the catchment that the grid covers.
     *
     * @return 0 to 1; below 1 if the catchment reaches beyond the grid
     */
    public double coveredShare() {
        return covered;
    }

    /**
     * Returns the mean over the catchment, Σ A P/Σ A.
     *
     * @param depthsMm depth of every cell of the grid, mm; 0 or greater, NaN for missing
     * @return the mean and how much of the catchment it rests on
     * @throws IllegalArgumentException if the number of cells differs, or a depth is negative or infinite
     */
    public Mean mean(double[] depthsMm) {
        Require.sameLength("depthsMm", gridSize, depthsMm.length);
        CompensatedSum volume = new CompensatedSum();
        CompensatedSum known = new CompensatedSum();
        CompensatedSum all = new CompensatedSum();
        for (int i = 0; i < cells.length; i++) {
            double depth = depthsMm[cells[i]];
            all.add(areas[i]);
            if (!Double.isNaN(depth)) {
                Require.nonNegative("depthsMm at index " + cells[i], depth, "mm");
                volume.add(areas[i] * depth);
                known.add(areas[i]);
            }
        }
        double area = known.value();
        // NaN where nothing is known.
        return new Mean(volume.value() / area, area / all.value() * coveredShare());
    }

    @Override
    public String toString() {
        return "CatchmentCells[" + cells.length + " cells, " + Text.significant(100 * coveredShare(), 4)
                + " % of the catchment]";
    }
}
