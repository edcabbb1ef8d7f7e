package dev.runnel.examples.review;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.section.CircularSection;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Fifty-eight days at 15 minutes with a storm of three hours on some of them; of the last, on day 52, the gauge writes nothing, or it
 * writes it. One rise alone is no finding, for a gauge was as long without a drop before.
 */
class SuspectSilenceTest {
    private static final int PER_DAY = 96;
    private static final int DAYS = 58;
    private static final List<Integer> STORMS = List.of(1, 4, 7, 10, 13, 16, 19, 22, 31, 34, 37, 40, 42, 52);
    private static final int LAST = 52;

    @TempDir
    Path temporary;

    /** Quarters of an hour since the last storm began, at another hour of each day. */
    private static int since(int i) {
        return STORMS.stream()
                .mapToInt(day -> i - day * PER_DAY - 4 * (7 * day % 24))
                .filter(since -> since >= 0)
                .min()
                .orElse(DAYS * PER_DAY);
    }

    private SiteOnDisk site(boolean isWritten) {
        Conduit pipe = Conduit.of(CircularSection.ofDiameter(0.45), Gradient.ofRatio(1, 150), Manning.of(0.013));
        Random random = new Random(7);
        return new SiteOnDisk(temporary)
                .with("depth.csv", SiteOnDisk.quarterHours(DAYS * PER_DAY, i -> {
                    int since = since(i);
                    double storm = since < 4 ? since / 4.0 : Math.exp((4 - since) / 16.0);
                    double usual = 0.1
                            + 0.02 * Math.sin(2 * Math.PI * i / PER_DAY)
                            + (i < LAST * PER_DAY ? 0.15 : 0.25) * storm;
                    return Math.round(1000 * usual + random.nextGaussian()) + ","
                            + Math.round(1000 * pipe.velocity(usual) * Math.exp(0.04 * random.nextGaussian())) / 1000.0;
                }))
                .with(
                        "rain.csv",
                        SiteOnDisk.readings(
                                "time,rain_mm",
                                "2026-03-02T00:00:00Z",
                                Duration.ofMinutes(15),
                                DAYS * PER_DAY,
                                i -> since(i) < 6 && (isWritten || i < LAST * PER_DAY) ? "1.2" : "0"));
    }

    private String share(SiteOnDisk site) {
        List<String> lines = site.written("survey.csv").lines().toList();
        int column = List.of(lines.get(0).split(",", -1)).indexOf("suspect_dry_weather_share");
        return lines.get(1).split(",", -1)[column];
    }

    @Test
    void dryWeatherSaysHowMuchOfItRestsOnASuspectGauge() {
        SiteOnDisk site = site(false);
        SiteOnDisk.Outcome outcome = site.review();
        assertThat(outcome.status()).as(outcome.err()).isZero();
        assertThat(Double.parseDouble(share(site))).isBetween(0.3, 0.5);
        assertThat(outcome.flat())
                .contains(
                        "of the usual days lie in times in which the sewer rose as after rain and the gauge wrote nothing")
                .contains("1 rise of the depth like those after rain (2026-04-23T")
                .contains("Not sure enough for a finding")
                .doesNotContain("open: a rain gauge that writes nothing");
        assertThat(site.written("site.html")).contains("wet days may be among them");
        assertThat(site.written("index.html")).contains("(gauge perhaps dead)");
        assertThat(site.written("site/dry-weather.csv")).contains("wet days may be among them");
    }

    @Test
    void aGaugeThatWritesEveryStormIsNotSuspect() {
        SiteOnDisk site = site(true);
        SiteOnDisk.Outcome outcome = site.review();
        assertThat(outcome.status()).as(outcome.err()).isZero();
        assertThat(Double.parseDouble(share(site))).isZero();
        assertThat(outcome.flat()).doesNotContain("wet days may be among them");
    }

    /** Of the last two weeks all dry days are suspect. */
    @Test
    void figureThatRestsMostlyOnASuspectGaugeIsWithheld() {
        SiteOnDisk site = site(false);
        SiteOnDisk.Outcome outcome = site.review(site.folder().toString(), "from=2026-04-16", "to=2026-04-28");
        assertThat(outcome.status()).as(outcome.err()).isZero();
        assertThat(Double.parseDouble(share(site))).isGreaterThan(0.9);
        assertThat(outcome.flat()).contains("the mean is withheld; 100 % of the usual days lie in times");
        assertThat(site.written("index.html")).contains("withheld (gauge perhaps dead)");
    }
}
