package dev.runnel.examples.review;

import static dev.runnel.examples.review.SiteOnDisk.PLAIN_SITE;
import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Rain columns that are not what they are called, and gauges that wrote nothing. */
class StrangeRainTest {
    private static final Duration FIVE_MINUTES = Duration.ofMinutes(5);
    private static final String START = "2026-03-02T00:00:00Z";

    @TempDir
    private Path temporary;

    private SiteOnDisk site(int days, IntToDoubleFunction mm) {
        return new SiteOnDisk(temporary)
                .with("site.txt", PLAIN_SITE)
                .with("depth.csv", SiteOnDisk.days(days, 15))
                .with(
                        "rain.csv",
                        SiteOnDisk.readings(
                                "time,rain_mm",
                                START,
                                FIVE_MINUTES,
                                288 * days,
                                i -> "" + Math.round(1e4 * mm.applyAsDouble(i)) / 1e4));
    }

    private static String review(SiteOnDisk site) {
        SiteOnDisk.Outcome outcome = site.review();
        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.status()).isZero();
        return outcome.flat();
    }

    /** One to three tips in each of seven steps every other day. */
    private static double storms(int i) {
        return i / 288 % 2 == 0 && i % 288 >= 100 && i % 288 < 107 ? 0.2 * (1 + i % 3) : 0;
    }

    @Test
    void aGaugeThatWroteNothingTellsNoDryDays() {
        String text = review(site(12, i -> 0));
        assertThat(text)
                .contains("The gauge wrote no rain in the whole record of 12 d: a drought looks the same")
                .contains("no rain was written to tell dry days: all days of the record, wet ones among them")
                .doesNotContain("dry days, 0 wet");
    }

    @Test
    void aDryWeekIsADryWeek() {
        String text = review(site(7, i -> 0));
        assertThat(text).contains("6 dry days, 0 wet, 1 not known").doesNotContain("The gauge wrote no rain");
    }

    @Test
    void aGaugeOfStepsThatFallsSilentTellsNothingSince() {
        String text = review(site(20, i -> i < 288 * 9 ? storms(i) : 0));
        assertThat(text)
                .contains("The gauge wrote nothing for 11 d 3 h from Tue 10 Mar 20:55 to Sun 22 Mar 00:00")
                .contains("more than twice as long as between any two signs of rain: was it dead?");
    }

    @Test
    void depthsInTheColumnOfTheRainAreNoRain() {
        String text = review(site(12, i -> i < 288 * 6 ? storms(i) : 62));
        assertThat(text)
                .contains(
                        "The gauge: 1728 steps with 107136.0 mm hold more rain than fell anywhere in a step or a day, "
                                + "the first on Sun 8 Mar 00:00. They are set aside")
                .contains("1728 steps with 107136.0 mm set aside: more than fell anywhere in a step or a day")
                .contains("rain 8.4 mm in 3456 steps of 5 min; 1728 steps");
    }

    @Test
    void aGaugeOfWhichNothingIsLeftWroteNoZeros() {
        assertThat(review(site(12, i -> 62)))
                .contains("0 dry days, 0 wet, 12 not known")
                .doesNotContain("The gauge wrote no rain");
    }

    @Test
    void anotherUnitFromADayOnIsAnotherGrain() {
        assertThat(review(site(40, i -> i < 288 * 20 ? storms(i) : storms(i) / 25.4)))
                .contains("The smallest rain of a step is 0.2 mm up to Sun 22 Mar 08:20, and 0.0079 mm from then on, "
                        + "0.0395 times as much: another unit, or another size of tip?");
        assertThat(review(site(40, i -> i < 288 * 20 ? storms(i) : storms(i) * 5)))
                .contains("The smallest rain of a step is 0.2 mm up to Sun 22 Mar 08:20, and 1 mm from then on, "
                        + "5 times as much");
    }

    @Test
    void aWholeRecordInAnotherUnitIsAsked() {
        assertThat(review(site(20, i -> storms(i) / 25.4)))
                .contains("The rain comes in amounts of 0.0079 mm, a tip of 0.2 mm in inches: is the unit right?");
        assertThat(review(site(20, i -> storms(i) * 5)))
                .contains("The rain comes in whole mm, while a tip is 0.2 mm: is the column a count of tips?");
        assertThat(review(site(20, StrangeRainTest::storms)))
                .doesNotContain("The rain comes in")
                .doesNotContain("The smallest rain");
    }

    @Test
    void aGaugeThatWeighsHasNoGrain() {
        assertThat(review(site(60, i -> storms(i) * (0.3 + 0.7 * Math.abs(Math.sin(i))))))
                .doesNotContain("The rain comes in")
                .doesNotContain("The smallest rain");
    }

    /** Sixty tips two minutes apart on one day; the file holds each of them once more, seconds later. */
    @Test
    void tipsWrittenTwiceSecondsApartAreAsked() {
        assertThat(review(tips(7)))
                .contains(
                        "The gauge: 60 of 120 tips follow the one before within seconds, far sooner than those around, the first on "
                                + "Wed 4 Mar 10:00")
                .contains("12.0 mm that may be no rain. They stay in use.");
        assertThat(review(tips(60))).doesNotContain("within seconds");
    }

    private SiteOnDisk tips(int later) {
        StringBuilder text = new StringBuilder("time\n");
        Instant first = Instant.parse("2026-03-04T10:00:00Z");
        for (int i = 0; i < 60; i++) {
            text.append(first.plusSeconds(120L * i)).append('\n');
            text.append(first.plusSeconds(120L * i + later)).append('\n');
        }
        return new SiteOnDisk(temporary)
                .with("site.txt", PLAIN_SITE)
                .with("depth.csv", SiteOnDisk.days(7, 15))
                .with("tips.csv", text.toString());
    }
}
