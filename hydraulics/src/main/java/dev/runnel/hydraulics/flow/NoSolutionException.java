package dev.runnel.hydraulics.flow;

import org.apiguardian.api.API;

/**
 * Thrown when the input is valid but the question has no physical answer, such as the normal depth of a discharge that
 * the conduit cannot carry. The message holds the input.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class NoSolutionException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /**
     * Makes the exception.
     *
     * @param message what was asked and why there is no answer
     */
    public NoSolutionException(String message) {
        super(message);
    }
}
