package dev.runnel.verification.simulation;

import java.time.LocalDate;
import java.util.Set;

/** What one generator invents for a site; the rest of a site is made alike for all. Each call draws from its own stream. */
interface Nature {
    /** Rain on the catchment, from the start of the record. */
    Rain rain(Grid grid);

    /** The law between depth and velocity, its reference depth being about the usual one in dry weather. */
    Law law(Pipe pipe);

    /** Public holidays that whoever looks after the site knows; none if people there have others. */
    Set<LocalDate> holidays(Grid grid);

    /** Flow in dry weather, m³/s, for each step; about {@code usual} in the median. */
    double[] dryFlow(Grid grid, double usual);

    /** What the rain adds, m³/s, for each step; {@code rain} in mm a step. */
    double[] stormFlow(Grid grid, double[] rain, double usual);

    /** Scatter ε of the law, for each step; {@code sd} of its day-to-day part. */
    double[] scatter(Grid grid, double sd, double[] dry, double[] storm);

    /** One error of a reading, with a standard deviation of 1. */
    double error(Draws draws);
}
