package dev.runnel.hydraulics.watch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.runnel.hydraulics.evidence.Direction;
import dev.runnel.hydraulics.watch.InventedSite.Fault;
import dev.runnel.timeseries.Machine;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class WatchRuleTest {
    private static Instant day(double day) {
        return InventedSite.START.plus(Duration.ofMinutes(Math.round(day * 1440)));
    }

    private static SiteBaseline baseline(SiteRecord record) {
        return BaselineRule.of(InventedSite.MONITOR).learn(record).baseline().orElseThrow();
    }

    private static WatchReport watch(SiteRecord record) {
        return WatchRule.of(baseline(record)).watch(record);
    }

    private static Finding only(WatchReport report) {
        assertEquals(1, report.findings().size(), () -> report.describe());
        return report.findings().get(0);
    }

    @Test
    void soundSiteIsSilent() {
        assertEquals(List.of(), watch(InventedSite.of(90, 1).record(Fault.NONE)).findings());
    }

    @Test
    void blockageIsHeldUpDownstreamAndOneFinding() {
        Finding finding =
                only(watch(InventedSite.of(60, 2).record(InventedSite.heldUp(InventedSite.ramp(25, 6, 1.0)))));
        assertEquals(FindingName.HELD_UP, finding.name());
        assertEquals(ChangeShape.RAMP, finding.shape());
        assertEquals(Direction.DOWN, finding.direction());
        assertTrue(finding.found().isBefore(day(28)), finding::describe);
        assertTrue(finding.isOpen());
        assertTrue(Duration.between(day(25), finding.since()).abs().toHours() < 36, finding::describe);
    }

    /** Depths in m that come as mm, or from a sensor that hangs dry, from a day on: next to nothing, in steps of 1 mm. */
    private static final Fault DEPTH_GONE =
            (day, depth, velocity, random) -> new double[] {day < 25 ? depth : Math.round(depth) / 1000.0, velocity};

    @Test
    void aDepthOfNextToNothingIsToldOfALevelAlone() {
        Finding finding = only(watch(InventedSite.of(60, 2).record(DEPTH_GONE, false, true)));
        assertEquals(FindingName.OUT_OF_RANGE, finding.name());
        assertTrue(finding.isOpen());
        assertTrue(Duration.between(day(25), finding.since()).abs().toHours() <= 1, finding::describe);
        assertTrue(finding.found().isBefore(day(25.5)), finding::describe);
    }

    @Test
    void aDepthOfNextToNothingUnderAVelocityIsOneContradiction() {
        Finding finding = only(watch(InventedSite.of(60, 2).record(DEPTH_GONE)));
        assertEquals(FindingName.CONTRADICTORY, finding.name());
        assertTrue(finding.found().isBefore(day(25.5)), finding::describe);
    }

    @Test
    void coarseDepthsOfAnotherUnitAreNotToldAsFrozenAgainAndAgain() {
        Finding finding = only(watch(InventedSite.of(60, 2).record((day, depth, velocity, random) ->
                new double[] {day < 25 ? depth : Math.ceil(depth * 5) / 1000.0, velocity})));
        assertTrue(finding.found().isBefore(day(26)), finding::describe);
    }

    @Test
    void oneReadingAfterTheOtherIsTheWholeRecord() {
        SiteRecord record = InventedSite.of(40, 3).record(InventedSite.heldUp(InventedSite.ramp(25, 4, 0.6)));
        WatchRule rule = WatchRule.of(baseline(record)).withAlarmLevel(0.3);
        WatchReport whole = rule.watch(record);
        assertEquals(whole.events(), rule.over(record));
        Machine<SiteReading, WatchNotice, WatchState> machine = rule.start();
        List<WatchNotice> events = new ArrayList<>();
        int count = 0;
        for (SiteReading reading : record) {
            events.addAll(machine.next(reading));
            if (++count % 97 == 0 || !events.isEmpty() && count % 7 == 0) {
                WatchState state = rule.parseState(machine.state().toText());
                assertEquals(machine.state(), state);
                machine = count % 2 == 0 ? rule.start(state) : rule.startFromText(" " + state.toText());
            }
        }
        events.addAll(machine.finish());
        assertEquals(whole.events(), events);
        assertTrue(whole.events().size() > 1);
    }

    @Test
    void refusesTimesThatDoNotRiseAndStatesOfOthers() {
        SiteRecord record = InventedSite.of(20, 4).record(Fault.NONE);
        WatchRule rule = WatchRule.of(baseline(record));
        Machine<SiteReading, WatchNotice, WatchState> machine = rule.start();
        machine.next(new SiteReading(day(20), 0.1, 0.5, 0));
        IllegalArgumentException late =
                assertThrows(IllegalArgumentException.class, () -> machine.next(new SiteReading(day(20), 0.1, 0.5, 0)));
        assertEquals("time must be after 2026-03-22T00:00:00Z, was 2026-03-22T00:00:00Z", late.getMessage());
        SiteRecord other = InventedSite.of(20, 5).record(Fault.NONE);
        assertThrows(
                IllegalArgumentException.class,
                () -> WatchRule.of(baseline(other)).start(machine.state()));
        String text = machine.state().toText();
        assertThrows(
                IllegalArgumentException.class,
                () -> WatchRule.of(baseline(other)).startFromText(text));
        assertThrows(IllegalArgumentException.class, () -> rule.startFromText(text + "\n" + text));
        // What was cut short on the way is refused in words.
        int comma = text.indexOf(',', text.indexOf("blocksOfTrack"));
        String cut = text.substring(0, comma) + text.substring(text.indexOf(',', comma + 1));
        IllegalArgumentException refused = assertThrows(IllegalArgumentException.class, () -> rule.startFromText(cut));
        assertTrue(refused.toString().contains("blocksOfTrack"), refused.toString());
        machine.finish();
        assertThrows(IllegalStateException.class, machine::finish);
    }
}
