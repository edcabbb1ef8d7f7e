package dev.runnel.verification.sweep;

import dev.runnel.rainfall.ddf.DdfTable;
import dev.runnel.rainfall.ddf.ReturnPeriodBasis;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.correction.Corrections;
import dev.runnel.timeseries.correction.SiteVisit;
import dev.runnel.timeseries.csv.CsvLayout;
import dev.runnel.timeseries.csv.CsvRecords;
import dev.runnel.timeseries.csv.CsvResult;
import dev.runnel.timeseries.csv.IntervalFile;
import dev.runnel.timeseries.waterml.TimeseriesXml;
import dev.runnel.timeseries.waterml.XmlDialect;
import dev.runnel.timeseries.waterml.XmlSeries;
import dev.runnel.verification.sweep.Question.Answer;
import dev.runnel.verification.sweep.Question.Refused;
import java.time.Instant;
import java.util.List;
import java.util.function.Consumer;

/** A reader that is given a spoiled file reads it, sets lines aside and counts them, or refuses it with a reason; nothing else. */
final class Readers {
    private static final String RECORD =
            "time,depth,velocity\n2026-03-01T00:00Z,0.21,0.55\n2026-03-01T00:02Z,0.22,0.56\n"
                    + "2026-03-01T00:04Z,,0.57\n2026-03-01T00:06Z,0.24,-9999\n2026-03-01T00:08Z,0.25,0.58\n";
    private static final String INTERVALS =
            "start,end\n2026-03-01T00:00Z,2026-03-01T01:00Z\n2026-03-02T00:00Z,2026-03-02T03:30Z\n";
    private static final String DEPTHS = "duration_min,2,5,10,30\n15,10,14,17,22\n60,16,22,26,33\n240,24,32,38,48\n";
    private static final String CORRECTIONS = "series,from,to,kind,value,value at end,source,reason,evidence,author\n"
            + "depth,2026-03-01T01:00:00Z,2026-03-01T05:00:00Z,drift,0.0,-0.4,,\"sank, slowly\",visits,A. Analyst\n";
    private static final String VISITS =
            "time,author,hand depth\n2026-03-01T10:00:00Z,A. Analyst,0.17\n2026-03-15T10:00:00Z,A. Analyst,0.172\n";

    private static final XmlSeries SERIES = XmlSeries.of(
            "depth",
            "m",
            Series.of(List.of(
                    Reading.of(Instant.parse("2026-03-01T00:00:00Z"), 0.21),
                    Reading.of(Instant.parse("2026-03-01T00:02:00Z"), Double.NaN))));
    private static final TimeseriesXml XML = TimeseriesXml.standard();
    private static final char[] LETTERS = "0123456789.,;:-+eETZ \t\"'\n\r\u0000\uFEFF\u00E9<>&/=#NaInf".toCharArray();

    private Readers() {}

    static List<Question> all() {
        return List.of(
                spoiled("record of readings, spoiled", RECORD, Readers::record),
                spoiled(
                        "intervals, spoiled",
                        INTERVALS,
                        text -> IntervalFile.of("start", "end").parse(text)),
                spoiled(
                        "table of depths, spoiled",
                        DEPTHS,
                        text -> DdfTable.parse(text, ReturnPeriodBasis.ANNUAL_MAXIMUM)),
                spoiled("corrections, spoiled", CORRECTIONS, Corrections::parse),
                spoiled("visits, spoiled", VISITS, SiteVisit::parse),
                spoiled("time series in XML, spoiled", XML.toText(XmlDialect.WATERML, List.of(SERIES)), XML::parse));
    }

    /** Every line but the header is accepted or set aside. */
    private static void record(String text) {
        CsvResult result =
                CsvRecords.parse(text, CsvLayout.of("time").withColumn("depth").withColumn("velocity"));
        long counted = result.report().accepted() + result.report().rejected();
        if (counted > text.length()) {
            throw new IllegalStateException("counted " + counted + " lines of " + text.length() + " letters");
        }
    }

    private static Question spoiled(String name, String sound, Consumer<String> reader) {
        return new Question(name, 0, 0.05, draw -> {
            StringBuilder text = new StringBuilder(sound);
            int changes = draw.below(6);
            for (int i = 0; i < changes; i++) {
                int at = draw.below(text.length());
                switch (draw.below(4)) {
                    case 0 -> text.deleteCharAt(at);
                    case 1 -> text.insert(at, LETTERS[draw.below(LETTERS.length)]);
                    case 2 -> text.insert(at, text.substring(at, Math.min(text.length(), at + draw.below(40))));
                    default -> text.setCharAt(at, LETTERS[draw.below(LETTERS.length)]);
                }
            }
            try {
                reader.accept(text.toString());
            } catch (IllegalArgumentException e) {
                if (e.getMessage() == null || e.getMessage().length() < 10) {
                    throw new IllegalStateException("refused without a reason", e);
                }
                throw new Refused(e);
            }
            return Answer.of(0, text.toString());
        });
    }
}
