package dev.runnel.verification.table;

import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleFunction;

/**
 * Arithmetic over named columns: numbers, names, {@code + - * / ^ ( )}, {@code pi} and a few functions, as units and
 * dimensionless tables need them. Immutable.
 */
final class Formula {
    private static final Map<String, DoubleUnaryOperator> FUNCTIONS = Map.of(
            "sqrt", Math::sqrt,
            "exp", Math::exp,
            "ln", Math::log,
            "sin", Math::sin,
            "cos", Math::cos,
            "tan", Math::tan,
            "atan", Math::atan,
            "radians", Math::toRadians);

    private interface Node {
        double value(ToDoubleFunction<String> names);
    }

    private final String text;
    private final Node root;
    private final Set<String> names;

    private Formula(String text, Node root, Set<String> names) {
        this.text = text;
        this.root = root;
        this.names = names;
    }

    /** Returns the formula written in a text, or throws an IllegalArgumentException that says where it stopped. */
    static Formula parse(String text) {
        Parser parser = new Parser(text);
        Node root = parser.sum();
        parser.end();
        return new Formula(text, root, Set.copyOf(parser.names));
    }

    /** Returns the column names it uses. */
    Set<String> names() {
        return names;
    }

    /** Returns its value, the names being looked up as needed. */
    double value(ToDoubleFunction<String> lookup) {
        return root.value(lookup);
    }

    @Override
    public String toString() {
        return text;
    }

    /** Recursive descent: sum, product, power, atom. */
    private static final class Parser {
        private final String text;
        private final Set<String> names = new LinkedHashSet<>();
        private int at;

        Parser(String text) {
            this.text = text;
        }

        Node sum() {
            Node left = product();
            while (true) {
                Node first = left;
                if (accept('+')) {
                    Node second = product();
                    left = names -> first.value(names) + second.value(names);
                } else if (accept('-')) {
                    Node second = product();
                    left = names -> first.value(names) - second.value(names);
                } else {
                    return left;
                }
            }
        }

        private Node product() {
            Node left = signed();
            while (true) {
                Node first = left;
                if (accept('*')) {
                    Node second = signed();
                    left = names -> first.value(names) * second.value(names);
                } else if (accept('/')) {
                    Node second = signed();
                    left = names -> first.value(names) / second.value(names);
                } else {
                    return left;
                }
            }
        }

        private Node signed() {
            if (accept('-')) {
                Node operand = signed();
                return names -> -operand.value(names);
            }
            return power();
        }

        private Node power() {
            Node base = atom();
            if (accept('^')) {
                Node exponent = signed();
                return names -> Math.pow(base.value(names), exponent.value(names));
            }
            return base;
        }

        private Node atom() {
            if (accept('(')) {
                Node inner = sum();
                expect(')');
                return inner;
            }
            skipSpaces();
            int from = at;
            if (at < text.length() && Character.isJavaIdentifierStart(text.charAt(at))) {
                while (at < text.length() && Character.isJavaIdentifierPart(text.charAt(at))) {
                    at++;
                }
                return named(text.substring(from, at));
            }
            return number(from);
        }

        private Node named(String name) {
            if (name.equals("pi")) {
                return names -> Math.PI;
            }
            DoubleUnaryOperator function = FUNCTIONS.get(name);
            if (function != null && accept('(')) {
                Node argument = sum();
                expect(')');
                return names -> function.applyAsDouble(argument.value(names));
            }
            names.add(name);
            return lookup -> lookup.applyAsDouble(name);
        }

        private Node number(int from) {
            while (at < text.length() && isNumberPart(from)) {
                at++;
            }
            try {
                double value = Double.parseDouble(text.substring(from, at));
                return names -> value;
            } catch (NumberFormatException e) {
                at = from;
                throw stopped();
            }
        }

        private boolean isNumberPart(int from) {
            char c = text.charAt(at);
            boolean exponentSign = (c == '-' || c == '+') && at > from && "eE".indexOf(text.charAt(at - 1)) >= 0;
            return Character.isDigit(c) || c == '.' || c == 'e' || c == 'E' || exponentSign;
        }

        private boolean accept(char wanted) {
            skipSpaces();
            if (at < text.length() && text.charAt(at) == wanted) {
                at++;
                return true;
            }
            return false;
        }

        private void expect(char wanted) {
            if (!accept(wanted)) {
                throw stopped();
            }
        }

        void end() {
            skipSpaces();
            if (at < text.length()) {
                throw stopped();
            }
        }

        private void skipSpaces() {
            while (at < text.length() && text.charAt(at) == ' ') {
                at++;
            }
        }

        private IllegalArgumentException stopped() {
            return new IllegalArgumentException("must be a formula of columns, numbers, + - * / ^ ( ), pi and "
                    + String.join(", ", FUNCTIONS.keySet().stream().sorted().toList()) + "; \"" + text
                    + "\" stops at character " + (at + 1));
        }
    }
}
