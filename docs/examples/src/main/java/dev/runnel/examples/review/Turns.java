package dev.runnel.examples.review;

import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import java.util.stream.IntStream;

/** Work for all processors. */
final class Turns {
    private Turns() {}

    /**
     * Lets each processor take the next piece as soon as it is free. A parallel stream over the pieces would deal them out in a
     * few lots beforehand, and a processor with the quicker lot would wait.
     */
    static <T> void each(List<T> pieces, Consumer<T> work) {
        AtomicInteger next = new AtomicInteger();
        IntStream.range(0, Math.min(pieces.size(), Runtime.getRuntime().availableProcessors()))
                .parallel()
                .forEach(processor -> {
                    for (int i = next.getAndIncrement(); i < pieces.size(); i = next.getAndIncrement()) {
                        work.accept(pieces.get(i));
                    }
                });
    }
}
