package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.section.CrossSection;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * A law of resistance, asked at a depth of a section. What answers is a {@link LawByRadius}: the law as it stands at that
 * depth, with one roughness for the whole wetted perimeter. Implementations are immutable and thread-safe.
 *
 * <p>A roughness may depend on the depth (sediment on the bed, another lining higher up, an n that falls as the pipe
 * fills). Therefore a law of resistance has no velocity of its own: a hydraulic radius alone does not say where in the
 * section the water stands.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public interface Resistance {
    /**
     * Returns the law as it stands at a depth.
     *
     * @param section the section
     * @param depth depth above its lowest point, m; in [0, height]
     * @return the law at that depth
     * @throws IllegalArgumentException if {@code depth} is outside or the law does not fit the section
     */
    LawByRadius at(CrossSection section, double depth);

    /**
     * Returns the depths where the law changes its course, for the search of maxima.
     *
     * @param section the section
     * @param gradient energy gradient S, m/m; greater than 0
     * @param gravity acceleration of free fall g, m/s²; greater than 0
     * @return depths, m, inside the section; none unless overridden; a new array
     */
    default double[] breakDepths(CrossSection section, double gradient, double gravity) {
        Objects.requireNonNull(section, "section");
        return new double[0];
    }
}
