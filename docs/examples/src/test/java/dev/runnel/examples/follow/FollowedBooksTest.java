package dev.runnel.examples.follow;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the command makes of corrections, settings and visits, and of books that change while it runs. */
class FollowedBooksTest {
    private static final String PIPE = SiteInGrowth.PIPE + "alarm level = 300 mm\n";
    private static final String CORRECTIONS = "series,from,to,kind,value,value at end,source,reason,evidence,author\n";

    @TempDir
    Path temporary;

    private SiteInGrowth site() {
        return new SiteInGrowth(temporary);
    }

    private void append(String name, String text) throws IOException {
        site().append(name, text);
    }

    private void begin() throws IOException {
        append("site.txt", PIPE);
        append("depth.csv", "time,depth_mm,other_mm\n" + lines(0, 20, 100));
    }

    /** Readings two minutes apart from a minute of 2 March 2026 on, in mm; another sensor reads 10 mm more. */
    private static String lines(int firstMinute, int count, int depth) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < count; i++) {
            text.append(Instant.parse("2026-03-02T00:00:00Z").plus(Duration.ofMinutes(firstMinute + 2L * i)))
                    .append(',')
                    .append(depth)
                    .append(',')
                    .append(depth + 10)
                    .append('\n');
        }
        return text.toString();
    }

    private Growth.Outcome once() {
        return site().once();
    }

    @Test
    void readingsAreCorrectedBeforeTheyAreJudged() throws IOException {
        begin();
        append(
                "corrections.csv",
                CORRECTIONS + "depth,2026-03-02T00:40:00Z,2027-01-01T00:00:00Z,offset,-0.05,,,a,b,c\n");
        append("depth.csv", lines(40, 1, 340) + lines(42, 1, 360));

        assertThat(once().out())
                .contains("depth high: in alarm, since 2026-03-02T00:42:00Z, furthest 0.31 at 2026-03-02T00:42:00Z");
    }

    @Test
    void aRemovedReadingRaisesNothingAndAReplacedOneThatOfItsSource() throws IOException {
        begin();
        append(
                "corrections.csv",
                CORRECTIONS
                        + "depth,2026-03-02T00:40:00Z,2026-03-02T00:42:00Z,removal,,,,a,b,c\n"
                        + "depth,2026-03-02T00:44:00Z,2026-03-02T00:46:00Z,replacement,,,other_mm,a,b,c\n");
        append("depth.csv", lines(40, 1, 340) + lines(42, 1, 100) + lines(44, 1, 295));

        assertThat(once().out())
                .contains("depth high: in alarm, since 2026-03-02T00:44:00Z, furthest 0.305 at 2026-03-02T00:44:00Z")
                .doesNotContain("00:40:00Z  one");
    }

    @Test
    void aClockShiftMovesTheStamps() throws IOException {
        begin();
        append(
                "corrections.csv",
                CORRECTIONS + "depth,2026-03-02T00:40:00Z,2027-01-01T00:00:00Z,clock shift,3600,,,a,b,c\n");
        append("depth.csv", lines(40, 1, 340));

        assertThat(once().out()).contains("depth high: in alarm, since 2026-03-02T01:40:00Z");
    }

    @Test
    void aClockShiftOntoOtherReadingsIsRefused() throws IOException {
        begin();
        append(
                "corrections.csv",
                CORRECTIONS + "depth,2026-03-02T00:30:00Z,2027-01-01T00:00:00Z,clock shift,-600,,,a,b,c\n");

        assertThat(once().err())
                .contains("one cannot be followed. ")
                .contains("corrections.csv: a clock shift must not move a reading onto or past another one, was depth "
                        + "of 2026-03-02T00:30:00Z to 2026-03-02T00:20:00Z beside 2026-03-02T00:28:00Z");
    }

    /** The sensor was moved up by 60 mm: the level is 260 + 60 mm. */
    @Test
    void theLevelIsThatOfTheSensorsPlaceThen() throws IOException {
        begin();
        append(
                "corrections.csv",
                CORRECTIONS + "depth,2026-03-02T00:40:00Z,2027-01-01T00:00:00Z,sensor offset,0.06,,,a,b,c\n");
        append("depth.csv", lines(38, 1, 260) + lines(40, 1, 260));

        assertThat(once().out())
                .contains("depth high: in alarm, since 2026-03-02T00:40:00Z, furthest 0.32 at 2026-03-02T00:40:00Z");
    }

    @Test
    void aWrongLineIsNamedAndStopsTheSiteUntilItIsMended() throws IOException {
        begin();
        append("corrections.csv", CORRECTIONS + "depth,2026-03-02T00:40:00Z,soon,offset,-0.05,,,a,b,c\n");
        assertThat(once().err())
                .contains("one cannot be followed. ")
                .contains("corrections.csv, line 2, column 3: to must be a time");

        Files.delete(site().file("corrections.csv"));

        assertThat(once().err()).isEmpty();
    }

    @Test
    void aChangeOfTheBooksIsSaidOnceAndWhatReachesBackIsNamed() throws IOException {
        begin();
        once();
        append(
                "corrections.csv",
                CORRECTIONS
                        + "depth,2026-03-02T00:10:00Z,2026-03-02T00:20:00Z,removal,,,,a,b,c\n"
                        + "depth,2026-03-02T00:40:00Z,2027-01-01T00:00:00Z,offset,-0.05,,,a,b,c\n");
        append("depth.csv", lines(40, 1, 340));

        assertThat(once().out())
                .contains(
                        "one: corrections.csv has changed: 2 corrections are new, 0 are gone; readings from now on are "
                                + "corrected by it, and what was written and learned before stands as it is although it reaches "
                                + "back (depth removal from 2026-03-02T00:10:00Z): write into a new folder to have the record anew")
                .doesNotContain("in alarm");
        assertThat(once().out()).doesNotContain("has changed");
        append("site.txt", "alarm deadband = 10 mm\n");
        assertThat(once().out())
                .contains("one: site.txt has changed: what comes from now on is judged by the new settings");
        assertThat(site().written("books.csv").lines())
                .hasSize(3)
                .element(1)
                .asString()
                .startsWith("2026-03-02T00:38:00Z,corrections.csv,\"has changed: 2 corrections are new");
    }

    @Test
    void velocitiesThatComeLaterAreSaid() throws IOException {
        begin();
        once();
        append("velocity.csv", "time,velocity (m/s)\n2026-03-02T00:40:00Z,0.5\n");

        assertThat(once().out())
                .contains(
                        "one: velocities have come since the following began and are not read: write into a new folder");
        assertThat(once().out()).doesNotContain("have come");
    }

    @Test
    void aVisitIsComparedOnceTheRecordHasPassedIt() throws IOException {
        begin();
        append("visits.csv", "time,author,hand depth\n2026-03-02T00:21:00Z,crew 4,0.12\n");
        assertThat(once().out()).doesNotContain("visit");
        append("depth.csv", lines(40, 200, 100));

        assertThat(once().out())
                .contains("2026-03-02T00:21:00Z  one  visit: depth 0.12 by hand, 0.1 by the monitor, beyond 0.006");
        assertThat(once().out()).doesNotContain("visit");
        assertThat(site().written("visits.csv").lines()).hasSize(2);
    }

    /** In one running process: the clock of the machine is asked once a look, and between the looks the book is written. */
    @Test
    void aBookThatChangesAndASiteThatComesWhileItRunsAreSeen() throws Exception {
        begin();
        AtomicInteger looks = new AtomicInteger();
        Thread here = Thread.currentThread();
        Clock clock = new Clock() {
            @Override
            public Instant instant() {
                try {
                    if (looks.incrementAndGet() == 1) {
                        append(
                                "corrections.csv",
                                CORRECTIONS + "depth,2026-03-02T00:40:00Z,2027-01-01T00:00:00Z,offset,-0.05,,,a,b,c\n");
                        append("depth.csv", lines(40, 1, 340) + lines(42, 1, 360));
                        append("../two/depth.csv", "time,depth_mm,other_mm\n" + lines(0, 1, 100) + lines(2, 2, 400));
                        append("../two/site.txt", PIPE + "depth column = depth_mm\n");
                    } else if (looks.get() == 3) {
                        here.interrupt();
                    }
                } catch (IOException e) {
                    throw new IllegalStateException(e);
                }
                return Instant.parse("2026-03-02T00:50:00Z");
            }

            @Override
            public java.time.ZoneId getZone() {
                return ZoneOffset.UTC;
            }

            @Override
            public Clock withZone(java.time.ZoneId zone) {
                return this;
            }
        };
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        PrintStream print = new PrintStream(out, true, StandardCharsets.UTF_8);
        String[] args = {site().sites().toString(), site().output().toString(), "1", "600"};

        assertThat(Follow.run(args, print, print, clock)).isZero();

        assertThat(Thread.interrupted()).isTrue();
        assertThat(out.toString(StandardCharsets.UTF_8))
                .contains("one: corrections.csv has changed: 1 corrections are new")
                .contains("following two too")
                .contains("2026-03-02T00:02:00Z  two  depth high: in alarm")
                .contains("depth high: in alarm, since 2026-03-02T00:42:00Z, furthest 0.31");
    }
}
