package dev.runnel.hydraulics.watch;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/** The hours of a record from which a baseline is learned, each told dry or wet. */
final class LearningHours implements Consumer<SiteHour> {
    private final List<SiteHour> hours = new ArrayList<>();
    private final List<Boolean> dry = new ArrayList<>();
    private final List<Boolean> longDry = new ArrayList<>();
    private final List<Boolean> nearlyDry = new ArrayList<>();
    private final DryHours dryHours = new DryHours();

    @Override
    public void accept(SiteHour hour) {
        dryHours.add(hour);
        hours.add(hour);
        dry.add(dryHours.isDry());
        longDry.add(dryHours.isLongDry());
        nearlyDry.add(dryHours.isNearlyDry());
    }

    int size() {
        return hours.size();
    }

    SiteHour hour(int index) {
        return hours.get(index);
    }

    boolean isDry(int index) {
        return dry.get(index);
    }

    boolean isLongDry(int index) {
        return longDry.get(index);
    }

    boolean isNearlyDry(int index) {
        return nearlyDry.get(index);
    }

    /** Index of the first hour at or after a number of hours since 1970. */
    int from(long hour) {
        int low = 0;
        int high = size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (hours.get(middle).hour < hour) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }
}
