package dev.runnel.hydraulics.watch;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.baseline.DayCurve;
import java.util.ArrayList;
import java.util.List;

/** A baseline in words, and what cannot be tested with it. */
final class BaselineDescription {
    /** A change that lasts is found from about so much of the scale that the tests go by; chosen here. */
    private static final double LEAST_FOUND = 0.75;

    /** Fewest storms by which the clock of a gauge is tested. */
    private static final int LEAST_STORMS = 2;

    private final StringBuilder lines = new StringBuilder();

    private BaselineDescription() {}

    /** A statement a line. */
    static String of(SiteBaseline baseline) {
        BaselineDescription words = new BaselineDescription();
        words.lines
                .append("baseline ")
                .append(baseline.interval())
                .append(": ")
                .append(baseline.hours())
                .append(" hours, ")
                .append(baseline.dryHours())
                .append(" of them dry");
        baseline.usualVelocity().ifPresent(law -> words.line("velocity at a depth: " + law));
        for (Quantity quantity : Quantity.values()) {
            baseline.day(quantity).ifPresent(day -> words.line(ofDay(quantity, day)));
        }
        for (Quantity quantity : Quantity.values()) {
            if (baseline.watches(quantity)) {
                words.line(ofScatter(quantity, baseline));
            }
        }
        words.line("usual highest level of a dry day: " + Text.fixed(baseline.usualPeak(), 3) + " m");
        baseline.rainLagHours()
                .ifPresent(late -> words.line("usual lag of depth behind rain that is held back as this site does: "
                        + Text.fixed(late, 2) + " h"));
        if (baseline.isTidal()) {
            words.line("the depth follows the tide: depth and velocity are watched at the lowest water of two tides");
        }
        if (baseline.isPumped()) {
            words.line("the depth swings as below a pumping station");
        }
        baseline.notes().forEach(note -> words.line("note: " + note));
        notTested(baseline).forEach(missing -> words.line("not tested: " + missing));
        return words.lines.toString();
    }

    private void line(String text) {
        lines.append('\n').append(text);
    }

    private static String ofDay(Quantity quantity, DayCurve day) {
        return "usual dry day of " + quantity + ": " + Text.fixed(100 * day.explained(), 0)
                + " % of the variance explained, scatter of an hour " + Text.fixed(100 * day.scatter(), 1) + " %";
    }

    private static String ofScatter(Quantity quantity, SiteBaseline baseline) {
        return "scatter allowed for in a block of 6 h, " + quantity + ": "
                + Text.fixed(100 * baseline.scatter(quantity), 1) + " %; a lasting change is found from about "
                + Text.fixed(100 * LEAST_FOUND * baseline.scale[quantity.ordinal()], 0) + " %"
                + (quantity == Quantity.VELOCITY_AT_DEPTH
                        ? ", and after three weeks from " + Text.fixed(100 * SlowChange.limit(baseline), 0) + " %"
                        : "");
    }

    /** What the watch cannot test; empty if it tests all it has. */
    static List<String> notTested(SiteBaseline baseline) {
        List<String> missing = new ArrayList<>();
        if (baseline.usualVelocity().isEmpty()) {
            missing.add(
                    "velocity at the same depth: held up downstream, more water and a depth sensor that drifts cannot be"
                            + " told apart; a finding is level up or level down");
            missing.add("flow, velocity zeros, weak echo, reverse flow");
        }
        if (baseline.isTidal()) {
            missing.add("depth, velocity and flow against the hour of the day, and the clock: the site is tidal");
        } else if (!baseline.clock) {
            missing.add("the clock of the monitor: the hours of the day explain too little of the depth");
        }
        if (!baseline.hasRain()) {
            missing.add("rain: dry hours are told from the level; a slow rise by rain may pass for a change");
            missing.add("the clock of the rain gauge: no rain is known");
        } else if (!baseline.testsGaugeClock()) {
            missing.add("the clock of the rain gauge: the depth follows " + (baseline.isTidal() ? "the tide" : "pumps")
                    + " as well");
        } else if (baseline.stormLags.length < LEAST_STORMS) {
            missing.add("the clock of the rain gauge, until two storms have told how soon the depth follows");
        }
        baseline.usualVelocity()
                .ifPresent(law -> missing.add("depths in rain above " + Text.fixed(law.highestLevel(), 3)
                        + " m or below " + Text.fixed(law.lowestLevel(), 3) + " m, which the baseline did not see"));
        return List.copyOf(missing);
    }
}
