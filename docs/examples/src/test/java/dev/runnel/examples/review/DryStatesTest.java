package dev.runnel.examples.review;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.section.CircularSection;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Records that begin with a fault: the watch takes it for what is usual, so both states stand side by side. Invented readings. */
class DryStatesTest {
    private static final int DAY = 96;
    private static final Conduit PIPE =
            Conduit.of(CircularSection.ofDiameter(0.45), Gradient.ofRatio(1, 150), Manning.of(0.013));

    @TempDir
    Path temporary;

    /** Sixty dry days by the law of the pipe, the velocity times a share. */
    private SiteOnDisk site(IntToDoubleFunction share) {
        Random random = new Random(5);
        return new SiteOnDisk(temporary)
                .with("depth.csv", SiteOnDisk.quarterHours(60 * DAY, i -> {
                    double depth = 0.1 + 0.02 * Math.sin(2 * Math.PI * i / DAY);
                    double velocity =
                            PIPE.velocity(depth) * share.applyAsDouble(i) * Math.exp(0.03 * random.nextGaussian());
                    return Math.round(1000 * depth + random.nextGaussian()) + ","
                            + Math.round(1000 * velocity) / 1000.0;
                }))
                .with("tips.csv", SiteOnDisk.readings("time", "2026-03-02T00:00:00Z", Duration.ofDays(1), 60, i -> ""));
    }

    @Test
    void aSensorThatWasWrongFromTheFirstDayOnLeavesTwoStatesOfWhichNobodyKnowsTheTrueOne() {
        SiteOnDisk site = site(i -> i < 25 * DAY ? 0.7 : 1);
        String text = site.review().flat();
        assertThat(text)
                .containsPattern(
                        "dry weather flow 1[78]\\.\\d l/s \\(\\d+ m3 a day\\), weekdays and weekends as in a week, or"
                                + " 25\\.\\d l/s \\(finding 1, as read\\)")
                .contains(
                        "states of the record, each by its own dry days: state from to dry days mean l/s velocity / law")
                .containsPattern("usual Wed 4 Mar Thu 26 Mar 23 1[78]\\.\\d 70 %")
                .containsPattern("finding 1, as read Fri 27 Mar Thu 30 Apr 35 25\\.\\d 100 %")
                .containsPattern(
                        "which is true: 1[78]\\.\\d l/s of usual days, or the 25\\.\\d l/s of finding 1 \\(the law of"
                                + " the pipe is nearer to the second: weak evidence\\)\\?")
                .contains(
                        "the offset that was written down when the sensor was mounted; depth and velocity by hand, which"
                                + " settle it, for this state lasts to the end of the record");
        assertThat(site.written("site.html"))
                .containsPattern("1[78]\\.\\d(&nbsp;| )l/s, or 25\\.\\d(&nbsp;| )l/s \\(finding 1, as read\\)")
                .contains("which is true the readings cannot tell: usual Wed");
        assertThat(site.written("index.html")).containsPattern("or 25\\.\\d(&nbsp;| )l/s \\(finding 1, as read\\)");
        assertThat(site.written("survey.csv"))
                .containsPattern(
                        "usual 2026-03-04/2026-03-26 23 d 0\\.01[78]\\d\\d; finding 1 as read 2026-03-27/2026-04-30 35"
                                + " d 0\\.025\\d\\d");
        assertThat(site.written("findings.json"))
                .containsPattern(
                        "\"states\":\\[\\{\"from\":\"2026-03-04\",\"to\":\"2026-03-26\",\"dryDays\":23,\"mean\":0\\.01[78]\\d+,"
                                + "\"velocityOverLaw\":0\\.(69|70)\\d+,\"asRead\":false,\"inQuestion\":false\\},"
                                + "\\{\"finding\":1,\"from\":\"2026-03-27\",\"to\":\"2026-04-30\",\"dryDays\":35,\"mean\":0\\.025\\d+,"
                                + "\"velocityOverLaw\":(0\\.99|1\\.0)\\d+,\"asRead\":true,\"inQuestion\":true\\}\\]");
    }

    /** Nothing tells a fault that never ends: the figure says what it takes for granted. */
    @Test
    void oneStateSaysWhatItRestsOn() {
        SiteOnDisk site = site(i -> 0.9);
        String text = site.review().flat();
        assertThat(text)
                .contains(
                        "On usual dry days the velocity is 90 % of the law's; 64 % to 165 % can be roughness and gradient; no"
                                + " reading by hand confirms it")
                .doesNotContain("which is true", "states of the record", "To ask");
        assertThat(site.written("index.html")).doesNotContain("far from the law", "as read");
        assertThat(site.written("site.html")).contains("of the law's; no reading by hand confirms it");
    }

    @Test
    void aVelocityThatNoRoughnessAndNoGradientExplainIsMarked() {
        SiteOnDisk site = site(i -> 0.5);
        assertThat(site.review().flat())
                .contains(
                        "On usual dry days the velocity is 50 % of the law's; 64 % to 165 % can be roughness and gradient, this"
                                + " is more: a sensor, an obstruction, a bed or another pipe than stated");
        assertThat(site.written("index.html")).contains("(velocity far from the law)");
        assertThat(site.written("site.html")).contains("farther off than roughness and gradient explain");
    }
}
