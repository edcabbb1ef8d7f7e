package dev.runnel.examples.marrambay;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;

/**
 * What happens at Marram Bay, and when. All of it invented.
 *
 * <p>Two monitors on one sewer: Saltings Lane upstream, with an overflow, and Quay Street downstream. Each has a rain
 * gauge on its cabinet.
 */
public final class Scenario {
    /** Seed of every random number, so that the files come out the same on every machine. */
    public static final long SEED = 20_261_005L;

    /** The clock of the town; it goes back on 25 October 2026 at 01:00 UTC. */
    public static final ZoneId ZONE = ZoneId.of("Europe/London");

    /** First reading: Monday 5 October, midnight in the town. */
    public static final Instant START = Instant.parse("2026-10-04T23:00:00Z");

    /** End of the record: Monday 16 November, midnight in the town. */
    public static final Instant END = Instant.parse("2026-11-16T00:00:00Z");

    /** Logging interval. */
    public static final Duration STEP = Duration.ofMinutes(2);

    /** Depth of rain for one tip of either bucket, mm. */
    public static final double TIP_MM = 0.2;

    /** Time either bucket takes to move, in which rain still runs into the full side, s. */
    public static final double LOST_SECONDS = 0.4;

    /** The storms, in order. */
    public static final List<Storm> STORMS = List.of(
            Storm.frontal("2026-10-07T02:20:00Z", 9.0, 8.4),
            Storm.frontal("2026-10-08T13:00:00Z", 5.0, 6.2),
            Storm.frontal("2026-10-09T06:10:00Z", 4.0, 9.0),
            Storm.frontal("2026-10-14T16:00:00Z", 1.2, 3.4),
            Storm.convective("2026-10-17T17:40:00Z", 1.6, 30.0),
            Storm.convective("2026-10-18T08:40:00Z", 1.7, 23.2),
            Storm.frontal("2026-10-19T02:00:00Z", 3.0, 2.2),
            Storm.frontal("2026-10-30T04:00:00Z", 7.0, 7.8),
            Storm.frontal("2026-11-02T12:00:00Z", 6.0, 11.6),
            Storm.frontal("2026-11-05T20:30:00Z", 3.0, 4.2),
            Storm.frontal("2026-11-13T14:00:00Z", 8.0, 10.4));

    /** The storm that surcharges the pipe at Saltings Lane and fills it to the crest of the overflow. */
    public static final Storm GREAT_STORM = STORMS.get(4);

    /** The storm of the next morning, which spills again more than 12 hours after the first. */
    public static final Storm MORNING_AFTER = STORMS.get(5);

    /** The storm in which the funnel at Quay Street is blocked and lets the rain through only slowly. */
    public static final Storm SLOW_FUNNEL = STORMS.get(8);

    /** Dew: one lone tip at each gauge in the dry spell. */
    public static final Instant LONE_TIP = Instant.parse("2026-10-24T05:12:37Z");

    /** The velocity sensor at Saltings Lane begins to foul. */
    public static final Instant FOULING_START = Instant.parse("2026-10-21T06:00:00Z");

    /** The fouled sensor repeats one value from here on. */
    public static final Instant FREEZE_START = Instant.parse("2026-10-26T20:00:00Z");

    /** The sensor is cleaned. */
    public static final Instant CLEANED = Instant.parse("2026-10-28T10:10:00Z");

    /** A blockage begins to build downstream of Quay Street. */
    public static final Instant BLOCKAGE_START = Instant.parse("2026-11-03T12:00:00Z");

    /** The sewer is jetted and the blockage is gone. */
    public static final Instant JETTED = Instant.parse("2026-11-13T10:30:00Z");

    /** Height of the blockage when it is jetted, m. */
    public static final double BLOCKAGE_HEIGHT = 0.165;

    private Scenario() {}

    /** Returns the number of logging steps. */
    static int steps() {
        return (int) Duration.between(START, END).dividedBy(STEP);
    }

    /** Returns the index of the logging step that holds an instant. */
    static int stepAt(Instant time) {
        return (int) Duration.between(START, time).dividedBy(STEP);
    }
}
