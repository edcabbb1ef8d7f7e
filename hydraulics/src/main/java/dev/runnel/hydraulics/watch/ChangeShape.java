package dev.runnel.hydraulics.watch;

import org.apiguardian.api.API;

/**
 * How a change came about.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public enum ChangeShape {
    /** From one reading or block to the next. */
    STEP("at once"),
    /** Over days. */
    RAMP("gradually"),
    /** Too early or too noisy to tell. */
    UNCERTAIN("at once or gradually");

    private final String words;

    ChangeShape(String words) {
        this.words = words;
    }

    @Override
    public String toString() {
        return words;
    }
}
