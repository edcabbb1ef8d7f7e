package dev.runnel.examples.review;

import java.time.LocalDate;
import java.util.Optional;

/** A shift of the depth that no finding tells, as it is told. */
final class ShiftText {
    private ShiftText() {}

    /** What moved, by how much, since when, what it means for the flow, and what to ask. */
    static Optional<String> point(SiteReview review) {
        return UntoldShift.of(review)
                .map(found -> "The depth sensor may have moved on about " + day(review, found)
                        + ": velocity and depth part since then as if the depth were read about " + by(found)
                        + ". All hours of the first weeks show it; no finding tells it"
                        + (found.shift().isLearned()
                                ? ", for the days before are too few to learn from and what counts as usual holds days of both"
                                : ", for it is less than what wanders at this site")
                        + ". "
                        + flow(found)
                        + flows(found)
                        + "Which of the two depths is the true one the readings cannot tell. To ask: what was done at the site"
                        + " about that day; the offset that was written down when the sensor was mounted; a depth by hand, which"
                        + " settles it, for days of both states stand in the record.");
    }

    /** What must be known of every figure of the flow. */
    static String mark(SiteReview review) {
        return UntoldShift.of(review)
                .map(found -> "; the depth is perhaps read " + by(found) + " since " + day(review, found)
                        + (found.share().isEmpty() ? "" : ", the flow " + share(found)))
                .orElse("");
    }

    private static String flow(UntoldShift found) {
        return found.share().isEmpty()
                ? ""
                : "If the depth before is the true one, the flow since is read about " + share(found)
                        + " at the median depth of dry days. ";
    }

    private static String flows(UntoldShift found) {
        return found.before().isEmpty() || found.since().isEmpty()
                ? ""
                : "The flow of dry days was " + Show.flow(found.before().getAsDouble()) + " in the median before and "
                        + Show.flow(found.since().getAsDouble()) + " since. ";
    }

    private static String by(UntoldShift found) {
        return Show.mm(Math.abs(found.shift().metres())) + (found.shift().metres() < 0 ? " lower" : " higher");
    }

    private static String share(UntoldShift found) {
        double share = found.share().getAsDouble();
        return Show.percent(Math.abs(share)) + (share < 0 ? " too low" : " too high");
    }

    private static String day(SiteReview review, UntoldShift found) {
        return review.data()
                .dates()
                .day(LocalDate.ofInstant(found.shift().from(), review.site().zone()));
    }
}
