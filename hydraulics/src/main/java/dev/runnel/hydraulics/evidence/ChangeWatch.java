package dev.runnel.hydraulics.evidence;

import dev.runnel.internal.StateText;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.change.TheilSen;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** The sequential detectors on blocks, and the life of the one finding they may have open. */
final class ChangeWatch {
    // Every number of this class is chosen here; the reasons stand beside them.

    /** k and h of the cumulative sums of Page (1954), in scales: {@link WatchRule} states them. */
    private static final double SLACK = 0.75;

    private static final double LIMIT = 7;

    /** A sum of the velocity at its depth from which on large and growing changes are told. */
    private static final double QUICK_LIMIT = 3;

    /** What takes longer than this to fill a sum of depth, velocity or flow is a season. */
    private static final int SEASON_HOURS = 14 * 24;

    /** Largest distance of an hour, in scales: one wild hour alone fills no sum. */
    private static final double CLIP = 6;

    /** An hour counts a sixth of the 6 h in which the scale is given. */
    private static final double WEIGHT = 1 / 6.0;

    /** One hour of a block is no median of it. */
    private static final int LEAST_HOURS_OF_BLOCK = 2;

    private static final int BLOCKS_PER_DAY = 24 / HourlyWatch.BLOCK_HOURS;
    private static final int DIRECTIONS = 2 * Quantity.COUNT;
    private static final int R = Quantity.VELOCITY_AT_DEPTH.ordinal();
    private static final int D = Quantity.DEPTH.ordinal();
    private static final int U = Quantity.VELOCITY.ordinal();

    /** Ten days of hours, for what looks back over hours: it must hold {@link #LASTING_HOURS} and {@link #BEFORE_HOURS}. */
    private static final int HOURS_KEPT = 240;

    /** Six weeks of blocks, which hold those before an onset and those that tell a shape. */
    private static final int BLOCKS_KEPT = 42 * BLOCKS_PER_DAY;

    /** Blocks before an onset that show the level before it, and how long a shape may still turn out another: a month
     * tells a step from a ramp. */
    private static final int BLOCKS_BEFORE = 12 * BLOCKS_PER_DAY;

    private static final int SHAPE_BLOCKS = 30 * BLOCKS_PER_DAY;

    /** Closed when the quantity found is well within the slack, and the others are about it, for two days. */
    private static final double CLOSE_FOUND = 0.4 * SLACK;

    private static final double CLOSE_OTHERS = 1.2 * SLACK;
    private static final int CLOSE_BLOCKS = 2 * BLOCKS_PER_DAY;

    /** Dry blocks of them that must be known, unless it is wet for longer than a wet spell lasts. */
    private static final int CLOSE_DRY_BLOCKS = 3;

    private static final int WET_BLOCKS = 10 * BLOCKS_PER_DAY;

    /** The same finding again if it comes back within 1.5 times its length, but at least 5 and at most 21 days. */
    private static final int RETURN_BLOCKS = 5 * BLOCKS_PER_DAY;

    private static final int LONGEST_RETURN_BLOCKS = 21 * BLOCKS_PER_DAY;

    /** Days from its opening in which a finding is judged at every block, later once a day. */
    private static final int FRESH_BLOCKS = 2 * BLOCKS_PER_DAY;

    /** Hours whose median names a finding, not those just after its onset, where a change is still on its way. */
    private static final int NAME_HOURS = 96;

    private static final int NAME_AFTER_HOURS = 12;
    private static final int LEAST_NAME_HOURS = 4;

    /** Votes of four weeks for a name; the first ones, from when little had changed yet, are left out. */
    private static final int VOTE_BLOCKS = 28 * BLOCKS_PER_DAY;

    private static final double VOTES_LEFT_OUT = 0.3;

    /** Share of the votes from which on another name is told beside the first. */
    private static final double SECOND_VOTES = 0.3;

    /** The nearest name is told beside the one with most votes if that lies farther by less than this. */
    private static final double VOTED_FARTHER = 4;

    private static final int NO_RAY = -1;

    /** Dry hours of so many hours before a step say where the water stood, and how many of them are enough. */
    private static final int BEFORE_HOURS = 120;

    private static final int LEAST_BEFORE_HOURS = 12;

    /** Pairs of hours at the same time of day, before and after, that say something. */
    private static final int LEAST_PAIRS = 6;

    /** Days after a step whose dry hours are held against those before it. */
    private static final int ACROSS_BLOCKS = 4 * BLOCKS_PER_DAY;

    /** Hours that {@link Lasting} looks at: a week, one more day than its longest ladder of days must stand. */
    private static final int LASTING_HOURS = 7 * 24;

    /** A finding of two scales falls back when two blocks are below the smaller share of it, after one above the larger. */
    private static final double RECUR_SCALES = 2;

    private static final int RECUR_BLOCKS = 2;
    private static final double RISEN_SHARE = 0.35;
    private static final double FALLEN_SHARE = 0.12;

    /** What moved is told anew while the finding stands at this share of its largest distance or more. */
    private static final double STANDS_OUT = 0.5;

    /** A finding that ends within 60 days and was never of 3 scales was weak; after two such more is asked. */
    private static final int WEAK_DAYS = 60;

    private static final double WEAK = 3;
    private static final int WEAK_FINDINGS = 2;

    /** Blocks of the last two weeks that a forecast rests on: what rises faster now counts. */
    private static final long FORECAST_BLOCKS = 14L * BLOCKS_PER_DAY;

    /** Confidence of the slope that a forecast rests on. */
    private static final double FORECAST_CONFIDENCE = 0.95;

    /** No forecast beyond a year: by then the rise is another; its latest day is told up to ten. */
    private static final double LONGEST_FORECAST_DAYS = 365;

    private static final double LATEST_FORECAST_DAYS = 3650;

    /** Hours before and after a block of onset in which the hour of a step is looked for: a day on both sides. */
    private static final int SHARPEN_BEFORE = 24;

    private static final int SHARPEN_AFTER = SHARPEN_BEFORE + HourlyWatch.BLOCK_HOURS;

    /** Fewest known hours in which a step is looked for. */
    private static final int LEAST_SHARPEN_HOURS = 8;

    /** The bounds of a step's hour: squares worse by 4 of their own variance, about 95 % of one figure (2² of a normal law). */
    private static final double SHARPEN_SPREAD = 4;

    private static final long NONE = Long.MIN_VALUE;

    private final SiteBaseline baseline;
    private final WatchRule rule;
    private final Findings findings;
    private final Optional<Naming> naming;
    private final Ring hours = new Ring(HOURS_KEPT, Quantity.COUNT + 1);
    private final Ring blocks = new Ring(BLOCKS_KEPT, Quantity.COUNT);
    private final double[] sums = new double[DIRECTIONS];
    private final long[] starts = new long[DIRECTIONS];
    private long lastDryBlock = NONE;

    private Optional<Track> track = Optional.empty();
    private int channel;
    private int sign;
    private long start;
    private long openedAt;
    private long closedAt;
    private boolean risen;
    private double largest;
    private final List<Long> votes = new ArrayList<>();
    private int across = NO_RAY;
    private int acrossToo = NO_RAY;
    private String reported = "";
    private final int[] weak = new int[DIRECTIONS];
    private Optional<Track> doubtful = Optional.empty();

    ChangeWatch(WatchRule rule, Findings findings) {
        this.rule = rule;
        this.baseline = rule.baseline();
        this.findings = findings;
        this.naming = baseline.watches(Quantity.VELOCITY_AT_DEPTH) && baseline.watches(Quantity.VELOCITY)
                ? Optional.of(new Naming(baseline))
                : Optional.empty();
        Arrays.fill(starts, NONE);
    }

    boolean isOpen() {
        return track.map(each -> each.open).orElse(false);
    }

    /** Takes what an hour leaves over; of the velocity at its depth as it is judged, and as it stands. */
    void hour(long hour, double r, double d, double u, double q, double plain) {
        hours.add(hour, r, d, u, q, plain);
        if (isOpen()) {
            return;
        }
        int found = detect(hour);
        if (found >= 0) {
            long block = Math.floorDiv(hour, (long) HourlyWatch.BLOCK_HOURS);
            // The block that is not over yet, so that what is told now rests on all there is; it comes again when it
            // ends.
            addBlock(block, 1);
            open(found, block, (hour + 1) * SiteHour.NANOS);
            blocks.dropLast();
        }
    }

    private double scale(int quantity) {
        return baseline.scale[quantity];
    }

    /** Ends a block: its medians go to the open finding. */
    void block(long block) {
        double[] row = addBlock(block, LEAST_HOURS_OF_BLOCK);
        if (!Double.isNaN(row[D])) {
            lastDryBlock = block;
        }
        if (isOpen()) {
            goOn(block, (block + 1) * HourlyWatch.BLOCK_HOURS * SiteHour.NANOS);
        } else {
            blocks.dropBefore(earliestStart(block) - BLOCKS_BEFORE);
        }
    }

    private double[] addBlock(long block, int leastHours) {
        int from = hours.from(block * HourlyWatch.BLOCK_HOURS);
        double[] row = new double[Quantity.COUNT];
        for (int c = 0; c < Quantity.COUNT; c++) {
            double[] known = Medians.known(hours.column(from, c));
            boolean enough = known.length >= leastHours && scale(c) > 0;
            row[c] = enough ? Medians.of(known) - baseline.centre[c] : Double.NaN;
        }
        blocks.add(block, row);
        return row;
    }

    private long earliestStart(long block) {
        long earliest = block;
        for (int i = 0; i < DIRECTIONS; i++) {
            earliest = sums[i] > 0 ? Math.min(earliest, starts[i]) : earliest;
        }
        return earliest;
    }

    /** Adds the last hour to the sums; returns which of them tells of a change, -1 for none. */
    private int detect(long hour) {
        int last = hours.size() - 1;
        int found = -1;
        for (int c = 0; c < Quantity.COUNT; c++) {
            double x = hours.value(last, c) - baseline.centre[c];
            if (Double.isNaN(x) || !(scale(c) > 0)) {
                continue;
            }
            double z = Math.max(-CLIP, Math.min(CLIP, x / scale(c)));
            for (int i = 0; i < 2; i++) {
                int at = 2 * c + i;
                double before = sums[at];
                sums[at] = Math.max(0, before + ((i == 0 ? z : -z) - SLACK) * WEIGHT);
                if (before == 0 && sums[at] > 0) {
                    starts[at] = Math.floorDiv(hour, (long) HourlyWatch.BLOCK_HOURS);
                }
                if (c != R && sums[at] > 0 && hour - 3 * starts[at] > SEASON_HOURS) {
                    sums[at] = 0;
                }
                if (sums[at] > (c == R ? QUICK_LIMIT : LIMIT)
                        && lasts(hour, c, i == 0 ? 1 : -1)
                        && (found < 0 || sums[at] > sums[found])) {
                    found = at;
                }
            }
        }
        return found;
    }

    /**
     * Whether a quantity stands away from usual for long enough. A sum that small seasons filled over months tells nothing of
     * today, and is kept at its limit until something is to be seen.
     */
    private boolean lasts(long hour, int quantity, int direction) {
        int at = 2 * quantity + (direction > 0 ? 0 : 1);
        int from = quantity == R ? 0 : hours.from(hour - LASTING_HOURS + 1);
        double[] known = Medians.known(hours.column(from, quantity));
        for (int i = 0; i < known.length; i++) {
            known[i] = direction * (known[i] - baseline.centre[quantity]);
        }
        Lasting lasting = new Lasting(known, scale(quantity), quantity == R ? SLACK : 1);
        boolean full = sums[at] > LIMIT;
        boolean away = quantity == R ? lasting.isQuick() || full && lasting.lasts() : lasting.isAway();
        sums[at] = away || !full ? sums[at] : LIMIT;
        return away;
    }

    private void open(int found, long block, long end) {
        long earliest = starts[found];
        for (int i = 0; i < DIRECTIONS; i++) {
            earliest = sums[i] > LIMIT ? Math.min(earliest, starts[i]) : earliest;
        }
        int quantity = found / 2;
        int direction = found % 2 == 0 ? 1 : -1;
        boolean strong = Math.abs(lastDay(quantity)) > WEAK * scale(quantity);
        if (weak[found] >= WEAK_FINDINGS && !strong) {
            doubt(found, block, end);
            return;
        }
        boolean returned = returns(quantity, direction, earliest);
        if (!returned) {
            Track opened = findings.open(FindingName.LEVEL_UP, time(earliest), end);
            track = Optional.of(opened);
            votes.clear();
            start = earliest;
            largest = 0;
            openedAt = block;
            channel = quantity;
            sign = direction;
            across = NO_RAY;
            acrossToo = NO_RAY;
        }
        Track open = track.orElseThrow();
        open.open = true;
        open.returns += returned ? 1 : 0;
        risen = true;
        judge(block, open, returned);
        reported = summary(open);
        findings.report(returned ? WatchNotice.Kind.RETURNED : WatchNotice.Kind.FOUND, end, open);
    }

    private boolean returns(int quantity, int direction, long earliest) {
        if (track.isEmpty()) {
            return false;
        }
        long length = closedAt - start;
        long window = Math.max(RETURN_BLOCKS, Math.min(LONGEST_RETURN_BLOCKS, length + length / 2));
        return earliest - closedAt <= window
                && (quantity == channel && direction == sign || alike(quantity, direction));
    }

    /** Whether a movement is another side of what the last finding was called: water held up moves all but the flow. */
    private boolean alike(int quantity, int direction) {
        FindingName name = track.orElseThrow().names.get(0);
        int upward = name == FindingName.HELD_UP ? 1 : name == FindingName.RELEASED ? -1 : 0;
        return upward != 0 && quantity != Quantity.FLOW.ordinal() && direction == (quantity == D ? upward : -upward);
    }

    /** A third finding of a direction whose first two closed by themselves says more about the baseline. */
    private void doubt(int found, long block, long end) {
        Arrays.fill(sums, 0);
        if (doubtful.isPresent()) {
            return;
        }
        Track opened = findings.open(FindingName.BASELINE_DOUBTFUL, time(starts[found]), end);
        opened.latest = end;
        opened.direction = found % 2 == 0 ? Direction.UP : Direction.DOWN;
        opened.detail = Quantity.values()[found / 2] + " went " + (found % 2 == 0 ? "up" : "down")
                + " for the third time and was small each time: the baseline may not be typical; learn again from a"
                + " stretch up to " + EpochNanos.toInstant(block * HourlyWatch.BLOCK_HOURS * SiteHour.NANOS);
        doubtful = Optional.of(opened);
        findings.report(WatchNotice.Kind.FOUND, end, opened);
    }

    private double lastDay(int quantity) {
        return Medians.of(blocks.column(Math.max(0, blocks.size() - BLOCKS_PER_DAY), quantity));
    }

    private static long time(long block) {
        return block * HourlyWatch.BLOCK_HOURS * SiteHour.NANOS;
    }

    private void goOn(long block, long end) {
        Track open = track.orElseThrow();
        recur(end, open);
        largest = Math.max(largest, Double.isNaN(lastDay(channel)) ? 0 : Math.abs(lastDay(channel)) / scale(channel));
        vote(block);
        if (closes(block)) {
            judge(block, open, false);
            close(block, end, open);
            return;
        }
        boolean dayEnds = Math.floorMod(block + 1, (long) BLOCKS_PER_DAY) == 0;
        if (dayEnds || block - openedAt < FRESH_BLOCKS) {
            judge(block, open, true);
            String now = summary(open);
            if (!now.equals(reported)) {
                reported = now;
                findings.report(WatchNotice.Kind.CHANGED, end, open);
            }
        }
    }

    private static String summary(Track open) {
        return open.names + " " + open.shape + " " + open.recurrence().isPresent() + " " + open.alarm.isPresent();
    }

    /** Counts how often the quantity falls back to usual and stays there for some blocks. */
    private void recur(long end, Track open) {
        int last = blocks.size() - 1;
        if (Double.isNaN(blocks.value(last, channel))) {
            return;
        }
        // What hardly leaves the scatter comes and goes by itself, and water and days differ by the week.
        if (largest < RECUR_SCALES || channel != R && scale(R) > 0) {
            return;
        }
        // What rose high has not fallen before most of that is gone, and has not risen again before much of it is back.
        if (!risen) {
            risen = sign * blocks.value(last, channel) / scale(channel) > Math.max(SLACK, RISEN_SHARE * largest);
            return;
        }
        double fallen = Math.max(CLOSE_FOUND, FALLEN_SHARE * largest);
        int low = 0;
        for (int i = last; i >= 0 && low < RECUR_BLOCKS; i--) {
            double x = blocks.value(i, channel);
            if (!Double.isNaN(x) && !(sign * x / scale(channel) < fallen)) {
                return;
            }
            low += Double.isNaN(x) ? 0 : 1;
        }
        if (low >= RECUR_BLOCKS) {
            risen = false;
            open.falls.add(end);
        }
    }

    private boolean closes(long block) {
        int from = blocks.from(block - CLOSE_BLOCKS + 1);
        if (block - openedAt < BLOCKS_PER_DAY) {
            return false;
        }
        for (int c = 0; c < Quantity.COUNT; c++) {
            double[] known = Medians.known(blocks.column(from, c));
            if (c == channel && known.length < CLOSE_DRY_BLOCKS) {
                return false;
            }
            double limit = c == channel ? CLOSE_FOUND : CLOSE_OTHERS;
            if (known.length > 0 && !(Math.abs(Medians.of(known)) < limit * scale(c))) {
                return false;
            }
        }
        boolean longWet = block - Math.max(lastDryBlock, openedAt) > WET_BLOCKS;
        return longWet || Medians.known(blocks.column(from, D)).length >= CLOSE_DRY_BLOCKS || scale(D) == 0;
    }

    private void close(long block, long end, Track open) {
        open.open = false;
        open.closed = lastAway(block);
        closedAt = block;
        if (block - start < (long) WEAK_DAYS * BLOCKS_PER_DAY && largest < WEAK && open.returns == 0) {
            weak[2 * channel + (sign > 0 ? 0 : 1)]++;
        }
        Arrays.fill(sums, 0);
        findings.report(WatchNotice.Kind.CLOSED, end, open);
    }

    /** End of the last block that was not as usual yet. */
    private long lastAway(long block) {
        for (int i = blocks.size() - 1; i >= 0 && blocks.number(i) >= start; i--) {
            double x = blocks.value(i, channel);
            if (!Double.isNaN(x) && sign * x / scale(channel) > SLACK) {
                return time(blocks.number(i) + 1);
            }
        }
        return time(block + 1);
    }

    private void vote(long block) {
        if (block - start <= VOTE_BLOCKS) {
            votes.add((long) ray(block));
        }
    }

    /**
     * Where the water stood away from usual before a step already, such as in a wet season, the baseline alone may name it
     * wrongly; it is also named by the difference to the days before it, and what of the water may have gone meanwhile
     * counts as error.
     */
    private void across(long block, Track open) {
        if (open.shape != ChangeShape.STEP || block - openedAt > ACROSS_BLOCKS) {
            return;
        }
        int first = hours.from(Math.floorDiv(open.earliest, SiteHour.NANOS));
        int after = hours.from(Math.floorDiv(open.latest, SiteHour.NANOS));
        int from = hours.from(Math.floorDiv(open.earliest, SiteHour.NANOS) - BEFORE_HOURS);
        double[] before = dryMedians(from, first, LEAST_BEFORE_HOURS);
        if (!naming.orElseThrow().isAway(before[0], before[1])) {
            return;
        }
        double d = overDays(D, from, first, after);
        double u = overDays(U, from, first, after);
        if (!Double.isNaN(d) && !Double.isNaN(u)) {
            double[] distances =
                    naming.orElseThrow().widened(before[0], before[1]).distances(d, u);
            across = Naming.least(distances);
            acrossToo = Naming.alike(distances, across);
        }
    }

    /** Median difference of the hours after a step to the last known same hour before it, free of the course of the day. */
    private double overDays(int quantity, int from, int first, int after) {
        double[] differences = new double[hours.size() - after];
        for (int i = after; i < hours.size(); i++) {
            double earlier = Double.NaN;
            for (int j = from; j < first; j++) {
                boolean same = (hours.number(i) - hours.number(j)) % 24 == 0;
                earlier = same && !Double.isNaN(hours.value(j, quantity)) ? hours.value(j, quantity) : earlier;
            }
            differences[i - after] = hours.value(i, quantity) - earlier;
        }
        double[] known = Medians.known(differences);
        return known.length < LEAST_PAIRS ? Double.NaN : Medians.of(known);
    }

    /** Ray of the last days' dry hours; none if there are too few. */
    private int ray(long block) {
        double[] at = dryMedians(block);
        return naming.isEmpty() || Double.isNaN(at[0])
                ? NO_RAY
                : Naming.least(naming.orElseThrow().distances(at[0], at[1]));
    }

    /** Medians of depth and velocity over the dry hours of the last days since the beginning. */
    private double[] dryMedians(long block) {
        long last = (block + 1) * HourlyWatch.BLOCK_HOURS;
        long first = Math.max(last - NAME_HOURS, start * HourlyWatch.BLOCK_HOURS + NAME_AFTER_HOURS);
        double[] found = dryMediansFrom(first);
        return Double.isNaN(found[0])
                ? dryMediansFrom(Math.max(last - NAME_HOURS, start * HourlyWatch.BLOCK_HOURS))
                : found;
    }

    private double[] dryMediansFrom(long firstHour) {
        return dryMedians(hours.from(firstHour), hours.size(), LEAST_NAME_HOURS);
    }

    private double[] dryMedians(int from, int to, int least) {
        double[] d = new double[to - from];
        double[] u = new double[d.length];
        int count = 0;
        for (int i = from; i < to; i++) {
            if (!Double.isNaN(hours.value(i, D)) && !Double.isNaN(hours.value(i, U))) {
                d[count] = hours.value(i, D);
                u[count++] = hours.value(i, U);
            }
        }
        return count < least
                ? new double[] {Double.NaN, Double.NaN}
                : new double[] {Medians.of(Arrays.copyOf(d, count)), Medians.of(Arrays.copyOf(u, count))};
    }

    /** Gives the finding its name, shape, beginning and figures anew. */
    private void judge(long block, Track open, boolean shapeToo) {
        boolean early = block - start <= SHAPE_BLOCKS;
        if (early && (shapeToo || open.shape == ChangeShape.UNCERTAIN)) {
            shape(block, open);
        }
        name(block, open);
        open.direction = sign > 0 ? Direction.UP : Direction.DOWN;
        double now = Math.abs(lastDay(channel)) / scale(channel);
        // What is told are the days on which it stood out, not the way back.
        if (open.moved.isEmpty() || now >= STANDS_OUT * largest) {
            open.moved = moved(block);
            open.detail = detail(open);
        }
        forecast(block, open);
    }

    private void shape(long block, Track open) {
        int from = blocks.from(Math.max(start - BLOCKS_BEFORE, block - BLOCKS_KEPT));
        long first = blocks.number(from);
        double[] series = new double[(int) (block - first + 1)];
        Arrays.fill(series, Double.NaN);
        for (int i = from; i < blocks.size(); i++) {
            series[(int) (blocks.number(i) - first)] = blocks.value(i, channel);
        }
        ShapeFit fit = ShapeFit.of(series);
        open.shape = fit.shape;
        open.since = time(first + fit.onset);
        open.earliest = time(first + Math.max(0, fit.earliest - 1));
        open.latest = time(first + fit.latest + 1);
        if (fit.shape == ChangeShape.STEP) {
            sharpen(first + fit.onset, open);
        }
    }

    /** Looks for the hour of a step about a block. */
    private void sharpen(long onset, Track open) {
        long middle = onset * HourlyWatch.BLOCK_HOURS;
        int from = hours.from(middle - SHARPEN_BEFORE);
        if (hours.size() == 0 || hours.number(0) > middle - HourlyWatch.BLOCK_HOURS) {
            return;
        }
        int to = hours.from(middle + SHARPEN_AFTER);
        double[] known = new double[to - from];
        long[] numbers = new long[to - from];
        int count = 0;
        for (int i = from; i < to; i++) {
            if (!Double.isNaN(hours.value(i, channel))) {
                known[count] = hours.value(i, channel) - baseline.centre[channel];
                numbers[count++] = hours.number(i);
            }
        }
        if (count < LEAST_SHARPEN_HOURS) {
            return;
        }
        double[] fit = new double[count];
        int best = 1;
        for (int k = 1; k < count; k++) {
            fit[k] = squares(known, 0, k) + squares(known, k, count);
            best = fit[k] < fit[best] ? k : best;
        }
        double limit = fit[best] * (1 + SHARPEN_SPREAD / Math.max(2, 0.5 * count));
        int earliest = best;
        int latest = best;
        while (earliest > 1 && fit[earliest - 1] <= limit) {
            earliest--;
        }
        while (latest < count - 1 && fit[latest + 1] <= limit) {
            latest++;
        }
        open.since = numbers[best] * SiteHour.NANOS;
        // The change may lie within the hour before, whose median it did not move.
        open.earliest = numbers[earliest - 1] * SiteHour.NANOS;
        open.latest = (numbers[latest] + 1) * SiteHour.NANOS;
    }

    private static double squares(double[] values, int from, int to) {
        double mean = 0;
        for (int i = from; i < to; i++) {
            mean += values[i] / (to - from);
        }
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += (values[i] - mean) * (values[i] - mean);
        }
        return sum;
    }

    private void name(long block, Track open) {
        double[] at = dryMedians(block);
        if (naming.isEmpty()) {
            open.names = List.of(unnamed());
            return;
        }
        if (Double.isNaN(at[0])) {
            if (votes.stream().allMatch(vote -> vote == NO_RAY)) {
                open.names = List.of(unnamed());
            }
            return;
        }
        across(block, open);
        double[] distances = naming.orElseThrow().distances(at[0], at[1]);
        int best = Naming.least(distances);
        int second = Naming.alike(distances, best);
        int[] counts = new int[distances.length];
        int cast = 0;
        for (int i = (int) (VOTES_LEFT_OUT * votes.size()); i < votes.size(); i++) {
            int vote = votes.get(i).intValue();
            if (vote != NO_RAY) {
                counts[vote]++;
                cast++;
            }
        }
        if (cast >= BLOCKS_PER_DAY) {
            int most = 0;
            int next = -1;
            for (int i = 1; i < counts.length; i++) {
                most = counts[i] > counts[most] ? i : most;
            }
            for (int i = 0; i < counts.length; i++) {
                next = i != most && counts[i] >= SECOND_VOTES * cast && (next < 0 || counts[i] > counts[next])
                        ? i
                        : next;
            }
            if (most != best) {
                second = second == most || next == most || next < 0 ? second : next;
                second = distances[most] - distances[best] < VOTED_FARTHER ? best : next;
                best = most;
            } else if (second < 0) {
                second = next;
            }
        }
        int beside = across == best ? acrossToo : across;
        if (open.shape != ChangeShape.RAMP && beside != NO_RAY) {
            second = beside;
        }
        List<FindingName> names = new ArrayList<>(Naming.names(best, open.shape));
        if (second >= 0 && second != best) {
            for (FindingName each : Naming.names(second, open.shape)) {
                if (!names.contains(each)) {
                    names.add(each);
                }
            }
        }
        open.names = List.copyOf(names);
    }

    private FindingName unnamed() {
        if (channel == R) {
            return sign > 0 ? FindingName.VELOCITY_HIGH_FOR_DEPTH : FindingName.VELOCITY_LOW_FOR_DEPTH;
        }
        return sign > 0 ? FindingName.LEVEL_UP : FindingName.LEVEL_DOWN;
    }

    private List<Moved> moved(long block) {
        List<Moved> moved = new ArrayList<>();
        long last = (block + 1) * HourlyWatch.BLOCK_HOURS;
        int from = hours.from(Math.max(last - NAME_HOURS, start * HourlyWatch.BLOCK_HOURS));
        for (Quantity quantity : Quantity.values()) {
            int c = quantity.ordinal();
            double[] known = Medians.known(hours.column(from, c == R ? Quantity.COUNT : c));
            if (scale(c) > 0 && known.length >= LEAST_NAME_HOURS) {
                moved.add(new Moved(
                        quantity,
                        Math.expm1(Medians.of(known) - baseline.centre[c]),
                        baseline.scatter(quantity),
                        known.length));
            }
        }
        return List.copyOf(moved);
    }

    private String detail(Track open) {
        String what = open.moved.stream()
                .filter(each -> each.quantity().ordinal() == channel)
                .findFirst()
                .map(each -> (each.change() < 0 ? "down" : "up") + " by about "
                        + Text.fixed(100 * Math.abs(each.change()), 0) + " %")
                .orElse(sign > 0 ? "up" : "down");
        String weather = channel == R ? "" : " in dry hours";
        return Quantity.values()[channel] + " " + what + weather;
    }

    private void forecast(long block, Track open) {
        open.alarm = Optional.empty();
        open.soffit = Optional.empty();
        if (!(scale(D) > 0)) {
            return;
        }
        int from = blocks.from(Math.max(start, block - FORECAST_BLOCKS));
        double[] times = new double[blocks.size() - from];
        double[] levels = new double[times.length];
        int count = 0;
        for (int i = from; i < blocks.size(); i++) {
            if (!Double.isNaN(blocks.value(i, D))) {
                times[count] = (double) (blocks.number(i) - block) / BLOCKS_PER_DAY;
                levels[count++] = baseline.usualPeak() * Math.exp(blocks.value(i, D));
            }
        }
        if (count < BLOCKS_PER_DAY) {
            return;
        }
        TheilSen line = TheilSen.of(Arrays.copyOf(times, count), Arrays.copyOf(levels, count), FORECAST_CONFIDENCE);
        if (rule.alarmLevel().isPresent()) {
            open.alarm = forecast(line, block, rule.alarmLevel().orElseThrow());
        }
        double soffit = baseline.monitor().soffit();
        if (Double.isFinite(soffit)) {
            open.soffit = forecast(line, block, soffit);
        }
    }

    private static Optional<LevelForecast> forecast(TheilSen line, long block, double level) {
        double rise = level - line.intercept();
        if (!(rise > 0
                && line.lower() > 0
                && rise / line.slope() <= LONGEST_FORECAST_DAYS
                && rise / line.lower() <= LATEST_FORECAST_DAYS)) {
            return Optional.empty();
        }
        return Optional.of(new LevelForecast(
                level,
                after(block, rise / line.slope()),
                after(block, rise / line.upper()),
                after(block, rise / line.lower())));
    }

    private static Instant after(long block, double days) {
        return EpochNanos.toInstant(time(block + 1)).plusSeconds(Math.round(days * 86_400));
    }

    void finish(long end) {
        if (isOpen()) {
            Track open = track.orElseThrow();
            judge(blocks.number(blocks.size() - 1), open, true);
            findings.report(WatchNotice.Kind.STANDING, end, open);
        }
    }

    StateText write() {
        StateText text = StateText.of("change-watch", 1)
                .with("sums", sums)
                .with("starts", starts)
                .with("lastDryBlock", lastDryBlock)
                .with("track", track.map(each -> each.write().toString()).orElse(""))
                .with("doubtful", doubtful.map(each -> each.write().toString()).orElse(""))
                .with("channel", channel)
                .with("sign", sign)
                .with("blocksOfTrack", new long[] {start, openedAt, closedAt})
                .with("risen", risen)
                .with("largest", largest)
                .with("votes", votes.stream().mapToLong(Long::longValue).toArray())
                .with("across", new long[] {across, acrossToo})
                .with("reported", reported)
                .with("weak", Arrays.stream(weak).asLongStream().toArray());
        hours.write(text, "hour");
        blocks.write(text, "block");
        return text;
    }

    void read(String state) {
        StateText text = StateText.parse("change-watch", 1, state);
        System.arraycopy(text.numbers("sums"), 0, sums, 0, DIRECTIONS);
        System.arraycopy(text.counts("starts"), 0, starts, 0, DIRECTIONS);
        lastDryBlock = text.count("lastDryBlock");
        track = track(text.text("track"));
        doubtful = track(text.text("doubtful"));
        channel = text.index("channel");
        sign = text.index("sign");
        long[] times = text.counts("blocksOfTrack");
        start = times[0];
        openedAt = times[1];
        closedAt = times[2];
        risen = text.flag("risen");
        largest = text.number("largest");
        for (long vote : text.counts("votes")) {
            votes.add(vote);
        }
        long[] rays = text.counts("across");
        across = (int) rays[0];
        acrossToo = (int) rays[1];
        reported = text.text("reported");
        long[] weakly = text.counts("weak");
        for (int i = 0; i < DIRECTIONS; i++) {
            weak[i] = (int) weakly[i];
        }
        hours.read(text, "hour");
        blocks.read(text, "block");
    }

    private static Optional<Track> track(String text) {
        return text.isEmpty() ? Optional.empty() : Optional.of(Track.read(text));
    }
}
