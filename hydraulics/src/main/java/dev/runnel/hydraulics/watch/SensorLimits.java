package dev.runnel.hydraulics.watch;

import dev.runnel.internal.StateText;

/**
 * What a sound sensor of this site may show, as its baseline did.
 *
 * @param depthFrozen longest run of equal depths, ns
 * @param velocityFrozen longest run of equal velocities, ns
 * @param chanceRun how many equal velocities in a row are chance
 * @param depthStep largest usual step of the level from one reading to the next in dry weather, m; NaN if it is not known
 * @param narrowEcho whether the velocities of an hour lie close together, so that a low one is told sooner
 * @param zeroLimit share of zeros under water
 * @param echoLimit share of velocities far below the others of their hour
 * @param flipLimit share of velocities of the wrong sign
 * @param loneLimit share of depths far from both neighbours
 * @param strayLimit share of velocities far above those before
 * @param upstreamHours most hours of a day in which water ran upstream
 */
record SensorLimits(
        long depthFrozen,
        long velocityFrozen,
        ChanceRun chanceRun,
        double depthStep,
        boolean narrowEcho,
        double zeroLimit,
        double echoLimit,
        double flipLimit,
        double loneLimit,
        double strayLimit,
        double upstreamHours) {

    static SensorLimits read(StateText text) {
        return new SensorLimits(
                text.count("depthFrozen"),
                text.count("velocityFrozen"),
                new ChanceRun(text.number("velocityStep"), text.number("velocityScatter")),
                text.number("depthStep"),
                text.flag("narrowEcho"),
                text.number("zeroLimit"),
                text.number("echoLimit"),
                text.number("flipLimit"),
                text.number("loneLimit"),
                text.number("strayLimit"),
                text.number("upstreamHours"));
    }

    void write(StateText text) {
        text.with("depthFrozen", depthFrozen)
                .with("velocityFrozen", velocityFrozen)
                .with("velocityStep", chanceRun.step())
                .with("velocityScatter", chanceRun.scatter())
                .with("depthStep", depthStep)
                .with("narrowEcho", narrowEcho)
                .with("zeroLimit", zeroLimit)
                .with("echoLimit", echoLimit)
                .with("flipLimit", flipLimit)
                .with("loneLimit", loneLimit)
                .with("strayLimit", strayLimit)
                .with("upstreamHours", upstreamHours);
    }
}
