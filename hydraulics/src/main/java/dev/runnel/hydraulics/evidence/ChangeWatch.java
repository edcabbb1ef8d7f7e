package dev.runnel.hydraulics.evidence;

import dev.runnel.internal.StateText;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;

/** The sequential detectors on hours, and the life of the one finding they may have open. */
final class ChangeWatch {
    /** One hour of a block is no median of it. */
    private static final int LEAST_HOURS_OF_BLOCK = 2;

    private static final int VERSION = 2;

    /** Days from its opening in which a finding is judged at every block, later once a day; chosen here. */
    private static final int FRESH_BLOCKS = 2 * ChangeSeries.BLOCKS_PER_DAY;

    private static final long NONE = Long.MIN_VALUE;

    private static final Set<FindingName> SLOW =
            EnumSet.of(FindingName.HELD_UP, FindingName.VELOCITY_LOSS, FindingName.VELOCITY_LOW_FOR_DEPTH);

    private final Findings findings;
    private final ChangeSeries series;
    private final ChangeSums sums;
    private final FollowedChange change = new FollowedChange();
    private final ChangeNames names;
    private final ChangeJudge judge;
    private final DoubtfulBaseline doubt;
    private long lastDryBlock = NONE;
    private Optional<Track> track = Optional.empty();
    private String reported = "";

    ChangeWatch(WatchRule rule, Findings findings, TideWatch tide) {
        this.findings = findings;
        this.series = new ChangeSeries(rule.baseline());
        this.sums = new ChangeSums(series, tide);
        this.names = new ChangeNames(rule.baseline(), series, change);
        this.judge = new ChangeJudge(rule, series, change, names);
        this.doubt = new DoubtfulBaseline(series, findings);
    }

    boolean isOpen() {
        return track.map(each -> each.open).orElse(false);
    }

    /** Takes what an hour leaves over; of the velocity at its depth as it is judged, and as it stands. */
    void hour(long hour, double r, double d, double u, double q, double plain) {
        series.hours.add(hour, r, d, u, q, plain);
        if (isOpen() && !isWater()) {
            return;
        }
        int found = isOpen() ? sums.addAtDepth(hour) : sums.add(hour);
        // More water moves no velocity at its depth: what does so later is something else.
        if (found >= 0 && (!isOpen() || sums.start(found) > change.openedAt)) {
            long block = ChangeSeries.blockOf(hour);
            // The block that is not over yet, so that what is told now rests on all there is; it comes again when it
            // ends.
            series.addBlock(block, 1);
            open(found, block, (hour + 1) * SiteHour.NANOS);
            series.blocks.dropLast();
        }
    }

    /**
     * Whether what is open makes slow water or is a velocity that reads low: then zeros and low velocities are a part of it.
     * More water, another level or a moved depth sensor make none.
     */
    boolean slows() {
        return isOpen() && track.orElseThrow().names.stream().anyMatch(SLOW::contains);
    }

    /** Whether what is open is water alone, which may come and go for half a year. */
    boolean isWater() {
        FindingName name = track.map(each -> each.names.get(0)).orElse(FindingName.LEVEL_UP);
        return isOpen()
                && change.channel != ChangeSeries.R
                && (name == FindingName.MORE_WATER || name == FindingName.LESS_WATER);
    }

    /** Ends a block: its medians go to the open finding. */
    void block(long block) {
        double[] row = series.addBlock(block, LEAST_HOURS_OF_BLOCK);
        if (!Double.isNaN(row[ChangeSeries.D])) {
            lastDryBlock = block;
        }
        if (isOpen()) {
            goOn(block, ChangeSeries.time(block + 1));
        } else {
            series.blocks.dropBefore(sums.earliestOfAll(block) - ChangeJudge.BLOCKS_BEFORE);
        }
    }

    private void open(int found, long block, long end) {
        boolean overtakes = isOpen();
        long earliest = overtakes ? sums.start(found) : sums.earliestOfFull(found);
        int quantity = ChangeSums.quantity(found);
        int direction = ChangeSums.direction(found);
        boolean returned = !overtakes
                && track.isPresent()
                && ChangeEnd.isReturn(change, track.orElseThrow().names.get(0), quantity, direction, earliest);
        if (!returned && !overtakes && doubt.isDoubtful(found)) {
            sums.clear();
            doubt.tell(found, sums.start(found), block, end);
            return;
        }
        double[] origin = new double[Quantity.COUNT];
        if (overtakes) {
            Track water = track.orElseThrow();
            water.close(ChangeSeries.time(earliest));
            findings.report(WatchNotice.Kind.CLOSED, end, water);
            origin = series.before(earliest);
        }
        if (!returned) {
            track = Optional.of(findings.open(FindingName.LEVEL_UP, ChangeSeries.time(earliest), end));
            names.clear();
            change.begin(quantity, direction, earliest, block);
            System.arraycopy(origin, 0, change.origin, 0, origin.length);
        }
        Track open = track.orElseThrow();
        open.open = true;
        open.returns += returned ? 1 : 0;
        change.risen = true;
        judge.judge(block, open, returned);
        reported = summary(open);
        findings.report(returned ? WatchNotice.Kind.RETURNED : WatchNotice.Kind.FOUND, end, open);
    }

    private void goOn(long block, long end) {
        Track open = track.orElseThrow();
        Falls.count(series, change, end, open);
        double lastDay = series.lastDay(change.channel);
        change.largest =
                Math.max(change.largest, Double.isNaN(lastDay) ? 0 : Math.abs(lastDay) / series.scale(change.channel));
        names.vote(block);
        if (ChangeEnd.isOver(series, change, block, lastDryBlock)) {
            judge.judge(block, open, false);
            close(block, end, open);
            return;
        }
        boolean dayEnds = Math.floorMod(block + 1, (long) ChangeSeries.BLOCKS_PER_DAY) == 0;
        if (dayEnds || block - change.openedAt < FRESH_BLOCKS) {
            judge.judge(block, open, true);
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

    private void close(long block, long end, Track open) {
        open.close(ChangeEnd.lastAway(series, change, block));
        change.closedAt = block;
        doubt.closed(change, block, open);
        sums.clear();
        findings.report(WatchNotice.Kind.CLOSED, end, open);
    }

    void finish(long end) {
        if (isOpen()) {
            Track open = track.orElseThrow();
            judge.judge(series.blocks.number(series.blocks.size() - 1), open, true);
            findings.report(WatchNotice.Kind.STANDING, end, open);
        }
    }

    StateText write() {
        StateText text = StateText.of("change-watch", VERSION);
        sums.write(text);
        text.with("lastDryBlock", lastDryBlock)
                .with("track", track.map(each -> each.write().toString()).orElse(""))
                .with("doubtful", doubt.track())
                .with("channel", change.channel)
                .with("sign", change.sign)
                .with("blocksOfTrack", new long[] {change.start, change.openedAt, change.closedAt})
                .with("risen", change.risen)
                .with("largest", change.largest)
                .with("origin", change.origin)
                .with("votes", names.votes())
                .with("stands", names.stands())
                .with("across", names.acrossRays())
                .with("reported", reported)
                .with("weak", doubt.counts());
        series.hours.write(text, "hour");
        series.blocks.write(text, "block");
        return text;
    }

    void read(String state) {
        StateText text = StateText.parse("change-watch", VERSION, state);
        sums.read(text);
        lastDryBlock = text.count("lastDryBlock");
        String found = text.text("track");
        track = found.isEmpty() ? Optional.empty() : Optional.of(Track.read(found));
        doubt.read(text);
        change.channel = text.index("channel");
        change.sign = text.index("sign");
        long[] times = text.counts("blocksOfTrack", 3);
        change.start = times[0];
        change.openedAt = times[1];
        change.closedAt = times[2];
        change.risen = text.flag("risen");
        change.largest = text.number("largest");
        // What a season had moved before is not in states of version 1.
        if (text.has("origin")) {
            System.arraycopy(text.numbers("origin", Quantity.COUNT), 0, change.origin, 0, Quantity.COUNT);
        }
        names.read(text);
        reported = text.text("reported");
        series.hours.read(text, "hour");
        series.blocks.read(text, "block");
    }
}
