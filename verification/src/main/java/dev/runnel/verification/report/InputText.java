package dev.runnel.verification.report;

/** The inputs of a value as the reports write them: a whole record or state once, in its table, not beside each of its values. */
final class InputText {
    /** Chosen here: some lines of a page. */
    private static final int LONGEST = 400;

    private InputText() {}

    static String shortened(String input) {
        return input.length() <= LONGEST
                ? input
                : input.substring(0, LONGEST) + "\u2026 (" + input.length() + " characters, all in the table)";
    }
}
