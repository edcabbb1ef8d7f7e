package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.uncertainty.MeasurementModel;
import dev.runnel.hydraulics.uncertainty.Simulation;
import dev.runnel.hydraulics.uncertainty.StabilisedSimulation;
import dev.runnel.hydraulics.uncertainty.UncertainInput;
import dev.runnel.hydraulics.uncertainty.Validation;
import dev.runnel.hydraulics.uncertainty.VolumeUncertainty;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;

/** Simulated uncertainties: until stable, against the law of propagation, and volumes joined. */
final class SimulationCalculations {
    private static final String SUM = "estimates deviations shapes freedom? correlation?";
    private static final String STABLE = "digits probability " + SUM;
    private static final String VALIDATED = "digits trials " + SUM;
    private static final String VOLUMES = "volumes randoms commons";
    private static final int TRIALS = 200_000;
    private static final long SEED = 4711;

    private static final List<String> MODEL = List.of("shapes", "estimates", "deviations", "freedom", "correlation");

    private static final LastAnswer<StabilisedSimulation> LAST_STABLE = new LastAnswer<>();
    private static final LastAnswer<Validation> LAST_VALIDATED = new LastAnswer<>();
    private static final LastAnswer<Simulation> LAST_DRAWN = new LastAnswer<>();

    private SimulationCalculations() {}

    static List<Calculation> all() {
        return List.of(
                of(
                        "uncertainty.adaptive.mean",
                        "1",
                        STABLE,
                        in -> stable(in).simulation().mean()),
                of(
                        "uncertainty.adaptive.standard",
                        "1",
                        STABLE,
                        in -> stable(in).simulation().standardUncertainty()),
                of(
                        "uncertainty.adaptive.end",
                        "1",
                        STABLE,
                        in -> stable(in).simulation().interval(in.number("probability"))[1]),
                of(
                        "uncertainty.adaptive.tolerance",
                        "1",
                        STABLE,
                        in -> stable(in).tolerance()),
                of("uncertainty.adaptive.blocks", "1", STABLE, in -> stable(in).blocks()),
                of(
                        "uncertainty.adaptive.block-size",
                        "1",
                        STABLE,
                        in -> stable(in).simulation().trials()
                                / (double) stable(in).blocks()),
                of(
                        "uncertainty.validation.low",
                        "1",
                        VALIDATED,
                        in -> validated(in).low()),
                of(
                        "uncertainty.validation.high",
                        "1",
                        VALIDATED,
                        in -> validated(in).high()),
                of(
                        "uncertainty.validation.tolerance",
                        "1",
                        VALIDATED,
                        in -> validated(in).tolerance()),
                of(
                        "uncertainty.validation.holds",
                        "1",
                        VALIDATED,
                        in -> validated(in).isValid() ? 1 : 0),
                of("uncertainty.relative", "1", SUM, in -> sum(in).propagated().relative()),
                of("uncertainty.drawn-standard", "1", SUM, in -> drawn(in).standardUncertainty()),
                of(
                        "uncertainty.drawn-quantile",
                        "1",
                        "quantile " + SUM,
                        in -> drawn(in).quantile(in.number("quantile"))),
                of("uncertainty.table.first-share", "%", SUM, SimulationCalculations::firstShare),
                of("uncertainty.volumes.joined", "m3", VOLUMES, in -> joined(in).volume()),
                of(
                        "uncertainty.volumes.joined-random",
                        "m3",
                        VOLUMES,
                        in -> joined(in).random()),
                of(
                        "uncertainty.volumes.joined-common",
                        "m3",
                        VOLUMES,
                        in -> joined(in).common()),
                of(
                        "uncertainty.volumes.joined-standard",
                        "m3",
                        VOLUMES,
                        in -> joined(in).standard()));
    }

    private static Calculation of(String name, String unit, String inputs, ToDoubleFunction<Inputs> body) {
        return Calculation.of("hydraulics", name, unit, inputs, body);
    }

    /** A sum of inputs, each of its own distribution, the first two correlated if a correlation is given. */
    private static MeasurementModel sum(Inputs in) {
        double[] estimates = in.sample("estimates");
        double[] deviations = in.sample("deviations");
        String[] shapes = in.text("shapes").split(" ");
        UncertainInput[] inputs = new UncertainInput[deviations.length];
        for (int i = 0; i < inputs.length; i++) {
            inputs[i] = input("x" + i, shapes[i], estimates[i], deviations[i]);
            if (in.number("freedom", 0) > 0) {
                inputs[i] = inputs[i].withDegreesOfFreedom(in.number("freedom"));
            }
        }
        MeasurementModel model = MeasurementModel.of(x -> Arrays.stream(x).sum(), inputs);
        double correlation = in.number("correlation", 0);
        return correlation == 0 ? model : model.withCorrelation("x0", "x1", correlation);
    }

    /** Bounds of a shape are given by its standard deviation, so that the factories divide again. */
    private static UncertainInput input(String name, String shape, double estimate, double deviation) {
        return switch (shape) {
            case "normal" -> UncertainInput.normal(name, estimate, deviation);
            case "rectangular" -> UncertainInput.rectangular(name, estimate, deviation * Math.sqrt(3));
            case "triangular" -> UncertainInput.triangular(name, estimate, deviation * Math.sqrt(6));
            case "arcsine" -> UncertainInput.arcsine(name, estimate, deviation * Math.sqrt(2));
            default ->
                throw new IllegalArgumentException(
                        "shape must be normal, rectangular, triangular or arcsine, was " + shape);
        };
    }

    private static StabilisedSimulation stable(Inputs in) {
        return LAST_STABLE.of(
                in,
                with("digits", "probability"),
                () -> sum(in).simulatedUntilStable(in.integer("digits"), in.number("probability"), SEED));
    }

    private static Validation validated(Inputs in) {
        return LAST_VALIDATED.of(
                in,
                with("digits", "trials"),
                () -> sum(in).validated(in.integer("digits"), in.integer("trials"), SEED));
    }

    private static Simulation drawn(Inputs in) {
        return LAST_DRAWN.of(in, MODEL, () -> sum(in).simulated(TRIALS, SEED));
    }

    private static List<String> with(String... more) {
        return Stream.concat(MODEL.stream(), Stream.of(more)).toList();
    }

    /** Last cell of the first line below the names. */
    private static double firstShare(Inputs in) {
        String line = sum(in).propagated().table().split("\n")[1];
        return Double.parseDouble(line.substring(line.lastIndexOf(',') + 1));
    }

    private static VolumeUncertainty joined(Inputs in) {
        double[] volumes = in.sample("volumes");
        double[] randoms = in.sample("randoms");
        double[] commons = in.sample("commons");
        VolumeUncertainty sum = new VolumeUncertainty(volumes[0], randoms[0], commons[0]);
        for (int i = 1; i < volumes.length; i++) {
            sum = sum.plus(new VolumeUncertainty(volumes[i], randoms[i], commons[i]));
        }
        return sum;
    }
}
