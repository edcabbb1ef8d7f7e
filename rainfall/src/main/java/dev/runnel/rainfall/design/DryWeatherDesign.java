package dev.runnel.rainfall.design;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * Dry weather flow by its parts, and the flows that British consents were made of,
 *
 * <blockquote>DWF = P G + I + E; Formula A = DWF + 1.36 P + 2 E; full flow = 3 P G + I + 3 E</blockquote>
 *
 * <p>all m³/d, with the population P, the flow of a head G [m³/d], infiltration I and trade effluent E [m³/d]. Formula A, what an overflow must
 * pass on before it spills, is that of the Technical Committee on Storm Overflows and the Disposal of Storm Sewage (1970), with 300
 * gallons a head rounded to 1360 litres; full flow is what a treatment works must take (common practice); both from memory. Peak factors by
 * Harmon (1918) and Babbitt (1932), from memory.
 *
 * <p>What this is not: the consent of a site. Read that one. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class DryWeatherDesign {
    private static final double FORMULA_A_M3_PER_HEAD = 1.36;

    private final double heads;
    private final double perHead;
    private final double infiltration;
    private final double trade;

    private DryWeatherDesign(double heads, double perHead, double infiltration, double trade) {
        this.heads = heads;
        this.perHead = perHead;
        this.infiltration = infiltration;
        this.trade = trade;
    }

    /**
     * Returns the flow of a population that uses 150 litres a head and day (common practice), without infiltration and trade effluent.
     *
     * @param heads population P; greater than 0
     * @return the flow
     * @throws IllegalArgumentException if it is out of range
     */
    public static DryWeatherDesign ofPopulation(double heads) {
        return new DryWeatherDesign(Require.positive("heads", heads, ""), 0.150, 0, 0);
    }

    /**
     * Returns the same with another flow of a head.
     *
     * @param litresPerDay G, litres a head and day; greater than 0
     * @return the flow
     * @throws IllegalArgumentException if it is out of range
     */
    public DryWeatherDesign withLitresPerHead(double litresPerDay) {
        return new DryWeatherDesign(
                heads, Require.positive("litresPerDay", litresPerDay, "l/d") / 1000, infiltration, trade);
    }

    /**
     * Returns the same with infiltration.
     *
     * @param m3PerDay I, m³/d; 0 or greater
     * @return the flow
     * @throws IllegalArgumentException if it is out of range
     */
    public DryWeatherDesign withInfiltration(double m3PerDay) {
        return new DryWeatherDesign(heads, perHead, Require.nonNegative("m3PerDay", m3PerDay, "m3/d"), trade);
    }

    /**
     * Returns the same with trade effluent.
     *
     * @param m3PerDay E, m³/d; 0 or greater
     * @return the flow
     * @throws IllegalArgumentException if it is out of range
     */
    public DryWeatherDesign withTradeEffluent(double m3PerDay) {
        return new DryWeatherDesign(heads, perHead, infiltration, Require.nonNegative("m3PerDay", m3PerDay, "m3/d"));
    }

    /**
     * Returns the dry weather flow.
     *
     * @return DWF, m³/d
     */
    public double dryWeatherM3PerDay() {
        return heads * perHead + infiltration + trade;
    }

    /**
     * Returns a multiple of the dry weather flow, such as 3 or 6 DWF.
     *
     * @param times factor; greater than 0
     * @return m³/d
     * @throws IllegalArgumentException if the factor is out of range
     */
    public double multipleM3PerDay(double times) {
        return Require.positive("times", times, "") * dryWeatherM3PerDay();
    }

    /**
     * Returns Formula A.
     *
     * @return m³/d
     */
    public double formulaAM3PerDay() {
        return dryWeatherM3PerDay() + FORMULA_A_M3_PER_HEAD * heads + 2 * trade;
    }

    /**
     * Returns the full flow to treatment, 3 P G + I + 3 E.
     *
     * @return m³/d
     */
    public double fullFlowM3PerDay() {
        return 3 * heads * perHead + infiltration + 3 * trade;
    }

    /**
     * Returns Harmon's factor of the peak over the mean, (18 + √p)/(4 + √p) with the population p in thousands.
     *
     * @return factor, 4.5 for few to 1 for all heads
     */
    public double harmonFactor() {
        double root = Math.sqrt(heads / 1000);
        return (18 + root) / (4 + root);
    }

    /**
     * Returns Babbitt's factor of the peak over the mean, 5/p<sup>0.2</sup> with the population p in thousands, for 1,000 heads or more.
     *
     * @return factor
     * @throws IllegalArgumentException if the population is below 1000
     */
    public double babbittFactor() {
        return 5 / Math.pow(Require.inRange("heads", heads, 1000, Double.MAX_VALUE, "") / 1000, 0.2);
    }

    @Override
    public String toString() {
        return "DryWeatherDesign[" + Text.significant(heads, 6) + " heads, " + Text.significant(dryWeatherM3PerDay(), 4)
                + " m3/d]";
    }
}
