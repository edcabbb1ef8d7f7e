package dev.runnel.examples.review;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/** The review as a page of text: a title, a part for each site, what the sites say of each other, a caution. */
final class ReviewText {
    private ReviewText() {}

    static String of(Path folder, List<SiteResult> sites, BetweenSitesText.Between between) {
        StringBuilder text = new StringBuilder();
        text.append(new Page().title("SITE REVIEW", Show.count(sites.size(), "site") + " in " + folder.getFileName()));
        sites.forEach(site -> text.append(site.text()));
        Page page = new Page();
        if (sites.size() > 1) {
            BetweenSitesText.put(page, between);
        }
        page.gap();
        page.section("files").say("index.html to look at, review.txt, and a folder of CSV files for each site");
        page.section("caution")
                .say(
                        "Aids to interpretation from instruments in harsh conditions: no statutory return, no design, no proof "
                                + "that a sewer is safe or empty. A competent person judges; local codes and licensed practice come "
                                + "first. Never enter a sewer or lift a cover to check a figure without a safe system of work.");
        return text.append(page).toString();
    }

    /** The part of one site. */
    static String ofSite(SiteReview review, Attention attention) {
        Page page = new Page();
        Site site = review.site();
        page.gap().heading(site.name().toUpperCase(Locale.ROOT), site.note());
        SiteText.record(page, review);
        page.section("look at");
        int number = 0;
        for (String point : attention.points()) {
            number++;
            page.hanging(number + " ", point);
        }
        if (attention.points().isEmpty()) {
            page.say("nothing that these tests can find");
        }
        SiteText.usual(page, review);
        SiteText.pipe(page, review);
        DataText.put(page, review.data());
        BooksText.put(page, review);
        FlowText.dryWeather(page, review);
        RainText.put(page, review);
        FlowText.fullness(page, review);
        FlowText.alarms(page, review);
        FlowText.overflow(page, review);
        ResponseText.of(page, review);
        return page.toString();
    }
}
