package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.runnel.hydraulics.watch.InventedSite.Fault;
import dev.runnel.timeseries.Machine;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Stamps that leap ahead: held until others say the same, and counted where they are left out. */
class FalseStampsTest {
    private static final WatchRule RULE = rule();

    private static WatchRule rule() {
        SiteRecord record = InventedSite.of(20, 3).record(Fault.NONE);
        return WatchRule.of(
                BaselineRule.of(InventedSite.MONITOR).learn(record).baseline().orElseThrow());
    }

    private static SiteReading at(Instant time) {
        double hour = Math.floorMod(time.getEpochSecond(), 86_400L) / 3600.0;
        double depth = 0.12 + 0.02 * Math.sin(hour);
        return new SiteReading(time, depth, 0.7 * Math.pow(depth / 0.12, 0.55), 0);
    }

    private static Instant step(int i) {
        return InventedSite.START.plus(Duration.ofDays(20)).plus(Duration.ofMinutes(15L * i));
    }

    private static List<WatchNotice> noted(List<WatchNotice> notices) {
        return notices.stream()
                .filter(each -> each.kind() == WatchNotice.Kind.NOTED)
                .toList();
    }

    @Test
    void threeStampsAMonthAheadAreLeftOutAndCountedAndTheWatchGoesOn() {
        Machine<SiteReading, WatchNotice, WatchState> machine = RULE.start();
        List<WatchNotice> told = new ArrayList<>();
        for (int i = 0; i < 200; i++) {
            boolean ahead = i >= 100 && i < 103;
            told.addAll(machine.next(at(ahead ? step(i).plus(Duration.ofDays(30)) : step(i))));
        }
        assertThat(noted(told)).hasSize(1);
        Finding remark = noted(told).get(0).finding();
        assertThat(remark.names()).containsExactly(FindingName.FALSE_STAMPS);
        assertThat(remark.number()).isZero();
        assertThat(remark.detail())
                .isEqualTo("3 readings were left out: stamped from " + step(100).plus(Duration.ofDays(30)) + " to "
                        + step(102).plus(Duration.ofDays(30)) + ", after " + step(99) + "; the next stamp was "
                        + step(103));
        assertThatThrownBy(() -> machine.next(at(step(199))))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("time must be after " + step(199) + ", was " + step(199));
    }

    @Test
    void outageOfDaysIsNoFalseStampAndNoReadingIsLost() {
        Machine<SiteReading, WatchNotice, WatchState> machine = RULE.start();
        List<WatchNotice> told = new ArrayList<>();
        for (int i = 0; i < 100; i++) {
            told.addAll(machine.next(at(step(i))));
        }
        for (int i = 500; i < 600; i++) {
            told.addAll(machine.next(at(step(i))));
        }
        told.addAll(machine.finish());
        assertThat(noted(told)).isEmpty();
    }

    @Test
    void heldReadingsSurviveARestart() {
        Machine<SiteReading, WatchNotice, WatchState> whole = RULE.start();
        Machine<SiteReading, WatchNotice, WatchState> parts = RULE.start();
        List<WatchNotice> wholeTold = new ArrayList<>();
        List<WatchNotice> partsTold = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            boolean ahead = i >= 30 && i < 33;
            SiteReading reading = at(ahead ? step(i).plus(Duration.ofDays(2)) : step(i));
            wholeTold.addAll(whole.next(reading));
            partsTold.addAll(parts.next(reading));
            parts = RULE.start(RULE.parseState(parts.state().toText()));
        }
        wholeTold.addAll(whole.finish());
        partsTold.addAll(parts.finish());
        assertThat(noted(wholeTold)).hasSize(1);
        assertThat(partsTold).isEqualTo(wholeTold);
    }

    @Test
    void unconfirmedStampsAtTheEndAreCountedToo() {
        Machine<SiteReading, WatchNotice, WatchState> machine = RULE.start();
        machine.next(at(step(0)));
        machine.next(at(step(400)));
        assertThatThrownBy(() -> machine.next(at(step(400))))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("time must be after " + step(400) + ", was " + step(400));
        List<WatchNotice> told = noted(machine.finish());
        assertThat(told).hasSize(1);
        assertThat(told.get(0).finding().detail())
                .startsWith("1 reading was left out: stamped from " + step(400))
                .endsWith("the record ended before more of them came");
    }

    @Test
    void aFalseFirstStampIsLeftOut() {
        Machine<SiteReading, WatchNotice, WatchState> machine = RULE.start();
        List<WatchNotice> told = new ArrayList<>(machine.next(at(step(400))));
        for (int i = 0; i < 60; i++) {
            told.addAll(machine.next(at(step(i))));
        }
        told.addAll(machine.finish());
        assertThat(noted(told)).hasSize(1);
        assertThat(noted(told).get(0).finding().detail())
                .isEqualTo("1 reading was left out: stamped from " + step(400) + " to " + step(400)
                        + ", at the beginning; the next stamp was " + step(0));
    }

    @Test
    void aReadingOutOfOrderAtTheBeginningIsRefusedAndChangesNothing() {
        Machine<SiteReading, WatchNotice, WatchState> machine = RULE.start();
        machine.next(at(step(1)));
        String before = machine.state().toText();
        assertThatThrownBy(() -> machine.next(at(step(0))))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("time must be after " + step(1) + ", was " + step(0));
        assertThat(machine.state().toText()).isEqualTo(before);
    }
}
