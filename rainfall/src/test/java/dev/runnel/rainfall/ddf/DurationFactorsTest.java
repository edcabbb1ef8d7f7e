package dev.runnel.rainfall.ddf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DurationFactorsTest {
    private static final String OWN = "r,30,60,1440,2880\n0.2,0.7,1,3.8,5\n0.4,0.8,1,2.2,2.6\n";

    @Test
    void whatIsFromMemorySaysSo() {
        assertThat(DurationFactors.floodStudies1975())
                .hasToString("DurationFactors[Wallingford Procedure (1981) Z1, from memory, unconfirmed, 5 min to 1 d,"
                        + " r 0.12 to 0.45]");
        assertThat(DurationFactors.floodStudies1975().factor(0.12, Duration.ofHours(24)))
                .isEqualTo(6);
    }

    @Test
    void aTableOfTheUserGoesBeyondADay(@TempDir Path folder) throws IOException {
        Path file = Files.writeString(folder.resolve("z1.csv"), OWN);
        DurationFactors own = DurationFactors.read(file, "invented");
        assertThat(own.durations()).contains(Duration.ofDays(2));
        assertThat(own.factor(0.3, Duration.ofDays(2))).isCloseTo(3.8, within(1e-15));
        DdfTable table = FloodStudies1975.of(20, 0.4).withDurationFactors(own).atPoint();
        assertThat(table.longestDuration()).isEqualTo(Duration.ofDays(2));
        // M5-48h 52 mm, between the rows 50 and 75 mm of Z2 at ten years, 1.17 and 1.14.
        assertThat(table.depthMm(Duration.ofDays(2), 10)).isCloseTo(52 * (1.17 - 0.03 * 2 / 25), within(1e-12));
        assertThat(table.provenance()).contains("invented").contains("unconfirmed");
        assertThatThrownBy(() -> FloodStudies1975.of(20, 0.42).withDurationFactors(own))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("ratio must be in [0.2, 0.4], was 0.42");
        assertThatThrownBy(() -> own.factor(0.3, Duration.ofMinutes(45)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("duration must be one of [30 min, 1 h, 1 d, 2 d], was 45 min");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "'' | text: must hold a line such as r,5,15,30,60,120,1440, was empty",
                "ratio,60 | 'text line 1, column 1: must be r, was ''ratio'''",
                "r | 'text line 1, column 1: must be followed by durations in minutes, a line such as"
                        + " r,5,15,30,60,120,1440'",
                "r,x | 'text line 1, column 2: must be a number, was ''x'''",
                "r,60,30 | 'text line 1, column 3: duration must be longer than 1 h before it, was 30 min'",
                "r,60#1.2,1 | 'text line 2, column 2: r must be in [0, 1], was 1.2'",
                "r,60#0.2,1.1 | 'text line 2, column 2: factor must be 1 at 60 minutes and not below 0, was 1.1'",
                "r,60,120#0.2,1,0.9 | 'text line 2, column 3: factor must be above 0 and not below 1, was 0.9'",
                "r,30,60#0.2,,1 | 'text line 2, column 2: must be a number, was '''''"
            })
    void saysWhereATableIsWrong(String text, String message) {
        assertThatThrownBy(() -> DurationFactors.parse(text.replace('#', '\n'), "x"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage(message);
    }
}
