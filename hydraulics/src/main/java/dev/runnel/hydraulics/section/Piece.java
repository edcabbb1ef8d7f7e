package dev.runnel.hydraulics.section;

/**
 * A smooth, rising piece of a wall between two levels, x as a function of the level. The integrals run from the lower end
 * of the piece and are sums of terms of one sign where the wall allows, so that thin films keep their digits.
 */
interface Piece {
    /** Level of the lower end, m. */
    double low();

    /** Level of the upper end, m; +∞ for the last piece of an open wall. */
    double high();

    /** Place of the wall at a level in [low, high], m. */
    double x(double level);

    /** Length of the wall from the lower end to a level, m. */
    double length(double level);

    /** ∫ x dt from the lower end to a level, m². */
    double area(double level);

    /** ∫ x (level − t) dt from the lower end to a level, m³. */
    double moment(double level);

    /** What is left of the piece above a level inside it, or the whole; everything moved down so that the level is 0. */
    Piece above(double level);

    /** The piece upside down in a wall of a height. */
    Piece inverted(double height);

    /** The piece without an upper end. */
    Piece endless();
}
