package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Hours of a level whose nights, storms and rises are known. */
class LevelChannelsTest {
    private static final int STORM_EVERY = 5;

    /** Lowest at 4 h. */
    private static double usual(double hourOfDay) {
        return Math.log(0.2) - 0.3 * Math.cos(2 * Math.PI * (hourOfDay - 4) / 24);
    }

    /**
     * An hour with a storm every fifth day at noon, of two hours of rain, after which the level falls to half in some hours.
     *
     * @param up ln by which the level stands higher
     * @param half hours to half of the rise
     * @param wet whether the gauge wrote it
     */
    private static void add(LevelChannels channels, long hour, double up, double half, boolean wet) {
        long sinceNoon = Math.floorMod(hour - 12, 24L * STORM_EVERY);
        boolean rains = sinceNoon < 2;
        double rise = sinceNoon < 2 ? 0.25 * (sinceNoon + 1) : 0.5 * Math.pow(0.5, (sinceNoon - 1) / half);
        SiteHour of = new SiteHour(hour);
        double hourOfDay = hour % 24 + 0.5;
        of.lnDepth = usual(hourOfDay) + up + rise;
        of.rain = rains && wet ? 2 : 0;
        channels.hour(of, hourOfDay, usual(hourOfDay), sinceNoon > 48);
    }

    private static LevelChannels run(int fromDay, int toDay, double up, double half, boolean wet) {
        LevelChannels channels = new LevelChannels(4.5);
        for (long hour = 24L * fromDay; hour < 24L * toDay; hour++) {
            add(channels, hour, up, half, wet);
        }
        return channels;
    }

    private static LevelChannels.Usual usual() {
        return run(0, 20, 0, 3, true).usual(20);
    }

    @Test
    void baselineHoldsNightsAndFallsAndNoRises() {
        LevelChannels.Usual usual = usual();
        // Nights of the two days after each storm are wet.
        assertThat(usual.nights()).hasSizeBetween(10, 14);
        assertThat(usual.falls()).hasSize(4);
        for (double night : usual.nights()) {
            assertThat(night).isCloseTo(0, within(0.01));
        }
        for (double fall : usual.falls()) {
            assertThat(fall).isCloseTo(3, within(0.3));
        }
        assertThat(usual.rises()).isZero();
    }

    @Test
    void higherNightAndSlowerFallAreSaidInFigures() {
        long from = 24L * 20 * SiteHour.NANOS;
        assertThat(run(20, 32, Math.log(1.12), 6, true).since(from, usual()))
                .contains("lowest level of the night +12 % (usual scatter 0 %")
                .contains(
                        "after rain the level falls to half of its rise in 6.0 h (3 storms), usually in 3.0 h (4 storms)")
                .contains("0 rises without rain in 12 days (0 in the 20 days of the baseline)");
    }

    @Test
    void sameLevelsWithoutRainAreRises() {
        long from = 24L * 20 * SiteHour.NANOS;
        assertThat(run(20, 32, 0, 3, false).since(from, usual()))
                .contains("lowest level of the night 0 %")
                .contains("fall after rain: no storm to say so far")
                .contains("3 rises without rain in 12 days (0 in the 20 days of the baseline)");
    }

    @Test
    void whatIsNotKnownIsSaid() {
        LevelChannels channels = new LevelChannels(4.5);
        LevelChannels.Usual nothing = new LevelChannels.Usual(new double[0], new double[0], 0, 14);
        SiteHour hour = new SiteHour(7);
        hour.lnDepth = -1;
        channels.hour(hour, 7.5, -1, true);
        // No rain is known: neither falls nor rises can be told from storms.
        assertThat(channels.since(0, nothing)).isEqualTo("lowest level of the night: too few dry nights to say");
    }

    @Test
    void stateGoesOnInAnyHour() {
        for (int stop : List.of(3, 29, 36, 38, 61)) {
            LevelChannels straight = new LevelChannels(4.5);
            LevelChannels stopped = new LevelChannels(4.5);
            for (long hour = 0; hour < 24 * 6; hour++) {
                add(straight, hour, 0.1, 4, hour < 100);
                if (hour == stop) {
                    LevelChannels again = new LevelChannels(4.5);
                    again.read(stopped.write().toString());
                    stopped = again;
                }
                add(stopped, hour, 0.1, 4, hour < 100);
            }
            assertThat(stopped.write()).hasToString(straight.write().toString());
        }
    }
}
