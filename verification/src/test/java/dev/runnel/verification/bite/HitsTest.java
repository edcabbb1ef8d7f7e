package dev.runnel.verification.bite;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** What belongs to whom while several threads compute. The hits of this class loader count for nothing else. */
class HitsTest {
    private static final int METHOD = 3;
    private static final int TYPE = 7;

    @Test
    void whatAnotherThreadEntersDoesNotBelongToAClassThatHappensToBeMadeReady() throws InterruptedException {
        Hits.begin("at once", Long.MAX_VALUE);
        Hits.calculation("drawing");
        Hits.initialise(TYPE);
        aside(() -> Hits.enter(METHOD));
        Hits.initialised(TYPE, true);
        Hits.calculation("after");
        Hits.touch(TYPE);
        assertThat(through("at once", "drawing")).isTrue();
        assertThat(through("at once", "after")).isFalse();
    }

    @Test
    void whatAnotherThreadMakesReadyAfterTheFirstTouchCountsWithTheNext() throws InterruptedException {
        int waiting = TYPE + 1;
        int other = TYPE + 2;
        Hits.begin("late", Long.MAX_VALUE);
        Hits.calculation("first");
        Hits.initialise(waiting);
        Hits.touch(other);
        aside(() -> {
            Hits.initialise(other);
            Hits.enter(METHOD);
            Hits.initialised(other, true);
        });
        Hits.touch(other);
        Hits.initialised(waiting, true);
        Hits.calculation("after");
        Hits.touch(waiting);
        assertThat(through("late", "after")).isTrue();
    }

    private static boolean through(String table, String calculation) {
        return Hits.seen()
                .getOrDefault(table + "\t" + calculation, new Hits.Seen())
                .through()
                .get(METHOD);
    }

    private static void aside(Runnable task) throws InterruptedException {
        Thread thread = new Thread(task);
        thread.start();
        thread.join();
    }
}
