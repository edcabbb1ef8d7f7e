package dev.runnel.verification.table;

import org.apiguardian.api.API;

/**
 * A published table that cannot be run. The message names the file, and line and column where there are any.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class TableException extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    /**
     * Makes the exception.
     *
     * @param message place and problem
     */
    public TableException(String message) {
        super(message);
    }

    static TableException at(String file, long line, String column, String problem) {
        return new TableException(file + ", line " + line + ", column \"" + column + "\": " + problem);
    }
}
