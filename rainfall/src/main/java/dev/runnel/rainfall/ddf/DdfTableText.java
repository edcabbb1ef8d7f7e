package dev.runnel.rainfall.ddf;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

/** Makes a {@link DdfTable} of lines and says where they go wrong. */
final class DdfTableText {
    private static final String EXPECTED = "a line such as duration_min,1,2,5,10,30,100";

    private final NumberLines text;
    private final ReturnPeriodBasis basis;
    private final List<Duration> durations = new ArrayList<>();
    private final List<double[]> depths = new ArrayList<>();
    private double[] years = {};
    private double secondsPerUnit;

    private DdfTableText(NumberLines text, ReturnPeriodBasis basis) {
        this.text = text;
        this.basis = basis;
    }

    static DdfTable table(NumberLines text, ReturnPeriodBasis basis) {
        DdfTableText reader = new DdfTableText(text, basis);
        reader.takeHeader(text.header(EXPECTED));
        text.lines().stream().skip(1).forEach(reader::takeRow);
        return reader.table();
    }

    private void takeHeader(NumberLines.Line line) {
        switch (line.cell(1)) {
            case "duration_min" -> secondsPerUnit = 60;
            case "duration_h" -> secondsPerUnit = 3600;
            default -> throw text.wrong(line, 1, "must be duration_min or duration_h, was '" + line.cell(1) + "'");
        }
        if (line.cells().length < 2) {
            throw text.wrong(line, 1, "must be followed by return periods in years, " + EXPECTED);
        }
        years = new double[line.cells().length - 1];
        for (int column = 2; column <= line.cells().length; column++) {
            int at = column - 2;
            years[at] = text.number(line, column);
            text.checked(line, column, () -> DdfTableChecks.checkYears(years, at, basis));
        }
    }

    private void takeRow(NumberLines.Line line) {
        text.requireColumns(line, years.length + 1);
        durations.add(Duration.ofNanos(Math.round(text.number(line, 1) * secondsPerUnit * 1e9)));
        int row = depths.size();
        text.checked(line, 1, () -> DdfTableChecks.checkDuration(durations, row));
        double[] values = new double[years.length];
        depths.add(values);
        double[][] soFar = depths.toArray(double[][]::new);
        for (int column = 2; column <= line.cells().length; column++) {
            int at = column - 2;
            values[at] = line.cell(column).isEmpty() ? Double.NaN : text.number(line, column);
            text.checked(line, column, () -> DdfTableChecks.checkDepth(durations, years, soFar, row, at));
        }
    }

    private DdfTable table() {
        if (durations.isEmpty()) {
            throw new IllegalArgumentException(text.source() + ": must hold at least one line of depths, had none");
        }
        return DdfTable.of(basis, durations, years, depths.toArray(double[][]::new));
    }
}
