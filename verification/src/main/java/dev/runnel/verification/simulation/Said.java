package dev.runnel.verification.simulation;

import java.time.Instant;
import java.util.List;

/**
 * One finding as it was told.
 *
 * @param told when it was first told
 * @param since since when, as last told
 * @param closed whether it had closed when the record ended
 * @param atOnce names when it was first told, the likeliest first
 * @param atEnd names when it closed, or at the end of the record
 * @param recurring whether it was ever called recurring
 * @param text how it reads at the end
 */
record Said(
        Instant told,
        Instant since,
        boolean closed,
        List<Called> atOnce,
        List<Called> atEnd,
        boolean recurring,
        String text) {}
