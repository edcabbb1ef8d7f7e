package dev.runnel.timeseries.balance;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.contract.MachineContract;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;

class SpillCountProperties {
    private static final Instant START = Instant.parse("2026-01-01T05:00:00Z");

    @Property
    void keepsTheContractOfMachines(
            @ForAll("discharges") List<Interval> discharges, @ForAll @IntRange(max = 5) int mergeHours) {
        SpillCount rule = SpillCount.twelveTwentyFour().withMergeGap(Duration.ofHours(mergeHours));
        List<Interval> blocks = MachineContract.holds(rule, discharges);
        SpillCounter counter = rule.start();
        discharges.forEach(counter::next);
        counter.finish();
        assertThat(counter.tally()).isEqualTo(rule.count(discharges));
        assertThat(counter.tally().count()).isEqualTo(blocks.size());
    }

    @Property
    void agreesWithACountHourByHour(@ForAll("discharges") List<Interval> discharges) {
        // Everything lies on whole hours, so the rule can be walked hour by hour: slow, and written from its words.
        long last = discharges.isEmpty()
                ? 0
                : Duration.between(START, discharges.get(discharges.size() - 1).end())
                        .toHours();
        long count = 0;
        long hour = 0;
        while (hour < last) {
            if (!wet(discharges, hour)) {
                hour++;
                continue;
            }
            count++;
            hour += 12;
            while (anyWet(discharges, hour, hour + 24)) {
                count++;
                hour += 24;
            }
            hour += 24;
        }
        assertThat(SpillCount.twelveTwentyFour().count(discharges).count()).isEqualTo(count);
    }

    private static boolean anyWet(List<Interval> discharges, long from, long to) {
        for (long hour = from; hour < to; hour++) {
            if (wet(discharges, hour)) {
                return true;
            }
        }
        return false;
    }

    private static boolean wet(List<Interval> discharges, long hour) {
        return discharges.stream().anyMatch(each -> each.contains(START.plus(Duration.ofHours(hour))));
    }

    @Provide
    Arbitrary<List<Interval>> discharges() {
        return Arbitraries.integers().between(1, 60).list().ofMaxSize(24).map(hours -> {
            List<Interval> discharges = new ArrayList<>();
            Instant time = START;
            for (int i = 0; i + 1 < hours.size(); i += 2) {
                Instant from = time.plus(Duration.ofHours(hours.get(i)));
                time = from.plus(Duration.ofHours(1 + hours.get(i + 1) / 3));
                discharges.add(Interval.of(from, time));
            }
            return discharges;
        });
    }
}
