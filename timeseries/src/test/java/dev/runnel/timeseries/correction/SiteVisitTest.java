package dev.runnel.timeseries.correction;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import dev.runnel.timeseries.correction.Correction.Kind;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

class SiteVisitTest {
    private static final Instant T0 = Instant.parse("2026-03-01T00:00:00Z");
    private static final Instant END = Instant.parse("2026-04-01T00:00:00Z");
    private static final String VISITS = """
            time,author,hand depth,hand velocity,gauged flow,sediment,sensor zero,clock,adjusted,work
            2026-03-15T10:00:00Z,A. Surveyor,0.200,0.50,0.025,0.04,,70,yes,sensor cleaned
            2026-03-01T10:00:00Z,A. Surveyor,0.200,0.60,,0.02,0.001,65,,
            2026-03-29T10:00:00Z,B. Surveyor,0.160,0.60,,,,,no,
            """;

    @Test
    void readsVisitsInOrderOfTime() {
        List<SiteVisit> visits = SiteVisit.parse(VISITS);
        assertThat(visits).extracting(each -> each.time().toString()).isSorted();
        assertThat(visits.get(1).handDepth()).hasValue(0.2);
        assertThat(visits.get(1).gaugedFlow()).hasValue(0.025);
        assertThat(visits.get(2).sediment()).isEmpty();
        assertThat(visits.get(1))
                .hasToString("SiteVisit[2026-03-15T10:00:00Z by A. Surveyor, hand depth 0.2, hand velocity 0.5,"
                        + " gauged flow 0.025, sediment 0.04, clock ahead by 1 min 10 s, adjusted, sensor cleaned]");
    }

    @Test
    void comparesWithTheMonitorAndProposesWhatFollows() {
        VisitComparison comparison = VisitComparison.standard();
        List<VisitDifference> found =
                comparison.differences(SiteVisit.parse(VISITS), ramp(0.20, 0.02), ramp(0.60, 0), Series.empty());
        assertThat(found)
                .extracting(
                        each -> each.visit().time().toString().substring(8, 10),
                        VisitDifference::quantity,
                        VisitDifference::isCompared,
                        VisitDifference::isBeyond)
                .containsExactly(
                        tuple("01", "depth", true, false),
                        tuple("01", "velocity", true, false),
                        tuple("01", "clock", true, true),
                        tuple("15", "depth", true, true),
                        tuple("15", "velocity", true, true),
                        tuple("15", "flow", false, false),
                        tuple("15", "clock", true, true),
                        tuple("29", "depth", true, true),
                        tuple("29", "velocity", true, false));
        assertThat(found.get(3).difference()).isCloseTo(0.02, within(1e-9));
        assertThat(found.get(3).tolerance()).isEqualTo(0.006);
        Corrections proposals = comparison.proposals(SiteVisit.parse(VISITS), found, END);
        assertThat(proposals.list())
                .extracting(Correction::kind, Correction::series)
                .containsExactly(
                        tuple(Kind.DRIFT, "depth"),
                        tuple(Kind.FACTOR, "velocity"),
                        tuple(Kind.CLOCK_SHIFT, "depth"),
                        tuple(Kind.CLOCK_SHIFT, "velocity"),
                        tuple(Kind.DRIFT, "depth"),
                        tuple(Kind.SEDIMENT, "depth"),
                        tuple(Kind.SEDIMENT, "depth"));
        Correction drift = proposals.list().get(0);
        assertThat(drift.interval()).hasToString("2026-03-01T10:00:00Z/2026-03-15T10:00:00Z");
        assertThat(drift.value()).isCloseTo(0, within(1e-9));
        assertThat(drift.valueAtEnd()).isCloseTo(-0.02, within(1e-9));
        assertThat(drift.evidence())
                .isEqualTo("visit of 2026-03-01T10:00:00Z: monitor 0.2, hand 0.2; visit of 2026-03-15T10:00:00Z:"
                        + " monitor 0.22, hand 0.2");
        assertThat(proposals.list().get(1).value()).isCloseTo(0.5 / 0.6, within(1e-12));
        assertThat(proposals.list().get(2).value()).isEqualTo(-70);
        // Adjusted on the 15th: the drift begins anew from nothing.
        assertThat(proposals.list().get(4).value()).isZero();
        assertThat(proposals.list().get(4).valueAtEnd()).isCloseTo(-0.08, within(1e-9));
        assertThat(proposals.list().get(6).interval().end()).isEqualTo(END);
        assertThat(proposals.list().get(6).value()).isEqualTo(0.04);
    }

    @Test
    void anOffsetThatStaysIsProposedAsOne() {
        List<SiteVisit> visits =
                SiteVisit.parse("time,author,hand depth\n2026-03-01T10:00:00Z,A,0.17\n2026-03-15T10:00:00Z,A,0.172\n");
        Correction only = proposed(visits, ramp(0.20, 0), Series.empty()).get(0);
        assertThat(only.kind()).isEqualTo(Kind.OFFSET);
        assertThat(only.value()).isCloseTo(-0.029, within(1e-12));
        // Signed and applied it makes the monitor agree with the mean of both visits.
        CorrectedSeries corrected = Corrections.of(only.because(only.reason(), only.evidence(), "B. Reviewer"))
                .apply("depth", ramp(0.20, 0));
        assertThat(corrected.series().slice(only.interval()).statistics().mean())
                .isCloseTo(0.171, within(1e-12));
    }

    @Test
    void nothingIsProposedWhereNothingIsWrong() {
        List<SiteVisit> visits = SiteVisit.parse(VISITS.replace("0.160", "0.200"));
        List<VisitDifference> found = VisitComparison.standard()
                .withDepthToleranceAndShare(0.05, 0)
                .withVelocityToleranceAndShare(0.2, 0)
                .withClockTolerance(Duration.ofMinutes(5))
                .differences(visits, ramp(0.20, 0.02), ramp(0.6, 0), Series.empty());
        assertThat(VisitComparison.standard().proposals(visits, found, END).list())
                .extracting(Correction::kind)
                .containsOnly(Kind.SEDIMENT);
        assertThat(VisitComparison.standard()
                        .proposals(List.of(), List.of(), END)
                        .list())
                .isEmpty();
    }

    private static List<Correction> proposed(List<SiteVisit> visits, Series depths, Series velocities) {
        VisitComparison comparison = VisitComparison.standard();
        return comparison
                .proposals(visits, comparison.differences(visits, depths, velocities, Series.empty()), END)
                .list();
    }

    @Test
    void aVisitThatOnlyLookedAtTheSedimentProposesIt() {
        List<SiteVisit> visits =
                SiteVisit.parse("time,author,sediment\n2026-03-01T10:00:00Z,A,0.06\n2026-03-20T10:00:00Z,B,0\n");
        assertThat(proposed(visits, ramp(0.2, 0), Series.empty()))
                .hasToString("[Correction[depth 2026-03-01T10:00:00Z/2026-03-20T10:00:00Z, sediment at 0.06 m: sediment"
                        + " found, visit of 2026-03-01T10:00:00Z by A, proposed], Correction[depth"
                        + " 2026-03-20T10:00:00Z/" + END + ", sediment at 0 m: sediment found, visit of"
                        + " 2026-03-20T10:00:00Z by B, proposed]]");
    }

    /** The visit of the 8th reads nothing by hand: it parts neither depths, nor velocities, nor clocks. */
    @Test
    void aVisitThatDoesNotTellOfAQuantityIsPassedOver() {
        List<SiteVisit> visits = SiteVisit.parse("time,author,hand depth,hand velocity,sediment,clock\n"
                + "2026-03-01T10:00:00Z,A,0.2,0.6,,70\n"
                + "2026-03-08T10:00:00Z,A,,,0.03,\n"
                + "2026-03-15T10:00:00Z,A,0.2,0.5,,75\n");
        assertThat(proposed(visits, ramp(0.2, 0.02), ramp(0.6, 0)))
                .extracting(Correction::kind, each -> each.interval().toString())
                .containsExactly(
                        tuple(Kind.DRIFT, "2026-03-01T10:00:00Z/2026-03-15T10:00:00Z"),
                        tuple(Kind.FACTOR, "2026-03-01T10:00:00Z/2026-03-15T10:00:00Z"),
                        tuple(Kind.CLOCK_SHIFT, "2026-03-01T10:00:00Z/2026-03-15T10:00:00Z"),
                        tuple(Kind.CLOCK_SHIFT, "2026-03-01T10:00:00Z/2026-03-15T10:00:00Z"),
                        tuple(Kind.SEDIMENT, "2026-03-08T10:00:00Z/" + END));
    }

    /** Set right on the 8th, without a reading by hand: what the 15th finds grew from nothing since then. */
    @Test
    void whatWasAdjustedBeginsAnew() {
        List<SiteVisit> visits = SiteVisit.parse("time,author,hand depth,clock,adjusted\n"
                + "2026-03-01T10:00:00Z,A,0.2,70,no\n"
                + "2026-03-08T10:00:00Z,A,,,yes\n"
                + "2026-03-15T10:00:00Z,A,0.2,75,no\n");
        assertThat(proposed(visits, ramp(0.2, 0.02), Series.empty()))
                .singleElement()
                .satisfies(only -> {
                    assertThat(only.kind()).isEqualTo(Kind.DRIFT);
                    assertThat(only.interval()).hasToString("2026-03-08T10:00:00Z/2026-03-15T10:00:00Z");
                    assertThat(only.value()).isZero();
                    assertThat(only.valueAtEnd()).isCloseTo(-0.02, within(1e-9));
                    assertThat(only.evidence())
                            .isEqualTo("visit of 2026-03-08T10:00:00Z: not compared, then adjusted;"
                                    + " visit of 2026-03-15T10:00:00Z: monitor 0.22, hand 0.2");
                });
    }

    @Test
    void mistakesAreNamed() {
        refused(
                "time,author\n2026-03-01T10:00:00Z,A\n2026-03-01T10:00:00Z,B\n",
                "visits, line 3, column 1: time must be of one visit, was of two: 2026-03-01T10:00:00Z");
        refused(
                "time,author,hand depth\n2026-03-01T10:00:00Z,A,-0.1\n",
                "visits, line 2, column 3: hand depth must be 0 or greater (m), was -0.1");
        refused(
                "time,author,adjusted\n2026-03-01T10:00:00Z,A,perhaps\n",
                "visits, line 2, column 3: adjusted must be yes or no, was \"perhaps\"");
        refused(
                "time,author,hand dept\n",
                "visits, line 1, column 3: name must be one of [time, author, clock, adjusted,"
                        + " work, hand depth, hand velocity, gauged flow, sediment, sensor zero], was \"hand dept\"; did you mean"
                        + " \"hand depth\"?");
        List<VisitDifference> found = VisitComparison.standard()
                .differences(SiteVisit.parse(VISITS), Series.empty(), Series.empty(), Series.empty());
        assertThatIllegalArgumentException()
                .isThrownBy(() -> VisitComparison.standard().proposals(SiteVisit.parse(VISITS), found, T0))
                .withMessageStartingWith("end must be after the last visit, 2026-03-29T10:00:00Z");
        List<SiteVisit> backwards =
                List.of(SiteVisit.parse(VISITS).get(1), SiteVisit.parse(VISITS).get(0));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> VisitComparison.standard().proposals(backwards, List.of(), END))
                .withMessage("visits must be in order of time, were at 2026-03-15T10:00:00Z and then at"
                        + " 2026-03-01T10:00:00Z");
    }

    private static void refused(String text, String message) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> SiteVisit.parse(text))
                .withMessage(message);
    }

    /** Readings each ten minutes that rise in a straight line by so much from 10:00 on 1 March to 10:00 on 15 March and on. */
    private static Series ramp(double atFirstVisit, double inTwoWeeks) {
        SeriesBuilder builder = Series.builder();
        for (int i = 0; i < 31 * 144; i++) {
            builder.add(T0.plusSeconds(600L * i), atFirstVisit + inTwoWeeks * (i - 60) / (14 * 144));
        }
        return builder.build();
    }
}
