package dev.runnel.verification.calculation;

import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import org.apiguardian.api.API;

/**
 * All that the calculations keep from one row to the next: whoever keeps an answer keeps it here, so that all of them can be
 * dropped before the same tables are asked of a library that answers differently.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class KeptAnswers {
    private static final List<Runnable> DROPS = new CopyOnWriteArrayList<>();

    private KeptAnswers() {}

    /** Returns an empty map for answers by what was asked, which may be filled by several threads at once. */
    static <K, V> Map<K, V> map() {
        Map<K, V> answers = new ConcurrentHashMap<>();
        droppedBy(answers::clear);
        return answers;
    }

    /** Takes what drops answers that are kept otherwise. */
    static void droppedBy(Runnable drop) {
        DROPS.add(drop);
    }

    /** Drops all kept answers: the next who asks computes them again. */
    public static void drop() {
        DROPS.forEach(Runnable::run);
    }
}
