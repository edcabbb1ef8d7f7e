package dev.runnel.examples.review;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.examples.House;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Folders with a rain gauge and no monitor. */
class GaugeAloneTest {
    private static final Path QUAY = House.root().resolve("docs/examples/marram-bay/quay-street");

    @TempDir
    Path temporary;

    private SiteOnDisk site() {
        return new SiteOnDisk(temporary).with("site.txt", "# nothing but a gauge\n".getBytes(StandardCharsets.UTF_8));
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    @Test
    void tipsAloneGiveRainStormsAndDryDays() throws IOException {
        SiteOnDisk site = site().with("tips.csv", Files.readAllBytes(QUAY.resolve("tips.csv")))
                .with("ddf.csv", Files.readAllBytes(QUAY.resolve("ddf.csv")))
                .with("site.txt", bytes("site = Old Mill\ntime zone = Europe/London\n"));
        SiteOnDisk.Outcome outcome = site.review();
        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.status()).isZero();
        // 544 tips of 0.2 mm that can be read, one line that cannot.
        assertThat(outcome.flat())
                .contains("OLD MILL")
                .contains("108.8 mm from 544 tips")
                .contains("tips.csv: 1 of 545 lines were rejected.");
        assertThat(site.written("site/events.csv").lines().count()).isGreaterThan(5);
        List<String> days = site.written("site/daily.csv").lines().toList();
        assertThat(days.get(0)).isEqualTo("local_date,day_is,rain_mm");
        double sum = days.stream()
                .skip(1)
                .mapToDouble(line -> Double.parseDouble(line.split(",")[2]))
                .sum();
        assertThat(sum).isCloseTo(108.8, org.assertj.core.api.Assertions.within(0.01));
        assertThat(site.written("site.html"))
                .contains("Rain, mm")
                .doesNotContain("MNaN")
                .doesNotContain("NaN mm");
        assertThat(site.written("index.html")).contains("gauge only");
        assertThat(site.written("findings.json")).contains("\"watched\":false");
        assertThat(site.written("manifest.txt")).contains(" tips.csv").contains(" ddf.csv");
    }

    @Test
    void rainByTheStepAlone() {
        StringBuilder rain = new StringBuilder("time,rain_mm\n");
        for (int i = 0; i < 96; i++) {
            rain.append(java.time.Instant.parse("2026-03-02T00:00:00Z").plusSeconds(900L * i))
                    .append(',')
                    .append(i >= 40 && i < 44 ? "1.5" : "0")
                    .append('\n');
        }
        SiteOnDisk site = site().with("rain.csv", bytes(rain.toString()));
        SiteOnDisk.Outcome outcome = site.review();
        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.flat()).contains("1 storm of 1.0 mm");
        assertThat(site.written("site/daily.csv")).contains("2026-03-02,wet,6");
    }

    @Test
    void aPeriodIsCutFromIt() throws IOException {
        SiteOnDisk site = site().with("tips.csv", Files.readAllBytes(QUAY.resolve("tips.csv")));
        assertThat(site.review(site.folder().toString(), "from=2026-10-17", "to=2026-10-18")
                        .status())
                .isZero();
        assertThat(site.written("site/daily.csv").lines()).hasSize(3);
        assertThat(site.review(site.folder().toString(), "from=2027-10-17").err())
                .contains("It must hold rain from 2027-10-17");
    }

    @Test
    void aHeaderAloneIsNoGauge() {
        assertThat(site().with("tips.csv", bytes("time\n")).review().err())
                .contains("must hold at least one line of readings");
    }
}
