package dev.runnel.hydraulics.watch;

import dev.runnel.hydraulics.evidence.Direction;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Gives an open finding its shape, beginning, names, figures and words anew. */
final class ChangeJudge {
    /** Blocks before an onset that show the level before it, and how long a shape may still turn out another: a month
     * tells a step from a ramp; chosen here. */
    static final int BLOCKS_BEFORE = 12 * ChangeSeries.BLOCKS_PER_DAY;

    private static final int SHAPE_BLOCKS = 30 * ChangeSeries.BLOCKS_PER_DAY;

    /**
     * What moved is told anew while the finding stands at this share of its largest distance or more, and away at all; chosen here.
     */
    private static final double STANDS_OUT = 0.8;

    /** Hours of a quantity that tell how far it moved: a block; chosen here. */
    private static final int LEAST_HOURS = ChangeSeries.BLOCK_HOURS;

    private final WatchRule rule;
    private final ChangeSeries series;
    private final FollowedChange change;
    private final ChangeNames names;

    ChangeJudge(WatchRule rule, ChangeSeries series, FollowedChange change, ChangeNames names) {
        this.rule = rule;
        this.series = series;
        this.change = change;
        this.names = names;
    }

    void judge(long block, Track open, boolean shapeToo) {
        // What is told are the days on which it stood out, not the way back.
        if (change.jump.isPresent() || isThere(block)) {
            // What took longer to be told has a shape from then.
            boolean early = block - change.start <= SHAPE_BLOCKS || block == change.openedAt;
            if (early && (shapeToo || open.shape == ChangeShape.UNCERTAIN)) {
                shape(block, open);
            }
            names.name(block, open, spellShape(block, open));
        }
        open.direction = change.sign > 0 ? Direction.UP : Direction.DOWN;
        double now = distance();
        if (open.moved.isEmpty() || now >= Math.max(ChangeSums.SLACK, STANDS_OUT * change.largest)) {
            open.moved = moved(block, open);
            open.detail = detail(open);
        } else if (change.jump.isPresent()) {
            open.detail = detail(open);
        }
        LevelForecasts.make(rule, series, change.start, block, open);
    }

    /** How far the last day stands away, in scales. */
    double distance() {
        return change.sign
                * (series.lastDay(change.channel) - change.origin[change.channel])
                / series.scale(change.channel);
    }

    /** Whether the last day stands away or is not known; on the first day it was told that it does. */
    boolean isThere(long block) {
        return block - change.spellTold < ChangeSeries.BLOCKS_PER_DAY || !(distance() < ChangeSums.SLACK);
    }

    /** How it came; what came back, how it came back, once that has lasted long enough to be something else. */
    private ChangeShape spellShape(long block, Track open) {
        if (change.closedAs.isEmpty() || !names.isLong(block)) {
            return open.shape;
        }
        long first = Math.max(change.closedAt + 1, change.spell - BLOCKS_BEFORE);
        double[] values = values(first, block);
        return ShapeFit.of(values, (int) (change.spellTold - series.blocks.number(series.blocks.from(first)))).shape;
    }

    private void shape(long block, Track open) {
        if (change.jump.isPresent()) {
            DepthJump jump = change.jump.orElseThrow();
            open.shape = ChangeShape.STEP;
            open.since = jump.to();
            open.earliest = jump.from();
            open.latest = jump.to();
            return;
        }
        if (change.slowly) {
            return;
        }
        Ring blocks = series.blocks;
        long since =
                Math.max(change.start - BLOCKS_BEFORE, Math.max(change.after + 1, block - ChangeSeries.BLOCKS_KEPT));
        long first = blocks.number(blocks.from(since));
        int told = (int) (ChangeSeries.blockOf(Math.floorDiv(open.found - 1, SiteHour.NANOS)) - first);
        if (told < 0) {
            // What is kept no longer holds the time it was told at: the beginning stays as it was found.
            return;
        }
        ShapeFit fit = ShapeFit.of(values(since, block), told);
        open.shape = fit.shape;
        open.since = ChangeSeries.time(first + fit.onset);
        open.earliest = fit.isOpen ? sinceLearned(first) : ChangeSeries.time(first + Math.max(0, fit.earliest - 1));
        open.latest = ChangeSeries.time(first + fit.latest + 1);
        if (fit.shape == ChangeShape.STEP) {
            StepHour.find(series, change.channel, first + fit.onset, open);
        }
        open.beginByFound();
    }

    /** What found it, block by block, from the first kept block on that is not before one. */
    private double[] values(long since, long block) {
        Ring blocks = series.blocks;
        int from = blocks.from(since);
        long first = blocks.number(from);
        double[] values = new double[(int) (block - first + 1)];
        Arrays.fill(values, Double.NaN);
        for (int i = from; i < blocks.size(); i++) {
            values[(int) (blocks.number(i) - first)] = blocks.value(i, change.channel) - change.origin[change.channel];
        }
        return values;
    }

    /** A change before which nothing is kept may have begun at any time since it was learned what is usual. */
    private long sinceLearned(long block) {
        long learned = EpochNanos.of(rule.baseline().interval().end());
        return Math.min(learned, ChangeSeries.time(block));
    }

    /** Medians of the last days since it began, which a sum may have left 0 long before. */
    private List<Moved> moved(long block, Track open) {
        long last = (block + 1) * ChangeSeries.BLOCK_HOURS - ChangeNames.NAME_HOURS;
        List<Moved> since = movedFrom(Math.max(last, Math.floorDiv(open.since, SiteHour.NANOS)));
        return ofChannel(since).isPresent()
                ? since
                : movedFrom(Math.max(last, change.start * ChangeSeries.BLOCK_HOURS));
    }

    private Optional<Moved> ofChannel(List<Moved> moved) {
        return moved.stream()
                .filter(each -> each.quantity().ordinal() == change.channel)
                .findFirst();
    }

    private List<Moved> movedFrom(long hour) {
        List<Moved> moved = new ArrayList<>();
        int from = series.hours.from(hour);
        for (Quantity quantity : Quantity.values()) {
            int c = quantity.ordinal();
            double[] known = Medians.known(series.hours.column(from, c == ChangeSeries.R ? ChangeSeries.PLAIN : c));
            if (series.scale(c) > 0 && known.length >= LEAST_HOURS) {
                moved.add(new Moved(
                        quantity,
                        Math.expm1(Medians.of(known) - series.centre(c)),
                        rule.baseline().scatter(quantity),
                        known.length));
            }
        }
        return List.copyOf(moved);
    }

    private String detail(Track open) {
        String what = ofChannel(open.moved)
                .map(each -> (each.change() < 0 ? "down" : "up") + " by about "
                        + Text.fixed(100 * Math.abs(each.change()), 0) + " %")
                .orElse(change.sign > 0 ? "up" : "down");
        String dry = rule.baseline().lowWater.isPresent() ? " at the lowest water of two dry tides" : " in dry hours";
        String weather = change.channel == ChangeSeries.R ? "" : dry;
        return Quantity.values()[change.channel] + " " + what + weather
                + change.jump
                        .map(jump -> "; "
                                + jump.describe(rule.baseline().sensor.depthStep(), series.scale(ChangeSeries.R) == 0))
                        .orElse("");
    }
}
