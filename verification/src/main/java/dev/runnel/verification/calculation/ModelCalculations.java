package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.uncertainty.MeasurementModel;
import dev.runnel.hydraulics.uncertainty.Propagation;
import dev.runnel.hydraulics.uncertainty.Simulation;
import dev.runnel.hydraulics.uncertainty.StabilisedSimulation;
import dev.runnel.hydraulics.uncertainty.UncertainInput;
import dev.runnel.hydraulics.uncertainty.VolumeUncertainty;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * Uncertainties of models that a table brings along: sums of products of powers, whose derivatives are known to the last digit,
 * and results that follow one another in a fixed sequence, so that what a simulation says of them is exact.
 */
final class ModelCalculations {
    private static final String MODEL = "terms estimates deviations freedoms correlation?";
    private static final String SEQUENCE = "first width power";
    private static final String TRIALS = SEQUENCE + " trials";
    private static final String STABLE = SEQUENCE + " digits probability";

    private static final LastAnswer<Simulation> LAST_TRIALS = new LastAnswer<>();
    private static final LastAnswer<StabilisedSimulation> LAST_STABLE = new LastAnswer<>();

    private ModelCalculations() {}

    static List<Calculation> all() {
        return List.of(
                of("uncertainty.model.value", MODEL, in -> propagated(in).value()),
                of("uncertainty.model.standard", MODEL, in -> propagated(in).standardUncertainty()),
                of("uncertainty.model.second-order", MODEL, in -> model(in).secondOrderUncertainty()),
                of("uncertainty.model.relative", MODEL, in -> propagated(in).relative()),
                of(
                        "uncertainty.model.degrees-of-freedom",
                        MODEL,
                        in -> propagated(in).effectiveDegreesOfFreedom()),
                of(
                        "uncertainty.model.coverage-factor",
                        MODEL + " probability",
                        in -> propagated(in).coverageFactor(in.number("probability"))),
                of(
                        "uncertainty.model.sensitivity",
                        MODEL + " part",
                        in -> propagated(in)
                                .contributions()
                                .get(in.integer("part"))
                                .sensitivity()),
                of(
                        "uncertainty.model.share",
                        MODEL + " part",
                        in -> propagated(in)
                                .contributions()
                                .get(in.integer("part"))
                                .share()),
                of("uncertainty.sequence.mean", TRIALS, in -> trials(in).mean()),
                of("uncertainty.sequence.standard", TRIALS, in -> trials(in).standardUncertainty()),
                of(
                        "uncertainty.sequence.quantile",
                        TRIALS + " probability",
                        in -> trials(in).quantile(in.number("probability"))),
                of(
                        "uncertainty.sequence.lower",
                        TRIALS + " probability",
                        in -> trials(in).interval(in.number("probability"))[0]),
                of(
                        "uncertainty.sequence.upper",
                        TRIALS + " probability",
                        in -> trials(in).interval(in.number("probability"))[1]),
                of(
                        "uncertainty.sequence.shortest-lower",
                        TRIALS + " probability",
                        in -> trials(in).shortestInterval(in.number("probability"))[0]),
                of(
                        "uncertainty.sequence.shortest-upper",
                        TRIALS + " probability",
                        in -> trials(in).shortestInterval(in.number("probability"))[1]),
                of("uncertainty.sequence.blocks", STABLE, in -> stable(in).blocks()),
                of("uncertainty.sequence.is-stable", STABLE, in -> stable(in).isStable() ? 1 : 0),
                of("uncertainty.sequence.tolerance", STABLE, in -> stable(in).tolerance()),
                of("uncertainty.sequence.mean-error", STABLE, in -> stable(in).meanError()),
                of(
                        "uncertainty.sequence.standard-error",
                        STABLE,
                        in -> stable(in).uncertaintyError()),
                of("uncertainty.sequence.low-error", STABLE, in -> stable(in).lowError()),
                of("uncertainty.sequence.high-error", STABLE, in -> stable(in).highError()),
                Calculation.of(
                        "hydraulics",
                        "uncertainty.volume.random-alone",
                        "m3",
                        "flows step random",
                        in -> VolumeUncertainty.of(
                                        in.sample("flows"),
                                        in.number("step"),
                                        VolumeUncertainty.FlowErrors.ofRandom(in.number("random")))
                                .standard()));
    }

    private static Calculation of(String name, String inputs, ToDoubleFunction<Inputs> body) {
        return Calculation.of("hydraulics", name, "1", inputs, body);
    }

    private static Propagation propagated(Inputs in) {
        return model(in).propagated();
    }

    /** Normal inputs; the terms are a factor and the powers of each input, one after the other. */
    private static MeasurementModel model(Inputs in) {
        double[] estimates = in.sample("estimates");
        double[] deviations = in.sample("deviations");
        double[] freedoms = in.sample("freedoms");
        UncertainInput[] inputs = new UncertainInput[estimates.length];
        for (int i = 0; i < inputs.length; i++) {
            UncertainInput known = UncertainInput.normal("x" + i, estimates[i], deviations[i]);
            inputs[i] = known.withDegreesOfFreedom(freedoms[i]);
        }
        double[] terms = in.sample("terms");
        MeasurementModel model = MeasurementModel.of(x -> sum(terms, x), inputs);
        double correlation = in.number("correlation", 0);
        return correlation == 0 ? model : model.withCorrelation("x0", "x1", correlation);
    }

    private static double sum(double[] terms, double[] x) {
        double sum = 0;
        for (int t = 0; t < terms.length; t += x.length + 1) {
            double term = terms[t];
            for (int i = 0; i < x.length; i++) {
                term *= Math.pow(x[i], terms[t + 1 + i]);
            }
            sum += term;
        }
        return sum;
    }

    /** Whatever is drawn, the results are those of the sequence. */
    private static MeasurementModel sequence(Inputs in) {
        double width = in.number("width");
        double power = in.number("power");
        long[] state = {(long) in.number("first")};
        return MeasurementModel.of(
                drawn -> {
                    state[0] = (1_664_525 * state[0] + 1_013_904_223) & 0xFFFF_FFFFL;
                    double part = state[0] / 4_294_967_296.0;
                    return width * (power == 2 ? part * part : part);
                },
                UncertainInput.normal("x", 0, 1));
    }

    private static Simulation trials(Inputs in) {
        return LAST_TRIALS.of(
                in,
                List.of("first", "width", "power", "trials"),
                () -> sequence(in).simulated(in.integer("trials"), 1));
    }

    private static StabilisedSimulation stable(Inputs in) {
        return LAST_STABLE.of(
                in,
                List.of("first", "width", "power", "digits", "probability"),
                () -> sequence(in).simulatedUntilStable(in.integer("digits"), in.number("probability"), 1));
    }
}
