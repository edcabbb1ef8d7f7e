package dev.runnel.rainfall.gauge;

import dev.runnel.internal.Require;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Series;
import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.apiguardian.api.API;

/**
 * Signs of fault in a record of tips. Flags, never changes. Immutable and thread-safe.
 *
 * <p>Limits out of the box, each a choice to be reviewed for the gauge and the climate: tips faster than 500 mm/h are
 * double (an assumed ceiling; 1.44 s for 0.2 mm); 12 gaps in a row, each longer than the one before, mark a
 * draining funnel (British Columbia Ministry of Forests 2022, quality control of forest gauges); the same number, each within
 * 5 % of the one before, mark a drip (common practice); a gap of at most 20 s that is no double, with gaps four times as long or
 * longer before and after it, makes a pair (our choice); a tip after more than 6 h without one is a first tip. Snow is looked
 * for only if {@linkplain #withTemperature temperature} is given.
 *
 * <p>A logger that writes whole minutes puts the tips of a downpour on one instant, and makes the gaps of a drip uneven. Give
 * its {@linkplain #withClock resolution} c, or all tips of a minute but the first are flagged as double and no row is found.
 * A gap cut to c is out by less than c: gaps are then even if they differ by 5 % or by c, and lengthen as long as none is
 * shorter than the longest before it by more than c, and a pair holds however the clock cut its gaps; only gaps longer than all before them count. Gaps shorter than 4 c tell
 * nothing and break a row (our choice).
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class TipChecks {
    /** Assumed. */
    private static final double CEILING_MM_PER_HOUR = 500;
    /** British Columbia Ministry of Forests (2022), as above. */
    private static final int ROW = 12;
    /** Common practice. */
    private static final double EVENNESS = 0.05;
    /** Chosen here. */
    private static final long PAIR = Duration.ofSeconds(20).toNanos();
    /** Chosen here. */
    private static final int PAIR_TIMES = 4;
    /** Chosen here. */
    private static final Duration DRY_SPELL = Duration.ofHours(6);

    private final TippingBucket bucket;
    private final double ceilingMmPerHour;
    private final int run;
    private final double evenness;
    private final long drySpell;
    private final List<Interval> visits;
    private final Optional<Frost> frost;
    private final long clock;

    private record Frost(Series celsius, double limit, Duration lookBack) {}

    private TipChecks(
            TippingBucket bucket,
            double ceilingMmPerHour,
            int run,
            double evenness,
            long drySpell,
            List<Interval> visits,
            Optional<Frost> frost,
            long clock) {
        this.bucket = bucket;
        this.ceilingMmPerHour = ceilingMmPerHour;
        this.run = run;
        this.evenness = evenness;
        this.drySpell = drySpell;
        this.visits = visits;
        this.frost = frost;
        this.clock = clock;
    }

    /**
     * Returns the checks with their limits out of the box.
     *
     * @param bucket the gauge
     * @return the checks
     */
    public static TipChecks of(TippingBucket bucket) {
        return new TipChecks(
                Objects.requireNonNull(bucket, "bucket"),
                CEILING_MM_PER_HOUR,
                ROW,
                EVENNESS,
                DRY_SPELL.toNanos(),
                List.of(),
                Optional.empty(),
                0);
    }

    /**
     * Returns the same checks with another ceiling of intensity.
     *
     * @param ceilingMmPerHour highest intensity believed, mm/h; greater than 0
     * @return the checks
     * @throws IllegalArgumentException if it is not greater than 0
     */
    public TipChecks withCeiling(double ceilingMmPerHour) {
        Require.positive("ceilingMmPerHour", ceilingMmPerHour, "mm/h");
        return new TipChecks(bucket, ceilingMmPerHour, run, evenness, drySpell, visits, frost, clock);
    }

    /**
     * Returns the same checks with another rule for rows of gaps: {@link TipFlag#EVENLY_SPACED} and
     * {@link TipFlag#LENGTHENING}.
     *
     * @param gaps least number of gaps in a row, of either kind; 2 or more
     * @param evenness greatest difference from one gap to the next in an even row, as a share of the former; 0 to 1
     * @return the checks
     * @throws IllegalArgumentException if an argument is out of range
     */
    public TipChecks withRow(int gaps, double evenness) {
        Require.atLeast("gaps", gaps, 2);
        Require.inRange("evenness", evenness, 0, 1, "");
        return new TipChecks(bucket, ceilingMmPerHour, gaps, evenness, drySpell, visits, frost, clock);
    }

    /**
     * Returns the same checks with another dry spell before a first tip.
     *
     * @param drySpell a gap longer than this makes a first tip; greater than 0
     * @return the checks
     * @throws IllegalArgumentException if it is not greater than 0
     */
    public TipChecks withDrySpell(Duration drySpell) {
        long spell = EpochNanos.positive("drySpell", drySpell);
        return new TipChecks(bucket, ceilingMmPerHour, run, evenness, spell, visits, frost, clock);
    }

    /**
     * Returns the same checks that know of visits to the gauge.
     *
     * @param visits times at which somebody worked on it
     * @return the checks
     */
    public TipChecks withVisits(List<Interval> visits) {
        Objects.requireNonNull(visits, "visits");
        return new TipChecks(bucket, ceilingMmPerHour, run, evenness, drySpell, List.copyOf(visits), frost, clock);
    }

    /**
     * Returns the same checks that suspect snow: a tip is flagged if the air was at or below the limit at any reading
     * in the time before it, and marked unknown if there is no usable reading. Limits of 1 to 2 °C and 24 h are a choice
     * (common practice).
     *
     * @param celsius air temperature at the gauge, °C
     * @param limitCelsius temperature at or below which precipitation may be snow, °C
     * @param lookBack time before a tip that is looked at; greater than 0
     * @return the checks
     * @throws IllegalArgumentException if the limit is not finite or the time not greater than 0
     */
    public TipChecks withTemperature(Series celsius, double limitCelsius, Duration lookBack) {
        Objects.requireNonNull(celsius, "celsius");
        Require.finite("limitCelsius", limitCelsius, "degC");
        EpochNanos.positive("lookBack", lookBack);
        Optional<Frost> given = Optional.of(new Frost(celsius, limitCelsius, lookBack));
        return new TipChecks(bucket, ceilingMmPerHour, run, evenness, drySpell, visits, given, clock);
    }

    /**
     * Returns the same checks for a logger whose clock writes nothing finer than a given time. A tip is then double only if the
     * tips at its instant, within that time, are faster than the ceiling, and rows of gaps are judged as far as the clock
     * tells.
     *
     * @param resolution from one time that it can write to the next; 0 or longer, 0 if times are exact
     * @return the checks
     * @throws IllegalArgumentException if it is negative
     */
    public TipChecks withClock(Duration resolution) {
        long nanos = EpochNanos.nonNegative("resolution", resolution);
        return new TipChecks(bucket, ceilingMmPerHour, run, evenness, drySpell, visits, frost, nanos);
    }

    /**
     * Looks at a record.
     *
     * @param tips the tips
     * @return the tips with their flags
     */
    public TipReview review(Tips tips) {
        List<Set<TipFlag>> flags = new ArrayList<>(tips.size());
        for (int i = 0; i < tips.size(); i++) {
            flags.add(EnumSet.noneOf(TipFlag.class));
        }
        flagGaps(tips, flags);
        flagRuns(tips, flags);
        for (int i = 0; i < tips.size(); i++) {
            int tip = i;
            if (visits.stream().anyMatch(visit -> visit.contains(tips.time(tip)))) {
                flags.get(i).add(TipFlag.SERVICE);
            }
            frost.ifPresent(known -> flagFrost(known, tips, tip, flags.get(tip)));
        }
        return new TipReview(tips, flags);
    }

    private void flagGaps(Tips tips, List<Set<TipFlag>> flags) {
        double fastest = bucket.tipMm() * 3.6e12 / ceilingMmPerHour;
        int atInstant = 0;
        for (int i = 0; i < tips.size(); i++) {
            atInstant = i > 0 && gap(tips, i) == 0 ? atInstant + 1 : 0;
            if (i == 0 || gap(tips, i) > drySpell) {
                flags.get(i).add(TipFlag.FIRST);
            } else if (gap(tips, i) + clock < fastest * Math.max(1, atInstant)) {
                flags.get(i).add(TipFlag.DOUBLE);
            } else if (isPaired(tips, i)) {
                flags.get(i).add(TipFlag.PAIRED);
            }
        }
    }

    /** As far as the clock tells: neither gap may look short, nor this one long, by what it cuts. */
    private boolean isPaired(Tips tips, int i) {
        long gap = gap(tips, i);
        long apart = PAIR_TIMES * (gap + clock) + clock;
        return gap > 0
                && gap + clock <= PAIR
                && (i == 1 || gap(tips, i - 1) >= apart)
                && (i == tips.size() - 1 || gap(tips, i + 1) >= apart);
    }

    private void flagRuns(Tips tips, List<Set<TipFlag>> flags) {
        GapRow even = GapRow.even(run, evenness, clock);
        GapRow lengthening = GapRow.lengthening(run, clock);
        for (int i = 1; i < tips.size(); i++) {
            long gap = gap(tips, i);
            boolean tells = gap > 0 && gap <= drySpell && gap >= GapRow.LEAST_CLOCKS * clock;
            flagRow(flags, i, tells ? even.next(gap) : even.interrupt(), TipFlag.EVENLY_SPACED);
            flagRow(flags, i, tells ? lengthening.next(gap) : lengthening.interrupt(), TipFlag.LENGTHENING);
        }
    }

    /** Flags the tips that end the gaps of a row. */
    private static void flagRow(List<Set<TipFlag>> flags, int last, int gaps, TipFlag flag) {
        for (int i = last; i > last - gaps && !flags.get(i).contains(flag); i--) {
            flags.get(i).add(flag);
        }
    }

    private static void flagFrost(Frost frost, Tips tips, int tip, Set<TipFlag> flags) {
        Series before = frost.celsius()
                .slice(Interval.of(
                        tips.time(tip).minus(frost.lookBack()), tips.time(tip).plusNanos(1)));
        boolean known = false;
        for (double celsius : before.toUsableValues()) {
            if (celsius <= frost.limit()) {
                flags.add(TipFlag.SNOW);
                return;
            }
            known |= !Double.isNaN(celsius);
        }
        if (!known) {
            flags.add(TipFlag.TEMPERATURE_UNKNOWN);
        }
    }

    private static long gap(Tips tips, int index) {
        return tips.epochNanos(index) - tips.epochNanos(index - 1);
    }

    @Override
    public String toString() {
        return "TipChecks[" + bucket + ", " + visits.size() + " visits, temperature "
                + (frost.isPresent() ? "given]" : "not given]");
    }
}
