package dev.runnel.hydraulics.section;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * Sections from a survey: widths at levels, straight between them. Areas are exact for what was measured; the perimeter
 * assumes walls that mirror each other, which makes it a little too small for a lopsided section.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class TabulatedSection {
    private TabulatedSection() {}

    /**
     * Returns the closed section: the last width is the soffit, level if it is greater than 0.
     *
     * @param levels levels above the invert, m; the first 0, not falling (two equal levels make a bench); not modified
     * @param widths width at each level, m; 0 or greater; same length; not modified
     * @return the section
     * @throws IllegalArgumentException if the table is too short or not as said; names the index
     */
    public static ProfileSection closed(double[] levels, double[] widths) {
        return wall(levels, widths).mirrored().named("TabulatedSection");
    }

    /**
     * Returns the open section: the last straight piece goes on upwards.
     *
     * @param levels levels above the invert, m; the first 0, not falling (two equal levels make a bench); not modified
     * @param widths width at each level, m; 0 or greater; same length; not modified
     * @return the section
     * @throws IllegalArgumentException if the table is too short, not as said, or narrows towards its end; names the index
     */
    public static OpenSection open(double[] levels, double[] widths) {
        return wall(levels, widths).mirroredOpen().named("TabulatedSection");
    }

    private static Wall wall(double[] levels, double[] widths) {
        Require.sameLength("widths", levels.length, widths.length);
        Require.atLeast("number of levels", levels.length, 2);
        for (int i = 0; i < levels.length; i++) {
            Require.nonNegative("widths[" + i + "]", widths[i], "m");
            Require.nonNegative("levels[" + i + "]", levels[i], "m");
            if (i == 0 ? levels[0] != 0 : levels[i] < levels[i - 1]) {
                throw new IllegalArgumentException("levels[" + i + "] must be "
                        + (i == 0
                                ? "0, the invert"
                                : "at least levels[" + (i - 1) + "] = " + Text.number(levels[i - 1]) + " m")
                        + ", was " + Text.number(levels[i]));
            }
        }
        Wall wall = Wall.from(widths[0] / 2, 0);
        for (int i = 1; i < levels.length; i++) {
            if (levels[i] == levels[i - 1] && widths[i] == widths[i - 1]) {
                throw new IllegalArgumentException("levels[" + i + "] and widths[" + i + "] repeat the row before, "
                        + Text.number(levels[i]) + " m and " + Text.number(widths[i]) + " m");
            }
            wall = wall.lineTo(widths[i] / 2, levels[i]);
        }
        return wall;
    }
}
