package dev.runnel.examples.review;

import java.util.List;
import java.util.Locale;

/**
 * What a reading of rain is.
 *
 * @param text what it is called
 * @param mm mm, or mm/h, in one
 * @param isIntensity true for mean intensities, false for depths
 */
public record RainUnit(String text, double mm, boolean isIntensity) {
    private static final double MM_PER_INCH = 25.4;

    /**
     * Returns what the site file says, else what the name of the column does.
     *
     * @param site what the site file says
     * @param header name of the column
     * @return the unit
     * @throws IllegalArgumentException if neither tells
     */
    public static RainUnit of(Site site, String header) {
        String text =
                site.rain().steps().unit().orElseGet(() -> in(site.inputs().rain(), header));
        return new RainUnit(text, text.startsWith("in") ? MM_PER_INCH : 1, text.endsWith("/h"));
    }

    private static String in(Site.Column column, String header) {
        String name = header.toLowerCase(Locale.ROOT).replaceAll("[\\s\\])]+$", "");
        for (String length : List.of("mm", "in")) {
            if (name.matches("(.*[^a-z])?" + length + "(/h|/hr|_per_h|_h)")) {
                return length + "/h";
            }
            if (name.matches("(.*[^a-z])?" + length)) {
                return length;
            }
        }
        throw new IllegalArgumentException(column.file() + ": the unit of column \"" + header
                + "\" is not known: add \"rain unit = ...\" to " + SiteFile.NAME);
    }
}
