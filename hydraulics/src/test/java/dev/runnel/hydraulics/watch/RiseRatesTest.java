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
            rates.addWith(0.3 + 0.01 * i);
            rates.addWithout(0.305 + 0.01 * i);
        }
        rates.addWithout(0.6);
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

    /** Hours of one size as which what is supposed counts. */
    private static double supposed(double size) {
        return 60 * Math.pow(size, 4);
    }

    /** Half of one in so many dry hours, shape 1/2: chance of at least one, and of two (negative binomial law). */
    private static double one(double dry, double hours) {
        return 1 - Math.sqrt(dry / (dry + hours));
    }

    private static double two(double dry, double hours) {
        double none = Math.sqrt(dry / (dry + hours));
        return 1 - none - none * 0.5 * hours / (dry + hours);
    }

    private static double chance(RiseRates rates, int smaller, double hours, double... sizes) {
        return rates.chanceOf(sizes, smaller, hours);
    }

    /** Never seen in 480 h, half of one supposed in 480 h and those that such a size counts as. */
    @Test
    void chanceOfRisesIsThatOfALearnedRate() {
        double dry = 480 + supposed(1.1);
        assertThat(chance(apart(), 0, 480, 1.1)).isCloseTo(one(dry, 480), within(1e-12));
        assertThat(chance(apart(), 0, 480, 1.1, 1.1)).isCloseTo(two(dry, 480), within(1e-12));
    }

    /** The largest alone where it is far larger; else both by the smaller of them. */
    @Test
    void oneFarLargerRiseSaysMoreThanTwo() {
        assertThat(chance(apart(), 0, 480, 3, 1.2)).isCloseTo(one(480 + supposed(3), 480), within(1e-12));
        assertThat(chance(apart(), 0, 480, 1.9, 1.8)).isCloseTo(two(480 + supposed(1.8), 480), within(1e-12));
    }

    /** No size is supposed rarer than half of one in a year. */
    @Test
    void noSizeIsOutOfTheQuestion() {
        assertThat(chance(apart(), 0, 480, 20)).isCloseTo(one(480 + 8760, 480), within(1e-12));
    }

    /** What the site has shown outweighs what is supposed: three as large, shape 3/2. */
    @Test
    void ownRisesOutweighWhatIsSupposed() {
        RiseRates rates = apart();
        for (int i = 0; i < 3; i++) {
            rates.addWithout(2.5);
        }
        double mean = 3.5 * 480 / (480 + supposed(1.1));
        double often = mean / (1.5 + mean);
        double none = Math.pow(1 - often, 1.5);
        assertThat(chance(rates, 0, 480, 1.1, 1.1))
                .isCloseTo(1 - none - none * 1.5 * often, within(1e-12))
                .isGreaterThan(0.6);
    }

    /** Five smaller ones were usual in 480 h, and 11 came: as likely as in (11 + 1)/(5 + 1) times the hours. */
    @Test
    void restlessTimesExcuseLargeRises() {
        assertThat(chance(apart(), 5, 480, 1.1, 1.1)).isEqualTo(chance(apart(), 0, 480, 1.1, 1.1));
        assertThat(chance(apart(), 11, 480, 1.1, 1.1)).isCloseTo(two(480 + supposed(1.1), 960), within(1e-12));
    }

    /** What 5000 dry hours without one have shown counts as 2160. */
    @Test
    void anotherSeasonMayBeAnother() {
        RiseRates rates = apart();
        rates.addHours(0, 4520);
        double mean = 0.5 * 480 / (2160 + supposed(1.1));
        assertThat(chance(rates, 0, 480, 1.1)).isCloseTo(1 - Math.sqrt(0.5 / (0.5 + mean)), within(1e-12));
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
