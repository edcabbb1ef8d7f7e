package dev.runnel.hydraulics.rating;

/** Gaugings that leave a curve open; a kind of its own, so that a search may skip it without hiding a mistake. */
final class UndeterminedRatingException extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    UndeterminedRatingException(String message, Throwable cause) {
        super(message, cause);
    }
}
