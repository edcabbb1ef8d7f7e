package dev.runnel.examples.review;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.section.CircularSection;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A depth sensor that is moved in the first week, so that what counts as usual holds days of both depths. Invented readings. */
class UntoldShiftTest {
    private static final int DAY = 96;
    private static final Conduit PIPE =
            Conduit.of(CircularSection.ofDiameter(0.45), Gradient.ofRatio(1, 150), Manning.of(0.013));

    @TempDir
    Path temporary;

    /** Forty dry days by the law of the pipe, the depth read so many mm higher from the eighth day on. */
    private SiteOnDisk site(int higher) {
        Random random = new Random(5);
        return new SiteOnDisk(temporary)
                .with("depth.csv", SiteOnDisk.quarterHours(40 * DAY, i -> {
                    double depth = 0.12 + 0.03 * Math.sin(2 * Math.PI * i / DAY);
                    double velocity = PIPE.velocity(depth) * Math.exp(0.03 * random.nextGaussian());
                    return Math.round(1000 * depth + random.nextGaussian() + (i < 7 * DAY ? 0 : higher)) + ","
                            + Math.round(1000 * velocity) / 1000.0;
                }))
                .with("tips.csv", SiteOnDisk.readings("time", "2026-03-02T00:00:00Z", Duration.ofDays(1), 40, i -> ""));
    }

    @Test
    void saysWhatMovedAndMarksTheFigures() {
        SiteOnDisk site = site(20);
        assertThat(site.review().flat())
                .containsPattern(
                        "The depth sensor may have moved on about Mon 9 Mar: velocity and depth part since then as if the depth"
                                + " were read about 20 mm higher\\.")
                .contains("the days before are too few to learn from and what counts as usual holds days of both")
                .containsPattern("the flow since is read about [23]\\d % too high at the median depth of dry days\\.")
                .contains("a depth by hand, which settles it")
                .containsPattern(
                        "; the depth is perhaps read 20 mm higher since Mon 9 Mar, the flow [23]\\d % too high");
        assertThat(site.written("site.html")).contains("the depth is perhaps read");
        assertThat(site.written("index.html")).contains("(depth perhaps moved)");
        assertThat(site.written("survey.csv"))
                .contains("as usual; no finding, but the depth perhaps moved")
                .contains(",0.02000,2026-03-09T00:00:00Z");
        assertThat(site.written("site/daily.csv").lines().filter(line -> line.startsWith("2026-03-08")))
                .allMatch(line -> line.endsWith(",,"));
        assertThat(site.written("site/daily.csv").lines().filter(line -> line.endsWith(",0.0200")))
                .hasSize(33);
        assertThat(site.written("findings.json"))
                .containsPattern("\"depthShift\":\\{\"from\":\"2026-03-09T00:00:00Z\",\"to\":\"2026-04-1\\dT[^\"]+\","
                        + "\"metres\":0\\.02,\"isLearned\":true,\"flowShare\":0\\.[23]\\d+\\}");
    }

    @Test
    void aDepthByHandThatAgreesSettlesIt() {
        SiteOnDisk site = site(20).with(
                        "visits.csv",
                        "time,author,hand depth,clock,adjusted,work\n2026-03-20T12:00:00Z,A. Reed,0.14,,no,\n");
        assertThat(site.review().flat()).doesNotContain("may have moved").doesNotContain("perhaps read");
        assertThat(site.written("findings.json")).doesNotContain("depthShift");
    }

    @Test
    void aSoundSiteHasNoMark() {
        SiteOnDisk site = site(0);
        assertThat(site.review().flat()).doesNotContain("may have moved").doesNotContain("perhaps read");
        assertThat(site.written("survey.csv")).contains("as usual,").doesNotContain("moved");
    }
}
