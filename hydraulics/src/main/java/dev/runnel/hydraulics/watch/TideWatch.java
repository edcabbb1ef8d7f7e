package dev.runnel.hydraulics.watch;

import dev.runnel.internal.StateText;

/** Whether the depths follow a tide that the baseline did not show, as where it held no spring tide. Said once, it stays. */
final class TideWatch {
    private final RunningTide running = new RunningTide();
    private final Findings findings;
    private final boolean known;
    private boolean told;

    /**
     * Returns the watch of one site.
     *
     * @param known whether the baseline knows of a tide
     */
    TideWatch(boolean known, Findings findings) {
        this.known = known;
        this.findings = findings;
    }

    /** Takes what a dry hour's depth leaves over of the usual day. */
    void add(long hour, double residual) {
        if (!known && !Double.isNaN(residual)) {
            running.add(hour, residual);
        }
    }

    /** Whether the site is known for a tide, from its baseline or because it was told. */
    boolean isKnown() {
        return known || told;
    }

    /** Whether the last weeks show a tide. */
    boolean isSeen() {
        return isKnown() || running.isTidal();
    }

    /** Tells that a tide is seen, which is a remark and no finding. */
    void tell(long end) {
        if (isKnown()) {
            return;
        }
        told = true;
        Track noted = new Track(0, FindingName.TIDAL, end, end);
        noted.open = false;
        noted.closed = end;
        noted.detail =
                "the depth of dry hours follows a course of 12.42 h, which the baseline did not show: the clock is not"
                        + " watched any more, and the velocity at its depth by whole tides; learn again from a stretch"
                        + " that holds spring and neap tides";
        findings.report(WatchNotice.Kind.NOTED, end, noted);
    }

    void write(StateText text) {
        running.write(text);
        text.with("tideTold", told);
    }

    void read(StateText text) {
        running.read(text);
        told = text.flag("tideTold");
    }
}
