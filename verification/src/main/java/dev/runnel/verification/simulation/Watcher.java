package dev.runnel.verification.simulation;

/** What is scored. */
interface Watcher {
    /**
     * Watches a site, reading by reading.
     *
     * @param site the site
     * @param levelOnly whether its velocity is kept from the watch
     */
    Heard watch(Site site, boolean levelOnly);
}
