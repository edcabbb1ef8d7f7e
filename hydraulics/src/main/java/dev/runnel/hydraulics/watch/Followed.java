package dev.runnel.hydraulics.watch;

import dev.runnel.internal.StateText;
import java.util.Optional;

/** A change with its finding, its names and who judges it. */
final class Followed {
    private static final String NAME = "followed";
    private static final int VERSION = 1;

    final FollowedChange change = new FollowedChange();
    final ChangeNames names;
    final ChangeJudge judge;

    /** The finding; empty before the first. */
    Optional<Track> track = Optional.empty();

    /** What was last reported of it. */
    String reported = "";

    /** Whether it was closed only because another change began within it. */
    boolean rests;

    Followed(WatchRule rule, ChangeSeries series) {
        this.names = new ChangeNames(rule.baseline(), series, change);
        this.judge = new ChangeJudge(rule, series, change, names);
    }

    boolean isOpen() {
        return track.isPresent() && track.orElseThrow().open;
    }

    /** Whether it is more or less water first, told by depth, velocity or flow. */
    boolean isWater() {
        return isOpen()
                && change.channel != ChangeSeries.R
                && isWater(track.orElseThrow().names.get(0));
    }

    private static boolean isWater(FindingName name) {
        return name == FindingName.MORE_WATER || name == FindingName.LESS_WATER;
    }

    /** Whether a movement that began in a block is this change again. */
    boolean isReturn(int quantity, int direction, long earliest) {
        return track.isPresent()
                && !isOpen()
                && ChangeEnd.isReturn(change, track.orElseThrow().names.get(0), quantity, direction, earliest);
    }

    void begin(Track opened, int quantity, int direction, long start, long block) {
        track = Optional.of(opened);
        names.clear();
        change.begin(quantity, direction, start, block);
        rests = false;
    }

    /** Gives the finding its names anew; what was ever called water is remembered as that. */
    void judge(long block, boolean shapeToo) {
        judge.judge(block, track.orElseThrow(), shapeToo);
        change.mayBeWater |= track.orElseThrow().names.stream().anyMatch(Followed::isWater);
        if (isWater()) {
            change.waterUntil = block;
            change.water = track.orElseThrow().names.get(0);
        }
    }

    String summary() {
        Track open = track.orElseThrow();
        return open.names + " " + open.shape + " " + open.recurrence().isPresent() + " " + open.alarm.isPresent();
    }

    void write(StateText text) {
        text.with("track", track.map(each -> each.write().toString()).orElse(""))
                .with("channel", change.channel)
                .with("sign", change.sign)
                .with("blocksOfTrack", new long[] {change.start, change.openedAt, change.closedAt})
                .with("waterUntil", change.waterUntil)
                .with("mayBeWater", change.mayBeWater)
                .with("water", change.water.name())
                .with("seenFrom", change.seenFrom)
                .with("risen", change.risen)
                .with("largest", change.largest)
                .with("origin", change.origin)
                .with("rests", rests)
                .with("reported", reported);
        change.jump.ifPresent(jump -> jump.write(text, "jump"));
        names.write(text);
    }

    String write() {
        StateText text = StateText.of(NAME, VERSION);
        write(text);
        return text.toString();
    }

    void read(String state) {
        read(StateText.parse(NAME, VERSION, state));
    }

    void read(StateText text) {
        String found = text.text("track");
        track = found.isEmpty() ? Optional.empty() : Optional.of(Track.read(found));
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
        // Not in older states: then nothing rests, and what is water now was so until now.
        rests = text.has("rests") && text.flag("rests");
        change.waterUntil = text.has("waterUntil") ? text.count("waterUntil") : Long.MIN_VALUE;
        change.mayBeWater = text.has("mayBeWater") && text.flag("mayBeWater");
        change.water = text.has("water") ? text.constant("water", FindingName.class) : FindingName.MORE_WATER;
        change.seenFrom = text.has("seenFrom") ? text.count("seenFrom") : change.start;
        change.jump = text.has("jumpStep") ? Optional.of(DepthJump.read(text, "jump")) : Optional.empty();
        names.read(text);
        reported = text.text("reported");
    }
}
