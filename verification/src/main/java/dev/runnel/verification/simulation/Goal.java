package dev.runnel.verification.simulation;

/**
 * One goal, and what was reached.
 *
 * @param text what is wanted
 * @param measured what came out, in words
 * @param verdict whether that is what is wanted
 */
record Goal(String text, String measured, Verdict verdict) {
    /** Whether a goal is reached. */
    enum Verdict {
        REACHED("reached"),
        NOT_REACHED("not reached"),
        NOT_TESTED("not tested in this run");

        private final String text;

        Verdict(String text) {
            this.text = text;
        }

        @Override
        public String toString() {
            return text;
        }
    }

    static Goal of(String text, String measured, boolean reached) {
        return new Goal(text, measured, reached ? Verdict.REACHED : Verdict.NOT_REACHED);
    }

    static Goal untested(String text) {
        return new Goal(text, "no such case", Verdict.NOT_TESTED);
    }
}
