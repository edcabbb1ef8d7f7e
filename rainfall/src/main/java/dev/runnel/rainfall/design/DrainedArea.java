package dev.runnel.rainfall.design;

import dev.runnel.internal.CompensatedSum;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.ArrayList;
import java.util.List;
import org.apiguardian.api.API;

/**
 * The surfaces that drain to a point, each with the share of its rain that runs off: A = Σ A<sub>i</sub>, C = Σ C<sub>i</sub>A<sub>i</sub>/A.
 * Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class DrainedArea {
    private record Surface(String name, double areaM2, double coefficient) {}

    private final List<Surface> surfaces;

    private DrainedArea(List<Surface> surfaces) {
        this.surfaces = surfaces;
    }

    /**
     * Returns no surface yet.
     *
     * @return an area of 0 m²
     */
    public static DrainedArea none() {
        return new DrainedArea(List.of());
    }

    /**
     * Returns the same area with one more surface.
     *
     * @param surface a surface with its runoff coefficient
     * @param hectares its area, ha; greater than 0
     * @return the area
     * @throws IllegalArgumentException if the area is out of range
     */
    public DrainedArea with(RunoffCoefficient surface, double hectares) {
        Require.positive("hectares", hectares, "ha");
        List<Surface> more = new ArrayList<>(surfaces);
        more.add(new Surface(surface.surface(), hectares * 1e4, surface.coefficient()));
        return new DrainedArea(List.copyOf(more));
    }

    /**
     * Returns the area.
     *
     * @return A, m²
     */
    public double areaM2() {
        return sum(false);
    }

    /**
     * Returns the area from which all rain would run off as much as from this.
     *
     * @return C A, m²
     */
    public double effectiveM2() {
        return sum(true);
    }

    /**
     * Returns the mean coefficient.
     *
     * @return C, by area
     * @throws IllegalArgumentException if there is no surface
     */
    public double coefficient() {
        Require.atLeast("number of surfaces", surfaces.size(), 1);
        return effectiveM2() / areaM2();
    }

    private double sum(boolean isEffective) {
        CompensatedSum sum = new CompensatedSum();
        surfaces.forEach(each -> sum.add(each.areaM2() * (isEffective ? each.coefficient() : 1)));
        return sum.value();
    }

    @Override
    public String toString() {
        return "DrainedArea[" + surfaces.size() + " surfaces, " + Text.significant(areaM2() / 1e4, 4) + " ha"
                + (surfaces.isEmpty() ? "]" : ", C " + Text.significant(coefficient(), 3) + "]");
    }
}
