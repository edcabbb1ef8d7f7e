package dev.runnel.hydraulics.section;

import dev.runnel.internal.Text;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * An open section bounded by arcs and straight pieces, its last straight pieces going on upwards without end. It has no
 * soffit and no surcharge; whether the water still stays below the banks is for the caller to judge. Immutable and
 * thread-safe. Drawn with {@link Wall}.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
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
        Objects.requireNonNull(newName, "newName");
        return new OpenSection(newName, outline);
    }

    @Override
    public String toString() {
        return name + "[open, bed width " + Text.significant(topWidth(0), 5) + " m]";
    }

    /** The same shape above a level bed. */
    @Override
    OpenSection above(double level) {
        return new OpenSection(name, outline.above(level));
    }
}
