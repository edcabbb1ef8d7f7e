package dev.runnel.examples.review;

import dev.runnel.examples.pages.LineFigure;
import dev.runnel.rainfall.response.ResponseDoubt;
import dev.runnel.rainfall.response.StormResponse;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** Draws how much flow above dry weather each storm brought, against its rain. */
final class StormAnswers {
    private final List<StormResponse> told = new ArrayList<>();
    private final int withheld;
    private final long unseen;

    private StormAnswers(ResponseFindings found) {
        List<StormResponse> all = found.responses().all();
        for (int i = 0; i < all.size(); i++) {
            if (!found.isWithheld(i)) {
                told.add(all.get(i));
            }
        }
        unseen = found.trust().stream().filter(ResponseTrust::isUnseen).count();
        withheld = all.size() - told.size() - (int) unseen;
    }

    /** None without a response that can be told. */
    static Optional<StormAnswers> of(SiteReview review) {
        return review.responses().map(StormAnswers::new).filter(answers -> !answers.told.isEmpty());
    }

    /** Those that touch the volume: a share of the rain is not drawn here, nor a recession. */
    private static Set<ResponseDoubt> doubts(StormResponse response) {
        Set<ResponseDoubt> doubts = EnumSet.noneOf(ResponseDoubt.class);
        doubts.addAll(response.doubts());
        doubts.removeAll(Set.of(ResponseDoubt.MORE_THAN_RAIN, ResponseDoubt.NO_RECESSION, ResponseDoubt.PEAK_AT_LIMIT));
        return doubts;
    }

    String drawing() {
        return LineFigure.of(
                "Rain and response",
                "rain of the storm, mm",
                "volume above dry weather, m3",
                Stream.of(points("sound", true), points("doubtful", false))
                        .filter(line -> line.xs().length > 0)
                        .toList());
    }

    private LineFigure.Line points(String name, boolean sound) {
        List<StormResponse> some =
                told.stream().filter(each -> doubts(each).isEmpty() == sound).toList();
        return new LineFigure.Line(
                some.size() + " " + name,
                some.stream().mapToDouble(StormResponse::depthMm).toArray(),
                some.stream()
                        .mapToDouble(each -> Math.max(0, each.runoff().flowM3()))
                        .toArray(),
                true);
    }

    String caption() {
        String doubts = told.stream()
                .flatMap(each -> doubts(each).stream())
                .map(Object::toString)
                .distinct()
                .sorted()
                .reduce((a, b) -> a + "; " + b)
                .map(text -> " Doubts: " + text + ".")
                .orElse("");
        return "Flow above the usual dry day from the beginning of a storm until it was back; a point above the others is a storm that"
                + " brought more." + doubts
                + (unseen > 0 ? " Without a flow: " + Show.count(unseen, "storm") + "." : "")
                + (withheld > 0 ? " Withheld, since most of the flow is doubtful: " + withheld + "." : "");
    }
}
