package dev.runnel.hydraulics.watch;

import dev.runnel.internal.StateText;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * How often the sewer rose with rain and without it while the gauge could be believed, by how large the rises were, and so
 * from which size on a rise speaks of rain.
 */
final class RiseRates {
    /** The largest rises of either kind that are kept; of smaller ones only their count is; chosen here. */
    private static final int MOST = 40;

    /** Rises with rain, as large as one that counts, at least; chosen here. */
    private static final int LEAST = 2;

    /** Before a site has shown anything half a rise without rain is supposed ... */
    private static final double HALF = 0.5;

    /**
     * ... in so many dry hours, for a size of 1 ln h, and in as many times more for others as the fourth power of their size: at
     * about five times the rate of the sound developing sites of the score, for a site may be unlike them.
     */
    private static final double SUPPOSED_HOURS = 60;

    /** In no more than a year, for a site that was not looked at may have rises of any size. */
    private static final double MOST_SUPPOSED = 8760;

    /** Rises without rain come in crowds: their count scatters as if no more than so many had been seen; chosen here. */
    private static final double CROWDED = 1.5;

    /** Dry hours as which more of them count, for another season may be another: 90 days; chosen here. */
    private static final double MOST_HOURS = 2160;

    /** A season may have fewer spells of rain than before, by this; chosen here. */
    private static final double DRIER = 0.25;

    private final List<Double> with = new ArrayList<>();
    private final List<Double> without = new ArrayList<>();
    private int countWithout;

    // Hours in which a rise would count as one with rain, and as one without.
    private long wetHours;
    private long dryHours;
    private int spells;

    // What follows from the rises: the least size that counts, and rises without rain that were as large; asked anew
    // after each change.
    private boolean isKnown;
    private double least;
    private int asLargeWithout;

    void addWith(double size) {
        insert(with, size);
        isKnown = false;
    }

    void addWithout(double size) {
        insert(without, size);
        countWithout++;
        isKnown = false;
    }

    void addHours(long wet, long dry) {
        wetHours += wet;
        dryHours += dry;
        isKnown = false;
    }

    void addSpell() {
        spells++;
    }

    int spells() {
        return spells;
    }

    private static void insert(List<Double> sizes, double size) {
        int at = asLarge(sizes, size);
        sizes.add(at, size);
        if (sizes.size() > MOST) {
            sizes.remove(MOST);
        }
    }

    /** Of sizes that fall how many are not less than one. */
    private static int asLarge(List<Double> sizes, double size) {
        int low = 0;
        int high = sizes.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (sizes.get(middle) >= size) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private int countWithout(double size) {
        int count = asLarge(without, size);
        return count < MOST ? count : countWithout;
    }

    /** Least size of a rise that counts; infinite if rises with rain cannot be told from others here. */
    double least() {
        if (!isKnown) {
            choose();
        }
        return least;
    }

    /** Rises without rain that were so large. */
    int asLargeWithout() {
        least();
        return asLargeWithout;
    }

    /** Rises with rain that were so large. */
    int asLargeWith() {
        return asLarge(with, least());
    }

    /** Takes the size from which on an hour of a dead gauge tells most (Kullback and Leibler) against one of a sound one. */
    private void choose() {
        isKnown = true;
        least = Double.POSITIVE_INFINITY;
        asLargeWithout = 0;
        double best = 0;
        double hours = Math.max(1, wetHours + dryHours);
        for (int i = LEAST - 1; i < with.size(); i++) {
            int count = countWithout(with.get(i));
            double other = rate(with.get(i), count);
            // Some come with rain by chance.
            double rain = (i + 1 - other * wetHours) / hours;
            double told = rain > 0 ? (rain + other) * Math.log((rain + other) / other) - rain : 0;
            if (told > best) {
                best = told;
                least = with.get(i);
                asLargeWithout = count;
            }
        }
    }

    /** Rises without rain an hour that are not smaller: what is supposed at first, and what the site has shown. */
    private double rate(double size, int count) {
        double square = size * size;
        double supposed = Math.min(MOST_SUPPOSED, SUPPOSED_HOURS * square * square);
        return (count * share() + HALF) / Math.max(1, dryHours * share() + supposed);
    }

    private double share() {
        return Math.min(1, MOST_HOURS / Math.max(1, dryHours));
    }

    /**
     * Chance of such rises in hours without rain, where rises come as they did before, or as much more often as smaller ones do
     * now: the smallest of those of as many as count, and of the largest, the two largest and so on. A storm may bring far
     * more than the least that counts.
     *
     * @param sizes of the rises that count; not modified
     * @param smaller rises that are too small to count
     * @param hours hours without rain
     */
    double chanceOf(double[] sizes, int smaller, double hours) {
        double time = Math.max(1, hours);
        double usual = (countWithout - asLargeWithout()) * time / Math.max(1, dryHours);
        double restless = time * Math.max(1, (smaller + 1) / (usual + 1));
        double[] rising = sizes.clone();
        Arrays.sort(rising);
        double chance = chanceOf(rising.length, least(), restless);
        for (int i = 0; i < rising.length; i++) {
            chance = Math.min(chance, chanceOf(rising.length - i, rising[i], restless));
        }
        return chance;
    }

    /** Chance of so many of such a size, or more: by Poisson's law of a rate that is not known but learned. */
    private double chanceOf(int rises, double size, double hours) {
        int count = countWithout(size);
        double expected = rate(size, count) * hours;
        double shape = Math.min(count * share() + HALF, CROWDED);
        double often = expected / (shape + expected);
        double term = Math.pow(1 - often, shape);
        double fewer = 0;
        for (int k = 0; k < rises; k++) {
            fewer += term;
            term *= (shape + k) / (k + 1) * often;
        }
        return 1 - fewer;
    }

    /** Chance of so many hours without a drop, where spells of rain come as they did before or in a drier season. */
    double chanceOfNoRain(double hours) {
        double known = Math.max(1, wetHours + dryHours);
        return Math.pow(known / (known + DRIER * hours), spells + HALF);
    }

    private static double[] values(List<Double> list) {
        return list.stream().mapToDouble(Double::doubleValue).toArray();
    }

    void write(StateText text) {
        text.with("risesWith", values(with))
                .with("risesWithout", values(without))
                .with("countWithout", countWithout)
                .with("wetHours", wetHours)
                .with("dryHours", dryHours)
                .with("spells", spells);
    }

    void read(StateText text) {
        with.clear();
        for (double each : text.numbers("risesWith")) {
            insert(with, each);
        }
        without.clear();
        for (double each : text.numbers("risesWithout")) {
            insert(without, each);
        }
        countWithout = text.index("countWithout");
        wetHours = text.count("wetHours");
        dryHours = text.count("dryHours");
        spells = text.index("spells");
        isKnown = false;
    }
}
