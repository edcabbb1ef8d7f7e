package dev.runnel.examples.review;

import java.io.PrintStream;

/** Says on a terminal how far a long review has come; in a pipe, and for a few sites, it is quiet. */
final class Progress {
    private static final int FEW = 5;

    private final int sites;
    private final PrintStream out;
    private final boolean isShown;
    private int done;

    private Progress(int sites, PrintStream out, boolean isShown) {
        this.sites = sites;
        this.out = out;
        this.isShown = isShown;
    }

    /** From JDK 22 on there is a console in a pipe too; a bar there does no harm. */
    @SuppressWarnings("SystemConsoleNull")
    static Progress of(int sites, PrintStream out) {
        return new Progress(sites, out, sites > FEW && System.console() != null);
    }

    synchronized void step() {
        done++;
        show("\r" + done + " of " + sites + " sites");
    }

    synchronized void end() {
        show("\r" + " ".repeat(30) + "\r");
    }

    private void show(String text) {
        if (isShown) {
            out.print(text);
            out.flush();
        }
    }
}
