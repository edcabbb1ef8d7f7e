package dev.runnel.rainfall.areal;

import org.apiguardian.api.API;

/**
 * A region of Australia for areal reduction, with its coefficients a to i of the equation for 24 to 168 hours. Source: Ball et
 * al. (2019), Australian Rainfall and Runoff, book 2, chapter 4.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public enum AustralianRegion {
    /** East Coast North. */
    EAST_COAST_NORTH(0.327, 0.241, 0.448, 0.36, 0.00096, 0.48, -0.21, 0.012, -0.0013),
    /** Semi-arid Inland Queensland. */
    SEMI_ARID_INLAND_QUEENSLAND(0.159, 0.283, 0.25, 0.308, 7.3e-07, 1, 0.039, 0, 0),
    /** Tasmania. */
    TASMANIA(0.0605, 0.347, 0.2, 0.283, 0.00076, 0.347, 0.0877, 0.012, -0.00033),
    /** South-west of Western Australia. */
    SOUTH_WEST_WESTERN_AUSTRALIA(0.183, 0.259, 0.271, 0.33, 3.845e-06, 0.41, 0.55, 0.00817, -0.00045),
    /** Central New South Wales. */
    CENTRAL_NEW_SOUTH_WALES(0.265, 0.241, 0.505, 0.321, 0.00056, 0.414, -0.021, 0.015, -0.00033),
    /** South East Coast. */
    SOUTH_EAST_COAST(0.06, 0.361, 0, 0.317, 8.11e-05, 0.651, 0, 0, 0),
    /** Southern Semi-arid. */
    SOUTHERN_SEMI_ARID(0.254, 0.247, 0.403, 0.351, 0.0013, 0.302, 0.058, 0, 0),
    /** Southern Temperate. */
    SOUTHERN_TEMPERATE(0.158, 0.276, 0.372, 0.315, 0.000141, 0.41, 0.15, 0.01, -0.0027),
    /** Northern Coastal. */
    NORTHERN_COASTAL(0.326, 0.223, 0.442, 0.323, 0.0013, 0.58, -0.374, 0.013, -0.0015),
    /** Inland Arid. */
    INLAND_ARID(0.297, 0.234, 0.449, 0.344, 0.00142, 0.216, 0.129, 0, 0);

    private final double a;
    private final double b;
    private final double c;
    private final double d;
    private final double e;
    private final double f;
    private final double g;
    private final double h;
    private final double i;

    AustralianRegion(double a, double b, double c, double d, double e, double f, double g, double h, double i) {
        this.a = a;
        this.b = b;
        this.c = c;
        this.d = d;
        this.e = e;
        this.f = f;
        this.g = g;
        this.h = h;
        this.i = i;
    }

    /** The equation for 24 to 168 hours; the last argument is 0.3 + log10 of the exceedance probability. */
    double longFactor(double area, double minutes, double rarity) {
        return Math.min(
                1,
                1
                        - a * (Math.pow(area, b) - c * Math.log10(minutes)) * Math.pow(minutes, -d)
                        + e * Math.pow(area, f) * Math.pow(minutes, g) * rarity
                        + h * Math.pow(10, i * area * minutes / 1440) * rarity);
    }
}
