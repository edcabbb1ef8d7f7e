package dev.runnel.rainfall.gauge;

/**
 * A row of gaps between tips that are even, or lengthen, as far as a clock tells. Times are cut to the resolution c of the
 * clock, so that a gap g is written as one of the two multiples of c next to it: gaps that are equal differ by c at most when
 * written, and one that is longer than another is never written shorter by more than c.
 *
 * <p>A row lengthens once the clock has shown as many gaps longer than all before as a row needs; gaps that tie with the longest, or
 * fall short of it by c at most, do not break the row and do not count. Without that count the slow end of any rain, written
 * to ten seconds, passes for a draining funnel: 10 to 20 gaps from 40 s to 200 s with six of them longer than all before.
 */
final class GapRow {
    /** Shorter gaps, in resolutions of the clock, tell nothing of a row. */
    static final long LEAST_CLOCKS = 4;

    private final boolean isEven;
    private final int least;
    private final double evenness;
    private final long clock;

    private int gaps;
    private int rises;
    private long longest;
    private long last;

    private GapRow(boolean isEven, int least, double evenness, long clock) {
        this.isEven = isEven;
        this.least = least;
        this.evenness = evenness;
        this.clock = clock;
    }

    /** Each gap within a share of the one before. */
    static GapRow even(int least, double evenness, long clock) {
        return new GapRow(true, least, evenness, clock);
    }

    /** Each gap longer than those before. */
    static GapRow lengthening(int least, long clock) {
        return new GapRow(false, least, 0, clock);
    }

    /** Takes the next gap and tells how many, this one included, are in a row long enough; 0 if they are not. */
    int next(long gap) {
        if (gaps > 0 && goesOn(gap)) {
            gaps++;
            rises += gap > longest ? 1 : 0;
            longest = Math.max(longest, gap);
        } else {
            gaps = 1;
            rises = 0;
            longest = gap;
        }
        last = gap;
        boolean told = isEven || rises >= least - 1;
        return gaps >= least && told ? gaps : 0;
    }

    private boolean goesOn(long gap) {
        if (isEven) {
            return Math.abs(gap - last) <= Math.max(evenness * last, (double) clock);
        }
        return clock == 0 ? gap > last : gap >= longest - clock;
    }

    /** Takes a gap that tells nothing. */
    int interrupt() {
        gaps = 0;
        return 0;
    }
}
