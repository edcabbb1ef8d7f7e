package dev.runnel.hydraulics.watch;

import static dev.runnel.hydraulics.watch.KnownHours.baseline;
import static dev.runnel.hydraulics.watch.KnownHours.index;
import static dev.runnel.hydraulics.watch.KnownHours.text;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.Interval;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** A baseline of known hours as a value, in words, and as text. */
class SiteBaselineTest {
    private static final SiteBaseline SOUND = baseline(hour -> {});
    private static final SiteBaseline LEVEL = baseline(SiteHour::withholdVelocity);

    @Test
    void isAValue() {
        SiteBaseline again = SiteBaseline.parse(InventedSite.MONITOR, SOUND.toText());
        assertThat(again).isEqualTo(SOUND).hasSameHashCodeAs(SOUND).isNotEqualTo(LEVEL);
        assertThat(again.toText()).isEqualTo(SOUND.toText());
        assertThat(SOUND).isNotEqualTo(SOUND.toText());
        assertThat(SOUND.hashCode()).isNotEqualTo(LEVEL.hashCode());
        assertThat(SOUND.monitor()).isEqualTo(InventedSite.MONITOR);
        assertThat(SOUND.interval()).isEqualTo(KnownHours.STRETCH);
        assertThat(SOUND.localHours().isRest(KnownHours.FIRST + 5 * 24)).isTrue();
        String span = "SiteBaseline[" + KnownHours.STRETCH + ", 336 hours, 336 dry";
        assertThat(SOUND).hasToString(span + "]");
        assertThat(LEVEL).hasToString(span + ", level only]");
        assertThat(baseline(hour -> hour.depthSpread = 0.3)).hasToString(span + ", pumped]");
    }

    @Test
    void refusesWhatIsNoBaselineOfThisMonitor() {
        assertThatThrownBy(() -> SiteBaseline.parse(InventedSite.MONITOR.withSensorOffset(0.1), SOUND.toText()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("monitor must be the one of the baseline, " + InventedSite.MONITOR + ", was ");
        for (String key : List.of("centre", "scale", "covariance")) {
            String longer = SOUND.toText().replaceFirst(" " + key + "=", " " + key + "=1.0,");
            assertThatThrownBy(() -> SiteBaseline.parse(InventedSite.MONITOR, longer))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessage(key + " must have length " + (key.equals("covariance") ? "3, was 4" : "4, was 5"));
        }
    }

    @Test
    void whatIsUsual() {
        assertThat(SOUND.day(Quantity.VELOCITY_AT_DEPTH)).isEmpty();
        assertThat(SOUND.day(Quantity.DEPTH)).isPresent();
        assertThat(SOUND.highestUsual(Quantity.DEPTH)).isCloseTo(0.12 * Math.exp(0.3), within(0.002));
        assertThat(SOUND.lowestUsual(Quantity.DEPTH)).isCloseTo(0.12 * Math.exp(-0.3), within(0.002));
        assertThat(LEVEL.highestUsual(Quantity.FLOW)).isEqualTo(Double.POSITIVE_INFINITY);
        assertThat(LEVEL.lowestUsual(Quantity.FLOW)).isZero();
        // Of both kinds of days: on days of rest the level is higher by 20 %.
        SiteBaseline rest = baseline(hour -> {
            if (KnownHours.LOCAL.isRest(hour.hour)) {
                KnownHours.level(hour, hour.lnDepth + 0.2);
                hour.withholdVelocity();
            }
        });
        assertThat(rest.highestUsual(Quantity.DEPTH)).isCloseTo(0.12 * Math.exp(0.5), within(0.004));
        assertThat(rest.lowestUsual(Quantity.DEPTH)).isCloseTo(0.12 * Math.exp(-0.3), within(0.004));
        assertThat(SOUND.scatter(Quantity.FLOW)).isCloseTo(0.24 / 0.75 / 1.7, within(1e-12));
        assertThat(SOUND.scatter(Quantity.VELOCITY_AT_DEPTH)).isCloseTo(0.08 / 0.75 / 1.4, within(1e-12));
        assertThat(LEVEL.scatter(Quantity.FLOW)).isNaN();
        assertThat(SOUND.rainLagHours()).isEmpty();
        assertThat(SOUND.clockWatch().orElseThrow().hasFlow()).isTrue();
        assertThat(LEVEL.clockWatch().orElseThrow().hasFlow()).isFalse();
        assertThat(SOUND.testsGaugeClock()).isTrue();
        assertThat(baseline(hour -> hour.rain = Double.NaN).testsGaugeClock()).isFalse();
        assertThat(baseline(hour -> hour.depthSpread = 0.3).testsGaugeClock()).isFalse();
    }

    /** Lags of the storms of the baseline: their median. */
    @Test
    void lagOfTheStorms() {
        String lags = SOUND.toText().replaceFirst(" stormLags=\\S*", " stormLags=0.5,-0.25,1.0,");
        SiteBaseline stormy = SiteBaseline.parse(InventedSite.MONITOR, lags);
        assertThat(stormy.rainLagHours()).hasValue(0.5);
        assertThat(stormy.describe())
                .contains("\nusual lag of depth behind rain that is held back as this site does: 0.50 h\n");
        assertThat(stormy.notTested()).noneMatch(each -> each.startsWith("the clock of the rain gauge"));
        for (String few : List.of("", "0.5,")) {
            assertThat(SiteBaseline.parse(
                                    InventedSite.MONITOR,
                                    SOUND.toText().replaceFirst(" stormLags=\\S*", " stormLags=" + few))
                            .notTested())
                    .contains("the clock of the rain gauge, until two storms have told how soon the depth follows");
        }
        assertThat(SiteBaseline.parse(
                                InventedSite.MONITOR,
                                SOUND.toText().replaceFirst(" stormLags=\\S*", " stormLags=0.5,0.6,"))
                        .notTested())
                .noneMatch(each -> each.startsWith("the clock of the rain gauge"));
    }

    @Test
    void inWords() {
        assertThat(SOUND.describe().lines())
                .hasSize(12)
                .startsWith("baseline " + KnownHours.STRETCH + ": 336 hours, 336 of them dry")
                .anyMatch(line -> line.startsWith("velocity at a depth: UsualVelocity[12 classes from 0."))
                .anyMatch(line -> line.matches(
                        "usual dry day of depth: 100 % of the variance explained, scatter of an hour" + " 2\\.[0-9] %"))
                .contains(
                        "scatter allowed for in a block of 6 h, velocity at the same depth: 7.6 %; a lasting change is"
                                + " found from about 8 %, and after three weeks from 6 %",
                        "scatter allowed for in a block of 6 h, flow: 18.8 %; a lasting change is found from about 24 %",
                        "not tested: the clock of the rain gauge, until two storms have told how soon the depth follows")
                .anyMatch(line -> line.matches("usual highest level of a dry day: 0\\.16[0-9] m"))
                .anyMatch(line -> line.matches("not tested: depths in rain above 0\\.16[0-9] m or below 0\\.08[0-9] m,"
                        + " which the baseline did not see"));
        assertThat(LEVEL.notTested())
                .containsExactly(
                        "velocity at the same depth: held up downstream, more water and a depth sensor that drifts cannot"
                                + " be told apart; a finding is level up or level down",
                        "flow, velocity zeros, weak echo, reverse flow",
                        "the clock of the rain gauge, until two storms have told how soon the depth follows");
        SiteBaseline dark = baseline(hour -> {
            hour.rain = Double.NaN;
            hour.depthSpread = 0.3;
        });
        assertThat(dark.describe()).contains("\nthe depth swings as below a pumping station");
        assertThat(dark.notTested())
                .contains(
                        "rain: dry hours are told from the level; a slow rise by rain may pass for a change",
                        "the clock of the rain gauge: no rain is known");
        assertThat(baseline(hour -> hour.depthSpread = 0.3).notTested())
                .contains("the clock of the rain gauge: the depth follows pumps as well");
        SiteBaseline tide = baseline(hour ->
                KnownHours.level(hour, hour.lnDepth + 0.5 * Math.cos(2 * Math.PI * index(hour) / 12.4206012)));
        assertThat(tide.describe()).contains("\nthe depth follows the tide");
        assertThat(tide.notTested()).contains("the clock of the rain gauge: the depth follows the tide as well");
        assertThat(tide.toString()).contains(", tidal");
        assertThat(text(SOUND).flag("tidal")).isFalse();
    }

    @Test
    void aSearchInWords() {
        BaselineSearch.Refused first = new BaselineSearch.Refused(
                Interval.of(KnownHours.day(0), KnownHours.day(14)), List.of("one thing", "another"));
        assertThat(first).hasToString(first.interval() + ": one thing; another");
        assertThatThrownBy(() -> new BaselineSearch.Refused(first.interval(), List.of()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("reasons must not be empty");
        for (int count : new int[] {0, 1, 3, 4, 5}) {
            List<BaselineSearch.Refused> refused = Collections.nCopies(count, first);
            BaselineSearch none = new BaselineSearch(Optional.empty(), refused, Optional.empty());
            assertThat(none).hasToString("BaselineSearch[no baseline, " + count + " stretches refused]");
            assertThat(none.describe().lines()).hasSize(1 + Math.min(4, count));
            assertThat(none.describe())
                    .startsWith("no baseline is to be had; nothing is judged. What is missing, by stretch:");
            if (count > 3) {
                assertThat(none.describe()).endsWith("\nand " + (count - 3) + " later stretches for like reasons");
            }
            if (count == 3) {
                assertThat(none.describe()).endsWith("\nnot taken: " + first);
            }
        }
        BaselineSearch found = new BaselineSearch(Optional.of(SOUND), List.of(), Optional.empty());
        assertThat(found.describe()).isEqualTo(SOUND.describe());
        assertThat(found).hasToString("BaselineSearch[" + SOUND + ", 0 stretches refused]");
    }
}
