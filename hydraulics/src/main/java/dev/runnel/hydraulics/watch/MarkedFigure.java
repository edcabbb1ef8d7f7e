package dev.runnel.hydraulics.watch;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Series;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import org.apiguardian.api.API;

/**
 * A figure that says how much of it rests on doubtful readings, or on days that may not be what they are taken for. Immutable
 * and thread-safe.
 *
 * <p>It is withheld when more than half of it does, or of what it should rest on more than half is missing. What the readings
 * would give is kept beside it, for a person who has reasons to believe them.
 *
 * @param asRead the figure as the readings give it, doubtful ones included where nothing else is there; NaN if there are none
 * @param doubtfulShare share of the readings behind it that are in doubt, in [0, 1]
 * @param missingShare share of what should be behind it that is missing, in [0, 1]
 * @param suspectShare share of the dry days behind it on which the rain gauge was perhaps dead, so that they may have been wet,
 *     in [0, 1]; 0 for a figure of readings alone
 * @param findings numbers of the findings that put it in doubt
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record MarkedFigure(
        double asRead, double doubtfulShare, double missingShare, double suspectShare, List<Integer> findings) {
    /** Share doubtful, missing or suspect above which no figure is given; chosen here. */
    private static final double WITHHELD = 0.5;

    /**
     * Checks the shares.
     *
     * @param asRead the figure as the readings give it
     * @param doubtfulShare share in doubt, in [0, 1]
     * @param missingShare share that is missing, in [0, 1]
     * @param suspectShare share of days on which the gauge was perhaps dead, in [0, 1]
     * @param findings numbers of the findings that put it in doubt
     * @throws IllegalArgumentException if a share is out of range
     */
    public MarkedFigure {
        Objects.requireNonNull(findings, "findings");
        Require.inRange("doubtfulShare", doubtfulShare, 0, 1, "");
        Require.inRange("missingShare", missingShare, 0, 1, "");
        Require.inRange("suspectShare", suspectShare, 0, 1, "");
        findings = List.copyOf(findings);
    }

    /**
     * Returns the mean of the readings in an interval, marked.
     *
     * @param series the readings; those that are not usable are missing
     * @param use what they are used for
     * @param interval the interval
     * @param doubt what is in doubt
     * @return the mean of the readings that are not in doubt, or if there are none of those that are
     */
    public static MarkedFigure mean(Series series, ReadingUse use, Interval interval, DoubtfulReadings doubt) {
        Objects.requireNonNull(use, "use");
        Series within = series.slice(interval);
        boolean[] doubtful = doubt.doubtful(use, within);
        double good = 0;
        double all = 0;
        int goodCount = 0;
        int count = 0;
        for (int i = 0; i < within.size(); i++) {
            if (within.quality(i).isUsable()) {
                all += within.value(i);
                count++;
                if (!doubtful[i]) {
                    good += within.value(i);
                    goodCount++;
                }
            }
        }
        double mean = goodCount > 0 ? good / goodCount : count > 0 ? all / count : Double.NaN;
        return new MarkedFigure(
                mean,
                count == 0 ? 0 : (double) (count - goodCount) / count,
                within.isEmpty() ? 1 : 1 - (double) count / within.size(),
                0,
                numbers(doubt.findings(use, interval)));
    }

    static List<Integer> numbers(List<Finding> findings) {
        return findings.stream().map(Finding::number).toList();
    }

    /**
     * Returns whether the figure is not to be used as it stands.
     *
     * @return whether more than half of it is in doubt, missing or suspect
     */
    public boolean isWithheld() {
        return !(doubtfulShare <= WITHHELD && missingShare <= WITHHELD && suspectShare <= WITHHELD)
                || Double.isNaN(asRead);
    }

    /**
     * Returns the figure, if it is not withheld.
     *
     * @return the figure
     */
    public OptionalDouble value() {
        return isWithheld() ? OptionalDouble.empty() : OptionalDouble.of(asRead);
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder("MarkedFigure[");
        text.append(
                isWithheld()
                        ? "withheld" + (Double.isNaN(asRead) ? "" : ", as read " + Text.significant(asRead, 4))
                        : Text.significant(asRead, 4));
        if (doubtfulShare > 0) {
            text.append(", ").append(Text.fixed(100 * doubtfulShare, 0)).append(" % in doubt by finding");
            text.append(findings.size() == 1 ? " " : "s ");
            text.append(String.join(", ", findings.stream().map(String::valueOf).toList()));
        }
        if (missingShare > 0) {
            text.append(", ").append(Text.fixed(100 * missingShare, 0)).append(" % missing");
        }
        if (suspectShare > 0) {
            text.append(", ")
                    .append(Text.fixed(100 * suspectShare, 0))
                    .append(" % on days of a gauge that was perhaps dead");
        }
        return text.append("]").toString();
    }
}
