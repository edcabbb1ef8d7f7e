package dev.runnel.hydraulics.section;

import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * An open section bounded by arcs and straight pieces, its last straight pieces going on upwards without end. It has no
 * soffit and no surcharge; whether the water still stays below the banks is for the caller to judge. Immutable and
 * thread-safe. Drawn with {@link Wall}.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class OpenSection extends OutlinedSection {
    OpenSection(String name, Outline outline) {
        super(name, outline);
    }

    /**
     * Returns a copy with a name for {@link #toString()}.
     *
     * @param newName the name
     * @return the copy
     */
    public OpenSection named(String newName) {
        return new OpenSection(newName, outline);
    }

    /**
     * Returns what is left of the section above a level bed of sediment; depths then count from the bed.
     *
     * @param depth depth of the sediment above the invert, m; 0 or greater
     * @return the section above the bed
     * @throws IllegalArgumentException if {@code depth} is negative, infinite or NaN
     */
    public OpenSection withSediment(double depth) {
        return new OpenSection(name, outline.above(Depths.checked(depth, height())));
    }

    @Override
    public String toString() {
        return name + "[open, bed width " + Text.significant(topWidth(0), 5) + " m]";
    }
}
