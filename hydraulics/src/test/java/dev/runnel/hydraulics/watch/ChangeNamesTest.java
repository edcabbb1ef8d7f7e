package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.internal.StateText;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a change is called whose dry hours stand in a known direction from usual. */
class ChangeNamesTest {
    private static final SiteBaseline BASELINE = KnownHours.baseline(hour -> {});
    private static final Naming NAMING = Naming.of(BASELINE);
    private static final double B = NAMING.exponent();
    private static final double KAPPA = -NAMING.heldUp();
    private static final int R = ChangeSeries.R;
    private static final int D = ChangeSeries.D;
    private static final int U = ChangeSeries.U;

    /** Block in which the change began and was told. */
    private static final long START = 1000;

    private final ChangeSeries series = new ChangeSeries(BASELINE);
    private final FollowedChange change = new FollowedChange();
    private final ChangeNames names = new ChangeNames(BASELINE, series, change);
    private final Track open = new Track(1, FindingName.LEVEL_UP, 0, 0);
    private long block = START - 1;

    private static double[] heldUp(double size) {
        return new double[] {size, -KAPPA * size};
    }

    private static double[] water(double size) {
        return new double[] {size, B * size};
    }

    private static double[] depth(double size) {
        return new double[] {size, 0};
    }

    private static double[] velocity(double size) {
        return new double[] {0, size};
    }

    private ChangeNamesTest begin(int channel, int sign) {
        change.begin(channel, sign, START, START);
        return this;
    }

    /** Goes on for so many blocks of three dry hours each, which stand so far in ln depth and ln velocity; each votes. */
    private ChangeNamesTest stand(int blocks, double[] at) {
        for (int i = 0; i < blocks; i++) {
            block++;
            double apart = at[1] - B * at[0];
            for (long hour = 3 * block; hour < 3 * block + 3; hour++) {
                series.hours.add(
                        hour,
                        apart + series.centre(R),
                        at[0] + series.centre(D),
                        at[1] + series.centre(U),
                        at[0] + at[1],
                        apart + series.centre(R));
            }
            series.addBlock(block, 1);
            names.vote(block);
        }
        return this;
    }

    private List<FindingName> named(ChangeShape shape) {
        open.shape = shape;
        names.name(block, open, shape);
        return open.names;
    }

    private FindingName first() {
        return named(ChangeShape.UNCERTAIN).get(0);
    }

    @Test
    void eachDirectionHasItsName() {
        assertThat(alone(heldUp(0.6))).containsExactly(FindingName.HELD_UP);
        assertThat(alone(heldUp(-0.6))).containsExactly(FindingName.RELEASED);
        assertThat(alone(water(0.6))).containsExactly(FindingName.MORE_WATER);
        assertThat(alone(water(-0.6))).containsExactly(FindingName.LESS_WATER);
        assertThat(alone(velocity(-0.6))).containsExactly(FindingName.VELOCITY_LOSS);
        assertThat(alone(velocity(0.6))).containsExactly(FindingName.VELOCITY_GAIN);
        assertThat(alone(depth(0.6)))
                .containsExactly(FindingName.DEPTH_STEP, FindingName.DEPTH_DRIFT, FindingName.SEDIMENT);
        assertThat(alone(depth(-0.6))).containsExactly(FindingName.DEPTH_STEP, FindingName.DEPTH_DRIFT);
    }

    private static List<FindingName> alone(double[] at) {
        return new ChangeNamesTest().begin(D, at[0] < 0 ? -1 : 1).stand(30, at).named(ChangeShape.UNCERTAIN);
    }

    /** No water moves the velocity at its depth, and what would have moved it the other way did not. */
    @ParameterizedTest
    @CsvSource({"1, RELEASED VELOCITY_GAIN DEPTH_STEP", "-1, HELD_UP VELOCITY_LOSS DEPTH_STEP"})
    void whatMovedTheVelocityAtItsDepthIsNoWater(int sign, String possible) {
        for (double[] at : List.of(water(0.6), water(-0.6), heldUp(0.6), heldUp(-0.6), depth(0.6), depth(-0.6))) {
            FindingName name =
                    new ChangeNamesTest().begin(R, sign).stand(30, at).first();
            assertThat(possible).contains(name.name());
        }
    }

    @Test
    void withoutDryHoursOnlyWhatMovedIsTold() {
        double[] nothing = {Double.NaN, Double.NaN};
        for (int sign : new int[] {1, -1}) {
            assertThat(new ChangeNamesTest().begin(R, sign).stand(9, nothing).named(ChangeShape.STEP))
                    .containsExactly(
                            sign > 0 ? FindingName.VELOCITY_HIGH_FOR_DEPTH : FindingName.VELOCITY_LOW_FOR_DEPTH);
            assertThat(new ChangeNamesTest().begin(D, sign).stand(9, nothing).named(ChangeShape.STEP))
                    .containsExactly(sign > 0 ? FindingName.LEVEL_UP : FindingName.LEVEL_DOWN);
        }
        // What had a name keeps it until dry hours say something else.
        ChangeNamesTest before = begin(D, 1).stand(9, heldUp(0.6));
        assertThat(before.first()).isEqualTo(FindingName.HELD_UP);
        assertThat(before.stand(40, nothing).first()).isEqualTo(FindingName.HELD_UP);
    }

    /** Of twelve votes the first three are left out; nine are enough, and with less than eight the last hours decide alone. */
    @Test
    void firstVotesAreLeftOut() {
        begin(D, 1).stand(6, depth(0.6));
        cast(7, Naming.HELD_UP, 5, Naming.MORE_WATER);
        assertThat(first()).isEqualTo(FindingName.MORE_WATER);
        cast(8, Naming.HELD_UP, 4, Naming.MORE_WATER);
        assertThat(first()).isEqualTo(FindingName.HELD_UP);
        cast(1, Naming.HELD_UP, 9, Naming.MORE_WATER);
        assertThat(first()).isEqualTo(FindingName.DEPTH_STEP);
    }

    /** Of ten votes that count three are enough to be told beside the first, and two are not. */
    @Test
    void nameOfThreeVotesOfTenIsToldBesideTheFirst() {
        begin(D, 1).stand(6, heldUp(0.6));
        cast(11, Naming.HELD_UP, 3, Naming.MORE_WATER);
        assertThat(named(ChangeShape.STEP)).containsExactly(FindingName.HELD_UP, FindingName.MORE_WATER);
        cast(12, Naming.HELD_UP, 2, Naming.MORE_WATER);
        assertThat(named(ChangeShape.STEP)).containsExactly(FindingName.HELD_UP);
        // What the last hours say goes where the votes say something far from it.
        cast(2, Naming.MORE_WATER, 12, Naming.MORE_WATER);
        assertThat(named(ChangeShape.STEP)).containsExactly(FindingName.MORE_WATER);
    }

    /** So many votes for one name, and then so many for another. */
    private void cast(int first, long name, int then, long other) {
        StateText text = StateText.of("names", 1);
        names.clear();
        names.write(text);
        names.read(text.with(
                "votes",
                LongStream.concat(
                                LongStream.generate(() -> name).limit(first),
                                LongStream.generate(() -> other).limit(then))
                        .toArray()));
    }

    private List<Long> votes() {
        StateText text = StateText.of("names", 1);
        names.write(text);
        List<Long> found = new ArrayList<>();
        for (long vote : text.counts("votes")) {
            found.add(vote);
        }
        return found;
    }

    @Test
    void blocksVoteForFourWeeks() {
        begin(D, 1).stand(230, heldUp(0.6));
        // Those from 0 to 224 blocks after it began; three hours are too few to name anything.
        assertThat(votes()).hasSize(225).startsWith(-1L);
        assertThat(votes().subList(1, 225)).containsOnly((long) Naming.HELD_UP);
        names.clear();
        assertThat(votes()).isEmpty();
    }

    /** A step from one reading to the next is that of a sensor, whatever else stands there. */
    @Test
    void stepOfOneReadingIsTheSensors() {
        begin(D, 1).stand(10, heldUp(0.6));
        for (double step : new double[] {0.05, -0.05}) {
            change.jump = Optional.of(new DepthJump(step, 0.12, 0, 1));
            assertThat(named(ChangeShape.STEP)).containsExactly(FindingName.DEPTH_STEP);
        }
    }

    /** A bed that grows over ten days at the monitor lifts the water too, and the flow as read stands up. */
    @Test
    void slowRiseMayBeABed() {
        assertThat(grown(84, KAPPA * 0.7, ChangeShape.RAMP)).containsExactly(FindingName.HELD_UP, FindingName.SEDIMENT);
        assertThat(grown(79, KAPPA * 0.7, ChangeShape.RAMP)).startsWith(FindingName.HELD_UP);
        assertThat(grown(84, KAPPA * 0.7, ChangeShape.STEP)).containsExactly(FindingName.HELD_UP);
        assertThat(grown(84, KAPPA * 0.85, ChangeShape.RAMP)).containsExactly(FindingName.HELD_UP);
    }

    private static List<FindingName> grown(int blocks, double fall, ChangeShape shape) {
        return new ChangeNamesTest()
                .begin(D, 1)
                .stand(blocks, new double[] {0.6, -fall * 0.6})
                .named(shape);
    }

    @Test
    void tenDaysOfASpellAreLong() {
        begin(D, 1);
        assertThat(names.isLong(START + 79)).isFalse();
        assertThat(names.isLong(START + 80)).isTrue();
    }

    /** A movement within a change is another one where a name is clearly nearer than the one it has. */
    @Test
    void anotherChangeIsToldByItsWayFromTheDaysBefore() {
        begin(D, 1).stand(30, heldUp(0.6));
        double[] before = {0, 0.6, -KAPPA * 0.6, 0};
        assertThat(names.isAnother(block - 3, before)).as("not named yet").isFalse();
        first();
        stand(4, new double[] {0.6, -KAPPA * 0.6 - 0.6});
        assertThat(names.isAnother(block - 3, before)).isTrue();
        assertThat(names.isAnother(block + 1, before)).as("no hour yet").isFalse();
        stand(4, heldUp(1.0));
        assertThat(names.isAnother(block - 3, before)).isFalse();
    }

    @Test
    void whatPartsBecomesAChangeOfItsOwn() {
        begin(D, 1).stand(80, heldUp(0.6));
        assertThat(first()).isEqualTo(FindingName.HELD_UP);
        names.comeBack();
        change.spell = block + 1;
        change.spellTold = block + 1;
        change.seenFrom = block + 1;
        stand(60, water(0.6));
        names.part();
        change.part(1);
        assertThat(votes()).isEmpty();
        assertThat(first()).isEqualTo(FindingName.MORE_WATER);
    }

    @Test
    void weeksLeaveTheNameThatLiesNearest() {
        // Votes of the first weeks say one name, the many blocks since another, which counts half after each week.
        begin(D, 1).stand(225, heldUp(0.6)).stand(200, water(0.6));
        assertThat(first()).isEqualTo(FindingName.MORE_WATER);
    }
}
