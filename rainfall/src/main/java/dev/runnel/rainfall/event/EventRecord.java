package dev.runnel.rainfall.event;

import dev.runnel.internal.Text;
import java.util.List;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * All events of a record, and what was left out of them. Depths of events, of events dropped and of stray rain add up to
 * the depth of the record, without the tips in outages.
 *
 * @param events events kept, in order of time
 * @param droppedEvents events shallower than the minimum depth
 * @param droppedMm their depth together, mm
 * @param strayMm rain outside every event, in steps too weak to count as wet, mm
 * @param missingSteps missing steps of the record, wherever they lie
 * @param outages outages of a record of tips, wherever they lie
 * @param tipsInOutages tips in them, set aside; no event has them
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record EventRecord(
        List<RainfallEvent> events,
        int droppedEvents,
        double droppedMm,
        double strayMm,
        int missingSteps,
        int outages,
        int tipsInOutages) {
    /**
     * Makes a record without outages.
     *
     * @param events events kept, in order of time
     * @param droppedEvents events shallower than the minimum depth
     * @param droppedMm their depth together, mm
     * @param strayMm rain outside every event, mm
     * @param missingSteps missing steps of the record
     */
    public EventRecord(
            List<RainfallEvent> events, int droppedEvents, double droppedMm, double strayMm, int missingSteps) {
        this(events, droppedEvents, droppedMm, strayMm, missingSteps, 0, 0);
    }

    /**
     * Copies the list.
     *
     * @param events events kept, in order of time
     * @param droppedEvents events shallower than the minimum depth
     * @param droppedMm their depth together, mm
     * @param strayMm rain outside every event, mm
     * @param missingSteps missing steps of the record
     * @param outages outages of a record of tips
     * @param tipsInOutages tips in them, set aside
     */
    public EventRecord {
        Objects.requireNonNull(events, "events");
        events = List.copyOf(events);
    }

    @Override
    public String toString() {
        return "EventRecord[" + events.size() + " events, " + droppedEvents + " dropped with "
                + Text.significant(droppedMm, 4) + " mm, stray " + Text.significant(strayMm, 4) + " mm, " + missingSteps
                + " steps missing"
                + (outages == 0 ? "]" : ", " + outages + " outages with " + tipsInOutages + " tips set aside]");
    }
}
