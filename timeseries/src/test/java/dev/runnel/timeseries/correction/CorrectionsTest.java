package dev.runnel.timeseries.correction;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.tuple;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CorrectionsTest {
    private static final Instant T0 = Instant.parse("2026-03-01T00:00:00Z");
    private static final Series RAW = hourly(1, 2, 3, 4, Double.NaN, 6, 7, 8);

    private static final String LIST = """
            # Marram Bay, Saltings Lane
            series,from,to,kind,value,value at end,source,reason,evidence,author
            depth,2026-03-01T01:00:00Z,2026-03-01T05:00:00Z,drift,0.0,-0.4,,"sensor sank, slowly",visits of 1 and 8 March,A. Surveyor
            depth,2026-03-01T03:00:00Z,2026-03-01T04:00:00Z,removal,,,,cleaning,visit,A. Surveyor
            depth,2026-03-01T04:00:00Z,2026-03-01T06:00:00Z,replacement,,,profile,lost echo,check lost echo,A. Surveyor
            velocity,2026-03-01T00:00:00Z,2026-03-02T00:00:00Z,factor,1.05,,,gauging,gauging of 2 March,A. Surveyor
            depth,2026-03-01T00:00:00Z,2026-03-02T00:00:00Z,sediment,0.03,,,found,visit,A. Surveyor
            """;

    @Test
    void eachAlteredReadingSaysWhatItWasAndWhy() {
        CorrectedSeries corrected =
                Corrections.parse(LIST).apply("depth", RAW, Map.of("profile", hourly(0, 0, 0, 0, 44, 66)));
        assertThat(corrected.series().toValues()).containsExactly(1, 2, 2.9, Double.NaN, 44, 66, 7, 8);
        assertThat(corrected.series().stream().map(each -> each.quality()))
                .containsExactly(
                        Quality.UNCHECKED,
                        Quality.ESTIMATE,
                        Quality.ESTIMATE,
                        Quality.MISSING,
                        Quality.ESTIMATE,
                        Quality.ESTIMATE,
                        Quality.UNCHECKED,
                        Quality.UNCHECKED);
        assertThat(corrected.trail())
                .extracting(each -> each.raw().value(), AlteredReading::numbers)
                .containsExactly(
                        tuple(2.0, java.util.List.of(1)),
                        tuple(3.0, java.util.List.of(1)),
                        tuple(4.0, java.util.List.of(1, 2)),
                        tuple(Double.NaN, java.util.List.of(1, 3)),
                        tuple(6.0, java.util.List.of(3)));
        assertThat(corrected.trail().get(2))
                .hasToString("2026-03-01T03:00:00Z 4 unchecked -> 2026-03-01T03:00:00Z NaN missing by [1, 2]"
                        + " [sensor sank, slowly, cleaning]");
        assertThat(corrected).hasToString("CorrectedSeries[depth, 5 of 8 readings altered]");
    }

    @Test
    void everythingCanBeUndone() {
        Corrections list = Corrections.parse(LIST);
        Map<String, Series> sources = Map.of("profile", hourly(0, 0, 0, 0, 44, 66));
        CorrectedSeries corrected = list.apply("depth", RAW, sources);
        assertThat(corrected.raw()).isSameAs(RAW);
        assertThat(corrected.without(1, 2, 3).series()).isEqualTo(RAW);
        assertThat(corrected.without(2).series().toValues()).containsExactly(1, 2, 2.9, 4 - 0.2, 44, 66, 7, 8);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> corrected.without(6))
                .withMessage("numbers must be in [1, 5], was 6");
    }

    @Test
    void theSameListIsTheSameBytes(@TempDir Path folder) throws IOException {
        Corrections list = Corrections.parse(LIST);
        Path file = folder.resolve("corrections.csv");
        list.write(file);
        assertThat(Corrections.read(file)).isEqualTo(list).hasSameHashCodeAs(list);
        String once = Files.readString(file);
        Corrections.read(file).write(file);
        assertThat(Files.readString(file)).isEqualTo(once);
        assertThat(once)
                .startsWith("series,from,to,kind,value,value at end,source,reason,evidence,author\n"
                        + "depth,2026-03-01T01:00:00Z,2026-03-01T05:00:00Z,drift,0,-0.4,,\"sensor sank, slowly\",");
        assertThat(list.settings("depth")).extracting(Correction::value).containsExactly(0.03);
    }

    @Test
    void whatIsEqualHasTheSameHashCode() {
        Interval day = Interval.of(T0, Duration.ofDays(1));
        Correction offset = Correction.offset("depth", day, 0);
        assertThat(offset)
                .isEqualTo(Correction.offset("depth", day, 0))
                .hasSameHashCodeAs(Correction.offset("depth", day, 0));
        // The other zero has another hash code, and another text in a file.
        assertThat(offset).isNotEqualTo(Correction.offset("depth", day, -0.0));
    }

    @Test
    void settingsAlterNoReadingAndAreListed() {
        Interval all = Interval.of(T0, Duration.ofDays(1));
        Corrections list = Corrections.of(
                Correction.sensorOffset("depth", all, 0.03),
                Correction.offset("depth", all, 0.5),
                Correction.roughness("depth", all, 0.015),
                Correction.sediment("velocity", all, 0.01));
        assertThat(list.settings("depth"))
                .extracting(each -> each.kind().toText(), Correction::value)
                .containsExactly(tuple("sensor offset", 0.03), tuple("roughness", 0.015));
        assertThat(list.list()).extracting(each -> each.kind().isSetting()).containsExactly(true, false, true, true);
        CorrectedSeries corrected = list.apply("depth", RAW);
        assertThat(corrected.series().value(0)).isEqualTo(RAW.value(0) + 0.5);
        assertThat(corrected.trail().get(0).numbers()).containsExactly(2);
        assertThat(list.list().get(0).toString()).contains(", sensor offset at 0.03 m: none given");
        assertThat(list.list().get(2).toString()).contains(", roughness 0.015: none given");
    }

    @Test
    void aClockShiftMovesReadingsAndKeepsTheirOrder() {
        Interval last = Interval.of(T0.plusSeconds(5 * 3600), Duration.ofDays(1));
        Series raw = RAW;
        CorrectedSeries back = Corrections.of(Correction.clockShift("depth", last, Duration.ofMinutes(-59)))
                .apply("depth", raw);
        assertThat(back.series().time(5)).isEqualTo(T0.plusSeconds(4 * 3600 + 60));
        assertThat(back.series().value(5)).isEqualTo(6);
        assertThat(back.series().quality(5)).isEqualTo(Quality.UNCHECKED);
        assertThat(back.altered()).isEqualTo(3);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Corrections.of(Correction.clockShift("depth", last, Duration.ofHours(-1)))
                        .apply("depth", raw))
                .withMessageStartingWith("a clock shift must not move a reading onto or past another one, was to put"
                        + " 2026-03-01T04:00:00Z after 2026-03-01T04:00:00Z by Correction[depth ");
    }

    @Test
    void suspectStaysSuspectAndMissingStaysMissing() {
        Series raw = Series.of(RAW.toEpochNanos(), RAW.toValues(), new byte[] {
            Quality.SUSPECT.toCode(), 0, 0, 0, Quality.MISSING.toCode(), 0, 0, 0
        });
        Interval all = Interval.of(T0, Duration.ofDays(1));
        CorrectedSeries corrected = Corrections.of(
                        Correction.factor("depth", all, 2), Correction.offset("depth", all, 1))
                .apply("depth", raw);
        assertThat(corrected.series().toValues()).containsExactly(3, 5, 7, 9, Double.NaN, 13, 15, 17);
        assertThat(corrected.series().quality(0)).isEqualTo(Quality.SUSPECT);
        assertThat(corrected.series().quality(1)).isEqualTo(Quality.ESTIMATE);
        assertThat(corrected.series().quality(4)).isEqualTo(Quality.MISSING);
    }

    @Test
    void mistakesInAFileAreNamedWithLineAndColumn() {
        refused(
                "series,from,to,kind,reason,evidence,autor\n",
                "corrections, line 1, column 7: name must be one of"
                        + " [series, from, to, kind, value, value at end, source, reason, evidence, author], was \"autor\";"
                        + " did you mean \"author\"?");
        refused(
                "series,from,to,kind,reason,evidence\n",
                "corrections, line 1: must have a column author, had" + " [series, from, to, kind, reason, evidence]");
        String header = "series,from,to,kind,value,source,reason,evidence,author\n";
        refused(
                header + "d,2026-03-01T00:00:00Z,2026-03-01T00:00:00Z,offset,1,,r,e,a",
                "corrections, line 2, column 3: to must be after from, 2026-03-01T00:00:00Z, was 2026-03-01T00:00:00Z");
        refused(
                header + "d,1 March,2026-03-01T00:00:00Z,offset,1,,r,e,a",
                "corrections, line 2, column 2: from must be a time such as 2026-03-01T12:00:00Z, was \"1 March\"");
        String from = header + "d,2026-03-01T00:00:00Z,2026-03-02T00:00:00Z,";
        refused(
                from + "ofset,1,,r,e,a",
                "corrections, line 2, column 4: kind must be one of [offset, drift, factor,"
                        + " clock shift, removal, replacement, sediment, sensor offset, roughness], was \"ofset\"; did you mean \"offset\"?");
        refused(from + "offset,,,r,e,a", "corrections, line 2, column 5: value must not be empty");
        refused(from + "offset,NaN,,r,e,a", "corrections, line 2, column 5: value must be finite, was \"NaN\"");
        refused(from + "factor,0,,r,e,a", "corrections, line 2: kind factor: factor must not be 0, which is a removal");
        refused(
                from + "removal,1,,r,e,a",
                "corrections, line 2, column 5: value must be empty for a removal, was \"1\"");
        refused(from + "removal,,,,e,a", "corrections, line 2, column 7: reason must not be empty");
        refused(from + "removal,,,r,e", "corrections, line 2: must have 9 cells as the header, had 8");
        refused(
                from + "sediment,-0.1,,r,e,a",
                "corrections, line 2: kind sediment: level must be 0 or greater and finite (m), was -0.1");
        refused(
                from + "sensor offset,-0.1,,r,e,a",
                "corrections, line 2: kind sensor offset: height must be 0 or greater and finite (m), was -0.1");
        refused(
                from + "roughness,0,,r,e,a",
                "corrections, line 2: kind roughness: roughness must be greater than 0 and finite, was 0");
        refused(
                from + "clock shift,1e300,,r,e,a",
                "corrections, line 2, column 5: value must be seconds of less than 292 years, was 1.0E300");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Corrections.parse(LIST).apply("depth", RAW))
                .withMessageStartingWith("sources must hold profile, had [], asked for by Correction[depth");
    }

    private static void refused(String text, String message) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Corrections.parse(text))
                .withMessage(message);
    }

    static Series hourly(double... values) {
        SeriesBuilder builder = Series.builder();
        for (int i = 0; i < values.length; i++) {
            builder.add(T0.plusSeconds(3600L * i), values[i]);
        }
        return builder.build();
    }
}
