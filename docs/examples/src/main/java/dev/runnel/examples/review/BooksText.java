package dev.runnel.examples.review;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.correction.Correction;
import dev.runnel.timeseries.correction.SiteVisit;
import dev.runnel.timeseries.correction.VisitDifference;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Visits and corrections, in words. */
final class BooksText {
    private BooksText() {}

    static void put(Page page, SiteReview review) {
        corrections(page, review);
        visits(page, review);
    }

    private static void corrections(Page page, SiteReview review) {
        SiteBooks books = review.data().books();
        if (books.corrections().list().isEmpty()) {
            return;
        }
        List<Integer> numbers = books.numbersIn(review.data().record());
        page.section("corrections")
                .say(altered(books) + "; applied before everything else, the files stay as they are");
        for (int number : numbers) {
            Correction each = books.corrections().list().get(number - 1);
            page.hanging("c" + number + " ", words(each, review.data().dates()) + "; " + effect(review, number, each));
        }
        if (numbers.size() < books.corrections().list().size()) {
            page.say(Show.count(books.corrections().list().size() - numbers.size(), "correction")
                    + " of other times than the record");
        }
    }

    private static String altered(SiteBooks books) {
        List<String> texts = new ArrayList<>();
        books.corrected().entrySet().stream()
                .sorted(Map.Entry.comparingByKey())
                .forEach(entry -> texts.add(entry.getKey() + ": "
                        + entry.getValue().altered() + " of "
                        + Show.count(entry.getValue().raw().size(), "reading") + " altered"));
        return texts.isEmpty() ? "no reading altered" : String.join(", ", texts);
    }

    private static String effect(SiteReview review, int number, Correction correction) {
        long readings = review.data()
                .books()
                .readings(number, review.data().depth().lines().series());
        if (readings == 0) {
            return "there is no reading in it";
        }
        return switch (correction.kind()) {
            case SEDIMENT -> "the flow area of " + Show.count(readings, "reading");
            case SENSOR_OFFSET -> "the level of " + Show.count(readings, "reading");
            case ROUGHNESS -> "the law beside " + Show.count(readings, "reading") + ", not their flow";
            default -> Show.count(readings, "reading");
        };
    }

    /** A correction without its effect. */
    static String words(Correction each, Dates dates) {
        return each.series() + ", " + dates.time(each.interval().start()) + " to "
                + dates.time(each.interval().end()) + ": " + figure(each) + ", " + each.reason() + " ("
                + each.evidence() + "; " + each.author() + ")";
    }

    private static String figure(Correction each) {
        boolean isDepth = each.series().equals("depth");
        return each.kind().toText()
                + switch (each.kind()) {
                    case OFFSET -> " " + amount(isDepth, each.value());
                    case DRIFT ->
                        " from " + amount(isDepth, each.value()) + " to " + amount(isDepth, each.valueAtEnd());
                    case FACTOR -> " " + Text.significant(each.value(), 4);
                    case CLOCK_SHIFT -> " " + Text.significant(each.value(), 6) + " s";
                    case REMOVAL -> "";
                    case REPLACEMENT -> " by " + each.source();
                    case SEDIMENT, SENSOR_OFFSET -> " " + amount(true, each.value());
                    case ROUGHNESS -> " " + Text.number(each.value());
                };
    }

    private static String amount(boolean isDepth, double value) {
        return isDepth ? Text.fixed(value * 1000, 1) + " mm" : Text.fixed(value, 3) + " m/s";
    }

    private static void visits(Page page, SiteReview review) {
        VisitFindings found = review.visits();
        if (found.visits().isEmpty()) {
            return;
        }
        page.section("visits")
                .say(Show.count(found.visits().size(), "visit") + "; compared with the readings"
                        + (review.data().books().corrections().list().isEmpty() ? "" : " as corrected")
                        + ", tolerances: " + review.site().books().tolerances());
        for (SiteVisit visit : found.visits()) {
            page.say(words(visit, found, review.data().dates()));
        }
        for (Correction each : found.proposals().list()) {
            page.say("proposed, not applied: " + words(each, review.data().dates()));
        }
    }

    /** A visit with what it found. */
    static String words(SiteVisit visit, VisitFindings found, Dates dates) {
        List<String> texts = new ArrayList<>();
        found.of(visit).forEach(each -> texts.add(words(each)));
        visit.sediment().ifPresent(level -> texts.add("sediment " + amount(true, level)));
        visit.sensorZero().ifPresent(zero -> texts.add("sensor showed " + Text.significant(zero, 4) + " for 0"));
        if (visit.isAdjusted()) {
            texts.add("adjusted");
        }
        if (!visit.work().isEmpty()) {
            texts.add(visit.work());
        }
        return dates.time(visit.time()) + ", " + visit.author() + ": "
                + (texts.isEmpty() ? "nothing read by hand" : String.join("; ", texts));
    }

    /** One figure beside that of the monitor, with the verdict. */
    static String words(VisitDifference each) {
        if (each.quantity().equals("clock")) {
            return "clock " + Text.significant(Math.abs(each.monitor()), 6) + " s "
                    + (each.monitor() < 0 ? "behind" : "ahead") + ", " + verdict(each) + " "
                    + Text.significant(each.tolerance(), 4) + " s";
        }
        String by = each.quantity() + " " + value(each, each.hand()) + " by hand, ";
        return each.isCompared()
                ? by + value(each, each.monitor()) + " by the monitor, " + verdict(each) + " "
                        + value(each, each.tolerance())
                : by + "no reading of the monitor near";
    }

    static String verdict(VisitDifference each) {
        return !each.isCompared() ? "not compared" : each.isBeyond() ? "beyond" : "within";
    }

    private static String value(VisitDifference each, double value) {
        return switch (each.quantity()) {
            case "depth" -> Text.fixed(value * 1000, 1) + " mm";
            case "velocity" -> Text.fixed(value, 3) + " m/s";
            default -> Text.fixed(value * 1000, 2) + " l/s";
        };
    }
}
