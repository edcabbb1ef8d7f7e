package dev.runnel.examples.review;

import dev.runnel.hydraulics.watch.FindingName;

/** What would tell at the site whether a finding is what it looks like: common practice, none of it a reason to enter a sewer. */
final class FieldChecks {
    private FieldChecks() {}

    static String of(FindingName name) {
        return switch (name) {
            case HELD_UP -> "the manholes downstream for what holds the water, and the depth at the monitor by hand";
            case RELEASED -> "whether the sewer was cleaned, and the depth at the monitor by hand";
            case MORE_WATER, LESS_WATER ->
                "the sites up- and downstream on the same days, what was connected, pumped or diverted, and the hours of the pumps upstream";
            case DEPTH_STEP ->
                "the depth by hand beside the logged one, where the sensor sits, and the number of the logger in its files before and after";
            case DEPTH_DRIFT -> "the depth by hand beside the logged one, and where the sensor sits";
            case SEDIMENT -> "the depth of the sediment, and the depth of the water by hand beside the logged one";
            case VELOCITY_LOSS, VELOCITY_GAIN, WEAK_ECHO ->
                "what lies on the velocity sensor, and the velocity by hand before and after it is cleaned";
            case FALSE_VELOCITY ->
                "what lies on or near the velocity sensor, the range and the filter set in it, its cable, and a velocity by hand beside ten logged ones";
            case FALSE_ECHO ->
                "what stands, hangs or foams in the sight of the depth sensor, its cable, and a depth by hand beside ten logged ones";
            case VELOCITY_LOW_FOR_DEPTH, VELOCITY_HIGH_FOR_DEPTH, LEVEL_UP, LEVEL_DOWN ->
                "the depth by hand beside the logged one, the velocity if it can be had, and the manholes downstream";
            case VELOCITY_ZEROS -> "what lies on the velocity sensor, its cable, and whether the water moves";
            case SIGN_FLIPS, REVERSED_SIGN -> "which way the velocity sensor looks, and the sign set in the logger";
            case REVERSE_FLOW ->
                "which way the water flows, and the level downstream: river, tide, pumps, a blocked sewer";
            case FROZEN_DEPTH, FROZEN_VELOCITY, FROZEN_LOGGER ->
                "whether the logged values move when the sensor is lifted out of the water, its cable, and the files of the logger";
            case CONTRADICTORY, OUT_OF_RANGE ->
                "whether the depth sensor hangs in the water, its cable, and the unit set in the logger";
            case DEPTH_UNIT, VELOCITY_UNIT ->
                "the unit and scale set in the logger and in the export of its files, and who changed them at that time";
            case EXCHANGED_COLUMNS ->
                "the depth or the velocity by hand beside the logged one, the cables at the logger, and the columns of its export before and after that time";
            case CLOCK_OF_MONITOR ->
                "the clock of the logger beside a known one before it is read out, and its time zone";
            case CLOCK_OF_GAUGE -> "the clock of the gauge beside a known one before it is read out, and its time zone";
            case GAUGE_CATCHES_LESS, GAUGE_WRITES_MORE ->
                "the funnel and the size of a tip of the gauge, with a known volume poured through it slowly, and gauges nearby in the same storms";
            case SILENT_GAUGE ->
                "the funnel, the bucket and the cable of the gauge, with a known volume poured through it slowly";
            case FALSE_STAMPS -> "the clock of the logger and its battery";
            case TIDAL -> "the level of the tide beside that of the sewer";
            case BASELINE_DOUBTFUL -> "whether the stretch that was learned from was a usual one";
        };
    }
}
