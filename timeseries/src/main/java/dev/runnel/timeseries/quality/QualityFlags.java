package dev.runnel.timeseries.quality;

import dev.runnel.timeseries.Alignment;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.TextState;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.function.IntFunction;
import org.apiguardian.api.API;

/**
 * The verdicts of one check on a record. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class QualityFlags {
    private static final Verdict[] VERDICTS = Verdict.values();
    private static final byte PASS = (byte) Verdict.PASS.ordinal();

    /** Code of the quality of each verdict. */
    private static final byte[] CODES = new byte[VERDICTS.length];

    static {
        for (Verdict each : VERDICTS) {
            CODES[each.ordinal()] = each.toQuality().toCode();
        }
    }

    private final String check;
    private final byte[] verdicts;
    private final List<QualityFlag> raised;

    private QualityFlags(String check, byte[] verdicts, List<QualityFlag> raised) {
        this.check = check;
        this.verdicts = verdicts;
        this.raised = List.copyOf(raised);
    }

    static QualityFlags of(QualityCheck check, Series series) {
        Machine<Reading, QualityFlag, TextState> machine = check.start();
        return machine instanceof PromptMachine prompt
                ? ofPrompt(check.name(), prompt, series)
                : of(check.name(), machine, series, series::get);
    }

    /** The same for a check that owes nothing: most readings pass, and no object is made of them. */
    private static QualityFlags ofPrompt(String check, PromptMachine machine, Series series) {
        byte[] verdicts = new byte[series.size()];
        List<QualityFlag> raised = new ArrayList<>();
        for (int i = 0; i < verdicts.length; i++) {
            verdicts[i] = verdict(machine, series, i, raised);
        }
        machine.finish();
        return new QualityFlags(check, verdicts, raised);
    }

    /** A method of each reading, so that what few readings need is not woven into the loop over all. */
    private static byte verdict(PromptMachine machine, Series series, int i, List<QualityFlag> raised) {
        return series.quality(i).isUsable() && machine.passes(series.value(i))
                ? PASS
                : verdict(machine.next(series.get(i)), raised);
    }

    private static byte verdict(List<QualityFlag> flags, List<QualityFlag> raised) {
        byte verdict = 0;
        for (QualityFlag flag : flags) {
            verdict = (byte) flag.verdict().ordinal();
            if (isRaised(flag.verdict())) {
                raised.add(flag);
            }
        }
        return verdict;
    }

    /** The verdicts that a check found by another way than its machine. */
    static QualityFlags of(String check, byte[] verdicts, List<QualityFlag> raised) {
        return new QualityFlags(check, verdicts, raised);
    }

    static boolean isRaised(Verdict verdict) {
        return verdict == Verdict.UNUSUAL || verdict == Verdict.FAIL;
    }

    static QualityFlags of(PairCheck check, Series checked, Series companion) {
        Series aligned = Alignment.exact().align(checked, companion);
        return of(check.name(), check.start(), checked, i -> ReadingPair.of(checked.get(i), aligned.get(i)));
    }

    private static <I> QualityFlags of(
            String check, Machine<I, QualityFlag, TextState> machine, Series series, IntFunction<I> input) {
        byte[] verdicts = new byte[series.size()];
        List<QualityFlag> raised = new ArrayList<>();
        int known = 0;
        for (int i = 0; i <= series.size(); i++) {
            for (QualityFlag flag : i < series.size() ? machine.next(input.apply(i)) : machine.finish()) {
                if (known == verdicts.length || !flag.time().equals(series.time(known))) {
                    throw new IllegalStateException("check must give one verdict for each reading in its order, was "
                            + flag + " at index " + known + " of " + series.size() + " by " + check);
                }
                Verdict verdict = flag.verdict();
                verdicts[known++] = (byte) verdict.ordinal();
                if (isRaised(verdict)) {
                    raised.add(flag);
                }
            }
        }
        if (known != series.size()) {
            throw new IllegalStateException("check must give one verdict for each of " + series.size()
                    + " readings, was " + known + " by " + check);
        }
        return new QualityFlags(check, verdicts, raised);
    }

    /** The verdicts of some of the readings, which are those of an interval. */
    QualityFlags slice(Interval interval, int from, int to) {
        return new QualityFlags(
                check,
                Arrays.copyOfRange(verdicts, from, to),
                raised.stream().filter(flag -> interval.contains(flag.time())).toList());
    }

    /**
     * Returns what the check is called.
     *
     * @return for example {@code spike}
     */
    public String check() {
        return check;
    }

    /**
     * Returns the number of readings.
     *
     * @return count
     */
    public int size() {
        return verdicts.length;
    }

    /**
     * Returns the verdict on one reading.
     *
     * @param index position of the reading, 0 to size - 1
     * @return the verdict
     * @throws IndexOutOfBoundsException if there is no such position
     */
    public Verdict verdict(int index) {
        return VERDICTS[verdicts[index]];
    }

    /**
     * Returns how many readings have a verdict.
     *
     * @param verdict the verdict
     * @return count
     */
    public int count(Verdict verdict) {
        Objects.requireNonNull(verdict, "verdict");
        if (isRaised(verdict)) {
            // All of them are listed, and they are few.
            return (int)
                    raised.stream().filter(flag -> flag.verdict() == verdict).count();
        }
        byte sought = (byte) verdict.ordinal();
        int count = 0;
        for (byte each : verdicts) {
            count += each == sought ? 1 : 0;
        }
        return count;
    }

    /**
     * Returns the readings found unusual or failed, with reasons.
     *
     * @return flags in order of time
     */
    public List<QualityFlag> raised() {
        return raised;
    }

    /**
     * Returns the verdicts as qualities, for {@link Series#withFlags}.
     *
     * @return {@linkplain dev.runnel.timeseries.Quality#toCode codes}, one for each reading; a new array
     */
    public byte[] toQualityCodes() {
        byte[] codes = new byte[verdicts.length];
        for (int i = 0; i < codes.length; i++) {
            codes[i] = CODES[verdicts[i]];
        }
        return codes;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof QualityFlags that
                && check.equals(that.check)
                && Arrays.equals(verdicts, that.verdicts)
                && raised.equals(that.raised);
    }

    @Override
    public int hashCode() {
        return 31 * (31 * check.hashCode() + Arrays.hashCode(verdicts)) + raised.hashCode();
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder("QualityFlags[").append(check).append(": ");
        String gap = "";
        for (Verdict each : VERDICTS) {
            text.append(gap).append(count(each)).append(' ').append(each.toText());
            gap = ", ";
        }
        return text.append(']').toString();
    }
}
