package dev.runnel.verification.table;

import dev.runnel.internal.Require;
import java.math.BigDecimal;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/** How far a computed value may lie from the printed one: the largest of several terms. Immutable. */
record Tolerance(double digits, double absolute, double relative, Optional<String> column) {
    /** Returns the tolerance written in a text, such as {@code 0.5 digit or 0.1 %}. */
    static Tolerance parse(String text) {
        double digits = 0;
        double absolute = 0;
        double relative = 0;
        Optional<String> column = Optional.empty();
        for (String term : text.split(" or ")) {
            String[] words = term.strip().split("\\s+");
            String unit = words.length == 2 ? words[1] : "";
            if (words[0].equals("column") && words.length == 2) {
                column = Optional.of(words[1]);
            } else if (words.length > 2) {
                throw refused(term, text);
            } else if (unit.equals("digit")) {
                digits = number(words[0], term, text);
            } else if (unit.equals("%")) {
                relative = number(words[0], term, text) / 100;
            } else if (unit.equals("relative")) {
                relative = number(words[0], term, text);
            } else if (unit.isEmpty()) {
                absolute = number(words[0], term, text);
            } else {
                throw refused(term, text);
            }
        }
        return new Tolerance(digits, absolute, relative, column);
    }

    /** Returns the allowed deviation of a printed value, columns being looked up as needed. */
    double allowed(String printed, ToDoubleFunction<String> lookup) {
        BigDecimal value = new BigDecimal(printed);
        double byDigit = digits * value.ulp().doubleValue();
        double byValue = relative * Math.abs(value.doubleValue());
        double byColumn = column.isPresent() ? lookup.applyAsDouble(column.get()) : 0;
        return Math.max(Math.max(byDigit, byValue), Math.max(absolute, byColumn));
    }

    private static double number(String word, String term, String text) {
        try {
            return Require.nonNegative("tolerance", Double.parseDouble(word), "");
        } catch (NumberFormatException e) {
            throw refused(term, text);
        }
    }

    private static IllegalArgumentException refused(String term, String text) {
        return new IllegalArgumentException("must be terms such as \"0.5 digit\", \"0.2 %\", \"1e-9 relative\","
                + " \"0.01\" or \"column NAME\" joined by \"or\", was \"" + text + "\", not understood: \""
                + term.strip()
                + "\"");
    }
}
