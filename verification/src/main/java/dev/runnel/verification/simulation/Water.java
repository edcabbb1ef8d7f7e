package dev.runnel.verification.simulation;

/**
 * What truly happens at a site, for each step.
 *
 * @param flow m³/s; the depth and the velocity carry it: flow = velocity × area(depth) above the bed
 * @param depth m above the invert
 * @param velocity m/s
 * @param shift by how much ln v lies off the undisturbed law at that depth, the scatter aside: 0 where nothing is wrong
 * @param bed depth of sediment, m
 * @param rain mm a step
 * @param dry dry weather flow, m³/s, before any fault
 * @param usualDepth depth of the usual dry weather flow, m
 */
record Water(
        double[] flow,
        double[] depth,
        double[] velocity,
        double[] shift,
        double[] bed,
        double[] rain,
        double[] dry,
        double usualDepth) {}
