package dev.runnel.hydraulics.watch;

import dev.runnel.internal.StateText;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** The sequential detectors on hours, and the life of the one finding they may have open. */
final class ChangeWatch {
    /** One hour of a block is no median of it. */
    private static final int LEAST_HOURS_OF_BLOCK = 2;

    private static final int VERSION = 2;

    /** Days from its opening in which a finding is judged at every block, later once a day; chosen here. */
    private static final int FRESH_BLOCKS = 2 * ChangeSeries.BLOCKS_PER_DAY;

    /** What moves the velocity at its depth by so much later than the depth is no part of it: a week; chosen here. */
    private static final int LATER_BLOCKS = 7 * ChangeSeries.BLOCKS_PER_DAY;

    /** Days, and blocks known of them, that show whether what rested still stands away. */
    private static final int REST_BLOCKS = 2 * ChangeSeries.BLOCKS_PER_DAY;

    private static final int LEAST_REST_BLOCKS = 3;

    /** A finding that began no earlier than this before a leap, or was told after it, is of the leap. */
    private static final int GIVEN_BLOCKS = 2 * ChangeSeries.BLOCKS_PER_DAY;

    private static final int BY_WATER = 0;
    private static final int BY_RELATION = 1;
    private static final long NONE = Long.MIN_VALUE;

    private static final Set<FindingName> VELOCITY_ALONE =
            EnumSet.of(FindingName.VELOCITY_LOSS, FindingName.VELOCITY_GAIN);

    private static final Set<FindingName> SLOW =
            EnumSet.of(FindingName.HELD_UP, FindingName.VELOCITY_LOSS, FindingName.VELOCITY_LOW_FOR_DEPTH);

    private static final Set<FindingName> LOWERED = EnumSet.of(FindingName.DEPTH_DRIFT, FindingName.DEPTH_STEP);

    private final Findings findings;
    private final ChangeSeries series;
    private final ChangeSums sums;
    private final Followed[] followed;
    private final DoubtfulBaseline doubt;
    private final DepthJumps jumps;
    private final SlowChange slow;
    private long lastDryBlock = NONE;

    /** Which of the two is open, or was last. */
    private int now;

    ChangeWatch(WatchRule rule, Findings findings, TideWatch tide) {
        this.findings = findings;
        this.series = new ChangeSeries(rule.baseline());
        this.sums = new ChangeSums(series, tide, rule.baseline().strokes);
        this.followed = new Followed[] {new Followed(rule, series), new Followed(rule, series)};
        this.doubt = new DoubtfulBaseline(series, findings);
        this.jumps = new DepthJumps(rule.baseline());
        this.slow = new SlowChange(rule.baseline(), series, findings);
    }

    private Followed current() {
        return followed[now];
    }

    private Followed other() {
        return followed[1 - now];
    }

    boolean isOpen() {
        return current().isOpen();
    }

    /** Takes what an hour leaves over; of the velocity at its depth as it is judged, and as it stands. */
    void hour(long hour, double r, double d, double u, double q, double plain) {
        series.hours.add(hour, r, d, u, q, plain);
        if (isOpen() && current().change.channel == ChangeSeries.R) {
            return;
        }
        int found = isOpen() ? sums.addAtDepth(hour) : sums.add(hour);
        if (found >= 0 && (!isOpen() || isAnother(sums.start(found)))) {
            long block = ChangeSeries.blockOf(hour);
            // The block that is not over yet, so that what is told now rests on all there is; it comes again when it
            // ends.
            series.addBlock(block, 1);
            open(found, block, (hour + 1) * SiteHour.NANOS);
            series.blocks.dropLast();
        }
    }

    /** Looks for a depth that stepped from one reading to the next, once the hour is among those taken. */
    void steps(SiteHour hour, double d, double u) {
        jumps.hour(hour, d, u).ifPresent(jump -> stepped(jump, hour.hour));
    }

    private void stepped(DepthJump jump, long hour) {
        long start = ChangeSeries.blockOf(jump.hour());
        boolean same = isOpen() && current().change.openedAt >= start;
        if (isOpen() && !same && !isWater()) {
            return;
        }
        long block = ChangeSeries.blockOf(hour);
        long end = (hour + 1) * SiteHour.NANOS;
        series.addBlock(block, 1);
        if (same) {
            Followed following = current();
            following.change.jump = Optional.of(jump);
            following.judge(block, true);
            following.reported = following.summary();
            findings.report(WatchNotice.Kind.CHANGED, end, following.track.orElseThrow());
        } else {
            // A level that reads higher makes a velocity look low for it.
            boolean alone = jumps.isAlone();
            int direction = alone ? jump.sign() : -jump.sign();
            double[] origin = new double[Quantity.COUNT];
            if (isOpen()) {
                origin = series.before(start);
                rest(start, end);
            }
            begin(alone ? ChangeSeries.D : ChangeSeries.R, direction, start, block, end);
            System.arraycopy(origin, 0, current().change.origin, 0, origin.length);
            current().change.jump = Optional.of(jump);
            tell(false, start, block, end);
        }
        series.blocks.dropLast();
    }

    /**
     * Whether what moves the velocity at its depth since a block is something else than what is open. More water moves none,
     * whatever it was renamed to since; nor does what may be water, among else, move it a week later than the depth, for it
     * is the first to move.
     */
    private boolean isAnother(long start) {
        FollowedChange change = current().change;
        if (start > change.openedAt && (isWater() || start <= change.waterUntil)) {
            return true;
        }
        return start - change.start >= LATER_BLOCKS
                && change.mayBeWater
                && current().names.isAnother(start, series.before(start));
    }

    /**
     * Whether what is open makes slow water or is a velocity that reads low: then zeros and low velocities are a part of it.
     * More water, another level or a moved depth sensor make none.
     */
    boolean slows() {
        return isOpen() && current().track.orElseThrow().names.stream().anyMatch(SLOW::contains);
    }

    /** Whether what is open is a depth sensor that reads too low: depths of next to nothing are a part of it. */
    boolean lowersDepth() {
        if (!isOpen()) {
            return false;
        }
        FollowedChange change = current().change;
        boolean down = change.channel == ChangeSeries.R ? change.sign > 0 : change.sign < 0;
        return down && current().track.orElseThrow().names.stream().anyMatch(LOWERED::contains);
    }

    /** Whether what is open is something else than water that may have moved the depth as it is read. */
    boolean movesDepth() {
        return isOpen()
                && !isWater()
                && !VELOCITY_ALONE.containsAll(current().track.orElseThrow().names);
    }

    /** Whether what is open is water alone, which may come and go for half a year. */
    boolean isWater() {
        return current().isWater();
    }

    /** Forgets all since a time, when the readings turn out to be of another unit, and gives away what it told of them. */
    Optional<Track> giveAway(long since, long end) {
        long hour = Math.floorDiv(since, SiteHour.NANOS);
        series.dropFrom(hour);
        sums.clear();
        jumps.dropFrom(hour);
        slow.dropFrom(hour);
        FollowedChange change = current().change;
        long block = ChangeSeries.blockOf(hour);
        if (!isOpen() || change.start < block - GIVEN_BLOCKS && change.openedAt < block) {
            return Optional.empty();
        }
        Optional<Track> given = current().track;
        current().track = Optional.empty();
        resume(block, end);
        return given;
    }

    /** Ends a block: its medians go to the open finding. */
    void block(long block) {
        double[] row = series.addBlock(block, LEAST_HOURS_OF_BLOCK);
        if (!Double.isNaN(row[ChangeSeries.D])) {
            lastDryBlock = block;
        }
        if (isOpen()) {
            goOn(block, ChangeSeries.time(block + 1));
            stepWithinSeason(block, ChangeSeries.time(block + 1));
        } else {
            series.blocks.dropBefore(sums.earliestOfAll(block) - ChangeJudge.BLOCKS_BEFORE);
        }
        slow.block(block, isOpen() && !isWater() ? Optional.of(current().change.start) : Optional.empty());
    }

    /** Looks once a day for a step within what is called more or less water. */
    private void stepWithinSeason(long block, long end) {
        if (!endsDay(block) || !isWater()) {
            return;
        }
        current()
                .names
                .seasonStep(block)
                .ifPresent(step -> overtake(ChangeSeries.R, step.direction, step.block, block, end));
    }

    private static boolean endsDay(long block) {
        return Math.floorMod(block + 1, (long) ChangeSeries.BLOCKS_PER_DAY) == 0;
    }

    private void open(int found, long block, long end) {
        int quantity = ChangeSums.quantity(found);
        int direction = ChangeSums.direction(found);
        if (isOpen()) {
            overtake(quantity, direction, sums.start(found), block, end);
            return;
        }
        long earliest = sums.earliestOfFull(found);
        boolean told = isToldSlowly(quantity);
        boolean same = !told && current().isReturn(quantity, direction, earliest);
        boolean before = !told && !same && other().isReturn(quantity, direction, earliest);
        if (!told && !same && !before && doubt.isDoubtful(found)) {
            sums.clear();
            doubt.tell(found, sums.start(found), block, end);
            return;
        }
        if (before) {
            now = 1 - now;
        } else if (!same) {
            begin(quantity, direction, earliest, block, end);
        }
        Arrays.fill(current().change.origin, 0);
        tell(same || before, earliest, block, end);
    }

    /** Whether its weeks told of it already: then it is that finding, and no return of another, nor a doubt of the baseline. */
    private boolean isToldSlowly(int quantity) {
        return quantity == ChangeSeries.R && slow.isNow();
    }

    /** Lets what is open rest, and tells of another change within it. */
    private void overtake(int quantity, int direction, long earliest, long block, long end) {
        double[] origin = series.before(earliest);
        rest(earliest, end);
        boolean before = !isToldSlowly(quantity) && other().isReturn(quantity, direction, earliest);
        if (before) {
            now = 1 - now;
        } else {
            begin(quantity, direction, earliest, block, end);
        }
        System.arraycopy(origin, 0, current().change.origin, 0, origin.length);
        tell(before, earliest, block, end);
    }

    /** What rests, or may come back, stays beside what begins: one change of each kind is remembered. */
    private void begin(int quantity, int direction, long earliest, long block, long end) {
        now = quantity == ChangeSeries.R ? BY_RELATION : BY_WATER;
        Track opened = findings.open(FindingName.LEVEL_UP, ChangeSeries.time(earliest), end);
        current().begin(opened, quantity, direction, earliest, block);
        if (quantity != ChangeSeries.R) {
            current().names.sinceBeginning();
        }
    }

    /** Closes what is open where another change begins within it. */
    private void rest(long from, long end) {
        Track water = current().track.orElseThrow();
        if (current().change.waterUntil >= from) {
            // What it was called since was the doing of what began.
            water.names = List.of(current().change.water);
        }
        water.close(ChangeSeries.time(from));
        current().change.closedAt = from;
        current().rests = true;
        findings.report(WatchNotice.Kind.CLOSED, end, water);
    }

    private void tell(boolean returned, long from, long block, long end) {
        Followed opened = current();
        if (returned) {
            opened.comeBack(from, block, end);
        } else {
            opened.change.spellToldAt = end;
        }
        Track open = opened.track.orElseThrow();
        if (returned) {
            open.comeBack(ChangeSeries.time(from));
        }
        opened.rests = false;
        opened.change.risen = true;
        opened.judge(block, returned);
        boolean known = !returned && becomesSlow();
        opened.reported = opened.summary();
        WatchNotice.Kind kind = known ? WatchNotice.Kind.CHANGED : WatchNotice.Kind.FOUND;
        findings.report(returned ? WatchNotice.Kind.RETURNED : kind, end, opened.track.orElseThrow());
    }

    /**
     * Makes it the finding that its weeks told of already, if they did, with its beginning; returns whether they did. Water moves no velocity at its depth,
     * and what leapt a moment ago did not stand for weeks.
     */
    private boolean becomesSlow() {
        if (isWater() || current().change.jump.isPresent()) {
            return false;
        }
        Optional<Track> told = slow.give();
        told.ifPresent(first -> {
            findings.withdraw(current().track.orElseThrow());
            current().become(first);
        });
        return told.isPresent();
    }

    private void goOn(long block, long end) {
        Followed following = current();
        FollowedChange change = following.change;
        Track open = following.track.orElseThrow();
        Falls.count(series, change, end, open);
        double lastDay = series.lastDay(change.channel) - change.origin[change.channel];
        change.largest =
                Math.max(change.largest, Double.isNaN(lastDay) ? 0 : Math.abs(lastDay) / series.scale(change.channel));
        if (following.judge.isThere(block)) {
            following.names.vote(block);
        }
        boolean wasQuiet = change.quietFrom != FollowedChange.NONE;
        if (ChangeEnd.isOver(series, change, block, lastDryBlock, open)) {
            following.judge(block, false);
            following.keepNames(block);
            close(block, end, open);
            return;
        }
        if (wasQuiet && change.quietFrom == FollowedChange.NONE) {
            change.standAgain(block, end);
            following.names.comeBack();
        }
        if (endsDay(block) || block - change.openedAt < FRESH_BLOCKS) {
            following.judge(block, true);
            if (partIfAnother(block, end)) {
                return;
            }
            String summary = following.summary();
            if (!summary.equals(following.reported)) {
                following.reported = summary;
                findings.report(WatchNotice.Kind.CHANGED, end, open);
            }
        }
    }

    /** Makes what came back a finding of its own if it puts other readings in doubt than what closed before. */
    private boolean partIfAnother(long block, long end) {
        Followed following = current();
        if (!following.isAnother(block)) {
            return false;
        }
        findings.report(WatchNotice.Kind.CLOSED, end, following.part(findings));
        following.judge(block, true);
        following.reported = following.summary();
        findings.report(WatchNotice.Kind.FOUND, end, following.track.orElseThrow());
        return true;
    }

    private void close(long block, long end, Track open) {
        FollowedChange change = current().change;
        open.close(ChangeEnd.lastAway(series, change, block));
        change.closedAt = block;
        doubt.closed(change, block, open);
        sums.clear();
        findings.report(WatchNotice.Kind.CLOSED, end, open);
        if (stillStands(other().change)) {
            resume(block - REST_BLOCKS + 1, end);
        } else {
            other().rests = false;
        }
    }

    /** Goes on with what rested, if anything did, by what is seen from a block on. */
    private void resume(long seenFrom, long end) {
        if (other().rests) {
            now = 1 - now;
            current().change.seenFrom = seenFrom;
            tell(true, seenFrom, ChangeSeries.blockOf(Math.floorDiv(end, SiteHour.NANOS) - 1), end);
        }
    }

    /** Whether what another change began within is still there now that this is over. */
    private boolean stillStands(FollowedChange change) {
        int from = series.blocks.from(series.blocks.number(series.blocks.size() - 1) - REST_BLOCKS + 1);
        double[] known = Medians.known(series.blocks.column(from, change.channel));
        return known.length >= LEAST_REST_BLOCKS
                && change.sign * Medians.of(known) > ChangeEnd.FOUND * series.scale(change.channel);
    }

    void finish(long end) {
        if (isOpen()) {
            long block = series.blocks.number(series.blocks.size() - 1);
            current().judge(block, true);
            if (!partIfAnother(block, end)) {
                current().keepNames(block);
            }
            findings.report(WatchNotice.Kind.STANDING, end, current().track.orElseThrow());
        }
        slow.finish(end);
    }

    StateText write() {
        StateText text = StateText.of("change-watch", VERSION);
        sums.write(text);
        text.with("lastDryBlock", lastDryBlock)
                .with("doubtful", doubt.track())
                .with("weak", doubt.counts())
                .with("now", now)
                .with("slow", slow.write())
                .with("other", other().write());
        jumps.write(text);
        current().write(text);
        series.hours.write(text, "hour");
        series.blocks.write(text, "block");
        return text;
    }

    void read(String state) {
        StateText text = StateText.parse("change-watch", VERSION, state);
        sums.read(text);
        lastDryBlock = text.count("lastDryBlock");
        doubt.read(text);
        jumps.read(text);
        now = text.index("now");
        slow.read(text.text("slow"));
        other().read(text.text("other"));
        current().read(text);
        series.hours.read(text, "hour");
        series.blocks.read(text, "block");
    }
}
