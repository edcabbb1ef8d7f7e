package dev.runnel.examples.review;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.section.CircularSection;
import java.nio.file.Path;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Forty days at 15 minutes: what failed a test, and the time of a finding, stay out of the figures that they would spoil. */
class FiguresOfSoundReadingsTest {
    private static final int PER_DAY = 96;
    private static final int DAYS = 40;
    private static final Conduit PIPE =
            Conduit.of(CircularSection.ofDiameter(0.45), Gradient.ofRatio(1, 150), Manning.of(0.013));

    @TempDir
    Path temporary;

    /** Depths by a course that is told, m, and a velocity by the law of the pipe times a share. */
    private SiteOnDisk site(IntToDoubleFunction depth, IntToDoubleFunction share) {
        Random random = new Random(7);
        return new SiteOnDisk(temporary).with("depth.csv", SiteOnDisk.quarterHours(DAYS * PER_DAY, i -> {
            double velocity = PIPE.velocity(depth.applyAsDouble(i))
                    * share.applyAsDouble(i)
                    * Math.exp(0.04 * random.nextGaussian());
            double read = i == 20 * PER_DAY + 30 && share.applyAsDouble(i) == 1 ? 0.631 : depth.applyAsDouble(i);
            return Math.round(1000 * read + random.nextGaussian()) + "," + Math.round(1000 * velocity) / 1000.0;
        }));
    }

    private static double usual(int i) {
        return 0.1 + 0.04 * Math.sin(2 * Math.PI * i / PER_DAY);
    }

    @Test
    void aSpikeThatFailedIsNotTheHighestLevel() {
        SiteOnDisk site = site(FiguresOfSoundReadingsTest::usual, i -> 1);
        SiteOnDisk.Outcome outcome = site.review();

        assertThat(outcome.status()).as(outcome.err()).isZero();
        assertThat(outcome.flat()).contains("depth tests: lone reading 1 failed");
        String page = site.written("site.html");
        String highest = page.substring(page.indexOf("Highest level"));
        assertThat(highest.substring(0, highest.indexOf("</tr>")))
                .containsPattern("14\\d&nbsp;mm")
                .contains("below the soffit");
    }

    @Test
    void aPipeThatIsHeldUpForHalfOfTheTimeIsNotOffTheLaw() {
        int from = 18 * PER_DAY;
        SiteOnDisk site = site(i -> i < from ? usual(i) : 1.8 * usual(i), i -> i < from ? 1 : 0.35);
        SiteOnDisk.Outcome outcome = site.review();

        assertThat(outcome.status()).as(outcome.err()).isZero();
        assertThat(outcome.flat()).contains("water held up downstream").doesNotContain("Measured velocity is");
    }

    @Test
    void aPipeThatNeverMeetsTheLawIsSaidToBeOffIt() {
        SiteOnDisk.Outcome outcome =
                site(FiguresOfSoundReadingsTest::usual, i -> 0.6).review();

        assertThat(outcome.status()).as(outcome.err()).isZero();
        assertThat(outcome.flat())
                .contains("Measured velocity is 60 % of the law's at the same depth over the whole record: gradient");
    }
}
