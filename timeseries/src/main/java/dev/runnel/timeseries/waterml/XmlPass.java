package dev.runnel.timeseries.waterml;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.temporal.TemporalAccessor;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/** One pass over one document. */
final class XmlPass {
    private static final String XSI = "http://www.w3.org/2001/XMLSchema-instance";
    private static final String XLINK = "http://www.w3.org/1999/xlink";
    private static final String GML = "http://www.opengis.net/gml";
    private static final int MOST_ISSUES = 1000;
    private static final int LONGEST_TEXT = 1000;

    private final String name;
    private final XMLStreamReader reader;
    private final ZoneId zone;
    private final List<XmlSeries> found = new ArrayList<>();
    private final List<String> issues = new ArrayList<>();
    private long points;
    private long setAside;

    /** Of the series that is open. */
    private SeriesBuilder builder = Series.builder();

    private long last;
    private boolean begun;
    private String id = "";
    private String unit = "";
    private String interpolation = "";
    private Optional<Quality> usual = Optional.empty();

    /** Time of the first point and time between two, of a series whose points have none. */
    private String baseTime = "";

    private String spacing = "";
    private long place;

    /** Of the document: the offset that it states, by which times without one may be meant. */
    private String statedOffset = "";

    private boolean isToldOfOffset;

    XmlPass(String name, XMLStreamReader reader, ZoneId zone) {
        this.name = name;
        this.reader = reader;
        this.zone = zone;
    }

    XmlRecord read() throws XMLStreamException {
        while (reader.hasNext()) {
            int event = reader.next();
            if (event == XMLStreamConstants.DTD) {
                throw new IllegalArgumentException(
                        name + ", line " + line() + ": must not have a document type declaration, has one");
            }
            if (event == XMLStreamConstants.START_ELEMENT) {
                if (isOurs("MeasurementTimeseries", "TimeseriesTVP")) {
                    series();
                } else if (isOurs("zoneOffset")) {
                    statedOffset = text();
                } else if (isOurs("CategoricalTimeseries", "TimeseriesDomainRange", "TimeseriesCoverage")) {
                    issue("a " + reader.getLocalName() + " holds no measurements as pairs of time and value; not read");
                }
            }
        }
        if (found.isEmpty()) {
            throw new IllegalArgumentException(name + ": must hold a time series of measurements in WaterML 2.0 or"
                    + " TimeseriesML 1.0, held none");
        }
        return new XmlRecord(found, points, setAside, issues);
    }

    private int line() {
        return reader.getLocation().getLineNumber();
    }

    private boolean isOurs(String... names) {
        String namespace = reader.getNamespaceURI();
        return namespace != null
                && XmlDialect.isKnown(namespace)
                && List.of(names).contains(reader.getLocalName());
    }

    private void series() throws XMLStreamException {
        builder = Series.builder();
        begun = false;
        id = attribute(GML, "id");
        unit = "";
        interpolation = "";
        usual = Optional.empty();
        baseTime = "";
        spacing = "";
        place = 0;
        String end = reader.getLocalName();
        while (true) {
            int event = reader.next();
            if (event == XMLStreamConstants.END_ELEMENT && isOurs(end)) {
                break;
            }
            if (event == XMLStreamConstants.START_ELEMENT) {
                if (isOurs("MeasurementTVP", "TimeValuePair")) {
                    point();
                } else if (isOurs("CategoricalTVP")) {
                    points++;
                    place++;
                    aside(line(), "a category is no measurement");
                } else if (isOurs("baseTime")) {
                    baseTime = text();
                } else if (isOurs("spacing")) {
                    spacing = text();
                } else if (isOurs("uom")) {
                    unit = attribute("", "code");
                } else if (isOurs("interpolationType")) {
                    interpolation = lastPart();
                } else if (isOurs("quality")) {
                    usual = quality();
                }
            }
        }
        found.add(new XmlSeries(id, unit, interpolation, builder.build()));
    }

    /** An attribute whose namespace begins so; empty if there is none. */
    private String attribute(String namespace, String local) {
        for (int i = 0; i < reader.getAttributeCount(); i++) {
            String of = reader.getAttributeNamespace(i) == null ? "" : reader.getAttributeNamespace(i);
            boolean same = namespace.isEmpty() ? of.isEmpty() : of.startsWith(namespace);
            if (same && reader.getAttributeLocalName(i).equals(local)) {
                return reader.getAttributeValue(i);
            }
        }
        return "";
    }

    private String lastPart() {
        String address = attribute(XLINK, "href");
        return address.substring(Math.max(address.lastIndexOf('/'), address.lastIndexOf(':')) + 1);
    }

    private Optional<Quality> quality() {
        String word = lastPart().toUpperCase(Locale.ROOT);
        for (Quality each : Quality.values()) {
            if (each.name().equals(word)) {
                return Optional.of(each);
            }
        }
        issue("quality " + Text.quoted(attribute(XLINK, "href")) + " is not known; taken as suspect");
        return Optional.of(Quality.SUSPECT);
    }

    private void point() throws XMLStreamException {
        points++;
        int line = line();
        String end = reader.getLocalName();
        String time = "";
        String value = "";
        String own = unit;
        Optional<Quality> quality = usual;
        while (true) {
            int event = reader.next();
            if (event == XMLStreamConstants.END_ELEMENT && isOurs(end)) {
                break;
            }
            if (event == XMLStreamConstants.START_ELEMENT) {
                if (isOurs("time")) {
                    time = text();
                } else if (isOurs("value")) {
                    String nil = attribute(XSI, "nil");
                    value = text();
                    value = nil.equals("true") || nil.equals("1") ? "" : value;
                } else if (isOurs("quality")) {
                    quality = quality();
                } else if (isOurs("uom")) {
                    own = attribute("", "code");
                } else if (isOurs("interpolationType") && !lastPart().equals(interpolation)) {
                    issue("interpolation type " + Text.quoted(lastPart()) + " of one point; that of the series, "
                            + Text.quoted(interpolation) + ", is kept");
                }
            }
        }
        if (unit.isEmpty() && place == 0) {
            unit = own;
        }
        if (own.equals(unit)) {
            add(line, time, value, quality);
        } else {
            aside(line, "unit " + Text.quoted(own) + " is not that of the series, " + Text.quoted(unit));
        }
        place++;
    }

    /** The text of the element; long ones are cut, since no time and no number is long. */
    private String text() throws XMLStreamException {
        StringBuilder text = new StringBuilder();
        int depth = 1;
        while (depth > 0) {
            int event = reader.next();
            if (event == XMLStreamConstants.CHARACTERS || event == XMLStreamConstants.CDATA) {
                if (text.length() < LONGEST_TEXT) {
                    text.append(reader.getText());
                }
            } else if (event == XMLStreamConstants.START_ELEMENT) {
                depth++;
            } else if (event == XMLStreamConstants.END_ELEMENT) {
                depth--;
            }
        }
        return text.toString().strip();
    }

    private void add(int line, String time, String value, Optional<Quality> said) {
        long now;
        double number = Double.NaN;
        try {
            now = time.isEmpty() && !baseTime.isEmpty() ? spaced() : EpochNanos.of(instant(time));
            if (!value.isEmpty()) {
                number = Double.parseDouble(value);
            }
        } catch (DateTimeException | IllegalArgumentException e) {
            aside(line, "time " + Text.quoted(time) + ", value " + Text.quoted(value) + ": not a time and a number");
            return;
        }
        if (Double.isInfinite(number)) {
            aside(line, "value " + Text.quoted(value) + " is not finite");
            return;
        }
        if (begun && now <= last) {
            aside(line, "time " + time + " is not after the one before");
            return;
        }
        begun = true;
        last = now;
        Quality quality = said.orElse(Quality.UNCHECKED);
        if (Double.isNaN(number)) {
            quality = Quality.MISSING;
        } else if (quality == Quality.MISSING) {
            issueAt(line, "a value that is called missing; taken as suspect");
            quality = Quality.SUSPECT;
        }
        builder.add(now, number, quality);
    }

    /** Points without a time lie at equal steps from a base. */
    private long spaced() {
        Duration step = Duration.parse(spacing);
        if (step.isNegative() || step.isZero()) {
            throw new DateTimeException("spacing must be greater than 0");
        }
        try {
            return EpochNanos.of(instant(baseTime).plus(step.multipliedBy(place)));
        } catch (ArithmeticException e) {
            throw new DateTimeException("spacing is too long", e);
        }
    }

    private Instant instant(String text) {
        TemporalAccessor parsed =
                DateTimeFormatter.ISO_DATE_TIME.parseBest(text, OffsetDateTime::from, LocalDateTime::from);
        if (parsed instanceof OffsetDateTime exact) {
            return exact.toInstant();
        }
        if (!statedOffset.isEmpty() && !isToldOfOffset) {
            isToldOfOffset = true;
            issue("the document states the offset " + Text.quoted(statedOffset)
                    + "; times without one are taken as those of " + zone);
        }
        LocalDateTime local = LocalDateTime.from(parsed);
        List<ZoneOffset> offsets = zone.getRules().getValidOffsets(local);
        if (offsets.size() != 1) {
            throw new DateTimeException("occurs " + offsets.size() + " times");
        }
        return local.toInstant(offsets.get(0));
    }

    private void aside(int line, String text) {
        setAside++;
        issueAt(line, text + "; set aside");
    }

    private void issue(String text) {
        issueAt(line(), text);
    }

    private void issueAt(int line, String text) {
        if (issues.size() < MOST_ISSUES) {
            issues.add("line " + line + ": " + text);
        }
    }
}
