package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.internal.StateText;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

class StrayVelocitiesTest {
    private static final long MINUTE = SiteHour.NANOS / 60;
    private static final double LEVEL = 0.1;

    /** Twelve velocities of 1 m/s, then others, every ten minutes at one level. */
    private static SiteHour hour(double... velocities) {
        StrayVelocities stray = new StrayVelocities();
        SiteHour hour = new SiteHour(0);
        add(stray, hour, 0, filled(12, 1));
        add(stray, hour, 12, velocities);
        return hour;
    }

    private static void add(StrayVelocities stray, SiteHour hour, int from, double... velocities) {
        for (int i = 0; i < velocities.length; i++) {
            stray.add(hour, (from + i) * 10L * MINUTE, LEVEL, velocities[i]);
        }
    }

    private static double[] filled(int count, double value) {
        double[] values = new double[count];
        Arrays.fill(values, value);
        return values;
    }

    @Test
    void whatIsDoubledAndComesBackIsStray() {
        SiteHour hour = hour(2, 1, 1, 1.5, 1.5, 1, 0.5, 1);
        assertThat(hour.strayHigh).isEqualTo(3);
        assertThat(hour.strayLow).isEqualTo(1);
        assertThat(hour.held).isEqualTo(8);
    }

    @Test
    void limitsOfWhatIsFarAndWhatIsBack() {
        assertThat(hour(1.34, 1).strayHigh).isZero();
        assertThat(hour(1.36, 1).strayHigh).isEqualTo(1);
        assertThat(hour(1 / 1.34, 1).strayLow).isZero();
        assertThat(hour(1 / 1.36, 1).strayLow).isEqualTo(1);
        assertThat(hour(1.5, 1.16).strayHigh).isZero();
        assertThat(hour(1.5, 1.14).strayHigh).isEqualTo(1);
        assertThat(hour(1.5, 1.16, 1).strayHigh).isEqualTo(2);
    }

    @Test
    void whatStaysIsAnotherVelocity() {
        double[] twelve = filled(13, 2);
        twelve[12] = 1;
        assertThat(hour(twelve).strayHigh).isEqualTo(12);
        double[] thirteen = filled(14, 2);
        thirteen[13] = 1;
        assertThat(hour(thirteen).strayHigh).isZero();
    }

    /** A storm lifts the water as well; deeper water is faster by itself. */
    @Test
    void whatCameWithAnotherLevelIsWater() {
        for (double level : new double[] {1.14, 1.16, 1 / 1.14, 1 / 1.16}) {
            StrayVelocities stray = new StrayVelocities();
            SiteHour hour = new SiteHour(0);
            add(stray, hour, 0, filled(12, 1));
            stray.add(hour, 120 * MINUTE, level * LEVEL, 2);
            stray.add(hour, 130 * MINUTE, LEVEL, 1);
            assertThat(hour.strayHigh).as("%s", level).isEqualTo(Math.abs(Math.log(level)) < Math.log(1.15) ? 1 : 0);
        }
        StrayVelocities stray = new StrayVelocities();
        SiteHour hour = new SiteHour(0);
        add(stray, hour, 0, filled(12, 1));
        for (int i = 12; i < 20; i++) {
            stray.add(hour, i * 10L * MINUTE, 8 * LEVEL, 4);
        }
        assertThat(hour.strayHigh + hour.strayLow).isZero();
    }

    @Test
    void beginsAnewAfterAGapAndNeedsTwelve() {
        StrayVelocities stray = new StrayVelocities();
        SiteHour hour = new SiteHour(0);
        add(stray, hour, 0, filled(12, 1));
        add(stray, hour, 11 + 18, 2, 1);
        assertThat(hour.held).isEqualTo(2);
        add(stray, hour, 31 + 18, 2, 1);
        assertThat(hour.held).isEqualTo(2);
        assertThat(hour.strayHigh).isEqualTo(1);
    }

    @Test
    void goesOnAfterARestart() {
        StrayVelocities first = new StrayVelocities();
        SiteHour hour = new SiteHour(0);
        double[] many = filled(60, 1);
        for (int i = 0; i < many.length; i++) {
            many[i] += i / 1000.0;
        }
        add(first, hour, 0, many);
        add(first, hour, 60, 2, 2);
        StateText text = StateText.of("stray-test", 1);
        first.write(text, hour);
        StrayVelocities second = new StrayVelocities();
        SiteHour again = new SiteHour(0);
        second.read(StateText.parse("stray-test", 1, text.toString()), again);
        add(second, again, 62, 1, 2, 1, 0.5, 1);
        add(first, hour, 62, 1, 2, 1, 0.5, 1);
        assertThat(again.strayHigh).isEqualTo(hour.strayHigh).isEqualTo(3);
        assertThat(again.strayLow).isEqualTo(hour.strayLow).isEqualTo(1);
        assertThat(again.held).isEqualTo(hour.held).isEqualTo(55);
    }
}
