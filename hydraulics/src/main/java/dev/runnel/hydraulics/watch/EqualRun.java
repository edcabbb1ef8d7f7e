package dev.runnel.hydraulics.watch;

import dev.runnel.internal.StateText;

/** A run of equal readings of a sensor, to tell that it is frozen. */
final class EqualRun {
    /** Three equal readings an hour apart may be chance; a run must have more. */
    private static final int LEAST_READINGS = 4;

    /** Over a longer gap equal readings are chance. */
    private static final long LONGEST_GAP = 2 * SiteHour.NANOS;

    private static final long DAY = 24 * SiteHour.NANOS;

    private final long limit;
    private double last = Double.NaN;
    private long from;
    private long until;
    private int count;

    EqualRun(long limit) {
        this.limit = limit;
    }

    /**
     * Takes a reading and returns whether it is one too many of a run.
     *
     * @param patient whether the sensor reads where its steps are coarse against what it measures, so that equal readings
     *     say nothing before the course of a day should have moved them
     */
    boolean add(long time, double value, boolean patient) {
        boolean goesOn = goesOn(time, value);
        until = time;
        if (!goesOn) {
            last = value;
            from = time;
            count = 1;
            return false;
        }
        count++;
        return count >= LEAST_READINGS && time - from > (patient ? Math.max(limit, DAY) : limit);
    }

    private boolean goesOn(long time, double value) {
        return value == last && time - until <= LONGEST_GAP;
    }

    /** Readings that a run will have which is too long with a reading; 0 if it will not be. */
    int tooLong(long time, double value) {
        return goesOn(time, value) && time - from > limit ? count + 1 : 0;
    }

    /** Distance of a reading from the one before it; NaN over a longer gap. */
    double step(long time, double value) {
        return time - until <= LONGEST_GAP ? Math.abs(value - last) : Double.NaN;
    }

    double last() {
        return last;
    }

    /** Ends the run, for a reading that says nothing about the sensor. */
    void reset() {
        last = Double.NaN;
        count = 0;
    }

    long from() {
        return from;
    }

    /** Length up to a reading just added. */
    long length(long time) {
        return count >= LEAST_READINGS ? time - from : 0;
    }

    void write(StateText text, String key) {
        text.with(key + "Last", last)
                .with(key + "From", from)
                .with(key + "Until", until)
                .with(key + "Count", count);
    }

    void read(StateText text, String key) {
        last = text.number(key + "Last");
        from = text.count(key + "From");
        until = text.count(key + "Until");
        count = text.index(key + "Count");
    }
}
