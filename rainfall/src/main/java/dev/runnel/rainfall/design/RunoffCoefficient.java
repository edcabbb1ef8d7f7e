package dev.runnel.rainfall.design;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.internal.ResourceText;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * The share of rain that runs off a surface, C of the rational method.
 *
 * <p>{@link #published} has the ranges that American handbooks print for storms of 5 to 10 years (ASCE and WPCF 1970, Design and
 * construction of sanitary and storm sewers, Manual 37, from memory). Rarer storms and wet ground run off more.
 *
 * @param surface what it is
 * @param coefficient C; 0 to 1
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record RunoffCoefficient(String surface, double coefficient) {
    /**
     * Checks the arguments.
     *
     * @param surface what it is; not blank
     * @param coefficient C; 0 to 1
     * @throws IllegalArgumentException if an argument is out of range
     */
    public RunoffCoefficient {
        if (surface.isBlank()) {
            throw new IllegalArgumentException("surface must say what it is, was blank");
        }
        Require.inRange("coefficient", coefficient, 0, 1, "");
    }

    /**
     * A range of coefficients.
     *
     * @param surface what it is
     * @param least least coefficient
     * @param greatest greatest coefficient
     * @since 0.1
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public record Range(String surface, double least, double greatest) {
        /**
         * Checks that nothing is missing.
         *
         * @param surface what it is
         * @param least least coefficient
         * @param greatest greatest coefficient
         */
        public Range {
            Objects.requireNonNull(surface, "surface");
        }

        /**
         * Returns the middle of the range.
         *
         * @return the coefficient
         */
        public RunoffCoefficient middle() {
            return new RunoffCoefficient(surface, (least + greatest) / 2);
        }

        @Override
        public String toString() {
            return surface + " " + Text.significant(least, 6) + " to " + Text.significant(greatest, 6);
        }
    }

    /**
     * Returns a coefficient of one's own.
     *
     * @param surface what it is; not blank
     * @param coefficient C; 0 to 1
     * @return the coefficient
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static RunoffCoefficient of(String surface, double coefficient) {
        return new RunoffCoefficient(surface, coefficient);
    }

    /**
     * Returns the ranges of the handbook, from memory.
     *
     * @return surfaces with their ranges
     */
    public static List<Range> published() {
        List<Range> ranges = new ArrayList<>();
        for (String line : ResourceText.read(RunoffCoefficient.class, "runoff-coefficients.csv")
                .split("\\R")) {
            if (!line.isBlank() && line.charAt(0) != '#' && !line.startsWith("surface,")) {
                String[] cells = line.split(",");
                ranges.add(new Range(cells[0], Double.parseDouble(cells[1]), Double.parseDouble(cells[2])));
            }
        }
        return List.copyOf(ranges);
    }

    /**
     * Returns the range of one surface of the handbook, from memory.
     *
     * @param surface name as {@link #published} has it, such as {@code asphalt}
     * @return the range
     * @throws IllegalArgumentException if there is no such surface
     */
    public static Range published(String surface) {
        return published().stream()
                .filter(each -> each.surface().equals(surface))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("surface must be one of "
                        + published().stream().map(Range::surface).toList() + ", was " + Text.quoted(surface)));
    }
}
