package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.monitoring.PipeMonitor;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.timeseries.Machine;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * A watch goes on from what an earlier build wrote: its baseline and its state after 43 days, kept beside this test and never
 * written again. What it tells from there on is what that build told: more water from day 40 on.
 */
class StateOfBeforeTest {
    private static final int PER_DAY = 96;
    private static final PipeMonitor MONITOR =
            PipeMonitor.of(Conduit.of(CircularSection.ofDiameter(0.6), Gradient.ofRatio(1, 200), Manning.of(0.013)));

    /** Invented: a daily course, noise, a storm every sixth day, from day 40 on 30 % more depth and what goes with it. */
    private static SiteReading reading(long number) {
        Random noise = new Random(number * 77);
        double day = number / (double) PER_DAY;
        double flow = 1 + 0.5 * Math.sin(2 * Math.PI * (day - 0.3));
        double depth = 0.1 * Math.pow(flow + 0.4, 0.5) * Math.exp(0.02 * noise.nextGaussian()) * (day > 40 ? 1.3 : 1);
        double velocity = 0.8 * Math.pow(depth / 0.1, 0.6) * Math.exp(0.03 * noise.nextGaussian());
        boolean wet = (long) day % 6 == 5 && day % 1 > 0.5 && day % 1 < 0.6;
        return new SiteReading(
                Instant.parse("2026-01-01T00:00:00Z").plusSeconds(900 * number),
                Math.round(depth * 1000) / 1000.0,
                Math.round(velocity * 1000) / 1000.0,
                wet ? 0.8 : 0);
    }

    private static String kept(String name) throws IOException {
        try (InputStream in = Objects.requireNonNull(StateOfBeforeTest.class.getResourceAsStream(name))) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    @Test
    void aWatchGoesOnFromAStateOfVersionOne() throws IOException {
        WatchRule rule = WatchRule.of(SiteBaseline.parse(MONITOR, kept("baseline-of-before.txt")));
        Machine<SiteReading, WatchNotice, WatchState> watch =
                rule.start(rule.parseState(kept("watch-state-of-before.txt")));
        List<WatchNotice> told = new ArrayList<>();
        for (long i = 43 * PER_DAY; i < 70 * PER_DAY; i++) {
            told.addAll(watch.next(reading(i)));
        }
        assertThat(told).hasSize(1);
        Finding finding = told.get(0).finding();
        assertThat(finding.name()).isEqualTo(FindingName.MORE_WATER);
        assertThat(finding.since()).isEqualTo(Instant.parse("2026-02-10T00:00:00Z"));
        assertThat(finding.found()).isEqualTo(Instant.parse("2026-02-14T13:00:00Z"));
        // What it wrote then is of this build, and goes on to the same.
        assertThat(rule.start(rule.parseState(watch.state().toText())).state()).isEqualTo(watch.state());
    }

    /** What was cut short on the way is refused in words. */
    @Test
    void aStateThatWasCutIsRefused() throws IOException {
        WatchRule rule = WatchRule.of(SiteBaseline.parse(MONITOR, kept("baseline-of-before.txt")));
        String text = kept("watch-state-of-before.txt");
        int at = text.indexOf("blocksOfTrack");
        int comma = text.indexOf(',', at);
        assertThat(at).isPositive();
        String cut = text.substring(0, comma) + text.substring(text.indexOf(',', comma + 1));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> rule.start(rule.parseState(cut)))
                .withMessageContaining("blocksOfTrack");
    }
}
