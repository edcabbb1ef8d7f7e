package dev.runnel.examples.pages;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Figures whose labels or cells say what they should. */
class FigureLabelsTest {
    /** A letter of twelve pixels is seven wide. */
    private static final double LETTER = 7;

    @Test
    void labelsOfMillionsAreNotCutOff() {
        for (double most : new double[] {8, 4e3, 2.3e6, 9.4e7}) {
            String svg = LineFigure.of(
                    "Volumes",
                    "days",
                    "m3",
                    List.of(new LineFigure.Line("a site", new double[] {0, 1}, new double[] {0, most}, false)));
            var label = Pattern.compile(
                            "<text class=\"label\" x=\"([^\"]+)\" y=\"[^\"]+\" text-anchor=\"end\">([^<]*)<")
                    .matcher(svg);
            int found = 0;
            while (label.find()) {
                found++;
                assertThat(Double.parseDouble(label.group(1))
                                - LETTER * label.group(2).length())
                        .as(label.group(2))
                        .isGreaterThanOrEqualTo(0);
            }
            assertThat(found).isGreaterThan(3);
        }
    }

    @Test
    void aDayThatLostAReadingDoesNotStandOut() {
        LocalDate day = LocalDate.of(2026, 3, 2);
        assertThat(cells(day, 287 / 288.0)).contains("class=\"full\"").doesNotContain("class=\"part\"");
        assertThat(cells(day, 0.98)).contains("class=\"part\"").doesNotContain("class=\"full\"");
        assertThat(cells(day, 0)).contains("class=\"cross\"");
    }

    private static String cells(LocalDate day, double share) {
        TreeMap<LocalDate, Double> shares = new TreeMap<>();
        shares.put(day, share);
        return CalendarFigure.of(shares, "Days");
    }
}
