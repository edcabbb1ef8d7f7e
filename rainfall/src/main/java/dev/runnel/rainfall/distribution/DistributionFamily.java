package dev.runnel.rainfall.distribution;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import org.apiguardian.api.API;
import org.jspecify.annotations.Nullable;

/**
 * A family of distributions that a sample can be fitted with: its parameters, how to make a member, and its fits. Each
 * distribution brings its own; here it has one row. A family of your own is made by {@link #of} and the withers, and is then
 * fitted, tested and resampled like the others:
 *
 * <pre>{@code
 * var rayleigh = DistributionFamily.of("RAYLEIGH", p -> new Rayleigh(p[0]), Parameter.scale("sigma"))
 *         .withLMoments(m -> new Rayleigh(m.lambda1() / Math.sqrt(Math.PI / 2)))
 *         .withLikelihood();
 * Fit.of(rayleigh, FitMethod.MAXIMUM_LIKELIHOOD, sample);
 * }</pre>
 *
 * <p>Immutable and thread-safe; a family equals itself only.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class DistributionFamily {
    /** Known by its identity. */
    @SuppressWarnings("UnnecessaryLambda")
    private static final UnaryOperator<double[]> AS_IT_IS = sample -> sample;

    private static final List<DistributionFamily> ROWS = new ArrayList<>();

    /** {@link Exponential}, two parameters. */
    public static final DistributionFamily EXPONENTIAL = row(Exponential.family());
    /** {@link Gumbel}, two parameters. */
    public static final DistributionFamily GUMBEL = row(Gumbel.family());
    /** {@link Normal}, two parameters. */
    public static final DistributionFamily NORMAL = row(Normal.family());
    /** {@link LogNormal} with two parameters. */
    public static final DistributionFamily LOG_NORMAL = row(LogNormal.family());
    /** {@link Gev}, three parameters. */
    public static final DistributionFamily GEV = row(Gev.family());
    /** {@link GeneralizedLogistic}, three parameters. */
    public static final DistributionFamily GENERALIZED_LOGISTIC = row(GeneralizedLogistic.family());
    /** {@link GeneralizedNormal}, three parameters. */
    public static final DistributionFamily GENERALIZED_NORMAL = row(GeneralizedNormal.family());
    /** {@link GeneralizedPareto}, three parameters. */
    public static final DistributionFamily GENERALIZED_PARETO = row(GeneralizedPareto.family());
    /** {@link PearsonIII}, three parameters. */
    public static final DistributionFamily PEARSON_III = row(PearsonIII.family());
    /** {@link LogPearsonIII}, three parameters. */
    public static final DistributionFamily LOG_PEARSON_III = row(LogPearsonIII.family());
    /** {@link Kappa}, four parameters. */
    public static final DistributionFamily KAPPA = row(Kappa.family());
    /** {@link Wakeby}, five parameters. */
    public static final DistributionFamily WAKEBY = row(Wakeby.family());

    private final String name;
    private final Function<double[], Distribution> maker;
    private final List<Parameter> parameters;
    private final Function<LMoments, Distribution> lMoments;
    private final @Nullable Function<double[], Distribution> lMomentsOfSample;
    private final Function<SampleMoments, Distribution> moments;
    private final BiFunction<DistributionFamily, double[], LikelihoodFit> likelihood;
    private final UnaryOperator<double[]> logarithm;
    private final boolean isOfPeaks;

    private DistributionFamily(
            String name,
            Function<double[], Distribution> maker,
            List<Parameter> parameters,
            Function<LMoments, Distribution> lMoments,
            @Nullable Function<double[], Distribution> lMomentsOfSample,
            Function<SampleMoments, Distribution> moments,
            BiFunction<DistributionFamily, double[], LikelihoodFit> likelihood,
            UnaryOperator<double[]> logarithm,
            boolean isOfPeaks) {
        this.name = name;
        this.maker = maker;
        this.parameters = parameters;
        this.lMoments = lMoments;
        this.lMomentsOfSample = lMomentsOfSample;
        this.moments = moments;
        this.likelihood = likelihood;
        this.logarithm = logarithm;
        this.isOfPeaks = isOfPeaks;
    }

    private static DistributionFamily row(DistributionFamily family) {
        ROWS.add(family);
        return family;
    }

    /**
     * Returns a family without fits; add them by the withers.
     *
     * @param name name, in capitals with underscores like those of the constants
     * @param maker makes a member from parameters in the order given; refuses by an {@link IllegalArgumentException} what lies
     *     out of range
     * @param parameters the parameters, named as in {@link Distribution#parameters}; at least one
     * @return the family
     * @throws IllegalArgumentException if the name is blank, there is no parameter, or two have one name
     */
    public static DistributionFamily of(String name, Function<double[], Distribution> maker, Parameter... parameters) {
        Objects.requireNonNull(maker, "maker");
        Objects.requireNonNull(parameters, "parameters");
        if (name.isBlank()) {
            throw new IllegalArgumentException("name must not be blank");
        }
        List<String> names = Arrays.stream(parameters).map(Parameter::name).toList();
        if (names.isEmpty() || new HashSet<>(names).size() < names.size()) {
            throw new IllegalArgumentException("parameters must be one or more with different names, were " + names);
        }
        return new DistributionFamily(
                name,
                maker,
                List.of(parameters),
                m -> refuse(name, FitMethod.L_MOMENTS, ""),
                sample -> refuse(name, FitMethod.L_MOMENTS, ""),
                m -> refuse(name, FitMethod.MOMENTS, ""),
                (family, sample) -> refuse(name, FitMethod.MAXIMUM_LIKELIHOOD, ""),
                AS_IT_IS,
                false);
    }

    /** Takes the place of a fit of whatever type; it never returns. */
    @SuppressWarnings("TypeParameterUnusedInFormals")
    private static <T> T refuse(String name, FitMethod method, String reason) {
        throw new IllegalArgumentException("family must not be " + name + " for a fit by " + method.toText() + reason);
    }

    /**
     * Returns the shipped families.
     *
     * @return in the order of the constants; unmodifiable
     */
    public static List<DistributionFamily> all() {
        return Collections.unmodifiableList(ROWS);
    }

    /**
     * Returns the shipped family of a name.
     *
     * @param name name of its constant; small letters, spaces and hyphens will do, as in {@code log-Pearson III}
     * @return the family
     * @throws IllegalArgumentException if there is none
     */
    public static DistributionFamily named(String name) {
        String constant = name.toUpperCase(Locale.ROOT).replace(' ', '_').replace('-', '_');
        return ROWS.stream()
                .filter(family -> family.name.equals(constant))
                .findFirst()
                .orElseThrow(
                        () -> new IllegalArgumentException("name must be one of " + ROWS + ", was \"" + name + "\""));
    }

    /**
     * Returns this family with a fit by L-moments.
     *
     * @param fit the member with the given L-moments, as many of them as there are parameters; throws a
     *     {@link NoFitException} if there is none
     * @return the new family
     */
    public DistributionFamily withLMoments(Function<LMoments, Distribution> fit) {
        Objects.requireNonNull(fit, "fit");
        return new DistributionFamily(name, maker, parameters, fit, null, moments, likelihood, logarithm, isOfPeaks);
    }

    /** For a family that takes more L-moments of the sample than {@link LMoments} holds. */
    DistributionFamily withLMomentsOfSample(Function<double[], Distribution> fit) {
        return new DistributionFamily(
                name,
                maker,
                parameters,
                m -> refuse(name, FitMethod.L_MOMENTS, " from four of them; fit the sample itself"),
                fit,
                moments,
                likelihood,
                logarithm,
                isOfPeaks);
    }

    /**
     * Returns this family with a fit by mean, standard deviation and skew.
     *
     * @param fit the member with the given moments; throws a {@link NoFitException} if there is none
     * @return the new family
     */
    public DistributionFamily withMoments(Function<SampleMoments, Distribution> fit) {
        Objects.requireNonNull(fit, "fit");
        return new DistributionFamily(
                name, maker, parameters, lMoments, lMomentsOfSample, fit, likelihood, logarithm, isOfPeaks);
    }

    /**
     * Returns this family with a fit by maximum likelihood: a search inside the ranges of the parameters, from the fit by
     * L-moments, which the family must have. See {@link LikelihoodFit#of}.
     *
     * @return the new family
     */
    public DistributionFamily withLikelihood() {
        return withLikelihood(LikelihoodFit::search);
    }

    /** For a likelihood with a maximum in closed form. */
    DistributionFamily withLikelihood(BiFunction<DistributionFamily, double[], LikelihoodFit> fit) {
        return new DistributionFamily(
                name, maker, parameters, lMoments, lMomentsOfSample, moments, fit, logarithm, isOfPeaks);
    }

    /** Returns this family fitted to the logarithms of a sample: its fits by moments are given those of them. */
    DistributionFamily ofLogarithms(UnaryOperator<double[]> toLogarithms) {
        return new DistributionFamily(
                name, maker, parameters, lMoments, lMomentsOfSample, moments, likelihood, toLogarithms, isOfPeaks);
    }

    /** Returns this family as one of peaks, which know no years. */
    DistributionFamily ofPeaks() {
        return new DistributionFamily(
                name, maker, parameters, lMoments, lMomentsOfSample, moments, likelihood, logarithm, true);
    }

    DistributionFamily withoutMoments(String reason) {
        return withMoments(m -> refuse(name, FitMethod.MOMENTS, reason));
    }

    DistributionFamily withoutLikelihood(String reason) {
        return withLikelihood((family, sample) -> refuse(name, FitMethod.MAXIMUM_LIKELIHOOD, reason));
    }

    /**
     * Returns the name.
     *
     * @return for the shipped families that of the constant
     */
    public String name() {
        return name;
    }

    /**
     * Returns the parameters that a fit estimates.
     *
     * @return in the order of {@link #with}
     */
    public List<Parameter> parameters() {
        return parameters;
    }

    /**
     * Returns how many parameters a fit estimates.
     *
     * @return 2 to 5
     */
    public int parameterCount() {
        return parameters.size();
    }

    /**
     * Tells whether fits by moments are made on the logarithms of the sample.
     *
     * @return true for {@link #LOG_NORMAL} and {@link #LOG_PEARSON_III}
     */
    public boolean isOfLogarithms() {
        return logarithm != AS_IT_IS;
    }

    /**
     * Tells whether a member is the distribution of a peak over a threshold, which knows no years.
     *
     * @return true for {@link GeneralizedPareto#above}
     */
    public boolean isOfPeaks() {
        return isOfPeaks;
    }

    /**
     * Returns the member with the given parameters.
     *
     * @param values parameters, in the order of {@link #parameters}; not kept
     * @return the distribution
     * @throws IllegalArgumentException if there are not as many as parameters, or one is out of range
     */
    public Distribution with(double... values) {
        if (values.length != parameters.size()) {
            throw new IllegalArgumentException(
                    "values must be those of " + parameters + ", had " + values.length + " of them");
        }
        return maker.apply(values.clone());
    }

    /**
     * Returns the distribution of this family that has the given L-moments.
     *
     * @param moments L-moments; a family with two parameters uses the first two, with three the L-skewness as well. For
     *     the families of the logarithm they are those of log10 ({@link #LOG_PEARSON_III}) or ln ({@link #LOG_NORMAL})
     * @return the distribution
     * @throws NoFitException if no member of the family has them
     * @throws IllegalArgumentException if the family has no fit by L-moments
     */
    public Distribution fromLMoments(LMoments moments) {
        Objects.requireNonNull(moments, "moments");
        return lMoments.apply(moments);
    }

    /**
     * Returns the distribution of this family that has the given moments.
     *
     * @param given mean, standard deviation and skew; those of the logarithm as for {@link #fromLMoments}
     * @return the distribution
     * @throws NoFitException if no member of the family has them
     * @throws IllegalArgumentException if the family has no fit by moments
     */
    public Distribution fromMoments(SampleMoments given) {
        Objects.requireNonNull(given, "given");
        return moments.apply(given);
    }

    /** Returns the member with the L-moments of a sample. */
    Distribution byLMoments(double[] sample) {
        double[] values = transformed(sample);
        return lMomentsOfSample == null ? fromLMoments(LMoments.ofSample(values)) : lMomentsOfSample.apply(values);
    }

    /** Tells whether four L-moments are all that a fit by them takes of a sample. */
    boolean isFittedByFourLMoments() {
        return lMomentsOfSample == null;
    }

    LikelihoodFit likelihood(double[] sample) {
        return likelihood.apply(this, sample);
    }

    /** Returns what moments are taken of. */
    double[] transformed(double[] sample) {
        return logarithm.apply(sample);
    }

    /** Returns the estimated parameters of a member, without those that are known. */
    double[] valuesOf(Distribution member) {
        return parameters.stream()
                .mapToDouble(parameter -> member.parameters().getOrDefault(parameter.name(), Double.NaN))
                .toArray();
    }

    /** Tells whether a search may go there. */
    boolean admits(double[] values) {
        for (int i = 0; i < values.length; i++) {
            if (!parameters.get(i).admits(values[i])) {
                return false;
            }
        }
        return true;
    }

    @Override
    public String toString() {
        return name;
    }
}
