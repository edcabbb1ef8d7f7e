package dev.runnel.verification.bite;

/**
 * What the proof said to a change.
 *
 * @param mutation the change
 * @param noticedBy the table that noticed it, or {@link Inside#SURVIVED}
 * @param reached whether a table reaches it
 */
record Outcome(Mutation mutation, String noticedBy, boolean reached) {
    boolean noticed() {
        return !noticedBy.equals(Inside.SURVIVED);
    }

    /** Why it is without effect; nothing if it is not on the list. */
    String reason() {
        return EqualInEffect.reason(mutation);
    }

    boolean isMissed() {
        return !noticed() && reason().isEmpty();
    }
}
