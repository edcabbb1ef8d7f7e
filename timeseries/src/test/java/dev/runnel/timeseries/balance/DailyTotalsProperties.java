package dev.runnel.timeseries.balance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;

class DailyTotalsProperties {
    /** Nothing is lost and nothing is added at any border of days, whatever the zone. */
    @Property
    void theDaysAddUpToTheWhole(
            @ForAll("zones") ZoneId zone,
            @ForAll("values") List<Double> values,
            @ForAll @IntRange(min = 1, max = 3000) int stepMinutes,
            @ForAll @IntRange(max = 500_000) int startMinutes) {
        Duration step = Duration.ofMinutes(stepMinutes);
        RegularSeries rate = RegularSeries.of(
                Instant.parse("2026-01-01T00:00:00Z").plus(Duration.ofMinutes(startMinutes)),
                step,
                values.stream()
                        .mapToDouble(each -> each == null ? Double.NaN : each)
                        .toArray());
        List<DailyTotal> totals = DailyTotals.in(zone).totals(rate);
        double whole = rate.sum() * step.toSeconds();
        assertThat(totals.stream().mapToDouble(DailyTotal::measured).sum())
                .isCloseTo(whole, within(1e-9 * (1 + Math.abs(whole))));
        double known = totals.stream()
                .mapToDouble(day -> day.coverage() * day.interval().duration().toSeconds())
                .sum();
        assertThat(known).isCloseTo((values.size() - rate.missing()) * (double) step.toSeconds(), within(1e-3));
        assertThat(totals.get(0).interval().contains(rate.start())).isTrue();
        assertThat(totals.get(totals.size() - 1).interval().contains(rate.end().minusNanos(1)))
                .isTrue();
    }

    @Provide
    Arbitrary<ZoneId> zones() {
        return Arbitraries.of("Europe/London", "Asia/Kolkata", "Pacific/Chatham", "America/St_Johns", "UTC")
                .map(ZoneId::of);
    }

    @Provide
    Arbitrary<List<Double>> values() {
        return Arbitraries.doubles()
                .between(0, 5)
                .ofScale(4)
                .injectNull(0.1)
                .list()
                .ofMinSize(1)
                .ofMaxSize(30);
    }
}
