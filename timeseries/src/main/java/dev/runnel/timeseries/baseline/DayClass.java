package dev.runnel.timeseries.baseline;

import java.util.Locale;
import org.apiguardian.api.API;

/**
 * Days that are taken to be alike.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public enum DayClass {
    /** Any day of the week. */
    ANY_DAY(7),
    /** Monday to Friday. */
    WEEKDAY(5),
    /** Saturday and Sunday. */
    WEEKEND(2),
    /** Saturday, where it is kept apart from Sunday. */
    SATURDAY(1),
    /** Sunday, where it is kept apart from Saturday. */
    SUNDAY(1);

    private final int daysInWeek;

    DayClass(int daysInWeek) {
        this.daysInWeek = daysInWeek;
    }

    /**
     * Returns how many days of a week belong to the class.
     *
     * @return 1 to 7
     */
    public int daysInWeek() {
        return daysInWeek;
    }

    /**
     * Returns the class in words.
     *
     * @return for example {@code weekday}
     */
    public String toText() {
        return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
