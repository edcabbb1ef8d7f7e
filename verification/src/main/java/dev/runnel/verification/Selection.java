package dev.runnel.verification;

import java.util.Locale;
import java.util.Optional;
import org.apiguardian.api.API;

/**
 * Which expected values a run compares. Decided before anything is computed. Immutable.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class Selection {
    private static final Selection ALL =
            new Selection(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());

    private final Optional<String> module;
    private final Optional<String> source;
    private final Optional<String> calculation;
    private final Optional<Provenance> provenance;
    private final Optional<Version> since;

    private Selection(
            Optional<String> module,
            Optional<String> source,
            Optional<String> calculation,
            Optional<Provenance> provenance,
            Optional<Version> since) {
        this.module = module;
        this.source = source;
        this.calculation = calculation;
        this.provenance = provenance;
        this.since = since;
    }

    /**
     * Returns the selection of every value.
     *
     * @return the selection
     */
    public static Selection all() {
        return ALL;
    }

    /**
     * Returns a selection that keeps one module only.
     *
     * @param name {@code timeseries}, {@code hydraulics} or {@code rainfall}
     * @return the narrower selection
     */
    public Selection withModule(String name) {
        return new Selection(Optional.of(name), source, calculation, provenance, since);
    }

    /**
     * Returns a selection that keeps some sources only.
     *
     * @param text what their citation contains, in any case
     * @return the narrower selection
     */
    public Selection withSource(String text) {
        return new Selection(module, Optional.of(text.toLowerCase(Locale.ROOT)), calculation, provenance, since);
    }

    /**
     * Returns a selection that keeps some calculations only.
     *
     * @param text what their name contains, such as {@code weir} or {@code weir.rectangular.coefficient}
     * @return the narrower selection
     */
    public Selection withCalculation(String text) {
        return new Selection(module, source, Optional.of(text), provenance, since);
    }

    /**
     * Returns a selection that keeps one provenance only.
     *
     * @param kept how the expected values were obtained
     * @return the narrower selection
     */
    public Selection withProvenance(Provenance kept) {
        return new Selection(module, source, calculation, Optional.of(kept), since);
    }

    /**
     * Returns a selection that keeps only tables that came with a version or after it.
     *
     * @param version the version
     * @return the narrower selection
     */
    public Selection withSince(Version version) {
        return new Selection(module, source, calculation, provenance, Optional.of(version));
    }

    /**
     * Tells whether a value is wanted.
     *
     * @param checked module of the calculation
     * @param name name of the calculation
     * @param from where the expected value comes from
     * @param came version with which its table came
     * @return true if it is
     */
    public boolean wants(String checked, String name, Source from, Version came) {
        return module.map(checked::equals).orElse(true)
                && calculation.map(name::contains).orElse(true)
                && provenance.map(kept -> kept == from.provenance()).orElse(true)
                && since.map(version -> came.compareTo(version) >= 0).orElse(true)
                && source.map(text -> from.toString().toLowerCase(Locale.ROOT).contains(text))
                        .orElse(true);
    }

    /**
     * Returns the selection as the command line says it.
     *
     * @return for example {@code --module hydraulics --source fair}; empty for everything
     */
    @Override
    public String toString() {
        StringBuilder text = new StringBuilder();
        module.ifPresent(value -> text.append(" --module ").append(value));
        source.ifPresent(value -> text.append(" --source ").append(value));
        calculation.ifPresent(value -> text.append(" --calculation ").append(value));
        provenance.ifPresent(value -> text.append(" --provenance ").append(value));
        since.ifPresent(value -> text.append(" --since ").append(value));
        return text.toString().strip();
    }
}
