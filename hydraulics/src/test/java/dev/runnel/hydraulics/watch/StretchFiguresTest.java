package dev.runnel.hydraulics.watch;

import static dev.runnel.hydraulics.watch.KnownHours.COUNT;
import static dev.runnel.hydraulics.watch.KnownHours.DAYS;
import static dev.runnel.hydraulics.watch.KnownHours.FIRST;
import static dev.runnel.hydraulics.watch.KnownHours.index;
import static dev.runnel.hydraulics.watch.KnownHours.stretch;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.Interval;
import java.time.Instant;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;

/** Figures of a stretch whose hours are known, by hand. */
class StretchFiguresTest {
    private static final double TIGHT = 1e-12;

    private static int hourOfDay(SiteHour hour) {
        return index(hour) % 24;
    }

    private static int day(SiteHour hour) {
        return index(hour) / 24;
    }

    @Test
    void covarianceOfHoursThatKnowBoth() {
        double[] d = {1, Double.NaN, 2, -3, 4};
        double[] u = {2, 5, Double.NaN, 4, -6};
        assertThat(StretchFigures.covariance(d, u)).containsExactly(26 / 3.0, -34 / 3.0, 56 / 3.0);
        assertThat(StretchFigures.covariance(new double[] {Double.NaN}, new double[] {1}))
                .containsExactly(0, 0, 0);
    }

    /** The median of the highest dry hours of days of 16 dry hours; without such days the level that 5 % exceed. */
    @Test
    void peakOfADryDay() {
        Consumer<SiteHour> levels =
                hour -> KnownHours.level(hour, Math.log(hourOfDay(hour) == 9 ? 0.2 + 0.01 * day(hour) : 0.1));
        // 0.20 to 0.33 m: the middle of 14 days lies between 0.26 and 0.27 by the logarithm.
        assertThat(StretchFigures.peak(stretch(levels))).isCloseTo(Math.sqrt(0.26 * 0.27), within(TIGHT));
        for (int missing : new int[] {8, 9}) {
            Consumer<SiteHour> gaps = levels.andThen(hour -> {
                if (day(hour) > 0 && hourOfDay(hour) >= 24 - missing) {
                    hour.withholdDepth();
                }
            });
            // With 15 hours only the first day counts.
            assertThat(StretchFigures.peak(stretch(gaps)))
                    .isCloseTo(missing == 8 ? Math.sqrt(0.26 * 0.27) : 0.2, within(TIGHT));
        }
        Consumer<SiteHour> few = hour -> {
            KnownHours.level(hour, Math.log(1 + index(hour)));
            if (index(hour) % 2 == 1) {
                hour.withholdDepth();
            }
        };
        double[] known = new double[COUNT / 2];
        for (int i = 0; i < known.length; i++) {
            known[i] = Math.log(1 + 2 * i);
        }
        assertThat(StretchFigures.peak(stretch(few))).isCloseTo(Math.exp(Medians.quantile(known, 0.95)), within(1e-9));
        // What rain raises is no peak of a dry day: the last day alone is wet.
        Consumer<SiteHour> rain = levels.andThen(hour -> {
            hour.rain = index(hour) >= COUNT - 24 ? 5 : 0;
            KnownHours.level(hour, index(hour) >= COUNT - 24 ? 0 : hour.lnDepth);
        });
        assertThat(StretchFigures.peak(stretch(rain))).isCloseTo(0.26, within(TIGHT));
    }

    @Test
    void mostHoursUpstreamInADay() {
        assertThat(StretchFigures.upstreamHours(stretch(hour -> {}))).isZero();
        assertThat(StretchFigures.upstreamHours(stretch(hour -> {
                    // Three in the evening of the fourth day and five behind midnight; two in the last hours.
                    int i = index(hour);
                    if (i >= 93 && i < 101 || i >= COUNT - 2) {
                        hour.upstream = -0.1;
                    }
                })))
                .isEqualTo(5);
        assertThat(StretchFigures.upstreamHours(stretch(hour -> {
                    if (index(hour) == COUNT - 1) {
                        hour.upstream = -0.1;
                    }
                })))
                .isEqualTo(1);
    }

    /** The largest of each day that knows twelve hours, without sign; wet hours say nothing of steps. */
    @Test
    void theLargestOfEachDay() {
        double[] steps = StretchFigures.largestSteps(stretch(hour -> {
            int known = 11 + day(hour) % 2;
            hour.step = hourOfDay(hour) >= known ? Double.NaN : (day(hour) + 1) * (hourOfDay(hour) == 3 ? -0.02 : 0.01);
        }));
        assertThat(steps).hasSize(DAYS / 2);
        for (int i = 0; i < steps.length; i++) {
            assertThat(steps[i]).isCloseTo(0.02 * (2 * i + 2), within(TIGHT));
        }
        assertThat(StretchFigures.largestSteps(stretch(hour -> {
                    hour.step = 0.01;
                    hour.rain = 3;
                })))
                .isEmpty();
        double[] runs = StretchFigures.longestDepthRuns(stretch(hour -> hour.depthRun = hourOfDay(hour) * 10L));
        assertThat(runs).hasSize(DAYS).containsOnly(230);
        assertThat(StretchFigures.longestVelocityRuns(stretch(hour -> hour.velocityRun = 7L * hourOfDay(hour))))
                .hasSize(DAYS)
                .containsOnly(161);
    }

    /** Gumbel by moments: mean and 5.945 standard deviations, of three days or more. */
    @Test
    void onceInTenYears() {
        assertThat(StretchFigures.onceInTenYears(new double[] {1, 2})).isZero();
        assertThat(StretchFigures.onceInTenYears(new double[] {1, 2, 3})).isCloseTo(2 + 5.945, within(TIGHT));
        assertThat(5.945).isCloseTo(Math.sqrt(6) / Math.PI * (Math.log(3650) - 0.5772157), within(5e-4));
    }

    /** A storm of 3 mm an hour for four hours, that stands in the sewer an hour later. */
    @Test
    void lagOfAStorm() {
        StretchHours dry = stretch(hour -> {});
        var day = dry.curve(dry.lnDepth, dry.dry);
        for (int late : new int[] {0, 1, 2}) {
            double[] held = new double[COUNT];
            for (int i = 1; i < COUNT; i++) {
                held[i] = held[i - 1] * Math.exp(-1 / 1.5) + (i >= 100 && i < 104 ? 3 : 0);
            }
            double[] lags = StretchFigures.stormLags(
                    stretch(hour -> {
                        int i = index(hour);
                        hour.rain = i >= 100 && i < 104 ? 3 : 0;
                        KnownHours.level(hour, hour.lnDepth + (i < late ? 0 : 0.1 * held[i - late]));
                    }),
                    day);
            assertThat(lags).hasSize(1);
            assertThat(lags[0]).isCloseTo(late, within(0.2));
        }
        assertThat(StretchFigures.stormLags(dry, day)).isEmpty();
    }

    /** From the first whole hour in it to the last. */
    @Test
    void hoursOfAStretch() {
        LearningHours all = KnownHours.of(hour -> {});
        Instant start = InventedSite.START;
        StretchHours within = new StretchHours(
                all, Interval.of(start.plusSeconds(3600 * 5 + 1), start.plusSeconds(3600 * 9 - 1)), KnownHours.LOCAL);
        assertThat(within.hours).containsExactly(FIRST + 6, FIRST + 7);
        StretchHours whole = new StretchHours(
                all, Interval.of(start.plusSeconds(3600 * 5), start.plusSeconds(3600 * 9)), KnownHours.LOCAL);
        assertThat(whole.hours).containsExactly(FIRST + 5, FIRST + 6, FIRST + 7, FIRST + 8);
        assertThat(whole.hour(0).hour).isEqualTo(FIRST + 5);
        assertThat(whole.hourOfDay(0)).isEqualTo(5.5);
        assertThat(whole.day(0) * 24).isEqualTo(FIRST);
        assertThat(new StretchHours(
                                all,
                                Interval.of(start.plusSeconds(3600 * 5 + 1), start.plusSeconds(3600 * 5 + 2)),
                                KnownHours.LOCAL)
                        .size)
                .isZero();
        StretchHours week = stretch(hour -> {});
        // Monday 2 March: the sixth and seventh days are days of rest.
        assertThat(week.isRest(5 * 24 - 1)).isFalse();
        assertThat(week.isRest(5 * 24)).isTrue();
        assertThat(week.isRest(7 * 24)).isFalse();
        assertThat(stretch(hour -> hour.rain = Double.NaN).rain).isFalse();
        assertThat(stretch(hour -> hour.rain = index(hour) == 7 ? 0 : Double.NaN).rain)
                .isTrue();
    }

    @Test
    void columnsOfAStretch() {
        double[] values = {1, Double.NaN, 3, 4};
        boolean[] where = {true, true, false, true};
        assertThat(StretchHours.count(values, where)).isEqualTo(2);
        assertThat(StretchHours.pick(values, where)).containsExactly(1, 4);
        StretchHours hours = stretch(hour -> {
            if (index(hour) % 3 == 0) {
                hour.withholdVelocity();
            }
            if (index(hour) % 5 == 0) {
                hour.withholdDepth();
            }
        });
        assertThat(hours.both).isEqualTo(COUNT - 112 - 68 + 23);
        boolean[] moving = hours.moving();
        for (int i = 0; i < COUNT; i++) {
            assertThat(moving[i]).isEqualTo(i % 3 > 0 && i % 5 > 0);
        }
        var curve = hours.curve(hours.lnDepth, hours.dry);
        double[] left = hours.residuals(curve, hours.lnDepth, moving);
        assertThat(left[1]).isCloseTo(hours.lnDepth[1] - curve.value(1.5, false), within(TIGHT));
        assertThat(left[5 * 24 + 1]).isCloseTo(hours.lnDepth[121] - curve.value(1.5, true), within(TIGHT));
        assertThat(left[3]).isNaN();
        assertThat(hours.nan()).hasSize(COUNT).containsOnly(Double.NaN);
    }

    /** Zeros, low and wrong velocities of days that know twelve: mean, half as much again or a tenth, and four deviations. */
    @Test
    void sharesOfTheEcho() {
        Consumer<SiteHour> odd = hour -> {
            hour.zeros = day(hour) % 2;
            hour.lowNarrow = 1;
            hour.lowWide = 2;
            hour.flips = hourOfDay(hour) == 7 ? 2 : 0;
            hour.compared = 6;
            hour.lone = day(hour) % 2;
            hour.held = 6;
            hour.strayHigh = hourOfDay(hour) == 7 ? day(hour) % 2 : 0;
        };
        double deviation = Math.sqrt(14 / 13.0) * 0.125;
        EchoShares steady = new EchoShares(stretch(odd), false);
        assertThat(steady.narrow).isTrue();
        assertThat(steady.zeroShare).isEqualTo(0.125);
        assertThat(steady.zeroLimit).isCloseTo(0.125 + 1.5 * 0.125 + 4 * deviation, within(TIGHT));
        assertThat(steady.echoLimit).isCloseTo(0.25 + 0.375, within(TIGHT));
        assertThat(steady.flipLimit).isCloseTo(2 / 96.0 + 0.1, within(TIGHT));
        assertThat(steady.loneLimit).isCloseTo((1 + 1.5 + 4 * Math.sqrt(14 / 13.0)) / 12, within(TIGHT));
        assertThat(steady.strayLimit).isCloseTo(0.5 / 144 + 0.04 + 4 * Math.sqrt(14 / 13.0) * 0.5 / 144, within(TIGHT));
        EchoShares pumped = new EchoShares(stretch(odd.andThen(hour -> hour.velocityScatter = 0.05)), true);
        assertThat(pumped.narrow).isFalse();
        assertThat(pumped.zeroLimit).isCloseTo(0.125 + 0.2 + 4 * deviation, within(TIGHT));
        assertThat(pumped.echoLimit).isCloseTo(0.5 + 0.75, within(TIGHT));
        assertThat(pumped.flipLimit).isCloseTo(2 / 96.0 + 0.1, within(TIGHT));
    }

    @Test
    void daysThatKnowTooFewVelocities() {
        for (int last : new int[] {3, 4}) {
            Consumer<SiteHour> few = hour -> {
                hour.looked = hourOfDay(hour) < 2 ? 4 : hourOfDay(hour) == 2 ? last : 0;
                hour.zeros = hourOfDay(hour) < 2 ? 3 : 0;
            };
            for (boolean strokes : new boolean[] {false, true}) {
                EchoShares shares = new EchoShares(stretch(few), strokes);
                assertThat(shares.zeroLimit).isCloseTo(last == 4 ? 0.5 + 0.75 : strokes ? 0.4 : 0.2, within(TIGHT));
            }
        }
        for (int known : new int[] {1, 2}) {
            EchoShares shares = new EchoShares(
                    stretch(hour -> {
                        hour.looked = day(hour) < known ? 4 : 0;
                        hour.zeros = day(hour) < known ? 2 : 0;
                    }),
                    false);
            assertThat(shares.zeroShare).isEqualTo(0.5);
            assertThat(shares.zeroLimit).isCloseTo(known == 1 ? 0.2 : 1.25, within(TIGHT));
        }
        assertThat(new EchoShares(stretch(hour -> hour.looked = 0), false).zeroShare)
                .isZero();
    }

    /** Days whose level comes three quarters of an hour late; wet ones, which come three hours early, are not asked. */
    @Test
    void phasesOfDryDays() {
        StretchHours usual = stretch(hour -> {});
        var curve = usual.curve(usual.lnDepth, usual.dry, 8);
        for (int wetDays : new int[] {0, 7}) {
            StretchHours hours = stretch(hour -> hour.rain = day(hour) < wetDays - 1 ? 1 : 0);
            double[] values = new double[COUNT];
            for (int i = 0; i < COUNT; i++) {
                double late = i / 24 < wetDays ? -3 : 0.75;
                values[i] = curve.value((hours.hourOfDay(i) - late + 24) % 24, hours.isRest(i));
            }
            ClockUsual found =
                    StretchFigures.clock(hours, values, new ClockDay(curve, false, ClockUsual.unknown()), false);
            assertThat(found.centre(false)).isCloseTo(0.75, within(0.06));
            // Of the days of rest, those that are dry and one of 0.
            double share = wetDays == 0 ? 4 / 5.0 : 2 / 3.0;
            assertThat(found.centre(true)).isCloseTo(share * 0.75, within(0.06));
            assertThat(found.half(false, false)).isCloseTo(0.75, within(0.1));
            assertThat(found.half(true, false)).isCloseTo(0.75, within(0.1));
        }
    }

    @Test
    void nightsOfALevel() {
        StretchHours hours = stretch(hour -> {});
        var curve = hours.curve(hours.lnDepth, hours.dry);
        LevelChannels.Usual usual = StretchFigures.levels(hours, curve);
        assertThat(usual.days()).isEqualTo(14);
        // The last night has no end.
        assertThat(usual.nights().length).isBetween(DAYS - 1, DAYS);
        for (double night : usual.nights()) {
            assertThat(night).isBetween(-0.05, 0.05);
        }
        assertThat(usual.rises()).isZero();
        assertThat(usual.falls()).isEmpty();
        assertThat(StretchFigures.levels(stretch(SiteHour::withholdDepth), curve)
                        .nights())
                .isEmpty();
        assertThat(StretchFigures.levels(stretch(hour -> hour.rain = 1), curve).nights())
                .isEmpty();
    }

    /** The middle and the upper quartile of how far levels swing, whatever their order. */
    @Test
    void swingsInAnyOrder() {
        StretchHours mixed = stretch(hour -> hour.depthSpread = index(hour) % 5 < 2 ? 0.6 : 0.1);
        assertThat(StretchFigures.pumped(mixed)).isFalse();
        assertThat(StretchFigures.strokes(mixed)).isFalse();
        assertThat(StretchFigures.swings(mixed)).isTrue();
        StretchHours more = stretch(hour -> hour.depthSpread = index(hour) % 5 < 3 ? 0.45 : 0.1);
        assertThat(StretchFigures.pumped(more)).isTrue();
        assertThat(StretchFigures.strokes(more)).isTrue();
        assertThat(StretchFigures.swings(more)).isFalse();
    }
}
