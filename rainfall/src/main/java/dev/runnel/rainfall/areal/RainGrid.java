package dev.runnel.rainfall.areal;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * Where the square cells of a gridded product lie, of a radar or of gauges spread over an area. Immutable and thread-safe.
 *
 * <p>The depths of the cells are a plain array: row by row from the north, each from west to east, NaN where the product has none.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class RainGrid {
    /** Chosen here: a country in cells of 200 m. */
    private static final long MOST_CELLS = 10_000_000;

    private final Location corner;
    private final double cell;
    private final int columns;
    private final int rows;

    private RainGrid(Location corner, double cell, int columns, int rows) {
        this.corner = corner;
        this.cell = cell;
        this.columns = columns;
        this.rows = rows;
    }

    /**
     * Returns a grid of one cell, to be extended by {@link #withColumns} and {@link #withRows}.
     *
     * @param southWest outer corner of the cell in the south-west
     * @param cellM side of a cell, m; greater than 0
     * @return the grid
     * @throws IllegalArgumentException if the side is out of range
     */
    public static RainGrid from(Location southWest, double cellM) {
        return new RainGrid(
                Objects.requireNonNull(southWest, "southWest"), Require.positive("cellM", cellM, "m"), 1, 1);
    }

    /**
     * Returns the same grid with another number of columns.
     *
     * @param columns cells from west to east; 1 or more, together with the rows at most 10 000 000 cells
     * @return the grid
     * @throws IllegalArgumentException if it is out of range
     */
    public RainGrid withColumns(int columns) {
        return checked(Require.atLeast("columns", columns, 1), rows);
    }

    /**
     * Returns the same grid with another number of rows.
     *
     * @param rows cells from south to north; 1 or more, together with the columns at most 10 000 000 cells
     * @return the grid
     * @throws IllegalArgumentException if it is out of range
     */
    public RainGrid withRows(int rows) {
        return checked(columns, Require.atLeast("rows", rows, 1));
    }

    private RainGrid checked(int newColumns, int newRows) {
        if ((long) newColumns * newRows > MOST_CELLS) {
            throw new IllegalArgumentException(
                    "cells must be at most " + MOST_CELLS + ", were " + newColumns + " by " + newRows);
        }
        return new RainGrid(corner, cell, newColumns, newRows);
    }

    /**
     * Returns the number of cells.
     *
     * @return columns times rows
     */
    public int size() {
        return columns * rows;
    }

    /**
     * Returns the middle of a cell.
     *
     * @param index position in the array of depths, 0 to size − 1
     * @return its middle
     * @throws IndexOutOfBoundsException if there is no such cell
     */
    public Location centre(int index) {
        if (index < 0 || index >= size()) {
            throw new IndexOutOfBoundsException("index must be in [0, " + (size() - 1) + "], was " + index);
        }
        return Location.of(west(index) + cell / 2, south(index) + cell / 2);
    }

    private double west(int index) {
        return corner.x() + cell * (index % columns);
    }

    private double south(int index) {
        return corner.y() + cell * (rows - 1 - index / columns);
    }

    /**
     * Returns the cell in which a place lies; on the edge of two, the one in the east or the north.
     *
     * @param place the place
     * @return position in the array of depths
     * @throws IllegalArgumentException if the place lies outside the grid
     */
    public int indexOf(Location place) {
        double column = Math.floor((place.x() - corner.x()) / cell);
        double row = Math.floor((place.y() - corner.y()) / cell);
        if (!(column >= 0 && column < columns && row >= 0 && row < rows)) {
            throw new IllegalArgumentException("place must lie in " + this + ", was " + place);
        }
        return (rows - 1 - (int) row) * columns + (int) column;
    }

    /**
     * Returns the share of a catchment in every cell.
     *
     * @param catchment the catchment
     * @return the weights of the cells, by area
     * @throws IllegalArgumentException if no cell shares area with it
     */
    public CatchmentCells over(Catchment catchment) {
        List<Integer> cells = new ArrayList<>();
        List<Double> areas = new ArrayList<>();
        double covered = 0;
        for (int i = 0; i < size(); i++) {
            double area = catchment.areaWithin(west(i), south(i), west(i) + cell, south(i) + cell);
            if (area > 0) {
                cells.add(i);
                areas.add(area);
                covered += area;
            }
        }
        if (cells.isEmpty()) {
            throw new IllegalArgumentException(
                    "catchment must share area with " + this + ", does not, was " + catchment);
        }
        return new CatchmentCells(
                size(),
                cells.stream().mapToInt(Integer::intValue).toArray(),
                areas.stream().mapToDouble(Double::doubleValue).toArray(),
                Math.min(covered, catchment.area()) / catchment.area());
    }

    /**
     * Reads the depths of all cells from text: a line for each row from the north, its cells from west to east between commas or blanks, a
     * missing cell {@code NaN} or empty between commas. Empty lines and lines that begin with {@code #} are passed over.
     *
     * @param text the text
     * @return depth of each cell, mm; a new array
     * @throws IllegalArgumentException if rows or columns are not those of the grid, or a depth is no number, negative or infinite; the
     *     message names the line and the column
     */
    public double[] depths(String text) {
        double[] depths = new double[size()];
        int row = 0;
        int number = 0;
        for (String line : text.split("\\R", -1)) {
            number++;
            String content = line.strip();
            if (content.isEmpty() || content.charAt(0) == '#') {
                continue;
            }
            String[] cells = content.contains(",") ? content.split(",", -1) : content.split("\\s+");
            if (row == rows || cells.length != columns) {
                throw new IllegalArgumentException("text line " + number + ": must be one of " + rows + " rows of "
                        + columns + " cells, had " + cells.length + " in row " + (row + 1));
            }
            for (int column = 0; column < columns; column++) {
                depths[row * columns + column] = depth(cells[column].strip(), number, column + 1);
            }
            row++;
        }
        if (row != rows) {
            throw new IllegalArgumentException("text must hold " + rows + " rows, held " + row);
        }
        return depths;
    }

    private static double depth(String cell, int line, int column) {
        if (cell.isEmpty() || cell.equals("NaN")) {
            return Double.NaN;
        }
        try {
            double value = Double.parseDouble(cell);
            return Require.nonNegative("text line " + line + ", column " + column + ": depth", value, "mm");
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException(
                    "text line " + line + ", column " + column + ": must be a number, was " + Text.quoted(cell), e);
        }
    }

    @Override
    public String toString() {
        return "RainGrid[" + columns + " by " + rows + " cells of " + Text.significant(cell, 6) + " m from " + corner
                + "]";
    }
}
