package dev.runnel.examples.pages;

/** What pages of other packages need to look like ours. */
public final class PageParts {
    private PageParts() {}

    /**
     * Returns a text as it may stand in a page.
     *
     * @param text the text
     * @return the text without markup
     */
    public static String escaped(String text) {
        return Html.escaped(text);
    }

    /**
     * Returns a text as a string of JSON that may stand in a page.
     *
     * @param text the text
     * @return the text in quotes
     */
    public static String json(String text) {
        return Html.json(text);
    }

    /**
     * Returns a file of the class path.
     *
     * @param path its absolute path
     * @return its text
     */
    public static String part(String path) {
        return Html.part(path);
    }

    /**
     * Returns the style of our pages.
     *
     * @return a style sheet
     */
    public static String style() {
        return Html.part("/dev/runnel/examples/pages/page.css");
    }
}
