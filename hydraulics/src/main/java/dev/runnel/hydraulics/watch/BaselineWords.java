package dev.runnel.hydraulics.watch;

import dev.runnel.hydraulics.monitoring.PipeMonitor;
import dev.runnel.internal.Text;
import java.util.ArrayList;
import java.util.List;

/** What a reader should know of a stretch that gave no baseline, or one that is not what a free sewer shows. */
final class BaselineWords {
    /** Why velocity may not follow depth; common practice. */
    static final String NO_LAW =
            "as where the water is held up from downstream all the time, by a tide, a pump or a full pipe, or where the"
                    + " velocity sensor sees badly";

    /** An exponent of velocity over depth below this is not that of a free surface (2/3 of a wide channel); chosen here. */
    private static final double LEAST_EXPONENT = 0.1;

    /** Velocity over that of uniform flow beyond which drawings and readings do not belong together; chosen here. */
    private static final double MOST_APART = 2.5;

    /** Share of the hours above the soffit that makes a pipe a full one; chosen here. */
    private static final double FULL = 0.5;

    private BaselineWords() {}

    /** Why a stretch has too few depths. */
    static List<String> missing(StretchHours of) {
        List<String> reasons = new ArrayList<>();
        int readings = 0;
        int outOfRange = 0;
        int hours = 0;
        for (int i = 0; i < of.size; i++) {
            readings += of.hour(i).readings;
            outOfRange += of.hour(i).outOfRange;
            hours += of.hour(i).readings > 0 ? 1 : 0;
        }
        String wanted = Text.fixed(of.stretch.hours(), 0);
        if (2 * outOfRange > readings) {
            reasons.add(outOfRange + " of " + readings
                    + " depths are none that a sensor can read in a sewer: metres are wanted, was it another unit?");
        }
        if (2 * hours < of.stretch.hours()) {
            reasons.add("readings in " + hours + " of " + wanted + " hours, half of them are needed");
        } else {
            reasons.add("usable depths in " + of.seen + " of " + wanted + " hours, half of them are needed");
        }
        return reasons;
    }

    /** What the relation of velocity and depth says that a free sewer does not do. */
    static List<String> ofLaw(PipeMonitor monitor, UsualVelocity law, StretchHours of) {
        List<String> notes = new ArrayList<>();
        int full = 0;
        for (int i = 0; i < of.size; i++) {
            full += of.hour(i).hasDepth() && Math.exp(of.lnDepth[i]) >= monitor.soffit() ? 1 : 0;
        }
        if (full > FULL * of.seen) {
            notes.add("the pipe was full in " + full + " of " + of.seen
                    + " hours: depth says nothing of the flow there, and no change of the velocity at a depth is told");
            return notes;
        }
        if (law.exponent() < LEAST_EXPONENT) {
            notes.add("velocity does not rise with depth here (exponent " + Text.fixed(law.exponent(), 2)
                    + "): water held up from downstream, by an obstruction that was there from the first day, a weir, a"
                    + " pump or a tide, looks like that");
        }
        double level = Math.exp(Medians.of(StretchHours.pick(of.lnDepth, of.moving())));
        double uniform = monitor.uniformVelocity(Math.min(level, monitor.soffit()));
        double ratio = monitor.velocityFactor() * law.velocity(level) / uniform;
        boolean slow = ratio > 0 && ratio <= 1 / MOST_APART;
        if (slow || ratio >= MOST_APART) {
            notes.add("the usual velocity is " + Text.fixed(ratio, 2)
                    + " times that of uniform flow at that depth, by gradient and roughness as given: "
                    + (slow
                            ? "an obstruction or a sensor that read wrongly from the first day would look like that, or a"
                                    + " gradient that is not the one of the drawings"
                            : "a depth or velocity sensor that read wrongly from the first day would look like that, or a"
                                    + " gradient that is not the one of the drawings"));
        }
        return notes;
    }
}
