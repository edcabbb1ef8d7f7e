package dev.runnel.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SettingsTest {
    @Test
    void readsKeysValuesAndComments() {
        Settings settings =
                Settings.parse("site.txt", "\uFEFF# heading\n\nname = Quay # 1\ncolour=#red  # why\nn = -1.5e-3\n");
        assertThat(settings.text("name")).isEqualTo("Quay");
        assertThat(settings.text("colour")).isEqualTo("#red");
        assertThat(settings.number("n")).isEqualTo(-0.0015);
        assertThat(settings.optionalText("other")).isEmpty();
        assertThat(settings.optionalNumber("other")).isEmpty();
        assertThat(settings.keys()).containsExactlyInAnyOrder("name", "colour", "n");
    }

    @Test
    void namesThePlaceOfWhatItRefuses() {
        refused("a = 1\nnonsense\n", "site.txt, line 2, column 1: line must be key = value, was \"nonsense\"");
        refused("= 3\n", "site.txt, line 1, column 1: key must not be empty");
        refused("a = 1\na = 2\n", "site.txt, line 2, column 1: key \"a\" must stand once, it stands on line 1");
    }

    @Test
    void refusesNumbersThatAreNone() {
        for (String text : new String[] {"NaN", "0x10", "1f", "1,5", "Infinity", "1e999"}) {
            Settings settings = Settings.parse("site.txt", "#\nn =   " + text);
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> settings.number("n"))
                    .withMessage("site.txt, line 2, column 7: n must be a decimal number, was \"" + text + "\"");
        }
    }

    @Test
    void refusesMissingAndEmptyAndUnknown() {
        Settings settings = Settings.parse("site.txt", "empty =\nodd = 1\n");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> settings.text("name"))
                .withMessage("site.txt: key \"name\" is missing");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> settings.optionalText("empty"))
                .withMessage("site.txt, line 1, column 8: empty must have a value");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> settings.allowOnly(Set.of("empty", "name")))
                .withMessage("site.txt, line 2, column 1: key \"odd\" is not known, allowed are [empty, name]");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Settings.parse("site.txt", "diametre = 450 mm\n")
                        .allowOnly(Set.of("diameter", "sediment depth", "zone")))
                .withMessage("site.txt, line 1, column 1: key \"diametre\" is not known, allowed are "
                        + "[diameter, sediment depth, zone]; did you mean \"diameter\"?");
        assertThat(settings.refused("other", "must be there")).hasMessage("site.txt: other must be there");
    }

    @Test
    void refusesAFileOfAnotherKind(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("site.txt");
        Files.write(file, new byte[] {(byte) 0xC3, 0x28, 0x00});
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Settings.read(file))
                .withMessage(file + ": file must be text in UTF-8");
        Path none = folder.resolve("none.txt");
        assertThatThrownBy(() -> Settings.read(none))
                .isInstanceOf(UncheckedIOException.class)
                .hasMessage("cannot read " + none + ": there is no such file");
    }

    private static void refused(String text, String message) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Settings.parse("site.txt", text))
                .withMessage(message);
    }
}
