package dev.runnel.examples.review;

import java.util.List;

/** What the sites say of each other. */
final class BetweenSitesText {
    private BetweenSitesText() {}

    static void put(Page page, List<SiteReview> reviews) {}
}
