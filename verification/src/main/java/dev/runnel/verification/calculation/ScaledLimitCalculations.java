package dev.runnel.verification.calculation;

import static dev.runnel.verification.calculation.RainInputs.minutes;
import static dev.runnel.verification.calculation.RainInputs.rainfall;

import dev.runnel.rainfall.distribution.Bootstrap;
import dev.runnel.rainfall.distribution.ConfidenceInterval;
import dev.runnel.rainfall.distribution.FitMethod;
import dev.runnel.rainfall.event.EventSeparation;
import dev.runnel.rainfall.event.RainfallEvent;
import dev.runnel.rainfall.frequency.ScaledDdfLimits;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;

/** Limits of a relation of all durations, whose years are drawn again. */
final class ScaledLimitCalculations {
    private static final String DRAWN = "maxima family replicates confidence";
    private static final LastAnswer<ScaledDdfLimits> LIMITS = new LastAnswer<>();

    private ScaledLimitCalculations() {}

    static List<Calculation> all() {
        List<Calculation> all = new ArrayList<>();
        ofLimits(
                all,
                "depth",
                "mm",
                "minutes years",
                in -> limits(in)
                        .depthMm(minutes(in, "minutes"), in.number("years"))
                        .limits());
        ofLimits(
                all,
                "period",
                "years",
                "minutes depth",
                in -> limits(in).returnPeriod(minutes(in, "minutes"), in.number("depth")));
        ofLimits(all, "event", "years", "depths", in -> limits(in).returnPeriod(event(in)));
        all.add(rainfall(
                "ddf.scaled-limits.event-standing",
                "places of below, within and above",
                DRAWN + " depths",
                in -> RarityCalculations.standing(
                        limits(in).rarity(event(in)).limits().orElseThrow())));
        return all;
    }

    private static void ofLimits(
            List<Calculation> all, String name, String unit, String inputs, Function<Inputs, ConfidenceInterval> of) {
        end(all, name + "-estimate", unit, inputs, in -> of.apply(in).estimate());
        end(all, name + "-lower", unit, inputs, in -> of.apply(in).lower());
        end(all, name + "-upper", unit, inputs, in -> of.apply(in).upper());
    }

    private static void end(
            List<Calculation> all, String name, String unit, String inputs, ToDoubleFunction<Inputs> body) {
        all.add(rainfall("ddf.scaled-limits." + name, unit, DRAWN + " " + inputs, body));
    }

    private static ScaledDdfLimits limits(Inputs in) {
        return LIMITS.of(
                in,
                List.of("maxima", "family", "replicates", "confidence"),
                () -> ScaledDdfLimits.of(
                        LongRecordCalculations.known(in.text("maxima")),
                        FrequencyCalculations.family(in),
                        FitMethod.L_MOMENTS,
                        Bootstrap.of(in.integer("replicates"), 1).withConfidence(in.number("confidence"))));
    }

    /** By the deepest hour and the deepest three hours. */
    private static RainfallEvent event(Inputs in) {
        return EventSeparation.of(Duration.ofDays(1))
                .withPeakDurations(List.of(Duration.ofHours(1), Duration.ofHours(3)))
                .events(RegularSeries.of(
                        Instant.parse("2001-01-01T00:00:00Z"), Duration.ofHours(1), in.sample("depths")))
                .get(0);
    }
}
