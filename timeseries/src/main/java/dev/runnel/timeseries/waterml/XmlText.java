package dev.runnel.timeseries.waterml;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Series;
import java.io.IOException;
import java.io.Writer;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Writes a document, point by point. */
final class XmlText {
    static final String DEFINITIONS = "http://www.opengis.net/def/waterml/2.0/";

    private final Writer out;
    private final XmlDialect dialect;
    private final String p;

    XmlText(Writer out, XmlDialect dialect) {
        this.out = out;
        this.dialect = dialect;
        this.p = dialect.prefix() + ":";
    }

    static void require(List<XmlSeries> series) {
        if (series.isEmpty()) {
            throw new IllegalArgumentException("series must be at least one, was none");
        }
        Set<String> ids = new HashSet<>();
        for (XmlSeries each : series) {
            if (!ids.add(each.id())) {
                throw new IllegalArgumentException("series must have different ids, was " + each.id() + " twice");
            }
        }
    }

    void write(List<XmlSeries> all) throws IOException {
        String root = dialect == XmlDialect.WATERML ? "Collection" : "TimeseriesCollection";
        out.write("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<" + p + root + " xmlns:" + dialect.prefix() + "=\""
                + dialect.namespace() + "\" xmlns:gml=\"http://www.opengis.net/gml/3.2\""
                + " xmlns:xlink=\"http://www.w3.org/1999/xlink\""
                + " xmlns:xsi=\"http://www.w3.org/2001/XMLSchema-instance\" gml:id=\"collection\">\n");
        for (XmlSeries each : all) {
            series(each);
        }
        out.write("</" + p + root + ">\n");
    }

    private void series(XmlSeries series) throws IOException {
        boolean water = dialect == XmlDialect.WATERML;
        String member = water ? "observationMember" : "timeseriesMember";
        String type = "MeasurementTimeseries";
        out.write(" <" + p + member + ">\n  <" + p + type + " gml:id=\"" + escaped(series.id()) + "\">\n");
        String meta = "DefaultTVPMeasurementMetadata";
        out.write("   <" + p + "defaultPointMetadata><" + p + meta + ">");
        if (!series.unit().isEmpty()) {
            out.write("<" + p + "uom code=\"" + escaped(series.unit()) + "\"/>");
        }
        if (!series.interpolation().isEmpty()) {
            out.write("<" + p + "interpolationType xlink:href=\"" + DEFINITIONS + "interpolationType/"
                    + escaped(series.interpolation()) + "\"/>");
        }
        out.write("</" + p + meta + "></" + p + "defaultPointMetadata>\n");
        Series readings = series.series();
        for (int i = 0; i < readings.size(); i++) {
            point(readings, i);
        }
        out.write("  </" + p + type + ">\n </" + p + member + ">\n");
    }

    private void point(Series readings, int index) throws IOException {
        double value = readings.value(index);
        Quality quality = readings.quality(index);
        out.write("   <" + p + "point><" + p + "MeasurementTVP><" + p + "time>");
        out.write(readings.time(index).toString());
        out.write("</" + p + "time><" + p + "value");
        out.write(Double.isNaN(value) ? " xsi:nil=\"true\"/>" : ">" + Text.number(value) + "</" + p + "value>");
        if (quality != Quality.UNCHECKED) {
            out.write("<" + p + "metadata><" + p + "TVPMeasurementMetadata><" + p + "quality xlink:href=\""
                    + DEFINITIONS + "quality/" + quality.toText() + "\"/></" + p + "TVPMeasurementMetadata></" + p
                    + "metadata>");
        }
        out.write("</" + p + "MeasurementTVP></" + p + "point>\n");
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }
}
