package dev.runnel.examples.follow;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the command does with files that grow, are cut, replaced or hold what they should not. */
class FollowTest {
    @TempDir
    Path temporary;

    /** Lines cut anywhere, parts of any length, a new process after each: the same bytes. */
    @Test
    void howTheFilesGrowDoesNotMatter() {
        Random random = new Random(5);
        Growth growth = new Growth(temporary.resolve("sites"), 0.45);
        double share = 0.01;
        while (share < 1) {
            growth.growTo(share);
            int part = 4096 << random.nextInt(7);
            Growth.Outcome outcome =
                    Growth.follow(growth.sites(), temporary.resolve("pieces"), "once", "off", Instant.EPOCH, part);
            assertThat(outcome.err()).isEmpty();
            share += random.nextDouble() * random.nextDouble() * 0.15;
        }
        growth.growTo(1);
        Growth.follow(growth.sites(), temporary.resolve("pieces"), "end");
        Growth.follow(growth.sites(), temporary.resolve("whole"), "end");

        assertThat(Growth.difference(
                        Growth.written(temporary.resolve("pieces")), Growth.written(temporary.resolve("whole"))))
                .isEmpty();
    }

    /** The same of files that appear one after the other, which overlap and whose last lines have no line feed. */
    @Test
    void howManyFilesGrowDoesNotMatter() {
        Random random = new Random(7);
        Growth growth = Growth.ofManyFiles(temporary.resolve("sites"), 0.45);
        double share = 0.01;
        while (share < 1) {
            growth.growTo(share);
            int part = 4096 << random.nextInt(7);
            assertThat(Growth.follow(growth.sites(), temporary.resolve("pieces"), "once", "off", Instant.EPOCH, part)
                            .err())
                    .isEmpty();
            share += random.nextDouble() * random.nextDouble() * 0.15;
        }
        growth.growTo(1);
        Growth.follow(growth.sites(), temporary.resolve("pieces"), "end");
        Growth.follow(growth.sites(), temporary.resolve("whole"), "end");
        Growth one = new Growth(temporary.resolve("one"), 0.45);
        one.growTo(1);
        Growth.follow(one.sites(), temporary.resolve("single"), "end");

        Map<String, String> whole = Growth.written(temporary.resolve("whole"));
        assertThat(Growth.difference(Growth.written(temporary.resolve("pieces")), whole))
                .isEmpty();
        Map<String, String> single = Growth.written(temporary.resolve("single"));
        whole.remove("saltings-lane/depth-rejected.csv");
        single.remove("saltings-lane/depth-rejected.csv");
        assertThat(Growth.difference(whole, single))
                .as("many files and one of the same lines")
                .isEmpty();
    }

    private static final String PIPE = "diameter = 450 mm\ngradient = 1:150\nroughness = manning 0.013\n";

    private Path sites() {
        return temporary.resolve("sites");
    }

    private Path output() {
        return temporary.resolve("output");
    }

    private Path file(String name) {
        return sites().resolve("one").resolve(name);
    }

    private void write(String name, String text) throws IOException {
        Files.createDirectories(file(name).resolveSibling("."));
        Files.writeString(file(name), text);
    }

    private void append(String name, String text) throws IOException {
        Files.writeString(file(name), text, StandardOpenOption.CREATE, StandardOpenOption.APPEND);
    }

    /** Lines of readings two minutes apart from a minute of 2 March 2026 on, in mm. */
    private static String lines(int firstMinute, int... depths) {
        StringBuilder text = new StringBuilder();
        Instant time = Instant.parse("2026-03-02T00:00:00Z").plus(Duration.ofMinutes(firstMinute));
        for (int depth : depths) {
            text.append(time).append(',').append(depth).append('\n');
            time = time.plus(Duration.ofMinutes(2));
        }
        return text.toString();
    }

    private static int[] same(int depth, int count) {
        return IntStream.generate(() -> depth).limit(count).toArray();
    }

    private Growth.Outcome once() {
        return Growth.follow(sites(), output(), "once");
    }

    private String written(String name) throws IOException {
        Path file = output().resolve("one").resolve(name);
        return Files.exists(file) ? Files.readString(file) : "";
    }

    private void begin(String more) throws IOException {
        write("site.txt", PIPE + more);
        write("depth.csv", "time,depth_mm\n" + lines(0, same(100, 20)));
    }

    @Test
    void anAlarmIsToldWhenItsReadingComesAndOnce() throws IOException {
        begin("alarm level = 300 mm\nalarm on-delay = 4 min\n");
        assertThat(once().out()).doesNotContain("in alarm");

        append("depth.csv", lines(40, 310, 320, 330));
        Growth.Outcome outcome = once();

        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.out())
                .contains("2026-03-02T00:44:00Z  one  depth high: in alarm, since 2026-03-02T00:40:00Z, furthest 0.33");
        assertThat(once().out()).doesNotContain("in alarm");
        assertThat(written("alarms.csv"))
                .isEqualTo("time_utc,alarm,state,onset_utc,highest_so_far,highest_utc\n"
                        + "2026-03-02T00:44:00Z,depth high,unacknowledged,2026-03-02T00:40:00Z,0.33,"
                        + "2026-03-02T00:44:00Z\n");
    }

    /** The last reading of a site that falls silent at its highest level is judged without one behind it. */
    @Test
    void anAlarmWaitsForNoNeighbour() throws IOException {
        begin("");
        append("depth.csv", lines(40, 800));

        assertThat(once().out()).contains("above the soffit: in alarm");
    }

    @Test
    void aLineWithoutItsEndWaits() throws IOException {
        begin("");
        append("depth.csv", "2026-03-02T00:40:00Z,90");
        assertThat(once().out()).doesNotContain("in alarm");

        append("depth.csv", "0\n");

        assertThat(once().out()).contains("above the soffit: in alarm, since 2026-03-02T00:40:00Z, furthest 0.9");
    }

    @Test
    void aFileThatIsReplacedIsSaidAndReadFromItsBeginning() throws IOException {
        begin("");
        once();
        write("depth.csv", "# another month\ntime,depth_mm\n" + lines(30, 100, 100, 100, 100, 100, 900));

        Growth.Outcome outcome = once();

        assertThat(outcome.out()).contains("above the soffit: in alarm, since 2026-03-02T00:40:00Z");
        assertThat(written("depth-rejected.csv"))
                .isEqualTo("line,column,kind,what\n"
                        + "0,0,file,the file was shortened from 514 to 180 bytes; it is read from its beginning\n"
                        + "8,0,read before,5 lines before this one are not later than 2026-03-02T00:38:00Z and were passed "
                        + "over\n");
    }

    @Test
    void aFileOfTheSameLengthWithOtherBytesIsAnotherOne() throws IOException {
        begin("");
        once();
        write("depth.csv", "time,depth_mm\n" + lines(40, same(101, 20)));

        assertThat(once().err()).isEmpty();

        assertThat(written("depth-rejected.csv"))
                .contains("0,0,file,the file was replaced by another one; it is read from its beginning\n");
    }

    /** A whole file written anew with more lines at its end is the same file. */
    @Test
    void aLongerCopyGoesOn() throws IOException {
        begin("");
        once();
        write("depth.csv", "time,depth_mm\n" + lines(0, same(100, 20)) + lines(40, 900));

        assertThat(once().out()).contains("above the soffit: in alarm");
        assertThat(written("depth-rejected.csv")).isEmpty();
    }

    @Test
    void aFileThatIsGoneIsSaidOnceAndWaitedFor() throws IOException {
        begin("");
        once();
        Path away = file("away.csv");
        Files.move(file("depth.csv"), away);
        once();
        once();
        Files.move(away, file("depth.csv"));
        append("depth.csv", lines(40, 900));

        assertThat(once().out()).contains("above the soffit: in alarm");
        assertThat(written("depth-rejected.csv"))
                .isEqualTo("line,column,kind,what\n0,0,file,the file is gone; it is read again when it is there\n");
    }

    @Test
    void aStampFarAheadIsSetAsideAndOneReadingLaterNothingIsLost() throws IOException {
        begin("");
        append("depth.csv", "2099-01-01T00:00:00Z,900\n");
        once();
        append("depth.csv", lines(40, 110, 900));

        assertThat(once().out()).contains("above the soffit: in alarm, since 2026-03-02T00:42:00Z");
        assertThat(written("depth-rejected.csv"))
                .isEqualTo("line,column,kind,what\n22,0,far from all others,2099-01-01T00:00:00Z; set aside\n");
    }

    @Test
    void aGapOfMonthsIsNoStrayStamp() throws IOException {
        begin("");
        append("depth.csv", "2026-07-01T00:00:00Z,110\n2026-07-01T00:02:00Z,900\n");

        assertThat(once().out()).contains("above the soffit: in alarm, since 2026-07-01T00:02:00Z");
        assertThat(written("depth-rejected.csv")).isEmpty();
    }

    @Test
    void lateLinesAreNamedWithTheirNumbers() throws IOException {
        begin("");
        append("depth.csv", lines(10, 100) + "not a time,3\n" + lines(40, 100) + "\u0000\u0000\u0000\n");

        once();

        assertThat(written("depth-rejected.csv"))
                .startsWith("line,column,kind,what\n22,0,out of order,2026-03-02T00:10:00Z; rejected\n"
                        + "23,1,unreadable time,")
                .contains("\n25,");
    }

    @Test
    void aClockThatRanAheadIsSaid() throws IOException {
        begin("");
        append("depth.csv", "2026-03-02T12:00:00Z,100\n" + lines(40, same(100, 60)));

        once();

        assertThat(written("depth-rejected.csv"))
                .contains(
                        "72,0,clock,50 lines in a row are not later than 2026-03-02T12:00:00Z: a clock ran ahead or was set "
                                + "back; nothing is taken before that time is over\n");
    }

    @Test
    void readsUtf16AsItGrows() throws IOException {
        write("site.txt", PIPE);
        byte[] text = ("\uFEFFtime,depth_mm\n" + lines(0, same(100, 20)) + lines(40, 900))
                .getBytes(StandardCharsets.UTF_16LE);
        Files.write(file("depth.csv"), Arrays.copyOf(text, 333));
        once();
        Files.write(file("depth.csv"), text);

        assertThat(once().out()).contains("above the soffit: in alarm, since 2026-03-02T00:40:00Z");
        assertThat(written("depth-rejected.csv")).isEmpty();
    }

    @Test
    void silenceIsToldOnceByTheClockThatIsGiven() throws IOException {
        begin("");
        Instant noon = Instant.parse("2026-03-02T12:00:00Z");

        assertThat(Growth.follow(sites(), output(), "once", "720", noon, 4096).out())
                .doesNotContain("no reading");
        assertThat(Growth.follow(sites(), output(), "once", "120", noon, 4096).out())
                .contains("one: no reading for 2 h, the last is of 2026-03-02T00:38:00Z");
        assertThat(Growth.follow(sites(), output(), "once", "120", noon, 4096).out())
                .doesNotContain("no reading");
        append("depth.csv", lines(718, 100));
        assertThat(Growth.follow(sites(), output(), "once", "120", noon, 4096).out())
                .contains("one: readings again, from 2026-03-02T11:58:00Z");
    }

    @Test
    void aSensorWithoutUsableDepthIsAnAlarm() throws IOException {
        begin("");
        append("depth.csv", lines(40, same(-9999, 40)));

        assertThat(once().out()).contains("no usable depth: in alarm, since 2026-03-02T00:40:00Z");
        assertThat(written("depth-flags.csv").lines().count()).isEqualTo(41);
    }

    @Test
    void whatWasWrittenBeyondTheStateIsCutOff() throws IOException {
        begin("");
        append("depth.csv", lines(40, 900));
        once();
        String before = written("alarms.csv");
        Files.writeString(output().resolve("one/alarms.csv"), "half a line", StandardOpenOption.APPEND);

        once();

        assertThat(written("alarms.csv")).isEqualTo(before);
    }

    @Test
    void refusesWhatItCannotGoOnFrom() throws IOException {
        begin("");
        append("depth.csv", lines(40, 900));
        once();
        Path state = output().resolve("state.txt");
        String kept = Files.readString(state);

        Files.writeString(state, kept.replace("begun=true", "begun=false"));
        assertThat(once().err()).contains("state.txt: must be as it was written, was changed since");
        Files.writeString(state, kept);
        Files.writeString(output().resolve("one/alarms.csv"), "");
        assertThat(once().err()).contains("alarms.csv: must hold at least the ").contains("holds 0");
        assertThat(Growth.follow(sites(), sites(), "once").err())
                .contains("folder to write into must be new, empty, or hold a state");
        assertThat(Growth.follow(sites(), output(), "often").err())
                .contains("poll must be a whole number from 1 to 86400, or a word, was \"often\"");
    }

    @Test
    void aRecordThatWasEndedIsNotFollowedOn() throws IOException {
        begin("");
        Growth.follow(sites(), output(), "end");

        assertThat(once().err()).contains("the record was ended; write into another folder");
    }

    @Test
    void aSiteInTroubleStopsNoOther() throws IOException {
        begin("");
        append("depth.csv", lines(40, 900));
        Files.createDirectories(sites().resolve("two"));
        Files.writeString(sites().resolve("two/site.txt"), PIPE + "alarm lvel = 3 mm\n");

        Growth.Outcome outcome = once();

        assertThat(outcome.status()).isEqualTo(1);
        assertThat(outcome.err()).contains("two cannot be followed. ").contains("alarm level");
        assertThat(outcome.out()).contains("following 1 of 2 sites").contains("above the soffit: in alarm");
    }

    @Test
    void aRuleThatHasChangedBeginsAnewAndIsSaid() throws IOException {
        begin("alarm level = 300 mm\n");
        once();
        write("site.txt", PIPE + "alarm level = 200 mm\n");
        append("depth.csv", lines(40, 250));

        assertThat(once().out())
                .contains("one/alarm-depth-high: the rule has changed since the last start and begins anew")
                .contains("depth high: in alarm");
    }

    @Test
    void aFileOfWhichNoLineCanBeTakenIsSaidOnce() throws IOException {
        write("site.txt", PIPE);
        write("depth.csv", "time,depth_mm\n" + "46083.25,100\n".repeat(30));

        assertThat(once().out())
                .contains(
                        "one: depth.csv: none of the first 30 lines could be taken; line 2, column 1: unreadable time, "
                                + "\"46083.25\" must be ISO 8601");
        assertThat(once().out()).doesNotContain("none of the first");
        assertThat(Growth.follow(sites(), output(), "end").out()).contains("one: no depth was taken from depth.csv");
        assertThat(written("depth-rejected.csv").lines()).hasSize(31);
    }

    /** A power cut may leave a file that is long and holds nothing: it waits, as what was only laid out does. */
    @Test
    void whatHoldsNoLineIsCountedAtTheEnd() throws IOException {
        begin("");
        append("depth.csv", "\u0000".repeat(300_000));
        assertThat(once().err()).isEmpty();

        assertThat(Growth.follow(sites(), output(), "end").err()).isEmpty();

        assertThat(written("depth-rejected.csv"))
                .contains("0,0,unread,\"300000 bytes at the end hold no line, and were not read\"");
    }

    @Test
    void aFolderInThePlaceOfAFileIsNamed() throws IOException {
        begin("");
        Files.createDirectories(file("tips.csv"));

        assertThat(once().err()).contains("tips.csv: must be a file, and is a folder or a device");
    }
}
