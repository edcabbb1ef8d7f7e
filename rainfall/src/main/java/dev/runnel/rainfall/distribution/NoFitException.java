package dev.runnel.rainfall.distribution;

import org.apiguardian.api.API;

/**
 * Thrown when a sample is valid but no member of a family fits it: no member has its moments, or its likelihood has no
 * maximum inside. The message says what was asked. Bad input is an {@link IllegalArgumentException} instead.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class NoFitException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /**
     * Makes the exception.
     *
     * @param message what was asked and why there is no fit
     */
    public NoFitException(String message) {
        super(message);
    }
}
