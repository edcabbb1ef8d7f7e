package dev.runnel.internal;

import java.util.regex.Pattern;
import org.apiguardian.api.API;

/**
 * Keeps a text in a CSV file a text. A spreadsheet takes a cell that begins with {@code =}, {@code +}, {@code -} or {@code @} for a
 * formula and runs it, whoever wrote it; so such a text gets an apostrophe in front, by which spreadsheets know a text, and
 * our own readers take it away again. A number stays as it is.
 */
@API(status = API.Status.INTERNAL)
public final class CellText {
    private static final Pattern NUMBER = Pattern.compile("[+-]?(\\d+(\\.\\d*)?|\\.\\d+)([eE][+-]?\\d+)?|-Infinity");

    private CellText() {}

    /**
     * Returns the text of a cell that no spreadsheet takes for a formula.
     *
     * @param text any text
     * @return the text, with an apostrophe in front if it needs one
     */
    public static String written(String text) {
        return isFormula(text) && !NUMBER.matcher(text).matches() ? "'" + text : text;
    }

    /**
     * Returns the text that {@link #written} made a cell of.
     *
     * @param cell text of a cell
     * @return the text
     */
    public static String read(String cell) {
        return cell.startsWith("'") && isFormula(cell) ? cell.substring(1) : cell;
    }

    /** Apostrophes, any number of them, and a sign that begins a formula. */
    private static boolean isFormula(String text) {
        int at = 0;
        while (at < text.length() && text.charAt(at) == '\'') {
            at++;
        }
        return at < text.length() && "=+-@\t".indexOf(text.charAt(at)) >= 0;
    }
}
