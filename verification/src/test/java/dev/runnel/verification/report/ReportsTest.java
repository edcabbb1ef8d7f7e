package dev.runnel.verification.report;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.verification.Check;
import dev.runnel.verification.Provenance;
import dev.runnel.verification.Results;
import dev.runnel.verification.Selection;
import dev.runnel.verification.Source;
import dev.runnel.verification.Status;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.zip.GZIPInputStream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

class ReportsTest {
    private static final Results RESULTS = new Results(
            List.of(
                    check("t:1:v", "1.0", OptionalDouble.of(1.01), Status.PASS, ""),
                    check("t:2:v", "2.0", OptionalDouble.of(2.5), Status.FAIL, ""),
                    check("t:3:v", "3.0", OptionalDouble.empty(), Status.FAIL, "refused: too <deep>"),
                    check("t:4:v", "4.0", OptionalDouble.of(5), Status.EXCLUDED, "misprint of 5.0")),
            3,
            List.of("x.table: key \"year\" is missing"));

    private static Check check(String name, String printed, OptionalDouble computed, Status status, String remark) {
        return new Check(
                name,
                "t",
                "v",
                "",
                "hydraulics",
                "some.thing",
                Source.of("A & B", "1999", "Book, \"part 1\"", "2nd ed.", Provenance.FROM_MEMORY),
                "p. 3",
                "depth=0.2; diameter=1",
                printed,
                "m2",
                computed,
                0.05,
                status,
                remark);
    }

    @Test
    void csv() throws Exception {
        assertThat(CsvReport.text(RESULTS).lines())
                .containsExactly(
                        "check,module,calculation,source,locator,input,expected,computed,deviation,tolerance,status,column,program",
                        "t:1:v,hydraulics,some.thing,\"A & B (1999), Book, \"\"part 1\"\", 2nd ed. [from memory]\",p. 3,"
                                + "depth=0.2; diameter=1,1.0,1.01,0.010000000000000009,0.05,pass,v,",
                        "t:2:v,hydraulics,some.thing,\"A & B (1999), Book, \"\"part 1\"\", 2nd ed. [from memory]\",p. 3,"
                                + "depth=0.2; diameter=1,2.0,2.5,0.5,0.05,fail,v,",
                        "t:3:v,hydraulics,some.thing,\"A & B (1999), Book, \"\"part 1\"\", 2nd ed. [from memory]\",p. 3,"
                                + "depth=0.2; diameter=1,3.0,,,0.05,fail,v,",
                        "t:4:v,hydraulics,some.thing,\"A & B (1999), Book, \"\"part 1\"\", 2nd ed. [from memory]\",p. 3,"
                                + "depth=0.2; diameter=1,4.0,5,1,0.05,excluded,v,");
    }

    @Test
    void junit() throws Exception {
        byte[] bytes = JUnitReport.text(RESULTS).getBytes(StandardCharsets.UTF_8);
        Document xml = DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new ByteArrayInputStream(bytes));
        Element suite = (Element) xml.getElementsByTagName("testsuite").item(0);
        assertThat(suite.getAttribute("tests")).isEqualTo("4");
        assertThat(suite.getAttribute("failures")).isEqualTo("2");
        assertThat(suite.getAttribute("skipped")).isEqualTo("1");
        assertThat(xml.getElementsByTagName("testcase").getLength()).isEqualTo(5);
        Element failure = (Element) xml.getElementsByTagName("failure").item(1);
        assertThat(failure.getAttribute("message")).contains("expected 3.0 +/- 0.05 m2, refused: too <deep>");
        Element error = (Element) xml.getElementsByTagName("error").item(0);
        assertThat(error.getAttribute("message")).isEqualTo("x.table: key \"year\" is missing");
    }

    @Test
    void html() {
        assertThat(HtmlReport.text(RESULTS))
                .startsWith("<!DOCTYPE html>")
                .contains("Could not run:")
                .contains("A &amp; B (1999), Book, &quot;part 1&quot;, 2nd ed. [from memory]")
                .contains("t:4:v: misprint of 5.0")
                .contains("<td>hydraulics.section.CircularSection</td>")
                .contains("<th class=\"n\">second-hand</th><th class=\"n\">fitted</th><th class=\"n\">from memory</th>")
                .contains("<td class=\"n\">0</td><td class=\"n\">0</td><td class=\"n\">1</td>")
                .contains("3 cells are blank")
                .doesNotContain("src=")
                .doesNotContain("href=");
    }

    @Test
    void htmlHoldsEveryValue() throws Exception {
        String page = HtmlReport.text(RESULTS);
        String letters = page.replaceFirst("(?s).*id=\"data\">([^<]*)<.*", "$1");
        try (var unpacked =
                new GZIPInputStream(new ByteArrayInputStream(Base64.getDecoder().decode(letters)))) {
            String[] columns = new String(unpacked.readAllBytes(), StandardCharsets.UTF_8).split("\u001E", -1);
            assertThat(columns)
                    .containsExactly(
                            "4",
                            " t:1:v\n+v\n+v\n+v",
                            "some.thing\nsome.thing\nsome.thing\nsome.thing",
                            "p. 3\np. 3\np. 3\np. 3",
                            "0|depth=0.2; diameter=1\n21|\n21|\n21|",
                            "1.0\n2.0\n3.0\n4.0",
                            "1.01\n2.5\nnone\n5",
                            "0.01\n0.5\n\n1",
                            "0.05\n0.05\n0.05\n0.05",
                            "m2\nm2\nm2\nm2",
                            "pass\nfail\nfail\nexcluded",
                            "\n\nrefused: too <deep>\nmisprint of 5.0");
        }
    }

    @Test
    void whatRepeatsIsLeftOut() throws Exception {
        List<Check> checks = List.of(
                check("t:1:a", "1.0", OptionalDouble.of(1.0), Status.PASS, ""),
                check("t:1:b", "1.0", OptionalDouble.of(1 + 1e-12), Status.PASS, ""),
                check("t:3:a", "1.0", OptionalDouble.of(1 + 1e-7), Status.PASS, ""),
                check("peer:depth", "0", OptionalDouble.of(0), Status.PASS, ""),
                check("t:4:a", "1.0", OptionalDouble.of(1), Status.PASS, ""));
        byte[] packed = Base64.getDecoder().decode(PackedRows.of(List.of(new Group("g", checks))));
        try (var unpacked = new GZIPInputStream(new ByteArrayInputStream(packed))) {
            String[] columns = new String(unpacked.readAllBytes(), StandardCharsets.UTF_8).split("\u001E", -1);
            assertThat(columns[1]).isEqualTo(" t:1:a\n=b\n t:3:a\n peer:depth\n+a");
            assertThat(columns[6]).isEqualTo("\n\n1.0000001\n\n");
        }
    }

    @Test
    void summary() {
        assertThat(SummaryReport.text(RESULTS).lines())
                .contains(
                        "Excluded, each with its reason",
                        "     1     2         1   0.20  A & B (1999), Book, \"part 1\", 2nd ed. [from memory]",
                        "  t:3:v: expected 3.0, computed none, tolerance 0.05 m2 - refused: too <deep>;"
                                + " column v, calculation some.thing",
                        "Total: 4 values from 1 sources, 1 pass (1 from memory), 2 fail, 1 excluded; 3 blank cells not"
                                + " compared",
                        "COULD NOT RUN: 1 problems, see above.");
    }

    @Test
    void aWholeRecordAsAnInputIsShortened() throws Exception {
        Check check = check("t:1:v", "2.0", OptionalDouble.of(2.0), Status.PASS, "");
        String record = "values=" + "1.25 ".repeat(1000);
        Check wide = new Check(
                check.name(),
                check.table(),
                check.column(),
                check.program(),
                check.module(),
                check.calculation(),
                check.source(),
                check.locator(),
                record,
                check.printed(),
                check.unit(),
                check.computed(),
                check.tolerance(),
                check.status(),
                check.remark());
        Results results = new Results(List.of(wide), 0, List.of());
        byte[] packed = Base64.getDecoder().decode(PackedRows.of(PackedRows.bySource(results)));
        try (var unpacked = new GZIPInputStream(new ByteArrayInputStream(packed))) {
            assertThat(new String(unpacked.readAllBytes(), StandardCharsets.UTF_8))
                    .hasSizeLessThan(700)
                    .contains("\u2026 (5007 characters, all in the table)");
        }
        // The name of the check leads to the row of the table that has all of it.
        assertThat(CsvReport.text(results))
                .contains(record.substring(1, 300), "(5007 characters, all in the table)")
                .hasSizeLessThan(2000);
        assertThat(JUnitReport.text(results)).contains("(5007 characters, all in the table)");
    }

    @Test
    void aNarrowMissShowsAllItsDigits() {
        Check narrow = check("t:9:v", "123456789.0", OptionalDouble.of(123_456_789.06), Status.FAIL, "");
        assertThat(SummaryReport.text(new Results(List.of(narrow), 0, List.of())))
                .contains("expected 123456789.0, computed 1.2345678906E8, tolerance 0.05 m2");
    }

    @Test
    void aFailureNamesTheMethodThatWasAsked() {
        Check check = check("t:2:v", "2.0", OptionalDouble.of(2.5), Status.FAIL, "");
        Check real = new Check(
                check.name(),
                check.table(),
                check.column(),
                check.program(),
                check.module(),
                "energy.minimum",
                check.source(),
                check.locator(),
                check.input(),
                check.printed(),
                check.unit(),
                check.computed(),
                check.tolerance(),
                check.status(),
                check.remark());
        assertThat(SummaryReport.text(new Results(List.of(real), 0, List.of())))
                .contains("; column v, calculation energy.minimum, which asks hydraulics.flow.SectionFlow#");
    }

    @Test
    void thePageToSignStatesWhatFailedAndLeavesTheDayOpen() {
        assertThat(SignOffReport.text(RESULTS, Selection.all().withModule("hydraulics"), Optional.empty()))
                .contains("Something could not be run: this run proves nothing.")
                .contains("<dt>Selection</dt><dd>--module hydraulics</dd>")
                .contains("<li>t: misprint of 5.0</li>")
                .contains("<dt>Day</dt><dd><span class=\"blank\">")
                .doesNotContain("href=");
    }

    @Test
    void thePageToSignOfASoundRun() {
        Results sound = new Results(
                List.of(
                        check("t:1:v", "1.0", OptionalDouble.of(1.01), Status.PASS, ""),
                        check("t:2:v", "4.0", OptionalDouble.of(5), Status.EXCLUDED, "misprint of 5.0"),
                        check("t:3:v", "4.0", OptionalDouble.of(5), Status.EXCLUDED, "misprint of 5.0")),
                0,
                List.of());
        assertThat(SignOffReport.text(sound, Selection.all(), Optional.of(LocalDate.of(2026, 11, 28))))
                .contains("All 1 values that are not excluded lie within the tolerance")
                .contains("<dt>Selection</dt><dd>everything</dd>")
                .contains("<li>t: misprint of 5.0 (2 values)</li>")
                .contains("<dt>Day</dt><dd>2026-11-28</dd>")
                .contains("<td>all</td><td class=\"n\">1</td><td class=\"n\">1</td><td class=\"n\">1</td>");
    }

    @Test
    void thePageToSignOfAFailedRunProvesNothing() {
        Results failed =
                new Results(List.of(check("t:2:v", "2.0", OptionalDouble.of(2.5), Status.FAIL, "")), 0, List.of());
        assertThat(SignOffReport.text(failed, Selection.all(), Optional.empty()))
                .contains("1 values lie outside their tolerance: this run proves nothing.")
                .contains("<div class=\"verdict bad\">");
    }

    @Test
    void theMatrixHasALineForEachPublicCalculation() throws Exception {
        List<String> lines = MatrixReport.text(RESULTS).lines().toList();
        assertThat(lines.get(0))
                .isEqualTo("method,reached,calculation,source,provenance,pass,fail,excluded,worst,reason");
        assertThat(lines.stream().map(line -> line.substring(0, line.indexOf(','))))
                .contains("hydraulics.section.CircularSection#area", "hydraulics.flow.SectionFlow#alternateDepth");
    }

    @Test
    void nothingCheckedIsNoSuccess() {
        Results nothing = new Results(List.of(), 0, List.of());
        assertThat(nothing.exitCode()).isEqualTo(2);
        assertThat(SummaryReport.text(nothing)).contains("COULD NOT RUN: nothing was checked.");
        assertThat(HtmlReport.text(nothing)).contains("Could not run: nothing was checked.");
    }
}
