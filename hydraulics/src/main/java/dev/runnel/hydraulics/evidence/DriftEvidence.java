package dev.runnel.hydraulics.evidence;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.apiguardian.api.API;

/**
 * What the dry days of a window show about a drift: the combination seen, the numbers behind it, since when, and how far it
 * would carry. Evidence for a person to weigh, with the plots, the site and the weather in hand. Immutable and thread-safe.
 *
 * <p>What this is not: a diagnosis. The combinations are consistent with a cause, and with others.
 *
 * @param pattern the combination of drifts
 * @param from first date of the window
 * @param to last date of the window
 * @param days number of days the trends are made of
 * @param daysLeftOut number of days in the window with too little coverage
 * @param frozenDays days left out of the trends because the velocity repeated one value
 * @param drifts the trends; empty if there were too few days
 * @param onset since when; empty without a drift
 * @param projection when the level would reach the soffit; empty unless it rises towards it with a slope whose whole 95 %
 *     interval is above 0, within a year
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record DriftEvidence(
        DriftPattern pattern,
        LocalDate from,
        LocalDate to,
        int days,
        int daysLeftOut,
        List<LocalDate> frozenDays,
        Optional<Drifts> drifts,
        Optional<Onset> onset,
        Optional<SoffitProjection> projection) {
    private static final int DIGITS = 3;

    /**
     * Checks the parts.
     *
     * @param pattern the combination of drifts
     * @param from first date of the window
     * @param to last date of the window
     * @param days number of days the trends are made of
     * @param daysLeftOut number of days with too little coverage
     * @param frozenDays days on which the velocity repeated one value; copied
     * @param drifts the trends
     * @param onset since when
     * @param projection when the level would reach the soffit
     * @throws IllegalArgumentException if a count is negative
     */
    public DriftEvidence {
        Objects.requireNonNull(frozenDays, "frozenDays");
        Objects.requireNonNull(pattern, "pattern");
        Objects.requireNonNull(from, "from");
        Objects.requireNonNull(to, "to");
        Require.atLeast("days", days, 0);
        Require.atLeast("daysLeftOut", daysLeftOut, 0);
        frozenDays = List.copyOf(frozenDays);
        Objects.requireNonNull(drifts, "drifts");
        Objects.requireNonNull(onset, "onset");
        Objects.requireNonNull(projection, "projection");
    }

    /**
     * Returns the evidence in plain words, one statement a line.
     *
     * @return text of several lines, separated by line feeds
     */
    public String describe() {
        StringBuilder text = new StringBuilder();
        text.append(from).append(" to ").append(to).append(", ").append(days).append(" dry days used, ");
        text.append(daysLeftOut).append(" left out for missing hours, ");
        text.append(frozenDays.size()).append(" with a frozen velocity\n");
        text.append("seen: ").append(pattern.description()).append('\n');
        drifts.ifPresent(trends -> {
            append(text, "level", trends.level(), "m");
            append(text, "velocity", trends.velocity(), "m/s");
            append(text, "flow", trends.flow(), "m3/s");
            append(text, "measured over uniform-flow velocity", trends.ratio(), "");
        });
        onset.ifPresent(since -> text.append("since about ")
                .append(since.date())
                .append(" (")
                .append(since.earliest())
                .append(" to ")
                .append(since.latest())
                .append(")\n"));
        projection.ifPresent(soffit -> text.append("if it went on, the dry-day level would reach the soffit about ")
                .append(soffit.date())
                .append(" (")
                .append(soffit.earliest())
                .append(" to ")
                .append(soffit.latest())
                .append("); rain fills the pipe before that\n"));
        return text.append("evidence to weigh, not a diagnosis").toString();
    }

    private static void append(StringBuilder text, String name, Trend trend, String unit) {
        String in = unit.isEmpty() ? "" : " " + unit;
        text.append(name)
                .append(": line from ")
                .append(Text.significant(trend.first(), DIGITS))
                .append(" to ")
                .append(Text.significant(trend.last(), DIGITS))
                .append(in)
                .append(", ")
                .append(Text.significant(trend.slope(), DIGITS))
                .append(in)
                .append(" a day (95 % ")
                .append(Text.significant(trend.lowerSlope(), DIGITS))
                .append(" to ")
                .append(Text.significant(trend.upperSlope(), DIGITS))
                .append("), p ")
                .append(Text.significant(trend.pValue(), DIGITS))
                .append('\n');
    }

    @Override
    public String toString() {
        return "DriftEvidence[" + pattern + ", " + from + " to " + to + ", " + days + " days"
                + onset.map(since -> ", since " + since.date()).orElse("")
                + projection
                        .map(soffit -> ", soffit about " + soffit.date() + " if it goes on")
                        .orElse("")
                + "]";
    }
}
