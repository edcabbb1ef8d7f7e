package dev.runnel.hydraulics.flow;

/** Density of water where a force or a power is asked for. */
final class WaterDensity {
    /** kg/m³: common practice; 5 to 25 °C water is 0 to 0.3 % lighter. */
    static final double USUAL = 1000;

    private WaterDensity() {}
}
