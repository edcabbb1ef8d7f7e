package dev.runnel.hydraulics.gauging;

import dev.runnel.hydraulics.internal.NumberTable;
import dev.runnel.internal.Interpolation;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * The uncertainty of a gauging by the budget of ISO 748. Immutable and thread-safe. All components are relative standard
 * uncertainties (68 %).
 *
 * <pre>
 *   u² = u_m² + u_s² + Σ q² (u_b² + u_d² + u_v²)/(Σ q)²        u_v² = u_p² + (u_c² + u_e²)/n
 * </pre>
 *
 * <p>q discharge of a strip (m³/s); u_m from the count of verticals; u_s systematic, of all instruments; u_b of the width, u_d of
 * the depth; u_p from the count of points n of a vertical; u_c of the current meter, u_e of pulsation, by velocity and time of
 * exposure. Source: ISO 748 (2007), clause 9 and annex E; the tables and the defaults (u_s 1 %, u_b 0.5 %, u_d 0.5 %, 60 s) from
 * memory: hold them against the standard before they decide anything.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class GaugingBudget {
    private static final NumberTable VERTICALS = NumberTable.read(GaugingBudget.class, "iso748-verticals.csv");
    private static final NumberTable METER = NumberTable.read(GaugingBudget.class, "iso748-meter.csv");
    private static final NumberTable EXPOSURE = NumberTable.read(GaugingBudget.class, "iso748-exposure.csv");
    private static final double[] TIMES = {30, 60, 120, 180};

    private final GaugedDischarge gauging;
    private final double systematic;
    private final double width;
    private final double depth;
    private final double exposureSeconds;

    private GaugingBudget(
            GaugedDischarge gauging, double systematic, double width, double depth, double exposureSeconds) {
        this.gauging = gauging;
        this.systematic = systematic;
        this.width = width;
        this.depth = depth;
        this.exposureSeconds = exposureSeconds;
    }

    /**
     * Returns the budget of a gauging with the usual components.
     *
     * @param gauging the gauging; its discharge not 0
     * @return the budget
     * @throws IllegalArgumentException if the discharge is 0
     */
    public static GaugingBudget of(GaugedDischarge gauging) {
        if (gauging.discharge() == 0) {
            throw new IllegalArgumentException("discharge of the gauging must not be 0 m3/s");
        }
        return new GaugingBudget(gauging, 0.01, 0.005, 0.005, 60);
    }

    /**
     * Returns a copy with another systematic component.
     *
     * @param newSystematic u_s, relative; in [0, 0.5]
     * @return the copy
     * @throws IllegalArgumentException if it is outside its range
     */
    public GaugingBudget withSystematic(double newSystematic) {
        return new GaugingBudget(gauging, relative("newSystematic", newSystematic), width, depth, exposureSeconds);
    }

    /**
     * Returns a copy with another uncertainty of the widths.
     *
     * @param newWidth u_b, relative; in [0, 0.5]
     * @return the copy
     * @throws IllegalArgumentException if it is outside its range
     */
    public GaugingBudget withWidth(double newWidth) {
        return new GaugingBudget(gauging, systematic, relative("newWidth", newWidth), depth, exposureSeconds);
    }

    /**
     * Returns a copy with another uncertainty of the depths.
     *
     * @param newDepth u_d, relative; in [0, 0.5]
     * @return the copy
     * @throws IllegalArgumentException if it is outside its range
     */
    public GaugingBudget withDepth(double newDepth) {
        return new GaugingBudget(gauging, systematic, width, relative("newDepth", newDepth), exposureSeconds);
    }

    /**
     * Returns a copy with another time of exposure at each point.
     *
     * @param seconds time, s; in [10, 3600], held at 30 and 180 s
     * @return the copy
     * @throws IllegalArgumentException if {@code seconds} is outside its range
     */
    public GaugingBudget withExposure(double seconds) {
        return new GaugingBudget(gauging, systematic, width, depth, Require.inRange("seconds", seconds, 10, 3600, "s"));
    }

    private static double relative(String name, double value) {
        return Require.inRange(name, value, 0, 0.5, "");
    }

    /**
     * Returns the component of the count of verticals, by a straight line between the counts of the table.
     *
     * @return u_m, relative
     */
    public double ofVerticals() {
        return VERTICALS.held(gauging.verticals(), 1) / 100;
    }

    /**
     * Returns the component of the strips, root of the weighted sum of squares.
     *
     * @return relative
     */
    public double ofStrips() {
        double sum = 0;
        for (Strip strip : gauging.strips()) {
            double velocity = Math.abs(strip.velocity());
            double meter = METER.held(velocity, 1) / 100;
            double exposure = exposure(velocity) / 100;
            double ofVelocity = strip.velocityUncertainty() * strip.velocityUncertainty()
                    + (meter * meter + exposure * exposure) / strip.points();
            sum += strip.discharge() * strip.discharge() * (width * width + depth * depth + ofVelocity);
        }
        return Math.sqrt(sum) / Math.abs(gauging.discharge());
    }

    private double exposure(double velocity) {
        double[] percents = new double[TIMES.length];
        for (int i = 0; i < TIMES.length; i++) {
            percents[i] = EXPOSURE.held(velocity, i + 1);
        }
        return Interpolation.held(TIMES, percents, exposureSeconds);
    }

    /**
     * Returns the relative standard uncertainty of the discharge.
     *
     * @return u, 0.02 for 2 % at 68 %
     */
    public double standard() {
        double strips = ofStrips();
        double verticals = ofVerticals();
        return Math.sqrt(verticals * verticals + systematic * systematic + strips * strips);
    }

    /**
     * Returns the relative expanded uncertainty at about 95 %, k = 2.
     *
     * @return U, 0.04 for 4 %
     */
    public double expanded() {
        return 2 * standard();
    }

    @Override
    public String toString() {
        return "GaugingBudget[U " + Text.significant(100 * expanded(), 2) + " % (k = 2): verticals "
                + Text.significant(100 * ofVerticals(), 2) + " %, strips " + Text.significant(100 * ofStrips(), 2)
                + " %, systematic " + Text.significant(100 * systematic, 2) + " %]";
    }
}
