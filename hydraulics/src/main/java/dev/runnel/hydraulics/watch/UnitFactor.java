package dev.runnel.hydraulics.watch;

import dev.runnel.internal.Text;
import org.apache.commons.math3.util.FastMath;

/**
 * Factors by which a reading moves when another unit is read for it. Lengths by their definitions: the international foot is
 * 0.3048 m, the inch 0.0254 m.
 */
enum UnitFactor {
    MILLI(1000, "millimetres where metres are meant"),
    CENTI(100, "centimetres where metres are meant"),
    INCH(1 / 0.0254, "inches where metres are meant"),
    DECI(10, "millimetres where centimetres are meant, or a decimal place"),
    FOOT(1 / 0.3048, "feet where metres are meant"),
    OF_FOOT(0.3048, "metres where feet are meant"),
    OF_DECI(0.1, "centimetres where millimetres are meant, or a decimal place"),
    OF_INCH(0.0254, "metres where inches are meant"),
    OF_CENTI(0.01, "metres where centimetres are meant"),
    OF_MILLI(0.001, "metres where millimetres are meant");

    static final int MOST_HOURS = 24;

    /** A smaller leap, in ln, is near none of them: that of a foot less its band. */
    static final double LEAST_LEAP = 0.88;

    private static final int DIGITS = 4;

    /** Feet and inches are so near to what a blockage does at once that they are not asked about. */
    private static final double[] LN_BETWEEN_COLUMNS = {0, CENTI.ln, MILLI.ln, OF_CENTI.ln, OF_MILLI.ln};

    /** Ln of a factor between that of a foot and ten. */
    private static final double LARGE = 2;

    private final double factor;
    private final String words;
    final double ln;

    UnitFactor(double factor, String words) {
        this.factor = factor;
        this.words = words;
        this.ln = FastMath.log(factor);
    }

    /** Whether no water and no sensor that lost its sight does the same. */
    boolean isLarge() {
        return ln > LARGE;
    }

    boolean isOfFoot() {
        return this == FOOT || this == OF_FOOT;
    }

    /** Distance from usual, in ln, of a reading in the unit: a wet season lifts a level as well; chosen here. */
    double ofUsual() {
        return isOfFoot() ? 0.6 : 1;
    }

    /**
     * Whether a reading in a large unit, in ln above usual, is one that water explains no more: the leap itself has shown
     * the factor, and storms lift the level after it. Chosen here.
     */
    boolean isInAnyWeather(double above) {
        return above > ln - 0.8 && above < ln + 2;
    }

    /**
     * Hours that decide. Ten times the depth is soon sure; what a surcharge reaches as well must show its day, and what a
     * sensor that hangs dry reads, too. Chosen here.
     *
     * @param alone whether the other quantity is not known
     */
    int hours(boolean alone) {
        return isLarge() ? 6 : isOfFoot() && !alone ? 12 : MOST_HOURS;
    }

    /**
     * Distance of a ratio from the factor, in ln, that may be it: half way to the next factor at most. Tiny readings have few
     * digits, and small factors lie among what water does. Chosen here.
     */
    double band() {
        return isOfFoot() ? 0.3 : this == MILLI || this == OF_MILLI ? 0.7 : 0.45;
    }

    /**
     * The same of a median of hours; chosen here.
     *
     * @param dry whether no storm made the leap, so that what comes after it may be wet
     */
    double exact(boolean dry) {
        return isOfFoot() ? 0.08 : isLarge() && dry || this == MILLI || this == OF_MILLI ? 0.4 : 0.16;
    }

    /** How the factor is told. */
    String describe() {
        return Text.significant(factor, DIGITS) + ", such as " + words;
    }

    /** Logarithms of the factors that may lie between the units of two columns that are exchanged. */
    static double[] lnBetweenColumns() {
        return LN_BETWEEN_COLUMNS.clone();
    }

    /** The nearest of a logarithm of a ratio. */
    static UnitFactor nearest(double lnRatio) {
        UnitFactor best = MILLI;
        for (UnitFactor each : values()) {
            best = Math.abs(each.ln - lnRatio) < Math.abs(best.ln - lnRatio) ? each : best;
        }
        return best;
    }
}
