package dev.runnel.hydraulics.watch;

import dev.runnel.internal.StateText;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** The names of an open change: a vote of every block for the direction in which depth and velocity lie. */
final class ChangeNames {
    // Every number of this class is chosen here; the reasons stand beside them.

    /** Hours whose median names a finding, not those just after its onset, where a change is still on its way. */
    static final int NAME_HOURS = 96;

    private static final int NAME_AFTER_HOURS = 12;
    static final int LEAST_NAME_HOURS = 4;

    /** Votes of four weeks for a name; the first ones, from when little had changed yet, are left out. */
    private static final int VOTE_BLOCKS = 28 * ChangeSeries.BLOCKS_PER_DAY;

    private static final double VOTES_LEFT_OUT = 0.3;

    /** Share of the votes from which on another name is told beside the first. */
    private static final double SECOND_VOTES = 0.3;

    /** The nearest name is told beside the one with most votes if that lies farther by less than this. */
    private static final double VOTED_FARTHER = 4;

    /** Where a change stands, what was seen counting half after a week, and from how many blocks that is known on: of ten days. */
    private static final double KEEP = Math.pow(0.5, 1.0 / (7 * ChangeSeries.BLOCKS_PER_DAY));

    private static final double SETTLED = 50;

    /** Share of what a sensor would do to the velocity at its depth, below which it did not; chosen here. */
    private static final double UNMOVED = 0.4;

    /** A bed grows over weeks; the flow as read then stands up by this share of what the area grew. */
    private static final int BED_BLOCKS = 10 * ChangeSeries.BLOCKS_PER_DAY;

    private static final double BED_SHARE = 0.2;

    private static final int NO_RAY = -1;

    /** Dry hours of so many hours before a step say where the water stood, and how many of them are enough. */
    private static final int BEFORE_HOURS = 120;

    private static final int LEAST_BEFORE_HOURS = 12;

    /** Pairs of hours at the same time of day, before and after, that say something. */
    private static final int LEAST_PAIRS = 6;

    /** Days after a step whose dry hours are held against those before it. */
    private static final int ACROSS_BLOCKS = 4 * ChangeSeries.BLOCKS_PER_DAY;

    private final ChangeSeries series;
    private final FollowedChange change;
    private final Optional<Naming> naming;
    private final List<Long> votes = new ArrayList<>();
    private final Optional<Naming> settled;
    // Sums of ln depth, of ln velocity, weight, and sum of ln velocity over that usual at its depth.
    private final double[] stands = new double[4];
    // The same since it came back last.
    private final double[] spell = new double[4];
    private int across = NO_RAY;
    private int acrossToo = NO_RAY;
    private int named = NO_RAY;

    ChangeNames(SiteBaseline baseline, ChangeSeries series, FollowedChange change) {
        this.series = series;
        this.change = change;
        this.naming = baseline.watches(Quantity.VELOCITY_AT_DEPTH) && baseline.watches(Quantity.VELOCITY)
                ? Optional.of(Naming.of(baseline))
                : Optional.empty();
        this.settled = naming.map(each -> Naming.settled(baseline));
    }

    void clear() {
        votes.clear();
        Arrays.fill(stands, 0);
        Arrays.fill(spell, 0);
        across = NO_RAY;
        acrossToo = NO_RAY;
        named = NO_RAY;
    }

    /** Takes what stood since the beginning, before the finding was told. */
    void sinceBeginning() {
        if (settled.isEmpty()) {
            return;
        }
        Ring blocks = series.blocks;
        for (int i = blocks.from(change.start); i < blocks.size(); i++) {
            double d = blocks.value(i, ChangeSeries.D) - change.origin[ChangeSeries.D];
            double u = blocks.value(i, ChangeSeries.U) - change.origin[ChangeSeries.U];
            if (!Double.isNaN(d) && !Double.isNaN(u)) {
                stand(d, u, u - settled.orElseThrow().exponent() * d);
            }
        }
    }

    /** From now on it is another spell of the same finding. */
    void comeBack() {
        Arrays.fill(spell, 0);
    }

    /** From now on the last spell is a change of its own. */
    void part() {
        votes.clear();
        System.arraycopy(spell, 0, stands, 0, stands.length);
        across = NO_RAY;
        acrossToo = NO_RAY;
    }

    private void stand(double d, double u, double apart) {
        stand(stands, d, u, apart);
        stand(spell, d, u, apart);
    }

    private static void stand(double[] sums, double d, double u, double apart) {
        sums[0] = KEEP * sums[0] + d;
        sums[1] = KEEP * sums[1] + u;
        sums[2] = KEEP * sums[2] + 1;
        sums[3] = KEEP * sums[3] + (Double.isNaN(apart) ? 0 : apart);
    }

    /** Lets a block vote. */
    void vote(long block) {
        Place at = dryMedians(block);
        if (at.isKnown()) {
            stand(at.depth(), at.velocity(), dryAtDepth(block));
        }
        if (block - change.start <= VOTE_BLOCKS) {
            votes.add((long) ray(at));
        }
    }

    /** Median of the velocity at its depth, as it stands, over the dry hours of the last days. */
    private double dryAtDepth(long block) {
        Ring hours = series.hours;
        int from = hours.from(Math.max(
                (block + 1) * ChangeSeries.BLOCK_HOURS - NAME_HOURS, change.seenFrom * ChangeSeries.BLOCK_HOURS));
        double[] values = hours.column(from, ChangeSeries.PLAIN);
        for (int i = 0; i < values.length; i++) {
            values[i] = Double.isNaN(hours.value(from + i, ChangeSeries.D)) ? Double.NaN : values[i];
        }
        return Medians.of(values) - series.centre(ChangeSeries.R);
    }

    /** Ray of the last days' dry hours; none if there are too few. */
    private int ray(Place at) {
        return naming.isEmpty() || !at.isKnown() ? NO_RAY : Naming.least(distances(naming.orElseThrow(), at));
    }

    /** Squared distances from the rays; no water moves the velocity at its depth, so that what did is something else. */
    private double[] distances(Naming by, Place at) {
        double[] found = by.distances(at.depth(), at.velocity());
        if (change.channel == ChangeSeries.R) {
            exclude(found, Naming.MORE_WATER);
            exclude(found, Naming.LESS_WATER);
            excludeOpposite(by, found);
        }
        return found;
    }

    /** What would have moved the velocity at its depth the other way is no name of what moved it. */
    private void excludeOpposite(Naming by, double[] distances) {
        for (int ray = 0; ray < distances.length; ray++) {
            if (Math.signum(by.parts(ray)) == -change.sign) {
                exclude(distances, ray);
            }
        }
    }

    private static void exclude(double[] distances, int ray) {
        distances[ray] = Double.MAX_VALUE;
    }

    /** Medians of depth and velocity over the dry hours of the last days since the beginning. */
    private Place dryMedians(long block) {
        long last = (block + 1) * ChangeSeries.BLOCK_HOURS;
        long begin = change.seenFrom * ChangeSeries.BLOCK_HOURS;
        Place found = dryMediansFrom(Math.max(last - NAME_HOURS, begin + NAME_AFTER_HOURS));
        return found.isKnown() ? found : dryMediansFrom(Math.max(last - NAME_HOURS, begin));
    }

    private Place dryMediansFrom(long firstHour) {
        return series.dryMedians(series.hours.from(firstHour), series.hours.size(), LEAST_NAME_HOURS)
                .from(change.origin[ChangeSeries.D], change.origin[ChangeSeries.U]);
    }

    /**
     * Gives the finding its names anew.
     *
     * @param spellShape how it came, or came back last
     */
    void name(long block, Track open, ChangeShape spellShape) {
        Place at = dryMedians(block);
        if (naming.isEmpty()) {
            open.names = List.of(unnamed());
            return;
        }
        if (change.jump.isPresent()) {
            // No other hour shows what moved as that reading did.
            named = change.jump.orElseThrow().sign() > 0 ? Naming.DEPTH_UP : Naming.DEPTH_DOWN;
            open.names = Naming.names(named, ChangeShape.STEP);
            return;
        }
        if (!at.isKnown()) {
            if (votes.stream().allMatch(vote -> vote == NO_RAY)) {
                open.names = List.of(unnamed());
            }
            return;
        }
        across(block, open);
        double[] distances = distances(naming.orElseThrow(), at);
        int best = Naming.least(distances);
        int second = Naming.alike(distances, best);
        int[] counts = new int[distances.length];
        int cast = 0;
        for (int i = (int) (VOTES_LEFT_OUT * votes.size()); i < votes.size(); i++) {
            int vote = votes.get(i).intValue();
            if (vote != NO_RAY) {
                counts[vote]++;
                cast++;
            }
        }
        if (cast >= ChangeSeries.BLOCKS_PER_DAY) {
            int most = 0;
            int next = -1;
            for (int i = 1; i < counts.length; i++) {
                most = counts[i] > counts[most] ? i : most;
            }
            for (int i = 0; i < counts.length; i++) {
                next = i != most && counts[i] >= SECOND_VOTES * cast && (next < 0 || counts[i] > counts[next])
                        ? i
                        : next;
            }
            if (most != best) {
                second = distances[most] - distances[best] < VOTED_FARTHER ? best : next;
                best = most;
            } else if (second < 0) {
                second = next;
            }
        }
        int beside = across == best ? acrossToo : across;
        if (open.shape != ChangeShape.RAMP && beside != NO_RAY) {
            second = beside;
        }
        // The difference to the days before a step is surer where velocity and depth parted, and within a season, which
        // goes on.
        boolean parted = change.channel == ChangeSeries.R && open.shape != ChangeShape.RAMP && beside != NO_RAY;
        if (stands[2] >= SETTLED && !parted && !change.isWithinSeason()) {
            int[] kept = settle(best, second);
            best = kept[0];
            second = kept[1];
        }
        named = best;
        open.names = names(best, second, open.shape);
        if (best == Naming.HELD_UP && isLikeABed(block, spellShape)) {
            open.names = withSediment(open.names);
        }
    }

    /**
     * Whether what is held up more and more over weeks could as well be a bed that grows at the monitor: that lifts the water like an
     * obstruction, but takes area away, so that the flow is read too high.
     */
    private boolean isLikeABed(long block, ChangeShape spellShape) {
        return spellShape == ChangeShape.RAMP
                && isLong(block)
                && spell[2] >= SETTLED
                && spell[1] > (1 - BED_SHARE) * settled.orElseThrow().heldUp() * spell[0];
    }

    /** Whether the last spell is as long as a bed takes to grow. */
    boolean isLong(long block) {
        return block - change.spell >= BED_BLOCKS;
    }

    private static List<FindingName> withSediment(List<FindingName> names) {
        List<FindingName> all = new ArrayList<>(names);
        if (!all.contains(FindingName.SEDIMENT)) {
            all.add(FindingName.SEDIMENT);
        }
        return List.copyOf(all);
    }

    /** The names that weeks leave: a name that lies clearly farther than another goes, and comes back if it does not. */
    private int[] settle(int best, int second) {
        double[] far = distances(settled.orElseThrow(), new Place(stands[0] / stands[2], stands[1] / stands[2]));
        int nearest = Naming.least(far);
        int first = far[best] - far[nearest] > Naming.CLEARLY ? nearest : best;
        boolean falls = second < 0 || far[second] - far[nearest] > Naming.CLEARLY;
        int kept = falls ? Naming.alike(far, first) : second;
        return new int[] {first, isRefuted(first, kept) ? NO_RAY : kept};
    }

    /** Whether a sensor beside water would have parted velocity and depth, by far more than they did. */
    private boolean isRefuted(int first, int second) {
        if (first != Naming.MORE_WATER && first != Naming.LESS_WATER || second < Naming.DEPTH_UP) {
            return false;
        }
        double wanted = second <= Naming.DEPTH_DOWN ? settled.orElseThrow().exponent() * stands[0] : stands[1];
        return Math.abs(stands[3]) < UNMOVED * Math.abs(wanted);
    }

    private static List<FindingName> names(int best, int second, ChangeShape shape) {
        List<FindingName> names = new ArrayList<>(Naming.names(best, shape));
        if (second >= 0 && second != best) {
            for (FindingName each : Naming.names(second, shape)) {
                if (!names.contains(each)) {
                    names.add(each);
                }
            }
        }
        return List.copyOf(names);
    }

    private FindingName unnamed() {
        if (change.channel == ChangeSeries.R) {
            return change.sign > 0 ? FindingName.VELOCITY_HIGH_FOR_DEPTH : FindingName.VELOCITY_LOW_FOR_DEPTH;
        }
        return change.sign > 0 ? FindingName.LEVEL_UP : FindingName.LEVEL_DOWN;
    }

    /**
     * Where the water stood away from usual before a step already, such as in a wet season, the baseline alone may name it
     * wrongly; it is also named by the difference to the days before it, and what of the water may have gone meanwhile
     * counts as error.
     */
    private void across(long block, Track open) {
        if (open.shape != ChangeShape.STEP || block - change.openedAt > ACROSS_BLOCKS) {
            return;
        }
        int first = series.hours.from(Math.floorDiv(open.earliest, SiteHour.NANOS));
        int after = series.hours.from(Math.floorDiv(open.latest, SiteHour.NANOS));
        int from = series.hours.from(Math.floorDiv(open.earliest, SiteHour.NANOS) - BEFORE_HOURS);
        Place before = series.dryMedians(from, first, LEAST_BEFORE_HOURS);
        if (!naming.orElseThrow().isAway(before.depth(), before.velocity())) {
            return;
        }
        double d = overDays(ChangeSeries.D, from, first, after);
        double u = overDays(ChangeSeries.U, from, first, after);
        if (!Double.isNaN(d) && !Double.isNaN(u)) {
            double[] distances = naming.orElseThrow()
                    .widened(before.depth(), before.velocity())
                    .distances(d, u);
            if (change.channel == ChangeSeries.R) {
                excludeOpposite(naming.orElseThrow(), distances);
            }
            across = Naming.least(distances);
            acrossToo = Naming.alike(distances, across);
        }
    }

    /** Median difference of the hours after a step to the last known same hour before it, free of the course of the day. */
    private double overDays(int quantity, int from, int first, int after) {
        Ring hours = series.hours;
        double[] differences = new double[hours.size() - after];
        for (int i = after; i < hours.size(); i++) {
            double earlier = Double.NaN;
            for (int j = from; j < first; j++) {
                boolean same = (hours.number(i) - hours.number(j)) % 24 == 0;
                earlier = same && !Double.isNaN(hours.value(j, quantity)) ? hours.value(j, quantity) : earlier;
            }
            differences[i - after] = hours.value(i, quantity) - earlier;
        }
        double[] known = Medians.known(differences);
        return known.length < LEAST_PAIRS ? Double.NaN : Medians.of(known);
    }

    /**
     * Whether a movement of the velocity at its depth that began in a block is something else than what the open change is
     * called: by the way from where the days before it stood, a name that is clearly nearer.
     */
    boolean isAnother(long earliest, double[] before) {
        if (naming.isEmpty() || named == NO_RAY) {
            return false;
        }
        Place now = series.dryMedians(
                series.hours.from(earliest * ChangeSeries.BLOCK_HOURS), series.hours.size(), LEAST_NAME_HOURS);
        if (!now.isKnown()) {
            return false;
        }
        Place moved = now.from(before[ChangeSeries.D], before[ChangeSeries.U]);
        double[] distances = naming.orElseThrow().distances(moved.depth(), moved.velocity());
        return distances[named] - distances[Naming.least(distances)] > Naming.CLEARLY;
    }

    /** The step within a season of more or less water that ended in time to be told, at the end of a block. */
    Optional<SeasonStep> seasonStep(long block) {
        return settled.flatMap(each -> SeasonStep.find(series, each, block));
    }

    void write(StateText text) {
        text.with("votes", votes.stream().mapToLong(Long::longValue).toArray())
                .with("stands", stands)
                .with("spellStands", spell)
                .with("across", new long[] {across, acrossToo})
                .with("named", named);
    }

    void read(StateText text) {
        for (long vote : text.counts("votes")) {
            votes.add(vote);
        }
        long[] rays = text.counts("across", 2);
        System.arraycopy(text.numbers("stands", stands.length), 0, stands, 0, stands.length);
        System.arraycopy(text.numbers("spellStands", spell.length), 0, spell, 0, spell.length);
        across = (int) rays[0];
        acrossToo = (int) rays[1];
        named = (int) text.count("named");
    }
}
