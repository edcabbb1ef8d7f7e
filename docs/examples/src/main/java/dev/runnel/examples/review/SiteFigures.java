package dev.runnel.examples.review;

import dev.runnel.examples.pages.SitePage.Figure;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.balance.DailyTotal;
import dev.runnel.timeseries.balance.DaySampling;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** The figures of a site, each with its uncertainty or its mark. */
final class SiteFigures {
    /** Chosen here: what is missing of a record of which less was seen may matter. */
    private static final double MOSTLY_SEEN = 0.95;

    private final SiteReview review;
    private final List<Figure> figures = new ArrayList<>();

    private SiteFigures(SiteReview review) {
        this.review = review;
    }

    static List<Figure> of(SiteReview review) {
        SiteFigures figures = new SiteFigures(review);
        figures.dryWeather();
        figures.highest();
        figures.received();
        figures.volume();
        figures.spills();
        figures.rain();
        return List.copyOf(figures.figures);
    }

    private void add(String name, String value, String note, String method) {
        figures.add(new Figure(name, value, note.replace("+-", "\u00B1"), method));
    }

    private void dryWeather() {
        DryWeather dry = review.dryWeather();
        add(
                dry.isFlow() ? "Dry weather flow" : "Dry weather level",
                dryWeather(review) + StatesText.orElse(review),
                dryWeatherNote(review),
                "dry-weather-profile");
    }

    /** The figure of usual days, or that there is none. */
    static String dryWeather(SiteReview review) {
        DryWeather dry = review.dryWeather();
        return dry.figure()
                .map(profile -> dry.show(profile.mean()))
                .orElse(dry.doubtful().isEmpty() && !dry.isMostlySuspect() ? "none" : "withheld");
    }

    /** The same in a line of a survey, with what makes it a figure to be careful with. */
    static String dryWeatherMarked(SiteReview review) {
        DryWeather dry = review.dryWeather();
        return dryWeather(review)
                + StatesText.orElse(review)
                + (AsSetUp.of(review).filter(AsSetUp::isUnexplained).isPresent() ? " (velocity far from the law)" : "")
                + (UntoldShift.of(review).isPresent() ? " (depth perhaps moved)" : "")
                + (dry.suspectShare() > 0 ? " (gauge perhaps dead)" : "")
                + (dry.unlike().isPresent() ? " (days not alike)" : "")
                + (dry.against().matters() ? " (partly upstream)" : "");
    }

    private static String dryWeatherNote(SiteReview review) {
        DryWeather dry = review.dryWeather();
        StringBuilder note = new StringBuilder();
        note.append("from ")
                .append(Show.count(
                        dry.usual().days().size(), review.rain().isPresent() ? "usual dry day" : "usual day"));
        if (review.rain().isEmpty()) {
            note.append(", wet ones among them: no ")
                    .append(review.muteGauge().isPresent() ? "rain was written" : "gauge");
            FlowText.lowerQuarter(review)
                    .ifPresent(flow ->
                            note.append(", a quarter of the days below ").append(Show.flow(flow)));
        }
        if (!dry.doubtful().isEmpty()) {
            note.append(", ").append(dry.doubtful().size()).append(" left out as doubtful");
        }
        if (dry.doubtfulShare() > 0) {
            note.append(", ").append(Show.percent(dry.doubtfulShare())).append(" of the readings of dry days");
        }
        dry.others()
                .forEach(spell -> note.append(", ")
                        .append(spell.days().size())
                        .append(" of finding ")
                        .append(spell.finding().orElseThrow().number())
                        .append(" apart"));
        dry.together()
                .ifPresent(all -> note.append("; ")
                        .append(dry.show(all.mean()))
                        .append(" over all ")
                        .append(all.days()));
        dry.unlike().ifPresent(parts -> note.append("; the days").append(notAlike(review, parts)));
        dry.unlikeNights().ifPresent(parts -> note.append("; the nights").append(notAlike(review, parts)));
        note.append(StatesText.note(review));
        AsSetUp.of(review).ifPresent(found -> note.append("; ").append(found.note()));
        return note + dry.suspect() + FlowText.mark(review);
    }

    private static String notAlike(SiteReview review, UnlikeDays parts) {
        DryWeather dry = review.dryWeather();
        return " are not alike: " + dry.show(parts.before()) + " before "
                + review.data().dates().day(parts.from()) + ", " + dry.show(parts.after()) + " from then on";
    }

    private void highest() {
        LevelPeaks peaks = review.peaks();
        String doubted =
                peaks.doubted().isPresent() ? Show.mm(peaks.doubted().getAsDouble()) + " by doubtful depths" : "";
        if (peaks.sound().isEmpty()) {
            if (!doubted.isEmpty()) {
                add("Highest level", "withheld", doubted, "surcharge");
            }
            return;
        }
        double above = peaks.sound().getAsDouble() - review.site().monitor().soffit();
        add(
                "Highest level",
                Show.mm(peaks.sound().getAsDouble()),
                (above > 0 ? Show.mm(above) + " above the soffit" : Show.mm(-above) + " below the soffit")
                        + alone(peaks)
                        + (doubted.isEmpty() ? "" : ", " + doubted),
                "surcharge");
    }

    private static String alone(LevelPeaks peaks) {
        OptionalDouble inARow = InARow.beside(peaks.sound().getAsDouble(), peaks.inARow());
        return inARow.isPresent()
                ? ", in one reading alone: two in a row reached " + Show.mm(inARow.getAsDouble())
                : "";
    }

    /** The highest level of sound readings. */
    static String highest(SiteReview review) {
        LevelPeaks peaks = review.peaks();
        return peaks.sound().isPresent()
                ? Show.mm(peaks.sound().getAsDouble())
                        + (InARow.beside(peaks.sound().getAsDouble(), peaks.inARow())
                                        .isPresent()
                                ? " (one reading)"
                                : "")
                : peaks.doubted().isPresent() ? "withheld" : "";
    }

    private void received() {
        add(
                "Data received",
                received(review),
                Show.count(review.data().depth().gaps().size(), "gap"),
                "quality-checks");
    }

    /** Usable depth readings over those that the record would hold. */
    static String received(SiteReview review) {
        return Show.percent(usableShare(review));
    }

    /** From 0 to 1. */
    static double usableShare(SiteReview review) {
        Series level = review.flow().record().level();
        double expected = review.data().record().duration().toMillis()
                / (double) review.data().depth().interval().toMillis();
        int usable = level.size() - level.count(Quality.MISSING) - level.count(Quality.SUSPECT);
        return Math.min(1, usable / expected);
    }

    private void volume() {
        if (review.data().velocity().isEmpty()) {
            return;
        }
        double all = review.flow().volumes().stream()
                .mapToDouble(DailyTotal::measured)
                .sum();
        double share = review.doubts().shareOfFlow(review.flow().record().flow());
        add(
                "Volume measured",
                share > Doubts.MOST ? "withheld" : Show.volume(all),
                (share > 0 ? Show.percent(share) + " of it rests on doubtful readings" : "no doubtful reading")
                        + ShiftText.mark(review)
                        + seen(review)
                        + median(review).map(text -> ", each reading " + text).orElse("")
                        + singleDay(review.flow().sampling())
                                .map(text -> ", a single day " + text)
                                .orElse(""),
                review.site().checks().uncertainty().isPresent() ? "flow-uncertainty" : "daily-volumes");
    }

    /** Uncertainty of the middle one of the flows by the stated ones of depth and velocity. */
    private static Optional<String> median(SiteReview review) {
        return review.flow()
                .uncertainty()
                .filter(statistics -> statistics.count() > 0)
                .map(statistics -> "+- " + Show.percent(2 * statistics.median()) + " (k = 2)");
    }

    /** By how much the volume of one day may be off where the readings see strokes of pumps in part: twice what days scatter by. */
    static Optional<String> singleDay(DaySampling sampling) {
        return sampling.isCoarse() && !Double.isNaN(sampling.scatter())
                ? Optional.of("+- " + Show.percent(2 * sampling.scatter()))
                : Optional.empty();
    }

    private void spills() {
        review.flow()
                .spills()
                .ifPresent(spills -> add(
                        "Spills",
                        spills(review),
                        spills.periods().isEmpty() ? "crest not reached" + seen(review) : spillNote(spills),
                        "spill-count"));
    }

    private String spillNote(FlowFindings.Spills spills) {
        double share = doubtfulSpills(review);
        String note = (share > Doubts.MOST ? Show.count(spills.tally().count(), "spill") + ", " : "")
                + Show.duration(spills.tally().duration()) + " above the crest"
                + (share > 0 ? ", " + Show.percent(share) + " of it by doubtful depths" : "");
        if (review.spillReturn().isEmpty()) {
            return note;
        }
        SpillReturn found = review.spillReturn().get();
        return note
                + seen(review)
                + (review.site().weir().isPresent() ? ", " + FlowText.volume(found) : "")
                + (found.uncertain() > 0 ? ", " + found.uncertain() + " uncertain" : "");
    }

    static String spills(SiteReview review) {
        return review.flow()
                .spills()
                .map(spills -> spills.periods().isEmpty()
                        ? "none"
                        : doubtfulSpills(review) > Doubts.MOST
                                ? "withheld"
                                : "" + spills.tally().count())
                .orElse("");
    }

    /** The same in a line of a survey: some may be none, and in what was not seen there may have been more. */
    static String spillsMarked(SiteReview review) {
        return spills(review)
                + review.spillReturn()
                        .filter(found -> found.uncertain() > 0 && doubtfulSpills(review) <= Doubts.MOST)
                        .map(found -> found.uncertain() == found.spills().size()
                                ? " (uncertain)"
                                : " (" + found.uncertain() + " of "
                                        + found.spills().size() + " times uncertain)")
                        .orElse("")
                + (review.flow().spills().isPresent() && usableShare(review) < MOSTLY_SEEN
                        ? " (seen " + received(review) + " of the time)"
                        : "");
    }

    /** What was not seen is in no count and no volume. */
    private static String seen(SiteReview review) {
        return usableShare(review) < MOSTLY_SEEN ? ", seen " + received(review) + " of the time" : "";
    }

    /** Share of the time above the crest that rests on doubtful depths; 0 without an overflow. */
    static double doubtfulSpills(SiteReview review) {
        return review.flow()
                .spills()
                .map(spills -> LevelPeaks.doubtfulShare(review, spills.periods()))
                .orElse(0.0);
    }

    /** For how long the rain is not known, and how long there was none where that is strange. */
    private static String rainMarks(SiteReview review, RainFindings rain) {
        Duration unknown = rain.rain().step().multipliedBy(rain.rain().missing());
        return (unknown.isZero() ? "" : ", not known for " + Show.duration(unknown))
                + LongDryTime.of(rain.rain())
                        .map(dry ->
                                ", none for " + Show.duration(dry.time().duration()) + " on end: was the gauge dead?")
                        .orElse("")
                + review.doubts().ofGauge().stream()
                        .map(finding -> ", finding " + finding.number() + " puts "
                                + Show.rain(finding.intervals(review.doubts().end()).stream()
                                        .mapToDouble(
                                                time -> rain.rain().slice(time).sum())
                                        .sum())
                                + Page.BOUND + "mm of it in doubt")
                        .collect(Collectors.joining());
    }

    private void rain() {
        review.rain()
                .ifPresent(rain -> add(
                        "Rain",
                        Show.rain(rain.depthMm()) + Page.BOUND + "mm",
                        Show.count(rain.storms().size(), "storm") + ", "
                                + Show.count(rain.days().dates().size(), "dry day") + rainMarks(review, rain),
                        "tipping-bucket"));
    }
}
