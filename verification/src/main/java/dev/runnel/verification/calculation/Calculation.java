package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.flow.NoSolutionException;
import dev.runnel.rainfall.distribution.NoFitException;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.apiguardian.api.API;

/**
 * A named question to the library, answered by one number. Immutable.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class Calculation {
    static final String REFUSAL = "refusal.";

    private final String module;
    private final String name;
    private final String unit;
    private final Set<String> required;
    private final Set<String> optional;
    private final ToDoubleFunction<Inputs> body;

    private Calculation(
            String module,
            String name,
            String unit,
            Set<String> required,
            Set<String> optional,
            ToDoubleFunction<Inputs> body) {
        this.module = module;
        this.name = name;
        this.unit = unit;
        this.required = required;
        this.optional = optional;
        this.body = body;
    }

    /**
     * Returns a calculation.
     *
     * @param module module it belongs to
     * @param name name that descriptors use, for example {@code circular.area}
     * @param unit unit of the answer
     * @param inputs names of the inputs separated by spaces, or nothing; one that may be left out ends with {@code ?}
     * @param body the adapter
     * @return the calculation
     */
    public static Calculation of(
            String module, String name, String unit, String inputs, ToDoubleFunction<Inputs> body) {
        Set<String> required = new LinkedHashSet<>();
        Set<String> optional = new LinkedHashSet<>();
        for (String input : inputs.isEmpty() ? List.<String>of() : List.of(inputs.split(" "))) {
            if (input.endsWith("?")) {
                optional.add(input.substring(0, input.length() - 1));
            } else {
                required.add(input);
            }
        }
        return new Calculation(
                module, name, unit, Collections.unmodifiableSet(required), Collections.unmodifiableSet(optional), body);
    }

    /**
     * Returns the module.
     *
     * @return for example {@code hydraulics}
     */
    public String module() {
        return module;
    }

    /**
     * Returns the name.
     *
     * @return for example {@code circular.area}
     */
    public String name() {
        return name;
    }

    /**
     * Returns the unit of the answer.
     *
     * @return for example {@code m2}; {@code 1} for a pure number
     */
    public String unit() {
        return unit;
    }

    /**
     * Returns the inputs that must be given.
     *
     * @return names
     */
    public Set<String> required() {
        return required;
    }

    /**
     * Returns the inputs that may be left out.
     *
     * @return names
     */
    public Set<String> optional() {
        return optional;
    }

    /**
     * Returns all inputs.
     *
     * @return names, the required ones first
     */
    public List<String> inputs() {
        return Stream.concat(required.stream(), optional.stream()).toList();
    }

    /**
     * Tells whether an input of this name can be given.
     *
     * @param input name of the input
     * @return true if it can
     */
    public boolean takes(String input) {
        return required.contains(input) || optional.contains(input);
    }

    /**
     * Asks the library.
     *
     * @param inputs at least the required ones
     * @return the answer
     * @throws RuntimeException what the library throws when it refuses the inputs
     */
    public double answer(Inputs inputs) {
        return body.applyAsDouble(inputs);
    }

    /**
     * Whether this one refuses its inputs, or has no answer for them: 1 or 0. Anything else that is thrown is no refusal but a
     * failure, such as an index out of bounds, and stays one.
     */
    Calculation refusal() {
        return new Calculation(module, REFUSAL + name, "1 if refused", required, optional, inputs -> {
            try {
                return Double.isNaN(body.applyAsDouble(inputs)) ? 1 : 0;
            } catch (IllegalArgumentException
                    | IllegalStateException
                    | NoFitException
                    | NoSolutionException
                    | NoSuchElementException refused) {
                return 1;
            }
        });
    }

    /**
     * Returns all there is to know for a descriptor.
     *
     * @return for example {@code water.density [kg/m3] of celsius}; inputs that may be left out stand in brackets
     */
    public String toText() {
        String text = this + " of " + String.join(", ", required);
        return optional.isEmpty() ? text : text + (required.isEmpty() ? "[" : " [") + String.join(", ", optional) + "]";
    }

    @Override
    public String toString() {
        return name + " [" + unit + "]";
    }
}
