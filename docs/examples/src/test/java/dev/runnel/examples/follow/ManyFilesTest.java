package dev.runnel.examples.follow;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the command does where the readings come in several files, such as one for each month. */
class ManyFilesTest {
    private static final String PIPE = SiteInGrowth.PIPE + "depth file = monthly/*.csv\n";

    @TempDir
    Path temporary;

    private SiteInGrowth site() {
        return new SiteInGrowth(temporary);
    }

    private void write(String name, String text) throws IOException {
        site().append(name, text);
    }

    /** Two-minute readings of 100 mm from a day on. */
    private static String lines(String from, int count) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < count; i++) {
            text.append(Instant.parse(from).plus(Duration.ofMinutes(2L * i))).append(",100\n");
        }
        return text.toString();
    }

    private Growth.Outcome once() {
        return site().once();
    }

    private String rejected() throws IOException {
        return site().written("depth-rejected.csv");
    }

    private void begin() throws IOException {
        write("site.txt", PIPE);
        write("monthly/march.csv", "time,depth_mm\n" + lines("2026-03-30T00:00:00Z", 20));
    }

    @Test
    void aFileThatAppearsIsReadOn() throws IOException {
        begin();
        assertThat(once().out()).contains("following 1 of 1").doesNotContain("in alarm");
        write("monthly/april.csv", "time,depth_mm\n2026-04-01T00:00:00Z,110\n2026-04-01T00:02:00Z,900\n");

        assertThat(once().out()).contains("above the soffit: in alarm, since 2026-04-01T00:02:00Z");
        assertThat(rejected()).isEmpty();
    }

    /** Each file has a header of its own. */
    @Test
    void theUnitIsThatOfTheFile() throws IOException {
        begin();
        write("monthly/april.csv", "when,level (cm)\n2026-04-01T00:00:00Z,11\n2026-04-01T00:02:00Z,90\n");

        assertThat(once().out()).contains("above the soffit: in alarm, since 2026-04-01T00:02:00Z, furthest 0.9");
    }

    @Test
    void aLastLineWithoutItsEndWaitsForOneLookAndIsNotLost() throws IOException {
        begin();
        write("monthly/march.csv", "2026-03-30T00:40:00Z,900");
        write("monthly/april.csv", "time,depth_mm\n" + lines("2026-03-30T00:42:00Z", 3));
        assertThat(once().out()).doesNotContain("in alarm");

        assertThat(once().out()).contains("above the soffit: in alarm, since 2026-03-30T00:40:00Z");
        assertThat(rejected()).isEmpty();
    }

    @Test
    void anEmptyFileAndOneWithoutReadingsHoldNothingUp() throws IOException {
        begin();
        write("monthly/a.csv", "");
        write("monthly/b.csv", "time,depth_mm\n");
        write("monthly/c.csv", "# nothing yet\n");
        write("monthly/march.csv", "2026-03-30T00:40:00Z,900\n");

        Growth.Outcome outcome = once();

        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.out()).contains("above the soffit: in alarm, since 2026-03-30T00:40:00Z");
    }

    @Test
    void whatStandsInTwoFilesIsCountedAndAnOldMonthIsNamed() throws IOException {
        begin();
        once();
        write("monthly/april.csv", "time,depth_mm\n" + lines("2026-03-30T00:36:00Z", 4));
        once();
        write("monthly/february.csv", "time,depth_mm\n" + lines("2026-02-01T00:00:00Z", 5));
        once();
        write("monthly/april.csv", lines("2026-03-30T00:44:00Z", 1));
        once();

        assertThat(rejected())
                .isEqualTo("file,line,column,kind,what\n"
                        + "april.csv,4,0,read before,2 lines before this one are not later than 2026-03-30T00:38:00Z and "
                        + "were passed over\n"
                        + "february.csv,0,0,read before,5 lines before this one are not later than 2026-03-30T00:42:00Z "
                        + "and were passed over\n");
    }

    @Test
    void aFolderWithoutAFileIsWaitedFor() throws IOException {
        write("site.txt", PIPE);
        assertThat(once().err()).contains("monthly").contains("at least one file must fit this name in site.txt");

        write("monthly/march.csv", "time,depth_mm\n" + lines("2026-03-30T00:00:00Z", 20));

        assertThat(once().err()).isEmpty();
    }

    @Test
    void aFileInAnOldCodeIsReadAsTheReviewReadsIt() throws IOException {
        write("site.txt", PIPE.replace("depth file = monthly/*.csv", "depth column = Höhe mm\ndepth unit = mm"));
        String text = "Zeit,Höhe mm,Ort\n2026-03-30T00:00:00Z,100,Brücke\n2026-03-30T00:02:00Z,900,Brücke\n";
        Files.write(site().file("depth.csv"), text.getBytes(StandardCharsets.ISO_8859_1));

        Growth.Outcome outcome = once();

        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.out()).contains("above the soffit: in alarm, since 2026-03-30T00:02:00Z");
    }
}
