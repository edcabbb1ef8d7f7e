package dev.runnel.verification.calculation;

import static dev.runnel.verification.calculation.RainInputs.START;
import static dev.runnel.verification.calculation.RainInputs.minutes;
import static dev.runnel.verification.calculation.RainInputs.rainfall;

import dev.runnel.rainfall.event.DailyRain;
import dev.runnel.rainfall.event.DryDayRule;
import dev.runnel.rainfall.event.DryDays;
import dev.runnel.rainfall.event.DrySpells;
import dev.runnel.rainfall.event.RainDay;
import dev.runnel.rainfall.event.RainSummary;
import dev.runnel.rainfall.event.SnowRecord;
import dev.runnel.rainfall.event.SnowRule;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.Month;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** What is calculated of days: dry spells, totals, snow. */
final class RainDayCalculations {
    private static final String SNOW = "depths celsius step";

    private RainDayCalculations() {}

    static List<Calculation> all() {
        return List.of(
                rainfall(
                        "rain-day.depth",
                        "mm",
                        "depths step_minutes offset_hours day_start day",
                        in -> daily(in).days().get(in.integer("day")).depthMm()),
                rainfall(
                        "dry-day.by-rule",
                        "1 dry, 0 not, -1 not known",
                        "depths step_minutes zone most_mm run before most_before_mm missing_minutes day",
                        RainDayCalculations::byRule),
                rainfall(
                        "dry-spells.days",
                        "days",
                        "daily most_mm least_days spell",
                        in -> DrySpells.of(ofDays(in), in.number("most_mm"), in.integer("least_days"))
                                .get(in.integer("spell"))
                                .days()),
                rainfall(
                        "rain-summary.depth",
                        "mm",
                        "daily period row",
                        in -> summary(in).depthMm()),
                rainfall(
                        "rain-summary.wet-days",
                        "days",
                        "daily period row",
                        in -> summary(in).wetDays()),
                rainfall(
                        "rain-summary.percent-of-normal",
                        "%",
                        "daily period row normals",
                        in -> summary(in).percentOfNormal().orElseThrow()),
                rainfall("snow.rain", "mm", SNOW, in -> snow(in).rain().value(in.integer("step"))),
                rainfall("snow.melt", "mm", SNOW, in -> snow(in).melt().value(in.integer("step"))),
                rainfall("snow.lying", "mm", SNOW, in -> snow(in).lying().value(in.integer("step"))));
    }

    private static double byRule(Inputs in) {
        DryDayRule rule = DryDayRule.of(in.number("most_mm"));
        // What is usual is left as it comes.
        rule = in.integer("run") == 1 ? rule : rule.withRun(in.integer("run"));
        rule = in.integer("before") == 0
                ? rule
                : rule.withDaysBefore(in.integer("before"), in.number("most_before_mm"));
        rule = in.number("missing_minutes") == 0 ? rule : rule.withMissingAllowed(minutes(in, "missing_minutes"));
        DryDays days = DryDays.of(rule, RainInputs.rain(in), ZoneId.of(in.text("zone")));
        LocalDate day = LocalDate.ofInstant(START, ZoneOffset.UTC).plusDays(in.integer("day"));
        return days.dates().contains(day)
                ? 1
                : days.unknown().contains(day) ? -1 : days.notDry().contains(day) ? 0 : Double.NaN;
    }

    private static DailyRain daily(Inputs in) {
        Instant start = START.plusSeconds(Math.round(in.number("offset_hours") * 3600));
        return DailyRain.of(
                RegularSeries.of(start, minutes(in, "step_minutes"), in.sample("depths")),
                RainDay.startingAt(LocalTime.of(in.integer("day_start"), 0), ZoneOffset.UTC));
    }

    private static DailyRain ofDays(Inputs in) {
        return DailyRain.of(
                RegularSeries.of(START, Duration.ofDays(1), in.sample("daily")), RainDay.midnight(ZoneOffset.UTC));
    }

    private static RainSummary.Row summary(Inputs in) {
        Map<Month, Double> normals = new EnumMap<>(Month.class);
        if (in.has("normals")) {
            double[] values = in.sample("normals");
            for (int i = 0; i < values.length; i++) {
                normals.put(Month.of(i + 1), values[i]);
            }
        }
        DailyRain days = ofDays(in);
        RainSummary summary = in.text("period").equals("season")
                ? RainSummary.seasonal(days, normals)
                : RainSummary.monthly(days, normals);
        return summary.rows().get(in.integer("row"));
    }

    private static SnowRecord snow(Inputs in) {
        double[] celsius = in.sample("celsius");
        return SnowRule.standard()
                .mark(
                        RegularSeries.of(START, Duration.ofHours(6), in.sample("depths")),
                        RegularSeries.of(START, Duration.ofHours(6), celsius).toSeries());
    }
}
