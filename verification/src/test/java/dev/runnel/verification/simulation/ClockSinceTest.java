package dev.runnel.verification.simulation;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Whether the bounds that a clock's finding states for its beginning hold the beginning, on developing seeds. */
class ClockSinceTest {
    private static final int SITES = 10;
    private static final Pattern BOUNDS = Pattern.compile("\\(between (\\S+) and (\\S+)\\)");

    private static int cellOfOneHour() {
        for (int i = 0; i < Cells.all().size(); i++) {
            Cell cell = Cells.all().get(i);
            if (cell.kind() == FaultKind.CLOCK_OF_MONITOR && cell.severity() == 1 && !cell.levelOnly()) {
                return i;
            }
        }
        throw new IllegalStateException("no clock an hour off");
    }

    @ParameterizedTest
    @EnumSource(Make.class)
    void boundsHoldTheBeginning(Make make) {
        int cell = cellOfOneHour();
        int told = 0;
        int held = 0;
        int narrow = 0;
        for (int n = 0; n < SITES; n++) {
            long seed = Seeds.DEVELOPING.of(cell, n);
            SiteOrder order = Cells.order(Cells.all().get(cell), n, seed, make);
            Instant begin = Simulator.grid(order)
                    .start()
                    .plusSeconds(Math.round(order.fault().begin() * 86400));
            Heard heard = new RunnelWatcher().watch(Simulator.site(order), false);
            for (Said said : heard.said()) {
                Matcher bounds = BOUNDS.matcher(said.text());
                if (said.atOnce().contains(Called.CLOCK_OF_MONITOR)
                        && said.told().isAfter(begin)
                        && bounds.find()) {
                    Instant from = Instant.parse(bounds.group(1));
                    Instant to = Instant.parse(bounds.group(2));
                    assertThat(said.since()).isBetween(from, to);
                    told++;
                    held += begin.isBefore(from) || begin.isAfter(to) ? 0 : 1;
                    narrow += Duration.between(from, to).toDays() < 4 ? 1 : 0;
                }
            }
        }
        // By chance one of twenty beginnings lies outside; of ten, hardly ever three.
        assertThat(told).isGreaterThanOrEqualTo(SITES - 1);
        assertThat(held).isGreaterThanOrEqualTo(told - 2);
        assertThat(narrow).isGreaterThan(told / 2);
    }
}
