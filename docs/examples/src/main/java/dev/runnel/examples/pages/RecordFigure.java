package dev.runnel.examples.pages;

/** A record over time as a still drawing. */
public final class RecordFigure {
    private RecordFigure() {}

    /**
     * Draws the figure.
     *
     * @param record the record
     * @return SVG
     */
    public static String of(RecordRows record) {
        return PrintedRecord.of(record);
    }
}
