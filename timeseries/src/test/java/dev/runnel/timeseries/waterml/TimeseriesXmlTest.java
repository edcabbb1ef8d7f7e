package dev.runnel.timeseries.waterml;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TimeseriesXmlTest {
    private static final TimeseriesXml XML = TimeseriesXml.standard();
    private static final String HEAD = "<wml2:MeasurementTimeseries xmlns:wml2='http://www.opengis.net/waterml/2.0'"
            + " xmlns:gml='http://www.opengis.net/gml/3.2' xmlns:xlink='http://www.w3.org/1999/xlink'"
            + " xmlns:xsi='http://www.w3.org/2001/XMLSchema-instance' gml:id='t'>\n";

    /** A document as a server of observations answers, the series deep inside; the values are those of a published one. */
    @Test
    void readsASeriesInsideAnObservation() {
        XmlRecord record = XML.parse("""
                <sos:GetObservationResponse xmlns:sos="http://www.opengis.net/sos/2.0" xmlns:gml="http://www.opengis.net/gml/3.2"
                    xmlns:om="http://www.opengis.net/om/2.0" xmlns:xlink="http://www.w3.org/1999/xlink">
                 <sos:observationData><om:OM_Observation><om:result>
                  <wml2:MeasurementTimeseries xmlns:wml2="http://www.opengis.net/waterml/2.0" gml:id="timeseries.1">
                   <wml2:metadata><wml2:MeasurementTimeseriesMetadata/></wml2:metadata>
                   <wml2:defaultPointMetadata><wml2:DefaultTVPMeasurementMetadata>
                     <wml2:uom code="degC"/>
                     <wml2:interpolationType xlink:href="http://www.opengis.net/def/waterml/2.0/interpolationType/Continuous"/>
                   </wml2:DefaultTVPMeasurementMetadata></wml2:defaultPointMetadata>
                   <wml2:point><wml2:MeasurementTVP><wml2:time>2014-07-01T00:01:42.000Z</wml2:time><wml2:value>12.2</wml2:value></wml2:MeasurementTVP></wml2:point>
                   <wml2:point><wml2:MeasurementTVP><wml2:time>2014-07-01T00:16:42.000Z</wml2:time><wml2:value>12.3</wml2:value></wml2:MeasurementTVP></wml2:point>
                   <wml2:point><wml2:MeasurementTVP><wml2:time>2014-07-01T02:31:42.000+02:00</wml2:time><wml2:value>12.0</wml2:value></wml2:MeasurementTVP></wml2:point>
                  </wml2:MeasurementTimeseries>
                 </om:result></om:OM_Observation></sos:observationData>
                </sos:GetObservationResponse>
                """);
        XmlSeries series = record.series().get(0);
        assertThat(series.id()).isEqualTo("timeseries.1");
        assertThat(series.unit()).isEqualTo("degC");
        assertThat(series.interpolation()).isEqualTo("Continuous");
        assertThat(series.series().toValues()).containsExactly(12.2, 12.3, 12.0);
        assertThat(series.series().time(2)).isEqualTo(Instant.parse("2014-07-01T00:31:42Z"));
        assertThat(record.setAside()).isZero();
        assertThat(record.issues()).isEmpty();
    }

    @Test
    void whatIsWrittenReadsBackInBothDialects(@TempDir Path folder) throws IOException {
        Series series = Series.of(List.of(
                new Reading(Instant.parse("2026-01-01T00:00:00Z"), 0.1, Quality.GOOD),
                Reading.of(Instant.parse("2026-01-01T00:02:00.000000001Z"), -1e-300),
                Reading.of(Instant.parse("2026-01-01T00:04:00Z"), Double.NaN),
                new Reading(Instant.parse("2026-01-01T00:06:00Z"), 3, Quality.SUSPECT),
                new Reading(Instant.parse("2026-01-01T00:08:00Z"), 4, Quality.ESTIMATE)));
        List<XmlSeries> all =
                List.of(XmlSeries.of("depth", "m", series), XmlSeries.of("flow_2", "m3/s & <more>", Series.empty()));
        for (XmlDialect dialect : XmlDialect.values()) {
            assertThat(XML.parse(XML.toText(dialect, all)).series())
                    .as(dialect.name())
                    .isEqualTo(all);
            Path file = folder.resolve(dialect + ".xml");
            XML.write(file, dialect, all);
            assertThat(XML.read(file).series()).isEqualTo(all);
            assertThat(Files.readString(file)).isEqualTo(XML.toText(dialect, all));
        }
        assertThat(folder.toFile().list()).as("no part is left").hasSize(2);
    }

    @Test
    void badPointsAreSetAsideWithTheirLine() {
        XmlRecord record = XML.parse(HEAD + point("2026-01-01T00:00:00Z", "1")
                + point("yesterday", "2")
                + point("2026-01-01T00:04:00Z", "high")
                + point("2026-01-01T00:00:00Z", "3")
                + point("2026-01-01T00:06:00Z", "Infinity")
                + point("2026-01-01T00:08:00Z", "")
                + point("", "5")
                + "<wml2:point><wml2:MeasurementTVP><wml2:time>2026-01-01T00:10:00Z</wml2:time><wml2:value>6</wml2:value>"
                + "<wml2:metadata><wml2:TVPMeasurementMetadata><wml2:quality xlink:href='http://x/odd'/>"
                + "</wml2:TVPMeasurementMetadata></wml2:metadata></wml2:MeasurementTVP></wml2:point>\n"
                + "</wml2:MeasurementTimeseries>");
        assertThat(record.points()).isEqualTo(8);
        assertThat(record.setAside()).isEqualTo(5);
        assertThat(record.series().get(0).series().toValues()).containsExactly(1, Double.NaN, 6);
        assertThat(record.series().get(0).series().quality(2)).isEqualTo(Quality.SUSPECT);
        assertThat(record.issues())
                .hasSize(6)
                .startsWith(
                        "line 3: time \"yesterday\", value \"2\": not a time and a number; set aside",
                        "line 4: time \"2026-01-01T00:04:00Z\", value \"high\": not a time and a number; set aside",
                        "line 5: time 2026-01-01T00:00:00Z is not after the one before; set aside")
                .endsWith("line 9: quality \"http://x/odd\" is not known; taken as suspect");
    }

    @Test
    void timesWithoutAnOffsetAreThoseOfTheZone() {
        String document = HEAD + point("2026-07-01T01:00:00", "1") + point("2026-10-25T01:30:00", "2")
                + "</wml2:MeasurementTimeseries>";
        assertThat(XML.parse(document).series().get(0).series().time(0))
                .isEqualTo(Instant.parse("2026-07-01T01:00:00Z"));
        XmlRecord london = XML.withZone(ZoneId.of("Europe/London")).parse(document);
        assertThat(london.series().get(0).series().time(0)).isEqualTo(Instant.parse("2026-07-01T00:00:00Z"));
        assertThat(london.setAside()).as("an hour that occurs twice").isEqualTo(1);
    }

    @Test
    void nothingOutsideIsFetchedAndNoEntityIsExpanded(@TempDir Path folder) throws IOException {
        Path secret = Files.writeString(folder.resolve("secret.txt"), "2026-01-01T00:00:00Z");
        String outside = "<!DOCTYPE x [<!ENTITY e SYSTEM '" + secret.toUri() + "'>]>\n" + HEAD + point("&e;", "1")
                + "</wml2:MeasurementTimeseries>";
        assertThatIllegalArgumentException()
                .isThrownBy(() -> XML.parse(outside))
                .withMessage("text, line 1: must not have a document type declaration, has one");
        String bomb = "<!DOCTYPE x [<!ENTITY a 'aaaaaaaaaa'><!ENTITY b '&a;&a;&a;&a;&a;&a;&a;&a;'>]>\n<x>&b;</x>";
        assertThatIllegalArgumentException()
                .isThrownBy(() -> XML.parse(bomb))
                .withMessage("text, line 1: must not have a document type declaration, has one");
    }

    @Test
    void otherDocumentsAreRefused(@TempDir Path folder) throws IOException {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> XML.parse("<html/>"))
                .withMessage(
                        "text: must hold a time series of measurements in WaterML 2.0 or TimeseriesML 1.0, held none");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> XML.parse(HEAD + "<wml2:point>"))
                .withMessageMatching("text, line 2: must be well-formed XML, was not");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> XML.parse("time,depth\n1,2"))
                .withMessage("text, line 1: must be well-formed XML, was not");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> XML.read(folder.resolve("none.xml")))
                .withMessageStartingWith("file must exist, was ");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> XmlSeries.of("2 spaces", "m", Series.empty()))
                .withMessage("id must be a letter or _, then letters, digits, -, _ or ., was \"2 spaces\"");
        XmlSeries one = XmlSeries.of("a", "m", Series.empty());
        assertThatIllegalArgumentException()
                .isThrownBy(() -> XML.toText(XmlDialect.WATERML, List.of(one, one)))
                .withMessage("series must have different ids, was a twice");
    }

    private static String pointWith(String time, String value, String metadata) {
        return "<wml2:point><wml2:MeasurementTVP><wml2:time>" + time + "</wml2:time>" + value
                + "<wml2:metadata><wml2:TVPMeasurementMetadata>" + metadata
                + "</wml2:TVPMeasurementMetadata></wml2:metadata></wml2:MeasurementTVP></wml2:point>\n";
    }

    private static final String QUALITY = "<wml2:quality xlink:href='http://www.opengis.net/def/waterml/2.0/quality/";

    /** The fragments of the next tests are from memory of the standard; no published file was at hand. */
    @Test
    void metadataOfAPointGoBeforeThoseOfTheSeries() {
        XmlRecord record = XML.parse(HEAD
                + "<wml2:defaultPointMetadata><wml2:DefaultTVPMeasurementMetadata>" + QUALITY + "good'/>"
                + "<wml2:uom code='m'/></wml2:DefaultTVPMeasurementMetadata></wml2:defaultPointMetadata>\n"
                + point("2026-01-01T00:00:00Z", "1")
                + pointWith("2026-01-01T00:02:00Z", "<wml2:value>2</wml2:value>", QUALITY + "poor'/>")
                + pointWith("2026-01-01T00:04:00Z", "<wml2:value>3</wml2:value>", "<wml2:uom code='ft'/>")
                + pointWith(
                        "2026-01-01T00:06:00Z",
                        "<wml2:value>4</wml2:value>",
                        "<wml2:interpolationType xlink:href='http://x/AveragePrec'/>")
                + "</wml2:MeasurementTimeseries>");
        XmlSeries found = record.series().get(0);
        assertThat(found.series())
                .isEqualTo(Series.of(List.of(
                        new Reading(Instant.parse("2026-01-01T00:00:00Z"), 1, Quality.GOOD),
                        new Reading(Instant.parse("2026-01-01T00:02:00Z"), 2, Quality.POOR),
                        new Reading(Instant.parse("2026-01-01T00:06:00Z"), 4, Quality.GOOD))));
        assertThat(found.unit()).isEqualTo("m");
        assertThat(record.points()).isEqualTo(4);
        assertThat(record.setAside()).isEqualTo(1);
        assertThat(record.issues())
                .containsExactly(
                        "line 5: unit \"ft\" is not that of the series, \"m\"; set aside",
                        "line 6: interpolation type \"AveragePrec\" of one point; that of the series, \"\", is kept");
    }

    @Test
    void nilIsMissingWhateverIsSaidOfIt() {
        XmlRecord record = XML.parse(HEAD
                + pointWith("2026-01-01T00:00:00Z", "<wml2:value xsi:nil='true'/>", QUALITY + "missing'/>")
                + pointWith("2026-01-01T00:02:00Z", "<wml2:value xsi:nil='1'>7</wml2:value>", QUALITY + "good'/>")
                + pointWith("2026-01-01T00:04:00Z", "", "<wml2:nilReason xlink:href='http://x/missing'/>")
                + pointWith("2026-01-01T00:06:00Z", "<wml2:value xsi:nil='false'>8</wml2:value>", "")
                + "</wml2:MeasurementTimeseries>");
        Series series = record.series().get(0).series();
        assertThat(series.toValues()).containsExactly(Double.NaN, Double.NaN, Double.NaN, 8);
        assertThat(series.count(Quality.MISSING)).isEqualTo(3);
        assertThat(record.setAside()).isZero();
    }

    @Test
    void pointsWithoutATimeLieAtEqualSteps() {
        String values =
                "<wml2:point><wml2:MeasurementTVP><wml2:value>1</wml2:value></wml2:MeasurementTVP></wml2:point>\n";
        String metadata = "<wml2:metadata><wml2:MeasurementTimeseriesMetadata>"
                + "<wml2:baseTime>2026-01-01T01:00:00+01:00</wml2:baseTime><wml2:spacing>PT15M</wml2:spacing>"
                + "</wml2:MeasurementTimeseriesMetadata></wml2:metadata>\n";
        String end = "</wml2:MeasurementTimeseries>";
        Series series = XML.parse(HEAD + metadata + values.repeat(3) + end)
                .series()
                .get(0)
                .series();
        assertThat(series.time(0)).isEqualTo(Instant.parse("2026-01-01T00:00:00Z"));
        assertThat(series.time(2)).isEqualTo(Instant.parse("2026-01-01T00:30:00Z"));
        for (String wrong : List.of("PT0S", "-PT15M", "soon", "", "PT9999999999H")) {
            XmlRecord record = XML.parse(HEAD + metadata.replace("PT15M", wrong) + values.repeat(3) + end);
            assertThat(record.setAside()).as(wrong).isGreaterThanOrEqualTo(2);
        }
    }

    @Test
    void categoriesAreNoMeasurementsAndAreCounted() {
        XmlRecord record = XML.parse("<all xmlns:wml2='http://www.opengis.net/waterml/2.0'>\n"
                + "<wml2:CategoricalTimeseries><wml2:point><wml2:CategoricalTVP><wml2:time>2026-01-01T00:00:00Z</wml2:time>"
                + "</wml2:CategoricalTVP></wml2:point></wml2:CategoricalTimeseries>\n"
                + HEAD + point("2026-01-01T00:00:00Z", "1")
                + "<wml2:point><wml2:CategoricalTVP><wml2:time>2026-01-01T00:02:00Z</wml2:time></wml2:CategoricalTVP>"
                + "</wml2:point>\n</wml2:MeasurementTimeseries></all>");
        assertThat(record.series()).hasSize(1);
        assertThat(record.series().get(0).series().size()).isEqualTo(1);
        assertThat(record.setAside()).isEqualTo(1);
        assertThat(record.issues())
                .containsExactly(
                        "line 2: a CategoricalTimeseries holds no measurements as pairs of time and value; not read",
                        "line 5: a category is no measurement; set aside");
    }

    @Test
    void anOffsetThatTheDocumentStatesIsNamedWhereTimesHaveNone() {
        String document = "<all xmlns:wml2='http://www.opengis.net/waterml/2.0'>"
                + "<wml2:TimeZone><wml2:zoneOffset>+01:00</wml2:zoneOffset></wml2:TimeZone>\n"
                + HEAD + point("2026-01-01T00:00:00", "1") + point("2026-01-01T00:02:00", "1")
                + "</wml2:MeasurementTimeseries></all>";
        assertThat(XML.parse(document).issues())
                .containsExactly(
                        "line 3: the document states the offset \"+01:00\"; times without one are taken as those of Z");
        assertThat(XML.parse(document.replace(":00</wml2:time>", ":00+01:00</wml2:time>"))
                        .issues())
                .isEmpty();
    }

    /** Every quality and every interpolation type that the standard names, in both dialects, there and back. */
    @Test
    void everyQualityAndInterpolationTypeReadsBack() {
        SeriesBuilder builder = Series.builder();
        for (Quality each : Quality.values()) {
            builder.add(new Reading(
                    Instant.parse("2026-01-01T00:00:00Z").plusSeconds(each.toCode()),
                    each == Quality.MISSING ? Double.NaN : 1.5,
                    each));
        }
        Series series = builder.build();
        for (XmlDialect dialect : XmlDialect.values()) {
            for (String type : List.of(
                    "Continuous",
                    "Discontinuous",
                    "InstantTotal",
                    "AveragePrec",
                    "MaxPrec",
                    "MinPrec",
                    "TotalPrec",
                    "ConstPrec",
                    "AverageSucc",
                    "TotalSucc",
                    "MinSucc",
                    "MaxSucc",
                    "ConstSucc",
                    "Statistical",
                    "")) {
                XmlSeries one = new XmlSeries("s", "m", type, series);
                assertThat(XML.parse(XML.toText(dialect, List.of(one))).series())
                        .as(dialect + " " + type)
                        .containsExactly(one);
            }
        }
    }

    private static String point(String time, String value) {
        return "<wml2:point><wml2:MeasurementTVP><wml2:time>" + time + "</wml2:time><wml2:value>" + value
                + "</wml2:value></wml2:MeasurementTVP></wml2:point>\n";
    }
}
