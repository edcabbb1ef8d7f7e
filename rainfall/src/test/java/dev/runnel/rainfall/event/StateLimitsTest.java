package dev.runnel.rainfall.event;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.runnel.rainfall.gauge.TippingBucket;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

/** Each part of a kept state, on the last value that can be and on the first that cannot. */
class StateLimitsTest {
    private static final Instant START = Instant.parse("2026-03-01T12:03:00Z");
    private static final long S = START.getEpochSecond() * 1_000_000_000L;
    private static final long MINUTE = 60_000_000_000L;
    private static final Duration STEP = Duration.ofMinutes(10);
    private static final StepSeparation STEPS = EventSeparation.of(Duration.ofMinutes(30))
            .withWetAbove(0.1)
            .withPeakDurations(STEP, Duration.ofMinutes(25))
            .ofSteps(STEP);
    private static final TipSeparation TIPS =
            EventSeparation.of(Duration.ofMinutes(30)).withPeakDurations(STEP).ofTips(TippingBucket.ofTip(0.2));

    /** A stray step, a missing one, rain, a missing one, rain and two weak steps of which nobody knows yet what they are. */
    private static String inRain() {
        return after(0.05, Double.NaN, 2, Double.NaN, 1, 0.05, 0.04);
    }

    private static String after(double... depths) {
        EventDetector detector = STEPS.startAt(START);
        for (double depth : depths) {
            detector.nextStep(depth);
        }
        return detector.state().toText();
    }

    /** Rain a while ago, then a tip at 60 min and two at 61 min, seen until 61 min 40 s. */
    private static String inTips() {
        TipEventDetector detector = TIPS.start();
        detector.advanceTo(START);
        for (long seconds : new long[] {60, 3600, 3660, 3660}) {
            detector.nextTip(START.plusSeconds(seconds));
        }
        detector.advanceTo(START.plusSeconds(3700));
        return detector.state().toText();
    }

    /** The text with other values of some keys, each written {@code key=value}; without a key written {@code -key}. */
    private static String edited(String text, String... changes) {
        String result = text;
        for (String change : changes) {
            String key = change.startsWith("-") ? change.substring(1) : change.substring(0, change.indexOf('='));
            assertThat(result).contains(" " + key + "=");
            String part = change.startsWith("-") ? "" : " " + change;
            result = result.replaceFirst(" " + key + "=[^ ]*", part);
        }
        return result;
    }

    private static void assertStepsTaken(String text, String... changes) {
        String state = edited(text, changes);
        assertThat(STEPS.start(STEPS.parseState(state)).state().toText()).isEqualTo(state);
    }

    private static void assertStepsRefused(String about, String text, String... changes) {
        assertThatThrownBy(() -> STEPS.start(STEPS.parseState(edited(text, changes))))
                .as(String.join(" ", changes))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("state must be that of a machine of the same rule, whose " + about);
    }

    private static void assertTipsTaken(String text, String... changes) {
        String state = edited(text, changes);
        assertThat(TIPS.start(TIPS.parseState(state)).state().toText()).isEqualTo(state);
    }

    private static void assertTipsRefused(String text, String... changes) {
        assertThatThrownBy(() -> TIPS.start(TIPS.parseState(edited(text, changes))))
                .as(String.join(" ", changes))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("state must be that of a machine of the same rule, whose times of tips these cannot be");
    }

    @Test
    void countsOfSteps() {
        String about = "counts of steps these cannot be";
        assertStepsTaken(inRain());
        assertStepsTaken(inRain(), "missing=0");
        assertStepsTaken(inRain(), "missing=7");
        assertStepsRefused(about, inRain(), "missing=-1");
        assertStepsRefused(about, inRain(), "missing=8");
        assertStepsTaken(inRain(), "missing-before=0", "missing-inside=0");
        assertStepsRefused(about, inRain(), "missing-before=-1");
        assertStepsRefused(about, inRain(), "missing-inside=-1");
        String unbegun = STEPS.start().state().toText();
        assertStepsTaken(unbegun);
        assertStepsRefused(about, unbegun, "steps=1");
        assertStepsRefused(about, unbegun, "steps=-1");
        String dry = after(0, 0);
        assertStepsTaken(dry, "dry-from=2");
        assertStepsRefused(about, dry, "dry-from=3");
        assertStepsRefused(about, dry, "dry-from=-1");
        assertStepsRefused(about, dry, "pending=1");
    }

    @Test
    void placesOfTheOpenEvent() {
        String about = "counts of steps these cannot be";
        assertStepsTaken(inRain(), "dry-from=2");
        assertStepsRefused(about, inRain(), "dry-from=3");
        assertStepsTaken(inRain(), "pending-missing=2");
        assertStepsRefused(about, inRain(), "pending-missing=3");
        assertStepsRefused(about, inRain(), "pending-missing=-1");
        assertStepsRefused(about, inRain(), "to=" + (S + 60 * MINUTE));
        assertStepsRefused(about, inRain(), "from=" + (S + 21 * MINUTE));
        // Three dry steps end the event, so that no more than two can be waiting.
        assertStepsTaken(inRain(), "steps=6", "pending=1", "weak-steps=5,", "weak-depths=0.05,");
        assertStepsRefused(about, inRain(), "steps=8", "pending=3");
        assertStepsTaken(inRain(), "steps=5", "pending=0", "weak-steps=", "weak-depths=");
        assertStepsRefused(about, inRain(), "steps=4", "pending=-1", "weak-steps=", "weak-depths=");
    }

    @Test
    void weakSteps() {
        String about = "counts of steps these cannot be";
        assertStepsTaken(inRain(), "weak-depths=0.1,0.1,");
        assertStepsRefused(about, inRain(), "weak-depths=0.11,0.04,");
        assertStepsRefused(about, inRain(), "weak-depths=0.0,0.04,");
        assertStepsRefused(about, inRain(), "weak-depths=0.05,");
        assertStepsRefused(about, inRain(), "weak-steps=5,7,");
        assertStepsRefused(about, inRain(), "weak-steps=5,5,");
        assertStepsRefused(about, inRain(), "weak-steps=4,6,");
        assertStepsTaken(inRain(), "weak-steps=6,", "weak-depths=0.05,");
    }

    @Test
    void depthsAndCountsOfTheBook() {
        String about = "depths and counts these cannot be";
        assertStepsTaken(inRain(), "dropped=1", "dropped-mm=0.5");
        assertStepsRefused(about, inRain(), "dropped=-1");
        assertStepsRefused(about, inRain(), "dropped-mm=-0.1");
        assertStepsTaken(inRain(), "depth=0.0");
        assertStepsRefused(about, inRain(), "depth=-1.0");
        assertTipsTaken(inTips(), "from=" + (S + 60 * MINUTE));
        assertThatThrownBy(() -> TIPS.parseState(edited(inTips(), "from=" + (S + 60 * MINUTE + 1))))
                .hasMessage("state must be that of a machine of the same rule, whose " + about);
    }

    @Test
    void rainOfTheOpenEvent() {
        String rain = inRain();
        long first = S + 20 * MINUTE;
        long second = S + 40 * MINUTE;
        assertStepsRefused("rain-times this cannot be", rain, "rain-times=");
        assertStepsRefused("rain-times this cannot be", rain, "rain-times=" + first + ",");
        assertStepsRefused("rain-times this cannot be", rain, "rain-sums=0.0,");
        assertStepsRefused("rain-times this cannot be", rain, "rain-depths=2.0,");
        assertStepsRefused("rain-times this cannot be", rain, "rain-losses=0.0,");
        assertStepsRefused("rain-times this cannot be", rain, "rain-times=" + first + "," + first + ",");
        assertStepsRefused("rain-times this cannot be", rain, "rain-start=" + (first + 1));
        assertStepsTaken(rain, "rain-start=" + (first - 1));
        assertStepsRefused("rain-times this cannot be", rain, "rain-times=" + second + "," + first + ",");
        for (String depth : new String[] {"0.0", "-1.0", "Infinity", "NaN"}) {
            assertStepsRefused("rain-depths this cannot be", rain, "rain-depths=2.0," + depth + ",");
        }
        assertStepsTaken(rain, "rain-sums=0.0,0.0,");
        assertStepsTaken(rain, "rain-sums=0.0,3.0,");
        assertStepsRefused("rain-sums this cannot be", rain, "rain-sums=0.0,3.5,");
        assertStepsRefused("rain-sums this cannot be", rain, "rain-sums=-0.5,2.0,");
        assertStepsRefused("rain-sums this cannot be", rain, "rain-sums=1.0,0.5,");
        assertStepsRefused("rain-losses this cannot be", rain, "rain-losses=0.0,NaN,");
        assertStepsRefused("rain-sum this cannot be", rain, "rain-sum=Infinity");
        assertStepsRefused("rain-lost this cannot be", rain, "rain-lost=NaN");
    }

    @Test
    void deepestSoFar() {
        assertStepsTaken(inRain(), "best=0.0,0.0,");
        for (String key : new String[] {"best", "best-depths"}) {
            assertStepsRefused(key + " this cannot be", inRain(), key + "=2.0,");
            assertStepsRefused(key + " this cannot be", inRain(), key + "=2.0,-0.5,");
            assertStepsRefused(key + " this cannot be", inRain(), key + "=2.0,Infinity,");
        }
        assertStepsRefused("best-starts this cannot be", inRain(), "best-starts=" + S + ",");
    }

    /** Until a window has been full, its deepest place is where the event began, whatever rained before. */
    @Test
    void aNewEventKnowsNothingOfTheOneBefore() {
        TipEventDetector detector = TIPS.start();
        for (long seconds : new long[] {0, 60, 120, 900, 10_000, 10_060}) {
            detector.nextTip(START.plusSeconds(seconds));
        }
        String begin = Long.toString(S + 10_000 * 1_000_000_000L);
        assertThat(detector.state().toText())
                .contains(" rain-start=" + begin, " rain-sum=0.2 ", " best=0.0, best-depths=0.0, best-starts=" + begin);
    }

    @Test
    void timesOfTips() {
        long minutes = 60;
        String tips = inTips();
        assertTipsTaken(tips);
        assertTipsTaken(tips, "in-group=1");
        assertTipsTaken(tips, "now=" + (S + 61 * MINUTE));
        assertTipsRefused(tips, "now=" + (S + 61 * MINUTE - 1));
        assertTipsRefused(tips, "now=" + (S + 91 * MINUTE));
        assertTipsTaken(tips, "now=" + (S + 91 * MINUTE - 1));
        assertTipsTaken(tips, "record-start=" + (S + minutes * MINUTE));
        assertTipsRefused(tips, "record-start=" + (S + minutes * MINUTE + 1));
        assertTipsRefused(tips, "-now", "-record-start");
        assertTipsRefused(tips, "in-group=-1", "-group");
        assertTipsRefused(tips, "in-group=0", "-group");
        assertTipsRefused(tips, "-before");
        assertTipsRefused(tips, "before=" + (S + minutes * MINUTE - 1));
        // Of the tip before: after it the gap must not have been reached, and it must be another instant.
        assertTipsTaken(tips, "from=" + S, "to=" + (S + 31 * MINUTE + 1), "before=" + (S + 31 * MINUTE + 1));
        assertTipsRefused(tips, "from=" + S, "to=" + (S + 31 * MINUTE), "before=" + (S + 31 * MINUTE));
        assertTipsTaken(tips, "from=" + S, "to=" + (S + 61 * MINUTE - 1), "before=" + (S + 61 * MINUTE - 1));
        assertTipsRefused(tips, "from=" + S, "to=" + (S + 61 * MINUTE), "before=" + (S + 61 * MINUTE));
        assertTipsTaken(tips, "rain-before=" + (S + 3_700_000_000_000L));
        assertTipsRefused(tips, "rain-before=" + (S + 3_700_000_000_001L));
    }

    @Test
    void timesOfTipsBetweenEvents() {
        TipEventDetector detector = TIPS.start();
        detector.advanceTo(START);
        detector.nextTip(START.plusSeconds(60));
        detector.advanceTo(START.plusSeconds(9000));
        String text = detector.state().toText();
        long now = S + 150 * MINUTE;
        assertTipsTaken(text);
        assertTipsTaken(text, "now=" + (S + MINUTE));
        assertTipsRefused(text, "now=" + (S + MINUTE - 1));
        assertTipsTaken(text, "before=" + S);
        assertTipsRefused(text, "before=" + (S - 1));
        assertTipsTaken(text, "record-start=" + (S + MINUTE));
        assertTipsRefused(text, "record-start=" + (now + 1), "-before");
        assertTipsTaken(text, "record-start=" + now, "-before");
    }
}
