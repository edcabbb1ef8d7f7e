package dev.runnel.examples.pages;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a page shows, from the top down: a head, points and figures beside each other, the record over time, panels in two
 * columns, the text of the review. Immutable; each {@code with} returns a copy with one thing more.
 */
public final class SitePage {
    /**
     * Something that needs a person's eye.
     *
     * @param text what is to be said
     * @param mark number of the mark in the record it belongs to; 0 for none
     */
    public record Point(String text, int mark) {}

    /**
     * A figure with its unit.
     *
     * @param name what it is
     * @param value its value with its unit
     * @param note its uncertainty, its mark, or what else must be known of it
     * @param method name of the method page it comes from, without ending; empty for none
     */
    public record Figure(String name, String value, String note, String method) {}

    /**
     * A drawing with a title and a line below.
     *
     * @param title its title
     * @param drawing SVG
     * @param caption how to read it
     * @param method name of the method page it comes from, without ending; empty for none
     * @param wide whether it takes both columns
     */
    public record Panel(String title, String drawing, String caption, String method, boolean wide) {}

    private final String title;
    private final String subtitle;
    private final List<Point> points;
    private final List<Figure> figures;
    private final Optional<RecordRows> record;
    private final List<Panel> panels;
    private final List<String> notTested;
    private final String text;
    private final boolean standsAlone;

    private SitePage(
            String title,
            String subtitle,
            List<Point> points,
            List<Figure> figures,
            Optional<RecordRows> record,
            List<Panel> panels,
            List<String> notTested,
            String text,
            boolean standsAlone) {
        this.title = title;
        this.subtitle = subtitle;
        this.points = points;
        this.figures = figures;
        this.record = record;
        this.panels = panels;
        this.notTested = notTested;
        this.text = text;
        this.standsAlone = standsAlone;
    }

    /**
     * Returns a page with nothing but its head.
     *
     * @param title name of what it shows
     * @param subtitle a line about it
     * @return the page
     */
    public static SitePage of(String title, String subtitle) {
        return new SitePage(title, subtitle, List.of(), List.of(), Optional.empty(), List.of(), List.of(), "", true);
    }

    /**
     * Adds a point.
     *
     * @param point the point
     * @return a copy with it
     */
    public SitePage withPoint(Point point) {
        return new SitePage(
                title, subtitle, added(points, point), figures, record, panels, notTested, text, standsAlone);
    }

    /**
     * Adds a figure.
     *
     * @param figure the figure
     * @return a copy with it
     */
    public SitePage withFigure(Figure figure) {
        return new SitePage(
                title, subtitle, points, added(figures, figure), record, panels, notTested, text, standsAlone);
    }

    /**
     * Sets the record over time.
     *
     * @param rows its rows
     * @return a copy with it
     */
    public SitePage withRecord(RecordRows rows) {
        return new SitePage(title, subtitle, points, figures, Optional.of(rows), panels, notTested, text, standsAlone);
    }

    /**
     * Adds a panel.
     *
     * @param panel the panel
     * @return a copy with it
     */
    public SitePage withPanel(Panel panel) {
        return new SitePage(
                title, subtitle, points, figures, record, added(panels, panel), notTested, text, standsAlone);
    }

    /**
     * Adds something that was not tested.
     *
     * @param what a sentence
     * @return a copy with it
     */
    public SitePage withNotTested(String what) {
        return new SitePage(
                title, subtitle, points, figures, record, panels, added(notTested, what), text, standsAlone);
    }

    /**
     * Sets the review in words.
     *
     * @param review lines of plain text
     * @return a copy with it
     */
    public SitePage withText(String review) {
        return new SitePage(title, subtitle, points, figures, record, panels, notTested, review, standsAlone);
    }

    /**
     * Returns the page as one of several, with a link to the page of all.
     *
     * @return a copy
     */
    public SitePage amongOthers() {
        return new SitePage(title, subtitle, points, figures, record, panels, notTested, text, false);
    }

    private static <T> List<T> added(List<T> list, T one) {
        List<T> longer = new ArrayList<>(list);
        longer.add(one);
        return List.copyOf(longer);
    }

    String title() {
        return title;
    }

    String subtitle() {
        return subtitle;
    }

    List<Point> points() {
        return points;
    }

    List<Figure> figures() {
        return figures;
    }

    Optional<RecordRows> record() {
        return record;
    }

    List<Panel> panels() {
        return panels;
    }

    List<String> notTested() {
        return notTested;
    }

    String text() {
        return text;
    }

    boolean standsAlone() {
        return standsAlone;
    }

    /**
     * Returns the page.
     *
     * @return an HTML document that needs no other file
     */
    public String toHtml() {
        return PageWriter.page(this);
    }
}
