package dev.runnel.verification.sweep;

import java.util.List;
import java.util.function.Function;
import java.util.stream.LongStream;

/**
 * Random cases of one promise.
 *
 * @param name what is asked
 * @param bound the error that is promised
 * @param share how many of the cases of a sweep are drawn here, since some cost more
 * @param draw makes a case and asks it
 */
record Question(String name, double bound, double share, Function<Draw, Answer> draw) {
    private static final int CHUNK = 500;

    /** How far a case is from its promise; the text is made only for the worst. */
    record Answer(double error, List<Object> inputs) {
        static Answer of(double error, Object... inputs) {
            return new Answer(error, List.of(inputs));
        }
    }

    /** The case cannot be asked, for a reason that the library states. */
    static final class Refused extends RuntimeException {
        private static final long serialVersionUID = 1;

        Refused(Throwable cause) {
            super(cause);
        }
    }

    Line sweep(long cases, long seed) {
        long count = Math.max(1, (long) (cases * share));
        return LongStream.rangeClosed(0, (count - 1) / CHUNK)
                .parallel()
                .mapToObj(chunk -> chunk(chunk * CHUNK, Math.min(count, (chunk + 1) * CHUNK), seed))
                .reduce(Line::and)
                .orElseThrow();
    }

    private Line chunk(long from, long to, long seed) {
        Line all = new Line(name, 0, 0, 0, 0, bound, "");
        for (long i = from; i < to; i++) {
            long own = seed * 1_000_003 + name.hashCode() * 31L + i;
            all = all.and(one(own));
        }
        return all;
    }

    private Line one(long seed) {
        try {
            Answer answer = draw.apply(new Draw(seed));
            // NaN is an error too.
            boolean kept = answer.error() <= bound;
            return new Line(name, 1, 0, kept ? 0 : 1, answer.error(), bound, answer.inputs() + ", seed " + seed);
        } catch (Refused e) {
            return new Line(name, 1, 1, 0, 0, bound, "");
        } catch (RuntimeException | StackOverflowError e) {
            return new Line(name, 1, 0, 1, Double.POSITIVE_INFINITY, bound, e + ", seed " + seed);
        }
    }
}
