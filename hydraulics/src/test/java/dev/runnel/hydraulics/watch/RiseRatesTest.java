package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.internal.StateText;
import org.junit.jupiter.api.Test;

/** Rates of rises with rain and without, and what they make likely. */
class RiseRatesTest {
    /** Ten rises with rain from 1.1 to 2, five without from 0.1 to 0.5. */
    private static RiseRates apart() {
        RiseRates rates = new RiseRates();
        for (int i = 1; i <= 10; i++) {
            rates.addWith(1 + 0.1 * i);
        }
        for (int i = 1; i <= 5; i++) {
            rates.addWithout(0.1 * i);
        }
        rates.addHours(120, 480);
        return rates;
    }

    @Test
    void sizeThatPartsBothKindsIsChosen() {
        RiseRates rates = apart();
        assertThat(rates.least()).isEqualTo(1.1);
        assertThat(rates.asLargeWith()).isEqualTo(10);
        assertThat(rates.asLargeWithout()).isZero();
    }

    @Test
    void habitsRaiseTheSizeFromWhichRisesSpeakOfRain() {
        RiseRates rates = apart();
        for (int i = 0; i < 30; i++) {
            rates.addWithout(1.15 + 0.01 * i);
        }
        assertThat(rates.least()).isEqualTo(1.5);
        assertThat(rates.asLargeWithout()).isZero();
    }

    @Test
    void risesThatComeAsOftenWithoutRainSayNothing() {
        RiseRates rates = new RiseRates();
        rates.addHours(240, 240);
        for (int i = 0; i < 20; i++) {
            rates.addWith(1 + 0.01 * i);
            rates.addWithout(1.005 + 0.01 * i);
        }
        rates.addWithout(1.3);
        assertThat(rates.least()).isInfinite();
    }

    @Test
    void oneRiseWithRainSaysNothingYet() {
        RiseRates rates = new RiseRates();
        rates.addHours(12, 400);
        rates.addWith(2);
        assertThat(rates.least()).isInfinite();
        rates.addWith(1.5);
        assertThat(rates.least()).isEqualTo(1.5);
    }

    /**
     * Never seen in 480 h, half of one supposed, shape 1/2. In 480 h the chance of none is √(1/2), that of one half of the half
     * of it (negative binomial law): 1 - 0.70710678 - 0.17677670 for two or more.
     */
    @Test
    void chanceOfRisesIsThatOfALearnedRate() {
        RiseRates rates = apart();
        assertThat(rates.chanceOf(1, 0, 480)).isCloseTo(1 - 0.70710678, within(1e-8));
        assertThat(rates.chanceOf(2, 0, 480)).isCloseTo(1 - 0.70710678 - 0.17677670, within(1e-8));
    }

    /** Five smaller ones were usual in 480 h, and 11 came: as likely as in (11 + 1)/(5 + 1) times the hours. */
    @Test
    void restlessTimesExcuseLargeRises() {
        RiseRates rates = apart();
        assertThat(rates.chanceOf(2, 5, 480)).isEqualTo(rates.chanceOf(2, 0, 480));
        assertThat(rates.chanceOf(2, 11, 480)).isCloseTo(chance(960), within(1e-12));
    }

    private static double chance(double hours) {
        double none = Math.sqrt(480 / (480 + hours));
        return 1 - none - none * 0.5 * hours / (480 + hours);
    }

    /** What 5000 dry hours without one have shown counts as 1440. */
    @Test
    void anotherSeasonMayBeAnother() {
        RiseRates rates = apart();
        rates.addHours(0, 4520);
        double none = Math.sqrt(1440 / (1440 + 480.0));
        assertThat(rates.chanceOf(1, 0, 480)).isCloseTo(1 - none, within(1e-12));
    }

    /** Three spells in 600 h; a quarter of 240 h more. */
    @Test
    void chanceOfNoRainAllowsForADrySeason() {
        RiseRates rates = apart();
        for (int i = 0; i < 3; i++) {
            rates.addSpell();
        }
        assertThat(rates.chanceOfNoRain(240)).isCloseTo(Math.pow(600 / 660.0, 3.5), within(1e-12));
    }

    /** Of smaller ones than the forty that are kept only the count is known, and all may have been as large. */
    @Test
    void fortyAreKept() {
        RiseRates rates = new RiseRates();
        rates.addHours(10, 10);
        for (int i = 0; i < 60; i++) {
            rates.addWith(1 + i / 64.0);
            rates.addWithout(i / 1024.0);
        }
        StateText text = StateText.of("rates", 1);
        rates.write(text);
        assertThat(text.numbers("risesWith"))
                .hasSize(40)
                .startsWith(1 + 59 / 64.0)
                .endsWith(1 + 20 / 64.0);
        assertThat(text.index("countWithout")).isEqualTo(60);
        RiseRates again = new RiseRates();
        again.read(text);
        assertThat(again.least()).isEqualTo(rates.least()).isEqualTo(1 + 20 / 64.0);
        assertThat(again.asLargeWith()).isEqualTo(40);
    }
}
