package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/** Falls of a velocity at its depth back to usual, block by block of three hours; distances in scales. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class FallsTest {
    private static final double FAR = 6;

    private SiteBaseline baseline;
    private ChangeSeries series;
    private FollowedChange change;
    private Track open;
    private long block;

    @BeforeAll
    void learn() {
        baseline = BaselineRule.of(InventedSite.MONITOR)
                .learn(InventedSite.of(30, 5).record(InventedSite.Fault.NONE))
                .baseline()
                .orElseThrow();
        begin(ChangeSeries.R, FindingName.HELD_UP, FAR);
    }

    private void begin(int channel, FindingName name, double largest) {
        series = new ChangeSeries(baseline);
        change = new FollowedChange();
        change.begin(channel, channel == ChangeSeries.R ? -1 : 1, 0, 0);
        change.risen = true;
        change.largest = largest;
        open = new Track(1, name, 0, 0);
        block = 0;
    }

    /** Blocks that stand so many scales below usual, NaN for unknown ones, each of them looked at. */
    private void days(double days, double scales) {
        for (int i = 0; i < days * ChangeSeries.BLOCKS_PER_DAY; i++) {
            double[] row = {-scales * series.scale(ChangeSeries.R), 0, 0, 0};
            series.blocks.add(block++, row);
            Falls.count(series, change, ChangeSeries.time(block), open);
        }
    }

    @Test
    void eachFallBackToUsualCountsOnceAtItsSecondBlock() {
        begin(ChangeSeries.R, FindingName.HELD_UP, FAR);
        for (int week = 0; week < 4; week++) {
            days(5, FAR);
            days(2, 0.1);
        }
        assertThat(open.falls).hasSize(4);
        assertThat(open.falls.get(0)).isEqualTo(ChangeSeries.time(5L * ChangeSeries.BLOCKS_PER_DAY + 2));
        assertThat(open.falls.get(3) - open.falls.get(2)).isEqualTo(7 * Track.DAY);
        assertThat(open.recurrence().map(java.time.Duration::toDays)).isEqualTo(Optional.of(7L));
    }

    @Test
    void whatFallsBackHalfWayHasNotFallen() {
        begin(ChangeSeries.R, FindingName.HELD_UP, FAR);
        days(5, FAR);
        // 0.15 of the largest distance is the limit for what is usual again, 0.3 of it for what drops within a day.
        days(2, 1.85);
        assertThat(open.falls).isEmpty();
        days(1, 0.85);
        assertThat(open.falls).isEmpty();
    }

    /** A screen that blinds: it grows on from the hour in which it was cleared, and is never quite as usual. */
    @Test
    void whatGrowsAnewAtOnceFallsWhenItIsCleared() {
        begin(ChangeSeries.R, FindingName.HELD_UP, FAR);
        double cycle = 3.5 * ChangeSeries.BLOCKS_PER_DAY;
        for (int i = 0; i < 5 * cycle; i++) {
            days(1.0 / ChangeSeries.BLOCKS_PER_DAY, FAR * (0.2 + 0.8 * (i % cycle) / cycle));
        }
        assertThat(open.falls).hasSize(4);
        assertThat(open.recurrence().map(java.time.Duration::toHours)).isEqualTo(Optional.of(84L));
    }

    @Test
    void whatDropsLessThanHalfOrLessThanItsScatterHasNotFallen() {
        begin(ChangeSeries.R, FindingName.HELD_UP, FAR);
        days(3, 0.7 * FAR);
        days(2, 0.25 * FAR);
        assertThat(open.falls).isEmpty();
        begin(ChangeSeries.R, FindingName.HELD_UP, 2.2);
        days(3, 2);
        days(2, 0.6);
        assertThat(open.falls).isEmpty();
    }

    @Test
    void steadyChangeThatIsSmallAtNightDoesNotFallEveryDay() {
        begin(ChangeSeries.R, FindingName.HELD_UP, FAR);
        for (int day = 0; day < 10; day++) {
            days(0.75, FAR);
            days(0.25, 0.2);
        }
        // The first night fell from what stood there on no day before.
        assertThat(open.falls).isEmpty();
    }

    @Test
    void smallChangesComeAndGoByThemselves() {
        begin(ChangeSeries.R, FindingName.HELD_UP, 1.9);
        days(5, 1.9);
        days(2, 0);
        assertThat(open.falls).isEmpty();
    }

    @Test
    void moreWaterIsNotAskedAndWhatIsHeldUpIsAskedOfTheVelocity() {
        begin(ChangeSeries.D, FindingName.MORE_WATER, FAR);
        days(5, FAR);
        days(2, 0);
        assertThat(open.falls).isEmpty();
        begin(ChangeSeries.D, FindingName.HELD_UP, FAR);
        days(5, FAR);
        days(2, 0);
        assertThat(open.falls).hasSize(1);
    }

    @Test
    void unknownBlocksAreNoFall() {
        begin(ChangeSeries.R, FindingName.HELD_UP, FAR);
        days(5, FAR);
        days(2, Double.NaN);
        assertThat(open.falls).isEmpty();
    }

    @Test
    void withinASeasonDistancesCountFromWhereItStood() {
        begin(ChangeSeries.R, FindingName.HELD_UP, FAR);
        change.origin[ChangeSeries.R] = -2 * series.scale(ChangeSeries.R);
        days(5, FAR + 2);
        days(2, 2);
        assertThat(open.falls).hasSize(1);
    }

    /** On both sides of each limit of a drop: half of the largest distance, and a scale and a half. */
    @Test
    void dropOfHalfTheDistanceAndOfItsScatterIsAFall() {
        for (double from : new double[] {4.75, 4.65}) {
            begin(ChangeSeries.R, FindingName.HELD_UP, FAR);
            days(3, from);
            days(2, 1.7);
            assertThat(open.falls).hasSize(from - 1.7 > 0.5 * FAR ? 1 : 0);
        }
        for (double from : new double[] {2.15, 2.05}) {
            begin(ChangeSeries.R, FindingName.HELD_UP, 2.2);
            days(3, from);
            days(2, 0.6);
            assertThat(open.falls).hasSize(from - 0.6 > 1.5 ? 1 : 0);
        }
    }
}
