package dev.runnel.examples.review;

import dev.runnel.hydraulics.watch.Finding;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.baseline.DiurnalProfile;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * The dry weather of each state that the record holds. The watch calls usual what it learned first, so a fault that was there from
 * the first day on makes the sound days look like the fault: the days that a finding puts in doubt stand beside the usual ones with
 * what was read in them, and a person who knows the site decides.
 *
 * @param states in order of their first day
 */
record DryStates(List<State> states) {
    /** Chosen here: states that are as near to each other leave no question. */
    private static final double APART = 0.05;

    /**
     * Days of one state.
     *
     * @param finding what parts them from the usual days; empty for those
     * @param isDoubted whether the finding says that their readings are wrong, so that they are as read
     * @param days the dry days
     * @param mean mean flow of a day, m3/s, or level, m; empty with too few days for one
     * @param overLaw median of the measured velocity over that of the law; empty without velocity
     */
    record State(
            Optional<Finding> finding,
            boolean isDoubted,
            SortedSet<LocalDate> days,
            OptionalDouble mean,
            OptionalDouble overLaw) {
        LocalDate from() {
            return days.first();
        }

        LocalDate to() {
            return days.last();
        }

        /** For example {@code finding 1, as read}. */
        String words() {
            return finding.map(found -> "finding " + found.number() + (isDoubted ? ", as read" : ""))
                    .orElse("usual");
        }
    }

    /** What the states are made of. */
    private record Maker(SiteData data, FlowFindings flow, ZoneId zone) {
        State state(Optional<Finding> finding, boolean isDoubted, SortedSet<LocalDate> days, Series series) {
            OptionalDouble mean = DryWeather.profile(data, series, days)
                    .filter(found -> found.emptySlots() == 0)
                    .map(DiurnalProfile::mean)
                    .map(OptionalDouble::of)
                    .orElse(OptionalDouble.empty());
            return new State(finding, isDoubted, days, mean, overLaw(days));
        }

        private OptionalDouble overLaw(SortedSet<LocalDate> days) {
            if (data.velocity().isEmpty()) {
                return OptionalDouble.empty();
            }
            double[] values = days.stream()
                    .flatMapToDouble(day -> Arrays.stream(flow.record()
                            .velocityRatio()
                            .slice(Doubts.hours(day, zone))
                            .toValues()))
                    .filter(value -> !Double.isNaN(value))
                    .sorted()
                    .toArray();
            return values.length == 0 ? OptionalDouble.empty() : OptionalDouble.of(values[values.length / 2]);
        }
    }

    static DryStates of(SiteData data, FlowFindings flow, Doubts doubts, DryWeather.Parts parts) {
        Maker maker = new Maker(data, flow, data.site().zone());
        List<State> states = new ArrayList<>();
        parts.unlike()
                .map(UnlikeDays::from)
                .ifPresentOrElse(
                        from -> {
                            states.add(maker.state(
                                    Optional.empty(), false, parts.usual().headSet(from), parts.sound()));
                            states.add(maker.state(
                                    Optional.empty(), false, parts.usual().tailSet(from), parts.sound()));
                        },
                        () -> states.add(maker.state(Optional.empty(), false, parts.usual(), parts.sound())));
        parts.others()
                .forEach((finding, days) -> states.add(maker.state(Optional.of(finding), false, days, parts.sound())));
        SortedMap<Finding, SortedSet<LocalDate>> left = new TreeMap<>(Comparator.comparingInt(Finding::number));
        parts.doubtful()
                .forEach((day, finding) ->
                        left.computeIfAbsent(finding, found -> new TreeSet<>()).add(day));
        left.forEach((finding, days) -> {
            if (Doubts.isLasting(finding) && days.size() >= DryWeather.FEWEST_DAYS) {
                Series read = doubts.withoutDoubtful(data.velocity().isPresent(), parts.all(), finding);
                states.add(maker.state(Optional.of(finding), true, days, read));
            }
        });
        return new DryStates(states.stream()
                .filter(state -> !state.days().isEmpty())
                .sorted((a, b) -> a.from().compareTo(b.from()))
                .toList());
    }

    /** Whether there is more than one. */
    boolean areSeveral() {
        return states.size() > 1;
    }

    /** Measured velocity over that of the law on usual days, that of the longer part where they are not alike; NaN if it is not known. */
    double usualOverLaw() {
        return states.stream()
                .filter(state -> state.finding().isEmpty())
                .max(Comparator.comparingInt(state -> state.days().size()))
                .map(State::overLaw)
                .filter(OptionalDouble::isPresent)
                .map(OptionalDouble::getAsDouble)
                .orElse(Double.NaN);
    }

    /** The states as read whose figures are another one than that of usual days, of which nobody knows which is true. */
    List<State> inQuestion() {
        List<State> usual =
                states.stream().filter(state -> state.finding().isEmpty()).toList();
        return states.stream()
                .filter(State::isDoubted)
                .filter(state -> state.mean().isPresent())
                .filter(state -> usual.stream().allMatch(each -> areApart(each, state)))
                .toList();
    }

    private static boolean areApart(State usual, State other) {
        return usual.mean().isEmpty()
                || Math.abs(other.mean().getAsDouble() / usual.mean().getAsDouble() - 1) > APART;
    }
}
