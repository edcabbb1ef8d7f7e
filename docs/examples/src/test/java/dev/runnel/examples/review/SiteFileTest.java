package dev.runnel.examples.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.examples.House;
import dev.runnel.hydraulics.flow.ColebrookWhite;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.internal.Settings;
import dev.runnel.timeseries.csv.CsvUnit;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneId;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SiteFileTest {
    private static final String PLAIN = SiteOnDisk.PLAIN_SITE;

    private static Site parse(String text) {
        return SiteFile.parse(Path.of("harbour"), Settings.parse("site.txt", text));
    }

    @Test
    void threeLinesAreEnough() {
        Site site = parse(PLAIN);

        assertThat(site.id()).isEqualTo("harbour");
        assertThat(site.name()).isEqualTo("harbour");
        assertThat(site.zone()).isEqualTo(ZoneId.of("UTC"));
        assertThat(site.monitor().soffit()).isEqualTo(0.45);
        assertThat(site.monitor().conduit().gradient().value()).isCloseTo(1.0 / 150, within(1e-15));
        assertThat(site.monitor().conduit().resistance()).isEqualTo(Manning.of(0.013));
        assertThat(site.crestLevel()).isEmpty();
        assertThat(site.alarm()).isEmpty();
        assertThat(site.rain().minimumInterEvent()).isEqualTo(Duration.ofHours(6));
        assertThat(site.inputs().depth().file()).isEqualTo(Path.of("harbour", "depth.csv"));
    }

    @Test
    void readsWhatTheDemoSays() {
        Site site = SiteFile.read(House.root().resolve("docs/examples/marram-bay/saltings-lane"));

        assertThat(site.monitor().sensorOffset()).isEqualTo(0.015);
        assertThat(site.monitor().velocityFactor()).isEqualTo(0.90);
        assertThat(site.monitor().conduit().resistance())
                .isEqualTo(ColebrookWhite.ofRoughness(0.0015).atTemperature(12));
        assertThat(site.crestLevel()).hasValue(0.68);
        assertThat(site.alarm()).hasValue(new Site.AlarmRule(0.3, 0.02, Duration.ofMinutes(6), Duration.ofMinutes(10)));
        assertThat(site.inputs().tips().format().clock()).isEqualTo(ZoneId.of("Europe/London"));
    }

    @ParameterizedTest
    @CsvSource({"1:150, 0.006666666666666667", "1 in 80, 0.0125", "0.004, 0.004", "0.67 %, 0.0067"})
    void takesTheGradientInTheWaysOfTheTrade(String text, double expected) {
        Site site = parse("diameter = 700 mm\ngradient = " + text + "\nroughness = colebrook-white 0.6 mm\n");

        assertThat(site.monitor().conduit().gradient().value()).isCloseTo(expected, within(1e-15));
        assertThat(site.monitor().soffit()).isEqualTo(0.7);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            diameter = 450                 | line 4, column 12: diameter must be a number and a unit of mm, cm, m, in, ft, was "450"
            diameter = 0 mm                | line 4, column 12: diameter must be greater than 0, was "0 mm"
            diameter = NaN mm              | line 4, column 12: diameter must be a number and a unit of mm, cm, m, in, ft, was "NaN mm"
            shape = pear                   | line 4, column 9: shape must be one of circular, egg, box, was "pear"
            width = 600 mm                 | line 4, column 9: width does not belong to the shape circular
            sensor offset = -3 mm          | line 4, column 17: sensor offset must be 0 or greater, was "-3 mm"
            sensor offset = 450 mm         | line 4, column 17: sensor offset is not possible: sensorAboveInvert must be in [0, 0.45) m, was 0.45
            velocity factor = 90           | line 4, column 19: velocity factor is not possible: velocityFactor must be in [0.1, 2], was 90
            tip size = 0 mm                | line 4, column 12: tip size is not possible: tipMm must be in [0.01, 5] mm, was 0
            time zone = Europe/Londn       | line 4, column 13: time zone must be UTC, an offset such as +01:00 or a zone such as Europe/London, was "Europe/Londn"
            time pattern = dd/mm/yyyy qq b | line 4, column 16: time pattern must be a pattern such as dd/MM/yyyy HH:mm:ss, or one of
            decimal mark = dot             | line 4, column 16: decimal mark must be one of point, comma, was "dot"
            days after rain = 1.5          | line 4, column 19: days after rain must be a whole number from 0 to 30, was "1.5"
            flat line = 0                  | line 4, column 13: flat line must be longer than 0, was "0"
            alarm deadband = 20 mm         | line 4, column 18: alarm deadband needs an alarm level beside it
            depth uncertainty = 5 mm       | line 4, column 21: depth uncertainty needs depth uncertainty and velocity uncertainty together
            depth unit = furlong           | line 4, column 14: depth unit must be one of mm, cm, m, in, ft, was "furlong"
            diametre = 450 mm              | line 4, column 1: key "diametre" is not known, allowed are
            repeated hour = guess          | line 4, column 17: repeated hour must be one of reject, by order, earlier, later, was "guess"
            """)
    void refusesWhatIsNotPossibleWithItsPlace(String line, String message) {
        String text = line.startsWith("diameter") ? "\n" + PLAIN.replaceFirst("diameter.*\n", "") + line : PLAIN + line;

        assertThatIllegalArgumentException()
                .isThrownBy(() -> parse(text))
                .withMessageStartingWith("site.txt, " + message);
    }

    @Test
    void offersTheNearestKeyForAnUnknownOne() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> parse(PLAIN + "sediment deph = 20 mm\n"))
                .withMessageEndingWith("did you mean \"sediment depth\"?");
    }

    @Test
    void takesInchesFeetAndCentimetresASecond() {
        Site site = parse("diameter = 18 in\ngradient = 1:150\nroughness = manning 0.013\n"
                + "overflow crest level = 1.25 ft\nfastest velocity = 500 cm/s\nvelocity unit = cm/s\n");

        assertThat(site.monitor().soffit()).isEqualTo(0.4572);
        assertThat(site.crestLevel()).hasValue(0.381);
        assertThat(site.checks().fastestVelocity()).isEqualTo(5);
        assertThat(site.inputs().velocity().unit()).hasValue(CsvUnit.CENTIMETRE_PER_SECOND);
    }

    /** The site file and the columns know the same units, and take them for the same. */
    @Test
    void unitsAreThoseOfTheColumns() {
        assertThat(Measure.LENGTH.symbols()).containsExactly("mm", "cm", "m", "in", "ft");
        assertThat(Measure.VELOCITY.symbols()).containsExactly("m/s", "mm/s", "cm/s", "ft/s");
        Settings settings = Settings.parse("site.txt", "");
        for (Measure.Units units : List.of(Measure.LENGTH, Measure.VELOCITY)) {
            for (String unit : units.symbols()) {
                assertThat(Measure.of(settings, "key", "1 " + unit, units))
                        .as(unit)
                        .isEqualTo(CsvUnit.parse(unit).toSi(1));
            }
        }
        assertThat(Measure.of(settings, "key", "2.1 mm", Measure.LENGTH)).isEqualTo(0.0021);
        assertThat(Measure.of(settings, "key", "0.3 ft/s", Measure.VELOCITY)).isEqualTo(0.09144);
        assertThat(Measure.of(settings, "key", "1.5 min", Measure.TIME)).isEqualTo(90);
        assertThat(Header.unitIn("speed [cm/s]")).hasValue(CsvUnit.CENTIMETRE_PER_SECOND);
        assertThat(Header.unitIn("speed_cm_per_s")).hasValue(CsvUnit.CENTIMETRE_PER_SECOND);
    }

    @ParameterizedTest
    @CsvSource({"150", "1:0", "-0.004", "200 %", "steep"})
    void refusesAGradientThatIsNone(String text) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> parse("diameter = 450 mm\nroughness = manning 0.013\ngradient = " + text))
                .withMessageStartingWith("site.txt, line 3, column 12: gradient must be a fall such as 1:150");
    }

    @ParameterizedTest
    @CsvSource({"0.013", "manning", "manning n", "manning -0.013", "colebrook-white 1.5", "chezy 50"})
    void refusesARoughnessThatIsNone(String text) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> parse("diameter = 450 mm\ngradient = 1:150\nroughness = " + text))
                .withMessageStartingWith("site.txt, line 3, column 13: roughness ");
    }

    @Test
    void saysWhichKeyIsMissing() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> parse("diameter = 450 mm\nroughness = manning 0.013"))
                .withMessage("site.txt: key \"gradient\" is missing");
    }

    @Test
    void theGuideListsEveryKeyAndNoOther() throws IOException {
        Set<String> listed = new TreeSet<>();
        for (String line : Files.readAllLines(House.root().resolve("docs/site-review.md"))) {
            Matcher row = Pattern.compile("^\\| (`[^|]*`) \\|").matcher(line);
            if (row.find() && !row.group(1).contains(".") && !row.group(1).contains("/")) {
                for (String key : row.group(1).split(", ")) {
                    listed.add(key.replace("`", ""));
                }
            }
        }

        assertThat(listed).containsExactlyInAnyOrderElementsOf(SiteFile.KEYS);
    }
}
