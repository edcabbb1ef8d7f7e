package dev.runnel.verification.report;

import dev.runnel.internal.Text;
import dev.runnel.verification.Check;
import dev.runnel.verification.Results;
import dev.runnel.verification.Status;
import java.io.StringWriter;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;
import org.apiguardian.api.API;

/**
 * The checks as JUnit XML, for a build server: a table is a test suite, a value a test case, an exclusion a skipped one,
 * and what could not be run an error.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class JUnitReport {
    private JUnitReport() {}

    /**
     * Returns the report.
     *
     * @param results the results
     * @return an XML document
     * @throws XMLStreamException never in practice, the text is made in memory
     */
    public static String text(Results results) throws XMLStreamException {
        StringWriter text = new StringWriter();
        XMLStreamWriter xml = XMLOutputFactory.newInstance().createXMLStreamWriter(text);
        xml.writeStartDocument("UTF-8", "1.0");
        xml.writeStartElement("testsuites");
        for (Group table : Group.by(results.checks(), Check::table)) {
            startSuite(xml, table.name(), table.checks().size(), table.count(Status.FAIL), 0);
            xml.writeAttribute("skipped", Long.toString(table.count(Status.EXCLUDED)));
            for (Check check : table.checks()) {
                testCase(xml, check);
            }
            xml.writeEndElement();
        }
        if (!results.problems().isEmpty()) {
            startSuite(
                    xml,
                    "could not run",
                    results.problems().size(),
                    0,
                    results.problems().size());
            for (String problem : results.problems()) {
                startCase(xml, "verification", problem);
                element(xml, "error", problem);
                xml.writeEndElement();
            }
            xml.writeEndElement();
        }
        xml.writeEndElement();
        xml.writeEndDocument();
        return text.toString();
    }

    private static void testCase(XMLStreamWriter xml, Check check) throws XMLStreamException {
        startCase(
                xml,
                check.module() + "." + check.calculation(),
                check.name() + " " + InputText.shortened(check.input()));
        if (check.status() == Status.EXCLUDED) {
            element(xml, "skipped", check.remark());
        } else if (check.status() == Status.FAIL) {
            String computed = check.computed().isEmpty()
                    ? check.remark()
                    : "computed " + Text.number(check.computed().getAsDouble());
            element(
                    xml,
                    "failure",
                    "expected " + check.printed() + " +/- " + Text.number(check.tolerance()) + " " + check.unit() + ", "
                            + computed + "; " + check.source() + ", " + check.locator());
        }
        xml.writeEndElement();
    }

    private static void startSuite(XMLStreamWriter xml, String name, long tests, long failures, long errors)
            throws XMLStreamException {
        xml.writeStartElement("testsuite");
        xml.writeAttribute("name", name);
        xml.writeAttribute("tests", Long.toString(tests));
        xml.writeAttribute("failures", Long.toString(failures));
        xml.writeAttribute("errors", Long.toString(errors));
    }

    private static void startCase(XMLStreamWriter xml, String className, String name) throws XMLStreamException {
        xml.writeStartElement("testcase");
        xml.writeAttribute("classname", className);
        xml.writeAttribute("name", name);
    }

    private static void element(XMLStreamWriter xml, String name, String message) throws XMLStreamException {
        xml.writeEmptyElement(name);
        xml.writeAttribute("message", message);
    }
}
