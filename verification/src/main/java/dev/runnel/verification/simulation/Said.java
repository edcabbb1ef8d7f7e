package dev.runnel.verification.simulation;

import java.time.Instant;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * One finding as it was told.
 *
 * @param told when it was first told
 * @param since since when, as last told
 * @param closed whether it had closed when the record ended
 * @param again when it was told again after it had closed, in order
 * @param atOnce names when it was first told, the likeliest first
 * @param atEnd names when it closed, or at the end of the record
 * @param recurring whether it was ever called recurring
 * @param text how it reads at the end
 */
record Said(
        Instant told,
        Instant since,
        boolean closed,
        List<Again> again,
        List<Called> atOnce,
        List<Called> atEnd,
        boolean recurring,
        String text) {
    private static final Set<Called> WATER = EnumSet.of(Called.MORE_WATER, Called.LESS_WATER);

    /**
     * A finding that had closed and came back.
     *
     * @param told when that was told
     * @param names what it was called then
     */
    record Again(Instant told, List<Called> names) {}

    /** Whether it says more or less water and nothing else, from first to last. */
    boolean isOfWater() {
        return WATER.containsAll(atOnce) && WATER.containsAll(atEnd);
    }

    /** This finding as one that was told at or after a time: itself, or its first return from then on; empty if neither. */
    Optional<Said> from(Instant time) {
        if (!told.isBefore(time)) {
            return Optional.of(this);
        }
        return again.stream()
                .filter(back -> !back.told().isBefore(time))
                .findFirst()
                .map(back -> new Said(back.told(), since, closed, List.of(), back.names(), atEnd, recurring, text));
    }
}
