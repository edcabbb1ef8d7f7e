package dev.runnel.verification.table;

import dev.runnel.verification.calculation.Calculation;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;

/** What a descriptor says about one expected column. */
record CheckRule(
        String id,
        Calculation calculation,
        String expected,
        Formula result,
        Map<String, InputRule> inputs,
        Tolerance tolerance,
        String reason) {
    /** Name that the result has in its formula. */
    static final String RESULT = "result";

    /** Returns the columns it uses. */
    Set<String> columns() {
        Set<String> columns = new LinkedHashSet<>(result.names());
        columns.remove(RESULT);
        columns.add(expected);
        inputs.values().forEach(rule -> columns.addAll(rule.columns()));
        tolerance.column().ifPresent(columns::add);
        return columns;
    }
}
