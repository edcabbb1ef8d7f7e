package dev.runnel.examples.shell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.runnel.examples.House;
import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.hydraulics.section.Egg;
import dev.runnel.hydraulics.section.RectangularSection;
import dev.runnel.hydraulics.section.TrapezoidalSection;
import dev.runnel.hydraulics.structure.ApproachChannel;
import dev.runnel.hydraulics.structure.RectangularWeir;
import dev.runnel.rainfall.ddf.DdfTable;
import dev.runnel.rainfall.design.DesignStorm;
import dev.runnel.rainfall.event.EventSeparation;
import dev.runnel.rainfall.gauge.Tips;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PromptTest {
    private static final Instant START = Instant.parse("2026-03-02T00:00:00Z");
    private static final String TOWN = House.root() + "/docs/examples/marram-bay/";

    @TempDir
    Path folder;

    private String file(String name, String text) throws Exception {
        return Files.writeString(folder.resolve(name), text).toString();
    }

    @Test
    void depthsAreReadInMetresByTheirHeader() throws Exception {
        Series depths =
                Prompt.readDepths(file("a.csv", "time;depth_mm\n2026-03-02T00:02:00Z;120\n2026-03-02T00:00:00Z;100\n"));
        assertThat(depths.toValues()).containsExactly(0.100, 0.120);
        assertThat(depths.time(0)).isEqualTo(START);
    }

    @Test
    void settingsAreThoseOfASiteFile() throws Exception {
        Series velocities = Prompt.readVelocities(
                file("v.csv", "when,v1,v2\n02/03/2026 01:00,1.5,2\n"),
                "velocity column = v2",
                "velocity unit = ft/s",
                "time pattern = dd/MM/yyyy HH:mm",
                "logger clock = +01:00");
        assertThat(velocities.time(0)).isEqualTo(START);
        assertThat(velocities.value(0)).isEqualTo(2 * 0.3048);
        assertThatThrownBy(() -> Prompt.readVelocities(file("w.csv", "time,v_ms\n"), "velocty unit = m/s"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("velocity unit");
    }

    @Test
    void whatIsRejectedIsSaid() throws Exception {
        String path =
                file("b.csv", "time,depth_mm\n2026-03-02T00:00:00Z,100\nyesterday,120\n2026-03-02T00:04:00Z,90\n");
        StringBuilder said = new StringBuilder();
        Series depths = dev.runnel.examples.review.PlainFiles.depths(Path.of(path), said::append);
        assertThat(depths.size()).isEqualTo(2);
        assertThat(said).contains("b.csv: 3 lines, 1 rejected, 0 altered").contains("line 3");
    }

    @Test
    void tipsAndTablesAreRead() throws Exception {
        Tips tips = Prompt.readTips(file("t.csv", "time\n2026-03-02T00:00:10Z\n2026-03-02T00:04:00Z\n"));
        assertThat(tips.size()).isEqualTo(2);
        DdfTable table = Prompt.readDdf(file("ddf.csv", "duration_min,2,5\n60,16.2,20.5\n120,19.9,25.0\n"));
        assertThat(table.depthMm(Duration.ofMinutes(60), 5)).isEqualTo(20.5);
    }

    @Test
    void aFileThatIsNotThereIsNamed() {
        assertThatThrownBy(() -> Prompt.readDepths(folder.resolve("none.csv").toString()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("none.csv: file must be there");
        assertThatThrownBy(() -> Prompt.readSite(folder.toString()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("folder must hold site.txt");
    }

    @Test
    void aSiteIsReadWithWhatTheReviewFound() {
        var site = Prompt.readSite(TOWN + "saltings-lane");
        assertThat(site.flow().level().statistics().count())
                .isPositive()
                .isLessThanOrEqualTo(site.depth().size());
        assertThat(site.findings()).isNotEmpty();
        assertThat(site.storms()).isNotEmpty();
        assertThat(site.dryDays()).isNotEmpty();
        assertThat(site.ddf()).isPresent();
        assertThat(site.dryWeather()).isPresent();
        assertThat(Prompt.chart(site).html()).contains("Rain, mm").contains("Flow, l/s");
    }

    @Test
    void valuesAreShownForReading() {
        assertThat(Prompt.show(0.2060759210838797)).hasToString("0.2061");
        assertThat(Prompt.show(Double.NaN)).hasToString("NaN");
        assertThat(Prompt.show(Duration.ofMinutes(95))).hasToString("1 h 35 min");
        assertThat(Prompt.show(Optional.of(1 / 3.0))).hasToString("0.3333");
        assertThat(Prompt.show(Optional.empty())).hasToString("none");
        assertThat(Prompt.show(OptionalDouble.of(20))).hasToString("20");
        assertThat(Prompt.show(List.of())).hasToString("nothing");
        assertThat(Prompt.show(new double[] {1 / 3.0, 1234567})).hasToString("2 of them\n0.3333\n1235000");
        assertThat(Prompt.show(List.of(Duration.ofHours(30), 2, new double[] {0.1 + 0.2, 1})))
                .hasToString("3 of them\n1 d 6 h\n2\n0.3, 1");
        assertThat(Prompt.show(Map.of("mean", 0.1 + 0.2))).hasToString("mean: 0.3");
        assertThat(Prompt.show(new int[500]).toString())
                .startsWith("500 of them\n0\n")
                .endsWith("\n... and 100 more");
        assertThat(Prompt.show(Series.empty())).hasToString(Series.empty().toString());
    }

    @Test
    void sparklineShowsTheHighestOfEachColumn() {
        double[] values = new double[600];
        values[305] = 8;
        values[306] = Double.NaN;
        assertThat(Sparkline.of(values).with("01234567"))
                .isEqualTo("0".repeat(30) + "7" + "0".repeat(29) + "  lowest 0, highest 8, 1 missing");
        assertThat(Sparkline.of(1, 2, Double.NaN, 3).with("01234567"))
                .isEqualTo("04 7  lowest 1, highest 3, 1 missing");
        assertThat(Sparkline.of(5, 5).with("01234567")).isEqualTo("00  lowest 5, highest 5");
        assertThat(Sparkline.of(Double.NaN)).hasToString("(no value)");
        assertThat(Sparkline.of()).hasToString("(no value)");
    }

    @Test
    void readingsThatAreNotUsableAreNotShown() {
        Series series = Series.of(new long[] {0, 1, 2}, new double[] {1, 99, 2}, new byte[] {
            0, dev.runnel.timeseries.Quality.SUSPECT.toCode(), 0
        });
        assertThat(Prompt.sparkline(series).toString()).contains("highest 2");
    }

    /** What a picture is worth is looked at; here, that each is a drawing of its own with the figures it must name. */
    @Test
    void everyChartIsADrawingOfItsOwn() throws Exception {
        Conduit pipe = Conduit.of(CircularSection.ofDiameter(0.450), Gradient.ofRatio(1, 150), Manning.of(0.013));
        DdfTable table = Prompt.readDdf(TOWN + "quay-street/ddf.csv");
        RegularSeries rain = RegularSeries.of(START, Duration.ofMinutes(5), 0.4, 2.2, 6.8, 7.0, 5.4, 3.2, 1.0, 0.2);
        var storm = EventSeparation.of(Duration.ofHours(6))
                .withPeakDurations(List.of(Duration.ofMinutes(5), Duration.ofMinutes(15), Duration.ofMinutes(30)))
                .events(rain)
                .get(0);
        List<Chart> charts = List.of(
                Prompt.chart(pipe),
                Prompt.chart(pipe.section(), 0.2),
                Prompt.chart(CircularSection.ofDiameter(1).withSediment(0.2)),
                Prompt.chart(TrapezoidalSection.ofBedWidthAndSideSlope(1, 2), 0.5),
                Prompt.chart(pipe.section(), Egg.sharp(0.6), TrapezoidalSection.ofBedWidthAndSideSlope(1, 2)),
                Prompt.chart(table),
                Prompt.chart(storm, table),
                Prompt.chart(storm),
                Prompt.chart(rain),
                Prompt.chart("Rain, mm", rain.toSeries()),
                Prompt.chart(Series.empty()),
                Prompt.chart(DesignStorm.alternatingBlock(table, 5, Duration.ofHours(6), Duration.ofMinutes(60))),
                Prompt.chart(
                        RectangularWeir.fullWidth(ApproachChannel.ofWidth(1).withCrestHeight(0.5))));
        for (Chart chart : charts) {
            assertThat(chart.svg()).as(chart.toString()).doesNotContain("NaN").doesNotContain("Infinity");
            var svg = DocumentBuilderFactory.newInstance()
                    .newDocumentBuilder()
                    .parse(new ByteArrayInputStream(chart.svg().getBytes(StandardCharsets.UTF_8)));
            assertThat(svg.getDocumentElement().getNamespaceURI() == null).isTrue();
            assertThat(svg.getDocumentElement().getAttribute("xmlns")).isEqualTo("http://www.w3.org/2000/svg");
            assertThat(chart.html()).contains("<svg").doesNotContain("NaN ");
        }
        // Chow (1959): full, such a pipe carries 232.8 l/s by Manning; see docs/methods/part-full-flow.md.
        assertThat(charts.get(0).svg()).contains("discharge, of 233 l/s");
        assertThat(Prompt.charts()).containsAll(charts);
    }

    @Test
    void anOpenChannelIsDrawnAsItIsAndNotInSharesOfAFullBore() {
        Conduit ditch =
                Conduit.of(TrapezoidalSection.ofBedWidthAndSideSlope(1, 2), Gradient.ofRatio(1, 500), Manning.of(0.03));
        Chart chart = Prompt.chart(ditch);
        assertThat(chart.svg())
                .contains("flow, l/s")
                .doesNotContain("full bore")
                .doesNotContain("NaN");
        assertThat(chart.html()).contains("velocity, m/s");
        assertThatThrownBy(() -> Prompt.chart(
                        RectangularWeir.fullWidth(ApproachChannel.ofWidth(1).withCrestHeight(0.5)), Double.NaN))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("highestHead must be in (0, 1000] m, was NaN");
    }

    @Test
    void aPlateNamesEachSectionWithItsMeasures() {
        String svg = Prompt.chart(
                        CircularSection.ofDiameter(0.45).withSediment(0.05),
                        Egg.normal(0.6),
                        RectangularSection.open(0.9))
                .svg();
        assertThat(svg)
                .contains(
                        "CircularSection with a bed<",
                        "450 x 450 mm<",
                        "Egg.normal<",
                        "600 x 900 mm<",
                        "open, 900 mm wide<");
        CrossSection[] many = new CrossSection[36];
        Arrays.fill(many, Egg.normal(1));
        assertThatThrownBy(() -> Prompt.chart(many[0], many))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("more must hold fewer than 36 sections, was 36");
    }

    @Test
    void aChartIsSavedAsPageOrDrawing() throws Exception {
        Chart chart = Prompt.chart(CircularSection.ofDiameter(0.3));
        assertThat(Files.readString(chart.save(folder.resolve("a.svg").toString())))
                .startsWith("<svg xmlns");
        assertThat(Files.readString(chart.save(folder.resolve("a.html").toString())))
                .startsWith("<!DOCTYPE html>");
        try (Stream<Path> files = Files.list(folder)) {
            assertThat(files).hasSize(2);
        }
    }
}
