package dev.runnel.verification.planted.timeseries;

import java.util.List;
import org.apache.commons.math3.complex.Complex;
import org.apiguardian.api.API;

/** Has another library in its signature, and so would be bound to it. */
@API(status = API.Status.STABLE, since = "0.1")
public final class SeriesThatShowsItsLibrary {
    private SeriesThatShowsItsLibrary() {}

    /** The library hides in a type argument. */
    public static List<Complex[]> roots() {
        return List.of();
    }
}
