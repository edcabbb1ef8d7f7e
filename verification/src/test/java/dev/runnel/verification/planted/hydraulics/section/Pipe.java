package dev.runnel.verification.planted.hydraulics.section;

import org.apiguardian.api.API;

/** Breaks no rule. */
@API(status = API.Status.STABLE, since = "0.1")
public final class Pipe {
    private final double diameter;

    private Pipe(double diameter) {
        this.diameter = diameter;
    }

    /** A factory, as values should have. */
    public static Pipe of(double diameter) {
        return new Pipe(diameter);
    }

    /** A plain signature. */
    public double diameter() {
        return diameter;
    }
}
