package dev.runnel.hydraulics.watch;

import java.util.Arrays;
import java.util.Optional;

/** The change that the watch follows, or followed last: what moved, which way, since when, and how far at most. */
final class FollowedChange {
    /** No block. */
    static final long NONE = Long.MIN_VALUE;

    /** Ordinal of the quantity that told of it. */
    int channel;

    /** 1 if that went up, -1 if down. */
    int sign;

    /** Blocks in which it began, was told and closed. */
    long start;

    long openedAt;
    long closedAt;

    /** Block from which on hours tell what it is: its first, or the first after another change within it. */
    long seenFrom;

    /** Block from which on it has stood away without closing: its first, or that of its last return. */
    long spell;

    /** When that was told, ns, and in which block. */
    long spellToldAt;

    long spellTold;

    /** What the finding was when it closed before that; empty in its first spell. */
    Optional<String> closedAs = Optional.empty();

    /** Largest daily distance from usual until then, in scales. */
    double closedLargest;

    /** Block up to which readings are of another change, which closed in it. */
    long after = Long.MIN_VALUE;

    /** Last block in which it was called water first; the least number if it never was. */
    long waterUntil = Long.MIN_VALUE;

    /** Whether more or less water ever was among its names. */
    boolean mayBeWater;

    /** Which water that was. */
    FindingName water = FindingName.MORE_WATER;

    /** Block from which on all is as usual again while it is still open; none while it is not. */
    long quietFrom = NONE;

    /** Whether it stands high, so that it may fall. */
    boolean risen;

    /** Where the quantities stood before it: 0 but in a season that another finding tells of. */
    final double[] origin = new double[Quantity.COUNT];

    /** The step from one reading to the next that it is, if it is one. */
    Optional<DepthJump> jump = Optional.empty();

    /** Whether it was told by its weeks first, whose beginning it keeps. */
    boolean slowly;

    /** Largest daily distance from usual, in scales. */
    double largest;

    boolean isWithinSeason() {
        return origin[ChangeSeries.D] != 0;
    }

    /** It went and came without closing; what it is now shows from here on. */
    void standAgain(long block, long end) {
        spell = block;
        spellTold = block;
        spellToldAt = end;
    }

    /** It is back since a block, after its finding closed. */
    void comeBack(long from, long block, long end, Track closed) {
        spell = from;
        quietFrom = NONE;
        spellTold = block;
        spellToldAt = end;
        closedAs = Optional.of(closed.write().toString());
        closedLargest = largest;
    }

    /** What came back turns out to be a change of its own. */
    void part(double distance) {
        start = spell;
        openedAt = spellTold;
        after = closedAt;
        closedAs = Optional.empty();
        jump = Optional.empty();
        slowly = false;
        largest = distance;
        waterUntil = Long.MIN_VALUE;
        mayBeWater = false;
    }

    void begin(int quantity, int direction, long startBlock, long block) {
        channel = quantity;
        quietFrom = NONE;
        sign = direction;
        start = startBlock;
        seenFrom = startBlock;
        spell = startBlock;
        spellTold = block;
        closedAs = Optional.empty();
        after = Long.MIN_VALUE;
        openedAt = block;
        largest = 0;
        jump = Optional.empty();
        slowly = false;
        waterUntil = Long.MIN_VALUE;
        mayBeWater = false;
        Arrays.fill(origin, 0);
    }
}
