package dev.runnel.hydraulics.watch;

import dev.runnel.internal.StateText;
import java.util.List;
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

    /** It is one that was told before it: what it is goes there, and the beginning stays. */
    void become(Track told) {
        Track own = track.orElseThrow();
        told.names = own.names;
        told.direction = own.direction;
        told.moved = own.moved;
        told.alarm = own.alarm;
        told.soffit = own.soffit;
        told.detail = own.detail;
        track = Optional.of(told);
        change.slowly = true;
    }

    /** Its finding is told again; the change has stood away again since a block. */
    void comeBack(long from, long block, long end) {
        change.comeBack(from, block, end, track.orElseThrow());
        names.comeBack();
    }

    /**
     * Whether what came back to stay puts other readings in doubt than the finding did when it closed, so that one name for both
     * would accuse good days or clear bad ones. What was small when it closed, or had no name yet, has now shown what it is.
     */
    boolean isAnother(long block) {
        return names.isLong(block) && change.closedLargest >= DoubtfulBaseline.WEAK && wasNamed() && doubtsOthers();
    }

    private boolean doubtsOthers() {
        return change.closedAs
                .map(closed -> !DoubtfulReadings.doubted(Track.read(closed).names)
                        .equals(DoubtfulReadings.doubted(track.orElseThrow().names)))
                .orElse(false);
    }

    private boolean wasNamed() {
        return change.closedAs.map(closed -> isNamed(Track.read(closed).names)).orElse(false);
    }

    /** What came back for less time than it had stood before does not name both. */
    void keepNames(long block) {
        if (!doubtsOthers() || names.isLong(block)) {
            return;
        }
        boolean longer = block - change.spell >= change.closedAt - change.start;
        if (!isNamed(track.orElseThrow().names) || wasNamed() && !longer) {
            track.orElseThrow().names = Track.read(change.closedAs.orElseThrow()).names;
        }
    }

    private static boolean isNamed(List<FindingName> names) {
        return !names.contains(FindingName.VELOCITY_LOW_FOR_DEPTH)
                && !names.contains(FindingName.VELOCITY_HIGH_FOR_DEPTH);
    }

    /** Makes what came back a finding of its own; returns the one it was part of, as it had closed. */
    Track part(Findings findings) {
        Track both = track.orElseThrow();
        Track closed = Track.read(change.closedAs.orElseThrow());
        Track own = findings.open(both.names.get(0), ChangeSeries.time(change.spell), change.spellToldAt);
        own.names = both.names;
        own.direction = both.direction;
        own.latest = change.spellToldAt;
        own.moved = both.moved;
        own.detail = both.detail;
        track = Optional.of(own);
        change.part(judge.distance());
        names.part();
        return closed;
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
                .with("quietFrom", change.quietFrom)
                .with("mayBeWater", change.mayBeWater)
                .with("water", change.water.name())
                .with("seenFrom", change.seenFrom)
                .with("spell", new long[] {change.spell, change.spellTold, change.spellToldAt, change.after})
                .with("closedAs", change.closedAs.orElse(""))
                .with("closedLargest", change.closedLargest)
                .with("risen", change.risen)
                .with("largest", change.largest)
                .with("slowly", change.slowly)
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
        change.slowly = text.flag("slowly");
        System.arraycopy(text.numbers("origin", Quantity.COUNT), 0, change.origin, 0, Quantity.COUNT);
        rests = text.flag("rests");
        change.waterUntil = text.count("waterUntil");
        change.quietFrom = text.count("quietFrom");
        change.mayBeWater = text.flag("mayBeWater");
        change.water = text.constant("water", FindingName.class);
        change.seenFrom = text.count("seenFrom");
        long[] spell = text.counts("spell", 4);
        change.spell = spell[0];
        change.spellTold = spell[1];
        change.spellToldAt = spell[2];
        change.after = spell[3];
        change.closedLargest = text.number("closedLargest");
        String closed = text.text("closedAs");
        change.closedAs = closed.isEmpty() ? Optional.empty() : Optional.of(closed);
        change.jump = text.has("jumpStep") ? Optional.of(DepthJump.read(text, "jump")) : Optional.empty();
        names.read(text);
        reported = text.text("reported");
    }
}
