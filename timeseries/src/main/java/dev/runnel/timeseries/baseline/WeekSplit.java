package dev.runnel.timeseries.baseline;

import java.time.DayOfWeek;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.apiguardian.api.API;

/**
 * Which days of the week are kept apart.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public enum WeekSplit {
    /** None: all days are alike. */
    NONE(DayClass.ANY_DAY),
    /** Weekdays and weekends. */
    WEEKEND(DayClass.WEEKDAY, DayClass.WEEKEND),
    /** Weekdays, Saturdays and Sundays. */
    SATURDAY_AND_SUNDAY(DayClass.WEEKDAY, DayClass.SATURDAY, DayClass.SUNDAY);

    private final List<DayClass> classes;
    private final List<DayClass> days = new ArrayList<>();

    WeekSplit(DayClass... classes) {
        this.classes = List.of(classes);
        for (DayClass each : classes) {
            days.addAll(Collections.nCopies(each.daysInWeek(), each));
        }
    }

    /**
     * Returns the classes that days fall into.
     *
     * @return the classes, in the order of the week
     */
    public List<DayClass> classes() {
        return classes;
    }

    /**
     * Returns the class of a day.
     *
     * @param day day of the week
     * @return its class
     */
    public DayClass classOf(DayOfWeek day) {
        return days.get(day.getValue() - 1);
    }
}
