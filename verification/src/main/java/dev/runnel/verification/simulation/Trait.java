package dev.runnel.verification.simulation;

/** What is peculiar to a site, and sound. */
enum Trait {
    PLAIN("plain"),
    /** A pumping station upstream: the flow comes in strokes. */
    PUMPED("pumped"),
    /** The tide holds the water up twice a day. */
    TIDAL("tidal"),
    /** Groundwater that rises over a winter and goes again. */
    SEASON("wet season");

    private final String text;

    Trait(String text) {
        this.text = text;
    }

    @Override
    public String toString() {
        return text;
    }
}
