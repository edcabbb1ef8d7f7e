package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.flow.Chezy;
import dev.runnel.hydraulics.flow.ColebrookWhite;
import dev.runnel.hydraulics.flow.LawByRadius;
import dev.runnel.hydraulics.flow.Manning;

/**
 * The law of resistance that the inputs describe: Manning's n or Strickler's coefficient, Chezy's C (m^(1/2)/s,
 * or ft^(1/2)/s), or a roughness with a viscosity or a temperature.
 */
final class Resistances {
    /** The inputs {@link #of} knows. */
    static final String INPUTS = "n? strickler? chezy? chezy_feet? roughness? viscosity? celsius?";

    private Resistances() {}

    static LawByRadius of(Inputs in) {
        if (in.has("chezy")) {
            return Chezy.of(in.number("chezy"));
        }
        if (in.has("chezy_feet")) {
            return Chezy.ofFeet(in.number("chezy_feet"));
        }
        if (in.has("strickler")) {
            return Manning.ofStrickler(in.number("strickler"));
        }
        if (in.has("n") == in.has("roughness")) {
            throw new IllegalArgumentException("one of n and roughness must be given");
        }
        if (in.has("n")) {
            return Manning.of(in.number("n"));
        }
        ColebrookWhite law = ColebrookWhite.ofRoughness(in.number("roughness"));
        if (in.has("viscosity")) {
            law = law.withViscosity(in.number("viscosity"));
        }
        return in.has("celsius") ? law.atTemperature(in.number("celsius")) : law;
    }
}
