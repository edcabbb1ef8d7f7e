package dev.runnel.hydraulics.structure;

import dev.runnel.hydraulics.internal.NumberTable;
import dev.runnel.internal.Text;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.apiguardian.api.API;

/**
 * A Parshall flume, Q = K · hⁿ with h the head at the upstream gauge above the level floor of the converging part (m).
 * Immutable and thread-safe.
 *
 * <ul>
 *   <li>Throat W below 0.3 m: K and n from a table, for 0.025, 0.051, 0.076, 0.152, 0.229 and 0.25 m.
 *   <li>0.3 to 2.44 m: Q = 0.372 W (h/0.305)ⁿ, n = 1.569 W^0.026.
 *   <li>3.05 to 15.24 m: Q = (2.293 W + 0.474) h^1.6.
 * </ul>
 *
 * <p>Source: ISO 9826 (1992), Measurement of liquid flow in open channels - Parshall and SANIIRI flumes; the two formulas
 * from memory, within 0.09 % of the printed constants of the Chinese standard CJ/T 3008.3-1993, whose ranges of head are
 * the limits here. Uncertainty 5 % (ISO 9826 from memory: 3 to 5 %).
 *
 * <p>Drowned, with S the head at the downstream gauge in the throat over h, both above the same floor, the free discharge is
 * lessened by (feet and seconds, from memory)
 *
 * <ul>
 *   <li>0.3 to 2.44 m: W^0.815 ((h/((1.8/S)^1.8 − 2.45))^(4.57 − 3.14 S) + 0.093 S), R. L. Parshall (1928), The Improved Venturi
 *       Flume, Colorado Experiment Station
 *   <li>3.05 to 15.24 m: W/10 (3.364 + 20.19 S² ln S)² h², F. A. Kilpatrick, V. R. Schneider (1983), Use of Flumes in Measuring
 *       Discharge, USGS TWRI 3-A14
 * </ul>
 *
 * <p>from the modular limit to S = 0.95. The correction does not begin at 0: where drowning sets in the discharge steps down by
 * up to 4 %. For smaller throats only charts were published: drowned, they are refused. Valid for the standard shape only.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class ParshallFlume extends OfParts implements TailwaterDischarge {
    private static final NumberTable SMALL = NumberTable.read(ParshallFlume.class, "parshall-small.csv");
    private static final String ISO_9826 = "ISO 9826, CJ/T 3008.3-1993";

    /** Metres in a foot, exactly. */
    private static final double FOOT = 0.3048;

    /** A throat within this of a standard size is one, m: sizes are printed to the millimetre. */
    private static final double ROUNDING = 0.001 + 1e-9;

    /** h2/h1 up to which a drowned discharge was published: Parshall 1928, Kilpatrick and Schneider 1983. */
    private static final double MOST_DROWNED = 0.95;

    /** Share of the free discharge that drowning takes at most; chosen here, so that some flow is left at every head. */
    private static final double MOST_LOST = 0.95;

    /** Throats of the middle sizes, m, 1 to 8 ft, and of the large ones, 10 to 50 ft: the standards of the class comment. */
    private static final double MIDDLE_FROM = 0.3;

    private static final double MIDDLE_TO = 2.44;
    private static final double LARGE_FROM = 3.04;
    private static final double LARGE_TO = 15.25;

    /** Parts a small throat (to 0.25 m) from a middle one, and a middle from a large one, m: between the sizes. */
    private static final double ABOVE_SMALL = 0.29;

    private static final double ABOVE_MIDDLE = 3;

    /** Modular limits of the middle and the large sizes, from memory. */
    private static final double MIDDLE_MODULAR = 0.7;

    private static final double LARGE_MODULAR = 0.8;

    /** Relative uncertainty of the coefficient, 95 %: ISO 9826 (from memory: 3 to 5 %). */
    private static final double UNCERTAINTY = 0.05;

    private final double throat;
    private final double constant;
    private final double exponent;
    private final double modularLimit;
    private final List<ApplicationLimit> limits;

    private ParshallFlume(
            double throat, double constant, double exponent, double least, double greatest, double modularLimit) {
        super(throat);
        this.throat = throat;
        this.constant = constant;
        this.exponent = exponent;
        this.modularLimit = modularLimit;
        limits = List.of(ApplicationLimit.of("head h", "m", least, greatest, ISO_9826, h -> h));
    }

    /**
     * Returns the flume with a throat of the given width.
     *
     * @param throat throat width W, m; within 1 mm of one of 0.025, 0.051, 0.076, 0.152, 0.229, 0.25, or of [0.3, 2.44], or of
     *     [3.04, 15.25]
     * @return the flume; a small one has the listed size
     * @throws IllegalArgumentException if no standard flume has that throat
     */
    public static ParshallFlume ofThroat(double throat) {
        for (double[] row : SMALL.rows()) {
            if (Math.abs(row[0] - throat) <= ROUNDING) {
                return new ParshallFlume(row[0], row[1], row[2], row[3], row[4], row[5]);
            }
        }
        if (throat >= MIDDLE_FROM - ROUNDING && throat <= MIDDLE_TO + ROUNDING) {
            // K, n and the ranges of head h: ISO 9826 and CJ/T 3008.3-1993, see the class comment.
            double exponent = 1.569 * Math.pow(throat, 0.026);
            double least = throat < 0.6 ? 0.03 : throat < 0.75 ? 0.05 : throat < 1.8 ? 0.06 : 0.08;
            double constant = 0.372 * throat * Math.pow(0.305, -exponent);
            return new ParshallFlume(throat, constant, exponent, least, throat < 1 ? 0.75 : 0.80, MIDDLE_MODULAR);
        }
        if (throat >= LARGE_FROM - ROUNDING && throat <= LARGE_TO + ROUNDING) {
            // The same sources.
            double greatest = throat < 3.6 ? 1.07 : throat < 4.5 ? 1.37 : throat < 6 ? 1.67 : 1.83;
            return new ParshallFlume(throat, 2.293 * throat + 0.474, 1.6, 0.09, greatest, LARGE_MODULAR);
        }
        String sizes = SMALL.rows().stream().map(row -> Text.number(row[0])).collect(Collectors.joining(", "));
        throw new IllegalArgumentException("throat must be one of " + sizes
                + ", or in [0.3, 2.44], or in [3.04, 15.25] m, was " + Text.number(throat));
    }

    /**
     * Returns the flume with a throat in feet.
     *
     * @param feet throat width W, ft; in [1, 8] or [10, 50], or a small size
     * @return the flume
     * @throws IllegalArgumentException if no standard flume has that throat
     */
    public static ParshallFlume ofFeet(double feet) {
        return ofThroat(feet * FOOT);
    }

    /**
     * Returns the flume with a throat in inches.
     *
     * @param inches throat width W, in: 1, 2, 3, 6, 9, or 12 and more
     * @return the flume
     * @throws IllegalArgumentException if no standard flume has that throat
     */
    public static ParshallFlume ofInches(double inches) {
        return ofThroat(inches * FOOT / 12);
    }

    @Override
    public double formula(double head) {
        return constant * Math.pow(head, exponent);
    }

    @Override
    public double formula(double head, double tailwater) {
        double ratio = tailwater / head;
        if (ratio <= modularLimit) {
            return formula(head);
        }
        if (ratio <= MOST_DROWNED) {
            return formula(head) - lost(head, ratio);
        }
        // nothing is known beyond: a root to no flow at level heads, which rises with the head
        double last = formula(head) - lost(head, MOST_DROWNED);
        return last * Math.sqrt((1 - ratio) / (1 - MOST_DROWNED));
    }

    /** Returns by how much a drowned flume carries less, m³/s. */
    private double lost(double head, double ratio) {
        double feet = head / FOOT;
        double width = throat / FOOT;
        double loss;
        if (throat > ABOVE_MIDDLE) {
            // Kilpatrick and Schneider 1983.
            double root = 3.364 + 20.19 * ratio * ratio * Math.log(ratio);
            loss = width / 10 * root * root * feet * feet;
        } else {
            // Parshall 1928.
            double base = feet / (Math.pow(1.8 / ratio, 1.8) - 2.45);
            loss = (Math.pow(base, 4.57 - 3.14 * ratio) + 0.093 * ratio) * Math.pow(width, 0.815);
        }
        return Math.min(loss * FOOT * FOOT * FOOT, MOST_LOST * formula(head));
    }

    /**
     * Returns the greatest ratio of downstream to upstream head at which the discharge follows from the upstream head
     * alone.
     *
     * @param head head upstream, m; the ratio is the same for all
     * @return 0.5 to W = 0.076 m, 0.6 to 0.25 m, 0.7 to 2.44 m, 0.8 beyond (from memory)
     */
    @Override
    public OptionalDouble modularLimit(double head) {
        return OptionalDouble.of(modularLimit);
    }

    @Override
    public ApplicationLimit drownedLimit(double tailwater) {
        return throat < ABOVE_SMALL
                ? ApplicationLimit.atMost(
                        "h2/h1 of a throat below 0.3 m", "", modularLimit, "charts only", h -> tailwater / h)
                : ApplicationLimit.atMost(
                        "h2/h1",
                        "",
                        MOST_DROWNED,
                        throat > ABOVE_MIDDLE ? "Kilpatrick and Schneider 1983" : "Parshall 1928",
                        h -> tailwater / h);
    }

    /**
     * Returns the constant K.
     *
     * @return K, m^(3−n)/s
     */
    public double constant() {
        return constant;
    }

    /**
     * Returns the exponent n.
     *
     * @return n, a pure number
     */
    public double exponent() {
        return exponent;
    }

    @Override
    public List<ApplicationLimit> limits() {
        return limits;
    }

    @Override
    public OptionalDouble coefficientUncertainty(double head) {
        return OptionalDouble.of(UNCERTAINTY);
    }

    @Override
    public String toString() {
        return "ParshallFlume[W = " + Text.significant(throat, 6) + " m, Q = " + Text.significant(constant, 5) + " h^"
                + Text.significant(exponent, 4) + "]";
    }
}
