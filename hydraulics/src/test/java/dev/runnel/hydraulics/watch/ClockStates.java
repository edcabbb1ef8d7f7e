package dev.runnel.hydraulics.watch;

import dev.runnel.internal.StateText;

/** What a watch over the clock has kept of days whose shifts are known. */
final class ClockStates {
    private ClockStates() {}

    /** No hour of a day that goes on; by how much each day came early, with what it leaves, its depths, evenings and mornings. */
    static StateText of(Ring phases, Ring depths, Ring evenings, Ring mornings) {
        StateText text = StateText.of("some", 1)
                .with("clockHours", new double[0])
                .with("clockValues", new double[0])
                .with("clockFlowHours", new double[0])
                .with("clockFlowValues", new double[0]);
        phases.write(text, "clockPhases");
        depths.write(text, "clockDepths");
        evenings.write(text, "clockEvenings");
        mornings.write(text, "clockMornings");
        return text;
    }
}
