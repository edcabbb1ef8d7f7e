package dev.runnel.hydraulics.watch;

import static dev.runnel.hydraulics.watch.KnownHours.COUNT;
import static dev.runnel.hydraulics.watch.KnownHours.FIRST;
import static dev.runnel.hydraulics.watch.KnownHours.LN_LEVEL;
import static dev.runnel.hydraulics.watch.KnownHours.baseline;
import static dev.runnel.hydraulics.watch.KnownHours.fit;
import static dev.runnel.hydraulics.watch.KnownHours.index;
import static dev.runnel.hydraulics.watch.KnownHours.text;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.internal.StateText;
import java.time.Duration;
import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a stretch of known hours makes of a baseline, on both sides of each limit. */
class BaselineFitTest {
    private static final long HOUR = Duration.ofHours(1).toNanos();

    /** The least scales that are learned: floors of 0.08, 0.145, 0.145 and 0.24 over 0.75. */
    private static final double[] LEAST_SCALES = {0.08 / 0.75, 0.145 / 0.75, 0.145 / 0.75, 0.24 / 0.75};

    private static void sound(SiteHour hour) {}

    private static void withoutVelocity(SiteHour hour) {
        hour.withholdVelocity();
    }

    @Test
    void aSoundStretch() {
        BaselineFit fit = fit(BaselineFitTest::sound);
        assertThat(fit.reasons()).isEmpty();
        assertThat(fit.lacksDryHours()).isFalse();
        assertThat(fit.step()).isEqualTo(Long.MIN_VALUE);
        assertThat(fit.stretch()).isEqualTo(KnownHours.STRETCH);
        SiteBaseline baseline = fit.baseline().orElseThrow();
        assertThat(baseline.hours()).isEqualTo(336);
        assertThat(baseline.dryHours()).isEqualTo(336);
        assertThat(baseline.hasRain()).isTrue();
        assertThat(baseline.notes()).isEmpty();
        assertThat(baseline.isTidal()).isFalse();
        assertThat(baseline.isPumped()).isFalse();
        assertThat(baseline.strokes).isFalse();
        assertThat(baseline.swings).isFalse();
        assertThat(baseline.clock).isTrue();
        assertThat(baseline.exchanged).isEmpty();
        assertThat(baseline.levelUsual).isEmpty();
        for (int i = 0; i < 4; i++) {
            assertThat(baseline.scale[i]).isCloseTo(LEAST_SCALES[i], within(1e-15));
            assertThat(baseline.centre[i]).isCloseTo(0, within(0.01));
        }
        assertThat(baseline.usualVelocity().orElseThrow().exponent()).isCloseTo(0.6, within(0.01));
        // At the middle level 0.12 m, where the surface is 0.48 m wide and the area 0.04026 m².
        CircularSection pipe = CircularSection.ofDiameter(0.6);
        double middle = Math.exp(Medians.of(KnownHours.stretch(BaselineFitTest::sound).lnDepth));
        assertThat(baseline.kappa).isCloseTo(middle * pipe.topWidth(middle) / pipe.area(middle), within(1e-6));
        assertThat(baseline.covariance[0]).isCloseTo(0.0002, within(0.00003));
        StateText text = text(baseline);
        assertThat(text.has(SiteBaseline.CLOCK_DEPTH)).isTrue();
        assertThat(text.has(SiteBaseline.CLOCK_FLOW)).isTrue();
        assertThat(text.has("levelNights")).isFalse();
        // Q = v A: its logarithm about that of 0.9 m/s in 0.04026 m².
        assertThat(baseline.day(Quantity.FLOW).orElseThrow().value(0.5, false))
                .isCloseTo(Math.log(0.9 * 0.04026), within(0.03));
        assertThat(baseline.day(Quantity.VELOCITY).orElseThrow().value(6.5, false))
                .isCloseTo(Math.log(0.9) + 0.18, within(0.02));
        assertThat(baseline.usualPeak()).isCloseTo(0.12 * Math.exp(0.3), within(0.003));
    }

    @Test
    void halfOfTheHoursMustHaveADepth() {
        Consumer<SiteHour> half = hour -> {
            if (index(hour) % 2 == 1) {
                hour.withholdDepth();
            }
        };
        assertThat(baseline(half).hours()).isEqualTo(168);
        BaselineFit less = fit(half.andThen(hour -> {
            if (index(hour) == 100) {
                hour.withholdDepth();
            }
            hour.depthRun = 17 * HOUR;
        }));
        assertThat(less.baseline()).isEmpty();
        assertThat(less.lacksDryHours()).isFalse();
        assertThat(less.reasons())
                .containsExactly(
                        "the depth repeated one value for 17.0 h",
                        "usable depths in 167 of 336 hours, half of them are needed");
    }

    /** Rain of 1 mm an hour makes 72 h wet after its last. */
    @Test
    void aHundredDryHoursAreNeeded() {
        for (int rainy : new int[] {164, 165}) {
            BaselineFit fit = fit(hour -> hour.rain = index(hour) < rainy ? 1 : 0);
            assertThat(fit.baseline().isPresent()).isEqualTo(rainy == 164);
            assertThat(fit.lacksDryHours()).isEqualTo(rainy == 165);
            if (rainy == 165) {
                assertThat(fit.reasons()).containsExactly("99 dry hours, 100 are needed");
            } else {
                assertThat(fit.baseline().orElseThrow().dryHours()).isEqualTo(100);
            }
        }
    }

    /** 72 hours of velocity make its relation, 50 dry ones its day. */
    @Test
    void hoursOfVelocity() {
        for (int known : new int[] {0, 71, 72}) {
            SiteBaseline baseline = baseline(hour -> {
                if (index(hour) >= known) {
                    withoutVelocity(hour);
                }
            });
            assertThat(baseline.usualVelocity().isPresent()).isEqualTo(known == 72);
            assertThat(baseline.watches(Quantity.VELOCITY_AT_DEPTH)).isEqualTo(known == 72);
            assertThat(baseline.watches(Quantity.VELOCITY)).isEqualTo(known == 72);
            assertThat(baseline.watches(Quantity.DEPTH)).isTrue();
            assertThat(baseline.levelUsual.isPresent()).isEqualTo(known < 72);
            assertThat(baseline.notes())
                    .isEqualTo(known == 71 ? List.of("velocity in only 71 hours: it is not watched") : List.of());
        }
        for (int dry : new int[] {49, 50}) {
            // Rain in the first 100 hours keeps 172 wet; so many dry hours behind them have a velocity.
            SiteBaseline baseline = baseline(hour -> {
                hour.rain = index(hour) < 100 ? 1 : 0;
                if (index(hour) >= 172 + dry) {
                    withoutVelocity(hour);
                }
            });
            assertThat(baseline.watches(Quantity.VELOCITY_AT_DEPTH)).isTrue();
            assertThat(baseline.watches(Quantity.VELOCITY)).isEqualTo(dry == 50);
            assertThat(baseline.day(Quantity.FLOW).isPresent()).isEqualTo(dry == 50);
            assertThat(text(baseline).has(SiteBaseline.CLOCK_FLOW)).isEqualTo(dry == 50);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "16, 8, ''",
        "16.1, 0, 'depth repeated one value for 16.1'",
        "0, 8.1, 'velocity repeated one value for 8.1'"
    })
    void longestRuns(double depthHours, double velocityHours, String reason) {
        BaselineFit fit = fit(hour -> {
            if (index(hour) == 200) {
                hour.depthRun = Math.round(depthHours * HOUR);
                hour.velocityRun = Math.round(velocityHours * HOUR);
            }
        });
        assertThat(fit.baseline().isPresent()).isEqualTo(reason.isEmpty());
        if (!reason.isEmpty()) {
            assertThat(fit.reasons()).containsExactly("the " + reason + " h");
        }
    }

    /** Twice the longest run, what comes once in ten years, or the least that is ever called frozen. */
    @Test
    void runsThatASoundSensorMayShow() {
        SensorLimits none = baseline(BaselineFitTest::sound).sensor;
        assertThat(none.depthFrozen()).isEqualTo(8 * HOUR);
        assertThat(none.velocityFrozen()).isEqualTo(3 * HOUR);
        assertThat(none.depthStep()).isNaN();
        SensorLimits even = baseline(hour -> {
                    hour.depthRun = 5 * HOUR;
                    hour.velocityRun = 2 * HOUR;
                    hour.step = index(hour) % 3 == 0 ? -0.02 : 0.01;
                })
                .sensor;
        assertThat(even.depthFrozen()).isEqualTo(10 * HOUR);
        assertThat(even.velocityFrozen()).isEqualTo(4 * HOUR);
        assertThat(even.depthStep()).isCloseTo(1.5 * 0.02, within(1e-15));
        // Days of 1 and 5 h in turn: mean 3, deviation √(14 · 4/13), ten years 5.945 of it above.
        SensorLimits uneven = baseline(hour -> {
                    boolean odd = index(hour) / 24 % 2 == 1;
                    hour.depthRun = (odd ? 5 : 1) * HOUR;
                    hour.step = odd ? 0.05 : 0.01;
                })
                .sensor;
        double deviation = Math.sqrt(14 * 4 / 13.0);
        assertThat(uneven.depthFrozen() / (double) HOUR).isCloseTo(3 + 5.945 * deviation, within(1e-6));
        assertThat(uneven.depthStep()).isCloseTo(0.03 + 5.945 * 0.01 * deviation, within(1e-12));
    }

    @Test
    void zerosUnderWater() {
        assertThat(baseline(hour -> {
                            hour.looked = 5;
                            hour.zeros = 1;
                        })
                        .notes())
                .isEmpty();
        BaselineFit more = fit(hour -> {
            hour.looked = 5;
            hour.zeros = index(hour) % 24 == 0 ? 2 : 1;
        });
        assertThat(more.reasons()).containsExactly("the velocity was 0 under water in 21 % of the readings");
    }

    @Test
    void aVelocityThatFollowsNoDepthIsNotWatched() {
        SiteBaseline baseline = baseline(hour -> hour.lnVelocity += 0.5 * Math.sin(2.9 * index(hour)));
        assertThat(baseline.watches(Quantity.VELOCITY_AT_DEPTH)).isFalse();
        assertThat(baseline.watches(Quantity.VELOCITY)).isFalse();
        assertThat(baseline.usualVelocity()).isEmpty();
        assertThat(baseline.notes())
                .singleElement()
                .asString()
                .matches("velocity does not follow depth here \\(hours scatter by [3-7][0-9] %\\): it is not watched; "
                        + BaselineWords.NO_LAW);
        assertThat(baseline(hour -> hour.lnVelocity += 0.1 * Math.sin(2.9 * index(hour)))
                        .watches(Quantity.VELOCITY_AT_DEPTH))
                .isTrue();
    }

    /** By the tide the hours of the day say nothing; the lowest water of two tides does, and spring and neap have hardly been seen. */
    @Test
    void aTidalSite() {
        Consumer<SiteHour> tide = hour -> {
            double more = 0.3 * Math.cos(2 * Math.PI * index(hour) / 12.4206012);
            KnownHours.level(hour, hour.lnDepth + more);
            KnownHours.velocity(hour, hour.lnVelocity + 0.6 * more);
        };
        SiteBaseline moving = baseline(tide);
        assertThat(moving.isTidal()).isTrue();
        assertThat(moving.scale[Quantity.VELOCITY_AT_DEPTH.ordinal()]).isCloseTo(1.5 * LEAST_SCALES[0], within(1e-12));
        // Depth and velocity of the lowest water of two tides: 0.3 of the day and of the tide below the middle at the
        // most.
        assertThat(moving.watches(Quantity.DEPTH)).isTrue();
        assertThat(moving.watches(Quantity.VELOCITY)).isTrue();
        assertThat(moving.watches(Quantity.FLOW)).isFalse();
        assertThat(moving.lowWater.orElseThrow()[0]).isBetween(LN_LEVEL - 0.63, LN_LEVEL - 0.3);
        assertThat(baseline(BaselineFitTest::sound).lowWater).isEmpty();
        assertThat(moving.clock).isFalse();
        assertThat(text(moving).has(SiteBaseline.CLOCK_DEPTH)).isFalse();
        SiteBaseline level = baseline(tide.andThen(BaselineFitTest::withoutVelocity));
        assertThat(level.isTidal()).isTrue();
        assertThat(level.watches(Quantity.DEPTH)).isTrue();
        assertThat(level.levelUsual).isEmpty();
        assertThat(moving.notTested())
                .contains("depth, velocity and flow against the hour of the day, and the clock: the site is tidal");
    }

    /** How far the level swings within an hour: pumps, their strokes, and water that may be gone for some hours. */
    @ParameterizedTest
    @CsvSource({
        "0.25, false, false, false",
        "0.26, true, false, false",
        "0.4, true, false, false",
        "0.41, true, true, false",
        "0.5, true, true, false",
        "0.51, true, true, true"
    })
    void swingsWithinTheHours(double spread, boolean pumped, boolean strokes, boolean swings) {
        SiteBaseline baseline = baseline(hour -> hour.depthSpread = spread);
        assertThat(baseline.isPumped()).isEqualTo(pumped);
        assertThat(baseline.strokes).isEqualTo(strokes);
        assertThat(baseline.swings).isEqualTo(swings);
        assertThat(text(baseline).has(SiteBaseline.CLOCK_DEPTH)).isEqualTo(!pumped);
        for (Quantity quantity : Quantity.values()) {
            boolean wider = strokes && quantity != Quantity.VELOCITY_AT_DEPTH;
            assertThat(baseline.scale[quantity.ordinal()])
                    .isCloseTo((wider ? 1.5 : 1) * LEAST_SCALES[quantity.ordinal()], within(1e-12));
        }
    }

    @Test
    void aSiteWithoutACourseOfTheDayHasNoClock() {
        SiteBaseline flat = baseline(hour -> {
            double noise = Math.sin(1.44 * index(hour)) + Math.sin(2.75 * index(hour));
            KnownHours.level(hour, LN_LEVEL + 0.05 * noise);
            withoutVelocity(hour);
        });
        assertThat(flat.clock).isFalse();
        assertThat(text(flat).has(SiteBaseline.CLOCK_DEPTH)).isFalse();
        assertThat(flat.notTested())
                .contains("the clock of the monitor: the hours of the day explain too little of the depth");
    }

    /** No area grows with a level below the bed. */
    @Test
    void aBedAboveTheLevelHasNoElasticity() {
        var buried = InventedSite.MONITOR.withSediment(0.3);
        SiteBaseline baseline =
                fit(buried, BaselineFitTest::withoutVelocity).baseline().orElseThrow();
        assertThat(baseline.kappa).isEqualTo(1);
    }

    /** A step on the fourth day: of the velocity at the same depth by more than 12 %, of the depth alone by more than 20 %. */
    @ParameterizedTest
    @CsvSource({"0.1, true", "0.135, false", "-0.1, true", "-0.135, false"})
    void stepOfTheVelocityAtTheSameDepth(double step, boolean taken) {
        BaselineFit fit = fit(hour -> {
            if (index(hour) >= 3 * 24) {
                KnownHours.velocity(hour, hour.lnVelocity + step);
            }
        });
        assertThat(fit.baseline().isPresent()).isEqualTo(taken);
        if (!taken) {
            assertThat(fit.reasons()).singleElement().asString().startsWith("velocity at the same depth changed by ");
            assertThat(fit.step()).isEqualTo(FIRST + 3 * 24);
        }
    }

    /**
     * A depth that steps up by 0.25 in ln: with the velocity as before, or more water that runs faster by the law of the site, 0.6 of it.
     * What the velocity moves less than the law has it, r shows.
     */
    @ParameterizedTest
    @CsvSource({"-0.05, false", "0, false", "0.10, true", "0.15, true"})
    void stepOfTheDepthAgainstTheVelocityAtIt(double faster, boolean taken) {
        BaselineFit fit = fit(hour -> {
            if (index(hour) >= 7 * 24) {
                KnownHours.level(hour, hour.lnDepth + 0.25);
                KnownHours.velocity(hour, hour.lnVelocity + faster);
            }
        });
        assertThat(fit.baseline().isPresent()).as(fit.reasons().toString()).isEqualTo(taken);
        if (!taken) {
            assertThat(fit.step()).isEqualTo(FIRST + 7 * 24);
        }
    }

    @ParameterizedTest
    @CsvSource({"0.19, true", "0.21, false"})
    void stepOfTheDepthAlone(double step, boolean taken) {
        Consumer<SiteHour> later = hour -> {
            if (index(hour) >= 3 * 24) {
                KnownHours.level(hour, hour.lnDepth + step);
            }
            withoutVelocity(hour);
        };
        BaselineFit fit = fit(later);
        assertThat(fit.baseline().isPresent()).isEqualTo(taken);
        if (!taken) {
            assertThat(fit.reasons()).containsExactly("dry depth changed by +23 % at about 2026-03-05");
            assertThat(fit.step()).isEqualTo(FIRST + 3 * 24);
        }
    }

    /** More water raises depth and velocity, and their relation stays. */
    @ParameterizedTest
    @CsvSource({"0.2, 0", "0.4, 1"})
    void moreWaterIsNotedOnly(double step, int notes) {
        SiteBaseline baseline = baseline(hour -> {
            if (index(hour) >= 7 * 24) {
                KnownHours.level(hour, hour.lnDepth + step);
                KnownHours.velocity(hour, hour.lnVelocity + 0.6 * step);
            }
        });
        assertThat(baseline.notes()).hasSize(notes);
        if (notes > 0) {
            assertThat(baseline.notes().get(0))
                    .isEqualTo("the flow wandered within the baseline: depth changed by +49 % at about 2026-03-09");
        }
    }

    /** Three quarters of the dry hours come soon after rain: the flow is learned from the others if there are 50 of them. */
    @Test
    void theFlowIsLearnedFromHoursLongDry() {
        // 10 mm in one hour: 38 h wet, 74 h wet by the longer rule; the flow is higher by 40 % between them.
        Consumer<SiteHour> seeping = hour -> {
            int after = index(hour) % 112;
            hour.rain = after == 0 ? 10 : 0;
            if (after <= 74) {
                KnownHours.velocity(hour, hour.lnVelocity + 0.1);
                KnownHours.level(hour, hour.lnDepth + 0.1);
            }
        };
        SiteBaseline baseline = baseline(seeping);
        assertThat(baseline.dryHours()).isEqualTo(COUNT - 3 * 39);
        CircularSection pipe = CircularSection.ofDiameter(0.6);
        double mean = 0;
        for (int i = 0; i < 24; i++) {
            double level = 0.12 * Math.exp(0.3 * Math.sin(Math.PI * i / 12));
            mean += Math.log(0.9 * Math.pow(level / 0.12, 0.6) * pipe.area(level)) / 24;
        }
        double learned = 0;
        for (int i = 0; i < 24; i++) {
            learned += baseline.day(Quantity.FLOW).orElseThrow().value(i, false) / 24;
        }
        assertThat(learned).isCloseTo(mean, within(0.02));
    }
}
