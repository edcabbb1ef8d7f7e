package dev.runnel.hydraulics.watch;

import dev.runnel.hydraulics.evidence.Direction;
import dev.runnel.internal.StateText;
import dev.runnel.timeseries.EpochNanos;
import java.util.Arrays;
import java.util.Optional;

/** Small findings that closed by themselves: a third of a direction says more about the baseline than about the site. */
final class DoubtfulBaseline {
    /** A finding that ends within 60 days and was never of 3 scales was weak; after two such more is asked; chosen here. */
    private static final int WEAK_DAYS = 60;

    static final double WEAK = 3;
    private static final int WEAK_FINDINGS = 2;

    private final ChangeSeries series;
    private final Findings findings;
    private final int[] weak = new int[ChangeSums.DIRECTIONS];
    private Optional<Track> told = Optional.empty();

    DoubtfulBaseline(ChangeSeries series, Findings findings) {
        this.series = series;
        this.findings = findings;
    }

    /** Whether what a sum found is one weak finding too many. */
    boolean isDoubtful(int found) {
        int quantity = ChangeSums.quantity(found);
        boolean strong = Math.abs(series.lastDay(quantity)) > WEAK * series.scale(quantity);
        return weak[found] >= WEAK_FINDINGS && !strong;
    }

    /** Says so, once. */
    void tell(int found, long start, long block, long end) {
        if (told.isPresent()) {
            return;
        }
        Track opened = findings.open(FindingName.BASELINE_DOUBTFUL, ChangeSeries.time(start), end);
        boolean up = ChangeSums.direction(found) > 0;
        opened.latest = end;
        opened.direction = up ? Direction.UP : Direction.DOWN;
        opened.detail = Quantity.values()[ChangeSums.quantity(found)] + " went " + (up ? "up" : "down")
                + " for the third time and was small each time: the baseline may not be typical; learn again from a"
                + " stretch up to " + EpochNanos.toInstant(ChangeSeries.time(block));
        told = Optional.of(opened);
        findings.report(WatchNotice.Kind.FOUND, end, opened);
    }

    /** Counts a finding that closes, if it was weak. */
    void closed(FollowedChange change, long block, Track open) {
        if (block - change.start < (long) WEAK_DAYS * ChangeSeries.BLOCKS_PER_DAY
                && change.largest < WEAK
                && open.returns() == 0) {
            weak[ChangeSums.at(change.channel, change.sign)]++;
        }
    }

    String track() {
        return told.map(each -> each.write().toString()).orElse("");
    }

    long[] counts() {
        return Arrays.stream(weak).asLongStream().toArray();
    }

    void read(StateText text) {
        String track = text.text("doubtful");
        told = track.isEmpty() ? Optional.empty() : Optional.of(Track.read(track));
        long[] counts = text.counts("weak");
        for (int i = 0; i < weak.length; i++) {
            weak[i] = (int) counts[i];
        }
    }
}
