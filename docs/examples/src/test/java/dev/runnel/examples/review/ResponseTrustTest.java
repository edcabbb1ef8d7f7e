package dev.runnel.examples.review;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.section.CircularSection;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Random;
import java.util.function.IntPredicate;
import java.util.function.IntUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Seventy days at 15 minutes with a storm of 90 minutes on every third, at another hour each. */
class ResponseTrustTest {
    private static final int PER_DAY = 96;
    private static final int DAYS = 70;
    private static final Instant START = Instant.parse("2026-03-02T00:00:00Z");

    @TempDir
    Path temporary;

    /** Quarters of an hour since the last storm began. */
    private static int since(int i) {
        int latest = DAYS * PER_DAY;
        for (int day = 1; day < DAYS; day += 3) {
            int since = i - day * PER_DAY - 4 * (7 * day % 20);
            latest = since >= 0 && since < latest ? since : latest;
        }
        return latest;
    }

    /** Rain of so many tenths of a millimetre in each quarter of an hour, as the gauge writes it, and readings where they are. */
    private SiteOnDisk site(IntPredicate isRead, IntUnaryOperator tenths) {
        Conduit pipe = Conduit.of(CircularSection.ofDiameter(0.45), Gradient.ofRatio(1, 150), Manning.of(0.013));
        Random random = new Random(7);
        StringBuilder readings = new StringBuilder("time,depth_mm,velocity_m_s\n");
        for (int i = 0; i < DAYS * PER_DAY; i++) {
            int since = since(i);
            double storm = since < 4 ? since / 4.0 : Math.exp((4 - since) / 16.0);
            double level = 0.1 + 0.02 * Math.sin(2 * Math.PI * i / PER_DAY) + 0.12 * storm;
            double velocity = pipe.velocity(level) * Math.exp(0.04 * random.nextGaussian());
            if (isRead.test(i)) {
                readings.append(START.plus(Duration.ofMinutes(15L * i)))
                        .append(',')
                        .append(Math.round(1000 * level + random.nextGaussian()))
                        .append(',')
                        .append(Math.round(1000 * velocity) / 1000.0)
                        .append('\n');
            }
        }
        return new SiteOnDisk(temporary)
                .with("site.txt", SiteOnDisk.PLAIN_SITE + "contributing area = 3 ha\n")
                .with("depth.csv", readings.toString())
                .with(
                        "rain.csv",
                        SiteOnDisk.readings(
                                "time,rain_mm",
                                START.toString(),
                                Duration.ofMinutes(15),
                                DAYS * PER_DAY,
                                i -> "" + tenths.applyAsInt(i) / 10.0));
    }

    private static int rain(int i) {
        return since(i) < 6 ? 12 : 0;
    }

    /** The cells of the response to the storm that began on a day. */
    private static List<String> response(SiteOnDisk site, String day) {
        return site.written("site/responses.csv")
                .lines()
                .filter(line -> line.startsWith(day))
                .map(line -> List.of(line.split(",", -1)))
                .findFirst()
                .orElseThrow();
    }

    /** From day 50 to day 57 nothing was read; storms fell on days 52 and 55. */
    @Test
    void aStormWithoutAFlowHasNoVolume() {
        SiteOnDisk site = site(i -> i < 50 * PER_DAY || i >= 57 * PER_DAY, ResponseTrustTest::rain);
        String text = site.review().flat();
        List<String> unseen = response(site, "2026-04-23");
        assertThat(unseen.subList(2, 6)).containsExactly("7.2000", "", "", "");
        assertThat(unseen.get(11)).contains("flow missing");
        assertThat(text).contains("not seen");
        List<String> seen = response(site, "2026-04-20");
        assertThat(Double.parseDouble(seen.get(3))).isPositive();
        assertThat(site.written("site.html")).containsPattern("Without a flow: 2(&nbsp;| |\u00a0)storms\\.");
    }

    /** From day 30 on the gauge stamps its rain two hours late. */
    @Test
    void onTwoClocksThereIsNoLag() {
        SiteOnDisk site = site(i -> true, i -> i < 30 * PER_DAY ? rain(i) : rain(i - 8));
        String text = site.review().flat();
        assertThat(text)
                .contains("a clock of the rain gauge that is off")
                .contains("a finding tells of another clock: no lag");
        List<String> late = response(site, "2026-04-2");
        assertThat(Double.parseDouble(late.get(3))).isPositive();
        assertThat(late.subList(6, 8)).containsExactly("", "");
        assertThat(late.get(11)).contains("a finding tells of another clock");
        List<String> before = response(site, "2026-03-06");
        assertThat(before.get(7)).isNotEmpty();
        assertThat(before.get(11)).doesNotContain("clock");
    }

    /** From day 36 on the gauge writes a third of the rain. */
    @Test
    void byAGaugeInDoubtThereIsNoShareOfTheRain() {
        SiteOnDisk site = site(i -> true, i -> i < 36 * PER_DAY ? rain(i) : rain(i) / 3);
        String text = site.review().flat();
        assertThat(text)
                .contains("a rain gauge that catches less")
                .contains("a finding puts the rain in doubt: no share of it")
                .containsPattern(
                        "finding 1 puts the rain in doubt from .* on: depths, storms and return periods of that time may be too low");
        List<String> late = response(site, "2026-05-0");
        assertThat(Double.parseDouble(late.get(3))).isPositive();
        assertThat(late.get(4)).isEmpty();
        assertThat(late.get(7)).isNotEmpty();
        assertThat(response(site, "2026-03-06").get(4)).isNotEmpty();
        assertThat(site.written("site.html").replace('\u00a0', ' ').replace("&nbsp;", " "))
                .containsPattern("finding 1 puts [0-9.]+ mm of it in doubt")
                // The bar of the finding stands over the rain.
                .containsPattern("\"kind\":\"FINDING\"[^}]*\"row\":\"Rain, mm\"");
    }
}
